import { makeDraft } from '../../draft.ts';
import type { Claims, Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';

const DOES =
  /^ (?:(?:this time|please|then|at least|i 'd say|i think|for now|or so|,) )+$|^ (?:(?:of (?:it|them|those|that)|each|at most|or so) )?(?:will|'ll|would|should|ought to|'d) (?:do|be|see|last|cover)\b|^ (?:of (?:it|them) )?(?:is|are|'s) (?:enough|plenty|all i need|ample)\b/;

/** "remember to get pins. A pack will do": how much of what was said to be wanted in the sentence before. */
export function amountWillDo(state: ReaderState, { items, number }: Sentence, claims: Claims): boolean {
  const at = items.findIndex((x) => x.quantity?.value !== undefined);
  if (at < 0 || at > 2 || items.length > 10) return false;
  if (items.slice(0, at).some((x) => !/^(?:a|an|about|say|,|half|maybe|and)$/.test(x.w))) return false;
  if (!DOES.test(wordsBetween(items, at + 1))) return false;
  const wanted = state.drafts.findLast((d) => d.entry.kind === 'material');
  if (
    wanted?.entry.kind !== 'material' ||
    wanted.entry.use !== 'needed' ||
    wanted.entry.quantity !== undefined
  )
    return false;
  if (wanted.sentence < number - 1 || wanted.sentence > number) return false;
  const { value, unit } = items[at]!.quantity!;
  const told = makeDraft(
    'material',
    { index: -1, sentence: number, items },
    { quantity: [value, 'amount', items], unit: [unit, 'amount', items] },
    'unneeded',
  );
  wanted.entry = { ...wanted.entry, ...told.entry } as typeof wanted.entry;
  wanted.origins = { ...told.origins, ...wanted.origins };
  for (const x of items) claims.cut.add(x);
  return true;
}
