import type { Entry } from '../../shared/entry.ts';
import { TASK_OF_ACTION } from '../../shared/task-of-action.ts';
import type { Task } from '../../shared/vocabulary.ts';

/**
 * The kind of work that an entry shows was being done, where it shows one: a work entry's own task, a
 * treatment's in hand or done, a finding's survey. What is planned, bought or decided shows none.
 */
export function taskOfEntry(entry: Entry): Task | undefined {
  switch (entry.kind) {
    case 'work':
      return entry.task;
    case 'treatment':
      if (entry.action === undefined || (entry.state !== 'done' && entry.state !== 'doing')) return undefined;
      // deciding to leave a thing as found is looking it over
      return entry.action === 'leave' ? 'survey' : TASK_OF_ACTION[entry.action];
    case 'condition':
    case 'measurement':
      return 'survey';
    default:
      return undefined;
  }
}
