import type { Action } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';

/** Damage told as a thing that can be worked on. */
const THING =
  /(?:^| )(?:tear|rip|hole|split|slit|gap|stain|mark|spot|blotch|ring|seam|mildew|mould|mold|pucker|fray|patch|place|area|edge)s?$/;
const MENDS = new Set<Action>([
  'darn',
  'patch',
  'resew',
  'clean',
  'wash',
  'stabilize',
  'overlay',
  'replace',
  'press',
  'photograph',
]);
const NAMING =
  /^(?:the|that|this|those|these|a|an|some|another|one|two|three|four|no|any|more|its|of|with|and|in|on|at|is|'s|are|was|has|have|had|i|there|it)$/;

/**
 * "Tear darned, 20 min", "milk stain spot-cleaned", "worn spot backed with muslin": damage named without an article at the head of a
 * note in short hand, with what was done to it right behind. It is the damage known already, as "the tear" would be.
 */
export function isBareThing(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (!item.finding && !item.seam) return false;
  const head = THING.test(item.w)
    ? k
    : THING.test(items[k + 1]?.w ?? '') && !items[k + 1]!.place
      ? k + 1
      : -1;
  if (head < 0) return false;
  let verb = head + 1;
  // "seam still to be whipped"
  while (
    verb < head + 6 &&
    /^(is|'s|are|now|all|been|has|have|also|just|again|finally|still|to|be|will|'ll|needs|wants|getting|gets|actually|finally|really|properly|at|last)$/.test(
      items[verb]?.w ?? '',
    )
  )
    verb++;
  if (items[verb]?.w === 'shut') return true;
  const done = items[verb]?.action;
  // "seam ladder stitch"
  const how = item.seam && verb === head + 1 && items[verb]?.stitch && !items[verb]!.weakStitch;
  if ((done?.form !== 'past' || !MENDS.has(done.v)) && !how && !gotCover(items, head + 1)) return false;
  for (let m = k - 1; m >= 0; m--) {
    const before = items[m]!;
    if (before.token.kind === 'mark' && /^[.;!?\n]$/.test(before.w)) return true;
    // "ok seam closed now"
    if (m === 0 && /^(?:ok|okay|right|good|well)$/.test(before.w)) return true;
    if (
      k - m > 2 ||
      before.place ||
      before.action ||
      before.finding ||
      before.fabric ||
      before.quantity ||
      before.token.kind === 'mark' ||
      NAMING.test(before.w)
    )
      return false;
  }
  return true;
}

/** "tear's got fusible behind it", "hole has net over it now": what lies behind or over it. */
function gotCover(items: Item[], from: number): boolean {
  let k = from;
  while (/^('s|has|have|had|'ve|got|now|gets|is|getting)$/.test(items[k]?.w ?? '') && k < from + 4) k++;
  if (k === from) return false;
  while (/^(a|an|some|the|bit|piece|scrap|of|new|little)$/.test(items[k]?.w ?? '') && k < from + 8) k++;
  const stuff = items[k];
  return (
    Boolean(stuff?.material || stuff?.fabric || /^(patch|lining|support)$/.test(stuff?.w ?? '')) &&
    /^(behind|over|on|across|under|underneath)$/.test(items[k + 1]?.w ?? '')
  );
}
