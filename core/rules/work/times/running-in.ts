import type { Task } from '../../../../shared/vocabulary.ts';
import type { ReaderState } from '../../reader-state.ts';

/** The kind of work that runs before this sentence: told in the note, or before it. */
export function runningIn(state: ReaderState): { task: Task } | undefined {
  const told = state.drafts.findLast((d) => d.entry.kind === 'work' && d.entry.task)?.entry as
    | { task?: Task }
    | undefined;
  const task = told?.task ?? state.memory.running ?? state.memory.ran;
  return task && { task };
}
