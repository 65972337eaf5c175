import type { Entry } from '../../../../shared/entry.ts';
import type { ReaderState } from '../../reader-state.ts';

type Work = Extract<Entry, { kind: 'work' }>;

/**
 * "quit at noon with a half hour out, so eight to noon", "eight to noon. Stopped at noon for dinner": the end of a stretch told again is
 * no stop of its own, nor is its beginning a start.
 */
export function withoutEndsAgain(state: ReaderState): void {
  const works = state.drafts.flatMap(({ entry: e }) => (e.kind === 'work' ? [e] : []));
  if (works.length < 2) return;
  const stretches = works.filter((e) => e.start && e.end);
  if (!stretches.length) return;
  state.drafts = state.drafts.filter(({ entry: e }) => {
    if (e.kind !== 'work' || !e.mark || !e.time) return true;
    const whole = stretches.find((s: Work) => (e.mark === 'stop' ? s.end : s.start) === e.time);
    if (!whole || (e.task && whole.task && e.task !== whole.task)) return true;
    if (e.task) whole.task ??= e.task;
    return false;
  });
}
