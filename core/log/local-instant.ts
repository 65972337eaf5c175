import { Temporal } from 'temporal-polyfill';

/**
 * A moment written as a clock in the given zone shows it: `2026-03-14T10:30:00-05:00`. `moment` is ISO
 * 8601 with any offset; `zone` an IANA name. Notes are read by the clock on the wall of the quilt.
 */
export function localInstant(moment: string, zone: string): string {
  return Temporal.Instant.from(moment)
    .toZonedDateTimeISO(zone)
    .toString({ smallestUnit: 'second', timeZoneName: 'never' });
}
