import type { Entry } from '../../shared/entry.ts';
import type { Action, Task } from '../../shared/vocabulary.ts';

/** Which kind of work each treatment is done under. Common practice, no source. */
const TASK_OF_ACTION: Record<Action, Task | undefined> = {
  replace: 'mending',
  patch: 'mending',
  stabilize: 'mending',
  overlay: 'mending',
  resew: 'mending',
  darn: 'mending',
  remove: 'taking-apart',
  clean: 'cleaning',
  wash: 'cleaning',
  dry: 'cleaning',
  press: 'cleaning',
  leave: 'survey',
  cut: 'cutting',
  piece: 'piecing',
  'add-border': 'piecing',
  layer: 'layering',
  baste: 'layering',
  tie: 'tying',
  quilt: 'quilting',
  bind: 'binding',
  trim: 'cutting',
  'square-up': 'cutting',
  label: 'other',
  measure: 'survey',
  photograph: 'survey',
};

/**
 * The kind of work that an entry shows was being done, where it shows one: a work entry's own task, a
 * treatment's in hand or done, a finding's survey. What is planned, bought or decided shows none.
 */
export function taskOfEntry(entry: Entry): Task | undefined {
  switch (entry.kind) {
    case 'work':
      return entry.task;
    case 'treatment':
      return entry.action !== undefined && (entry.state === 'done' || entry.state === 'doing')
        ? TASK_OF_ACTION[entry.action]
        : undefined;
    case 'condition':
    case 'measurement':
      return 'survey';
    default:
      return undefined;
  }
}
