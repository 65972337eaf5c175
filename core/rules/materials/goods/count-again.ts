import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';
import type { Cue } from './cue-at.ts';
import type { Told } from './goods-told.ts';

/**
 * "need five more skeins, I've got two in the closet", "8 more of it (have 2)", "I have two skeins and need five": how many there are or must be
 * got of the goods just told; the index after the number. What is left to do ("I've got two left to darn") is none.
 */
export function countAgain(items: Item[], k: number, cue: Cue): { quantity: number; at: number } | undefined {
  const got = cue.use === 'bought' && w(items, k) === 'got';
  if (!/^(?:on-hand|needed)$/.test(cue.use) && !got) return undefined;
  let at = cue.next;
  while (/^(only|just|about|still|already|another|a)$/.test(w(items, at))) at++;
  // "I have two reels but need another", "… but I'll have to get a third"
  const more = cue.use === 'needed' ? ONE_MORE.exec(wordsBetween(items, at - 1, at + 3)) : null;
  if (more) return { quantity: 1, at: at - 1 + more[0].trim().split(' ').length };
  const count = items[at]?.quantity;
  if (count?.value === undefined || count.unit) return undefined;
  const behind = wordsBetween(items, at + 1, at + 6);
  return (got ? HAD_HERE : COUNT_ENDS).test(behind) ? { quantity: count.value, at: at + 1 } : undefined;
}
/** One more than was told. */
const ONE_MORE =
  /^ (?:another(?: one)?|(?:a|one) (?:second|third|fourth|fifth|sixth)(?: one| reel| spool| skein| ball| pack| packet| roll| metre| yard)?)(?= (?:$|[.,;()] ?|and |but |so |for |to ))/;
/** Behind an amount: that it is there already, or where it is kept. */
export const HAD_HERE =
  /^ +(?:left |already |here |by me |(?:put|set|laid|kept|saved|tucked) (?:by|aside|away|back|over) |stashed |spare |over |to start with |on top of that |besides |as well |at home |in stock |to hand |on hand |upstairs |of (?:them|those) ){1,2}(?:$|[,;()] |and |but |so |for (?:that|this|it|them|the|my) )|^ (?:left |already )?(?:out |up |over |down )?(?:in|on) (?:the|my) /;
const COUNT_ENDS = new RegExp(`^ *(?:$|[,;()] |and |but |so )|${HAD_HERE.source}`);

/** Were goods with an amount told in this sentence or in the one before? */
export function justCounted(state: ReaderState, sentence: Told): boolean {
  const told = state.drafts.findLast((d) => d.entry.kind === 'material');
  return (
    told?.entry.kind === 'material' &&
    told.entry.quantity !== undefined &&
    told.sentence >= sentence.number - 1 &&
    told.sentence <= sentence.number
  );
}
