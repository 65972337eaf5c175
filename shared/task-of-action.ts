import type { Action, Task } from './vocabulary.ts';

/** Which kind of work each treatment is done under; leaving a thing as found is none. Common practice, no source. */
export const TASK_OF_ACTION: Record<Exclude<Action, 'leave'>, Task> & { leave?: undefined } = {
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
