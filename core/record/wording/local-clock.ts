const formats = new Map<string, Intl.DateTimeFormat>();

/** An instant as the wall clock of `zone` shows it: `{ date: '2026-03-14', time: '10:30' }`. */
export function localClock(instant: string, zone: string): { date: string; time: string } {
  let format = formats.get(zone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
    });
    formats.set(zone, format);
  }
  const ms = Date.parse(instant);
  if (Number.isNaN(ms)) return { date: instant.slice(0, 10), time: instant.slice(11, 16) };
  const part: Record<string, string> = {};
  for (const { type, value } of format.formatToParts(ms)) part[type] = value;
  return { date: `${part.year}-${part.month}-${part.day}`, time: `${part.hour}:${part.minute}` };
}
