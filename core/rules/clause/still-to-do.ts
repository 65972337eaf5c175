import type { Item } from '../item.ts';

/** What is told of places where the work has yet to come. */
const TO_COME =
  /^(?:is |are |'s |'re |has |have )?(?:still (?:to|left|waiting|outstanding|needs?|wants?|not)|yet to|not (?:yet|done|touched|started|reached|got)|to (?:do|go|come|follow|be)|left to|next|tomorrow|later|tonight|remains?|remaining|waiting|outstanding)\b/;
const IN_PLACES = /^(?:the|and|&|\+|,|of|in|on|all|both|its|from|to|blocks?|ones?)$/;

/** "pressed row three, the left border still to press", "netted 2-3 and 2-4, 5-1 tomorrow": a place of its own, where the work is to come. */
export function stillToDo(items: Item[], k: number, current: Item[]): boolean {
  if (!current.some((x) => x.action) || !current.some((x) => x.place || x.fabric)) return false;
  let at = k + 1;
  let named = false;
  while (
    items[at] &&
    (items[at]!.place || items[at]!.fabric || IN_PLACES.test(items[at]!.w)) &&
    at < k + 12
  ) {
    // "row three, 2-1 and 2-2, the backing still to press": the list goes on up to its last comma
    if (items[at]!.w === ',' && named) return false;
    if (items[at]!.place || items[at]!.fabric) named = true;
    at++;
  }
  if (!named) return false;
  const said = items
    .slice(at, at + 4)
    .map((x) => x.w)
    .join(' ');
  const deed = /^(?:still|yet|left)$/.test(items[at]?.w ?? '') && items[at + 1]?.action?.form === 'base';
  return (
    TO_COME.test(said) || deed || (/^to$/.test(items[at]?.w ?? '') && items[at + 1]?.action?.form === 'base')
  );
}
