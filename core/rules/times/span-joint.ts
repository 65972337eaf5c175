/** What stands between the beginning and the end of a stretch. */
export const SPAN_JOINT = new Set([
  'to',
  'till',
  'til',
  'until',
  'through',
  '-',
  '--',
  'thru',
  'and',
  'right',
]);
