const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** A local minute as it is said: "10:02 on 7 March"; where the day was named before, the hour alone. */
export function momentWords(local: string, namedDay?: string): string {
  const [date, time] = [local.slice(0, 10), local.slice(11)];
  return date === namedDay?.slice(0, 10)
    ? time
    : `${time} on ${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;
}
