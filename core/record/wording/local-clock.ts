const formats = new Map<string, Intl.DateTimeFormat>();

const QUARTER_MS = 900_000;
const two = (n: number): string => String(n).padStart(2, '0');
/** Zone -> quarter of an hour -> minutes ahead of UTC. Clocks change on quarters (IANA, since 1972). */
const offsets = new Map<string, Map<number, number>>();

/** An instant as the wall clock of `zone` shows it: `{ date: '2026-03-14', time: '10:30' }`. */
export function localClock(instant: string, zone: string): { date: string; time: string } {
  const ms = Date.parse(instant);
  if (Number.isNaN(ms)) return { date: instant.slice(0, 10), time: instant.slice(11, 16) };
  let byQuarter = offsets.get(zone);
  if (!byQuarter) {
    byQuarter = new Map();
    offsets.set(zone, byQuarter);
  }
  const quarter = Math.floor(ms / QUARTER_MS);
  let ahead = byQuarter.get(quarter);
  if (ahead === undefined) {
    if (byQuarter.size > 50_000) byQuarter.clear();
    ahead = minutesAhead(ms, zone);
    byQuarter.set(quarter, ahead);
  }
  const local = new Date(ms + ahead * 60_000);
  return {
    date: `${local.getUTCFullYear().toString().padStart(4, '0')}-${two(local.getUTCMonth() + 1)}-${two(local.getUTCDate())}`,
    time: `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`,
  };
}

function minutesAhead(ms: number, zone: string): number {
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
  const part: Record<string, string> = {};
  for (const { type, value } of format.formatToParts(ms)) part[type] = value;
  const wall = Date.UTC(
    Number(part.year),
    Number(part.month) - 1,
    Number(part.day),
    Number(part.hour),
    Number(part.minute),
  );
  return Math.round((wall - Math.floor(ms / 60_000) * 60_000) / 60_000);
}
