/** Whether a local minute such as `2026-03-14T09:00` names a day that the calendar has: 30 February is none. */
export function isRealMinute(local: string): boolean {
  const date = local.slice(0, 10);
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const met = new Date(Date.UTC(year, month - 1, day));
  return !Number.isNaN(met.getTime()) && met.toISOString().slice(0, 10) === date;
}
