import { boundaryBefore, type Item } from '../item.ts';

export const HARD = new Set(['.', ';', '!', '?', '\n']);
/** Does a sentence end here? */
export const isStop = (item: Item): boolean => HARD.has(item.w) && item.token.kind === 'mark';

/** Where the sentence begins in which the item at `k` stands. */
export function startOfSentence(items: Item[], k: number): number {
  let from = k;
  while (from > 0 && !isStop(items[from - 1]!)) from--;
  return from;
}

/** Where the sentence ends in which the item at `k` stands: the index of its stop, or of what would follow the last item. */
export function endOfSentence(items: Item[], k: number): number {
  let to = k;
  while (to < items.length && !isStop(items[to]!)) to++;
  return to;
}

/** What may stand between two statements and belongs to neither. */
export const BETWEEN_STATEMENTS = /^(,|and|&|\+|but|so|then|also|oh|--)$/;

/** Puts a stop before `next` behind what was taken so far, in the place of the words that joined the two. */
export function pushStop(taken: Item[], next: Item): void {
  while (BETWEEN_STATEMENTS.test(taken.at(-1)?.w ?? '') && !isStop(taken.at(-1)!)) taken.pop();
  taken.push(boundaryBefore(next, ';'));
}

export const SOFT = new Set([
  ',',
  'and',
  '&',
  '+',
  'plus',
  'but',
  'so',
  'then',
  'because',
  'cos',
  'cause',
  'while',
  'which',
  'or',
  'though',
  'although',
  'when',
  ':',
  '--',
  'after',
  'before',
  '(',
  ')',
  'until',
  'as',
  'also',
  'since',
  'whereas',
  'except',
  '/',
  'still',
]);

/** Does the "and" or comma at `k` stand between two places? A stop does not join: "ties out r1. binding is off". */
export function joinsPlaces(items: Item[], k: number): boolean {
  const joint = items[k];
  if (!joint || isStop(joint)) return false;
  let after = k + 1;
  while (/^(the|and|&|also|in|at|on|between)$/.test(items[after]?.w ?? '') && after < k + 4) after++;
  const left = items[k - 1];
  return Boolean(left?.place) && Boolean(items[after]?.place);
}
