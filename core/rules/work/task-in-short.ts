import { TASK_OF_ACTION } from '../../../shared/task-of-action.ts';
import type { Task } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';

const SHORT_TASKS: Record<string, Task> = {
  inv: 'paperwork',
  invoice: 'paperwork',
  emails: 'paperwork',
  email: 'paperwork',
  shop: 'shopping',
  mend: 'mending',
  layer: 'layering',
};

/** The kind of work that a bare word beside a length stands for: "inv 15m", "40m unpick". */
export const taskInShort = (x: Item): Task | undefined =>
  SHORT_TASKS[x.w] ??
  (x.action?.form === 'base' && !x.task && !x.part ? TASK_OF_ACTION[x.action.v] : undefined);
