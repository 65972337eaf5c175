const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterOf(zone: string): Intl.DateTimeFormat {
  let formatter = formatters.get(zone);
  if (!formatter) {
    formatter = new Intl.DateTimeFormat('en-CA', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    });
    formatters.set(zone, formatter);
  }
  return formatter;
}

/** An instant as the clock on the wall of `zone` shows it: `{date:"2026-03-14", time:"10:30", second:"05"}`. */
export function localTime(
  instant: string | Date,
  zone: string,
): { date: string; time: string; second: string } {
  const at = typeof instant === 'string' ? new Date(instant) : instant;
  const part: Record<string, string> = {};
  for (const { type, value } of formatterOf(zone).formatToParts(at)) part[type] = value;
  return {
    date: `${part.year}-${part.month}-${part.day}`,
    time: `${part.hour}:${part.minute}`,
    second: part.second ?? '00',
  };
}

/** The same instant written with the offset that `zone` has then: `2026-03-14T10:30:05-05:00`. */
export function instantInZone(at: Date, zone: string): string {
  const { date, time, second } = localTime(at, zone);
  const asUtc = Date.parse(`${date}T${time}:${second}Z`);
  const offsetMin = Math.round((asUtc - Math.floor(at.getTime() / 1000) * 1000) / 60_000);
  const size = Math.abs(offsetMin);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date}T${time}:${second}${offsetMin < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
