import ical from 'ical-generator';
import type { Hours } from '../../core/hours/hours.ts';
import type { QuiltState } from '../../core/log/state.ts';
import { cleanText } from '../../core/record/wording/clean-text.ts';
import { tradeTerms } from '../../core/record/wording/trade-terms.ts';

/**
 * The work sessions as iCalendar (RFC 5545), in UTC so that no time zone definition is needed. `madeAt` is
 * written as the stamp of each event: the same log gives the same bytes. A stretch of which only the
 * length is known stands at the place that the log gave it and says so.
 */
export function workCalendar(state: QuiltState, hours: Hours, madeAt: Date): string {
  const terms = tradeTerms(state.quilt.spelling);
  const name = cleanText(state.quilt.name);
  const calendar = ical({
    name: `Work on ${name}`,
    prodId: { company: 'Quiltside', product: 'Quiltside', language: 'EN' },
  });
  for (const span of hours.spans) {
    const last = span.parts.at(-1)?.[1] ?? span.endMin;
    const end = Math.max(last, span.startMin + 1);
    calendar.createEvent({
      id: `${span.id}@${state.quilt.id}.quiltside.invalid`,
      stamp: madeAt,
      start: new Date(span.startMin * 60_000),
      end: new Date(end * 60_000),
      summary: `${capital(span.task ? terms.task(span.task) : 'work')}: ${name}`,
      description: [
        `${span.minutes} minutes counted.`,
        span.how === 'length' ? 'Only the length was said; the time of day is a guess.' : '',
        span.how === 'inferred' ? 'Worked out from the notes.' : '',
        span.breakMin ? `${span.breakMin} minutes of break taken off.` : '',
      ]
        .filter(Boolean)
        .join(' '),
    });
  }
  return calendar.toString();
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
