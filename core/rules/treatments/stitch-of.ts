import type { Action, Stitch } from '../../../shared/vocabulary.ts';
import { STITCH_PHRASES } from '../../lexicon/stitches.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { toldOf } from './as-model.ts';
import { isTreatment } from './is-treatment.ts';

export function stitchOf(items: Item[]): { stitch: Stitch; item: Item } | undefined {
  let best: { stitch: Stitch; item: Item; rank: number } | undefined;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.stitch) continue;
    const before = items[k - 1]?.w ?? '';
    const after = items[k + 1];
    if (item.weakStitch) {
      if (
        /^(a|the|this|that|camp|wool|my|one|other|washing|sewing|old|left|right|free|these|is|'s)$/.test(
          before,
        ) &&
        // "the left hand seam"
        (/^(left|right)$/.test(before) || !(after?.action || after?.stitch))
      )
        continue;
      if (
        (item.w === 'hand' || item.w === 'machine') &&
        !(
          after?.action ||
          after?.stitch ||
          (after === undefined && before !== 'in') ||
          // "replaced with brown gingham machine 25 min"
          after?.duration !== undefined ||
          /^(,|by|and|\.|quilting|work|sewn|for|in|on|finish|finished|finishing)$/.test(after?.w ?? '') ||
          before === ',' ||
          before === 'by'
        )
      )
        continue;
      if (
        item.w === 'blanket' &&
        !(
          before === ',' ||
          before === 'in' ||
          before === 'with' ||
          after === undefined ||
          after.duration !== undefined
        )
      )
        continue;
      if (item.fabric) continue;
    }
    if (item.fabric && !/stitch/.test(item.w)) continue;
    if (/^(no|not|n't|without|instead of)$/.test(before)) continue;
    // "no more zigzag", "without any zigzag"
    if (
      items.slice(Math.max(0, k - 3), k).some((x) => x.w === 'no') ||
      (/^(a|any|the|even|need|for)$/.test(before) &&
        items.slice(Math.max(0, k - 3), k - 1).some((x) => /^(without|not|n't|never)$/.test(x.w)))
    )
      continue;
    const rank = STITCH_PHRASES[item.stitch].rank;
    if (!best || rank > best.rank) best = { stitch: item.stitch, item, rank };
  }
  return best;
}

export const TAKES_STITCH = new Set<Action>([
  'resew',
  'patch',
  'replace',
  'stabilize',
  'overlay',
  'darn',
  'quilt',
  'bind',
  'add-border',
  'piece',
  'label',
  'baste',
  'tie',
]);

type Told = { at: number; action?: Action | undefined };
type Sewn = NonNullable<ReturnType<typeof stitchOf>>;

/**
 * With which stitch each of the ways of a clause was done. "linen behind it in running stitch and net over the face, couched down": each has
 * the one that is told behind it and before the next. Where only one is told it belongs to the way that it was said after.
 */
export function stitchOfEach<W extends Told>(
  items: Item[],
  ways: W[],
  stitch: Sewn | undefined,
  words: string,
): (way: W) => Sewn | undefined {
  if (!stitch || ways.length < 2) return () => stitch;
  const takers = ways.filter((x) => TAKES_STITCH.has(x.action!));
  const sewn = takers.findLast((x) => x.at <= items.indexOf(stitch.item));
  const one = (way: W): Sewn | undefined =>
    !sewn || sewn === way || sewn.action === way.action || / both /.test(words) ? stitch : undefined;
  if (items.filter((x) => x.stitch).length < 2) return one;
  const own = new Map<W, Sewn>();
  const inOrder = takers.sort((a, b) => a.at - b.at);
  inOrder.forEach((way, n) => {
    const behind = stitchOf(items.slice(way.at, inOrder[n + 1]?.at ?? items.length));
    if (behind) own.set(way, behind);
  });
  const each = own.size > 1 && !items.slice(0, inOrder[0]!.at).some((x) => x.stitch);
  return each ? (way) => own.get(way) : one;
}

const LIKE_BEFORE = /^(likewise|ditto|similarly)$/;

/** "patched 6-2 too, same stitch", "3-5 patched likewise": the stitch of the treatment before. */
export function sameStitch(state: ReaderState, items: Item[], words: string): ReturnType<typeof stitchOf> {
  if (!/ (?:same|likewise|ditto|similarly) /.test(words)) return undefined;
  // "4-2 patched the same way as 2-2"
  const model = items.find((x) => x.model);
  const way = model && toldOf(state, model.model!).findLast((m) => m.stitch);
  if (way && items.some((x) => x.action?.v === way.action)) return { stitch: way.stitch!, item: model };
  const last = state.drafts.findLast(isTreatment)?.entry ?? state.memory.treatment;
  const item = items.find(
    (x, k) =>
      (LIKE_BEFORE.test(x.w) && items[k - 1]?.action?.v === last?.action) ||
      (items[k - 1]?.w === 'same' &&
        (/^(stitch|sts?)$/.test(x.w) ||
          // "quilted the next two rows the same way"
          (x.w === 'way' && items.some((y) => y.action?.v === last?.action)))),
  );
  const kept = state.memory.stitch;
  const stitch = last?.stitch ?? (kept?.action === last?.action ? kept?.stitch : undefined);
  return item && stitch ? { stitch, item } : undefined;
}

/** "tacked it first, then couched it down": nothing is basted with these. */
export const isForGood = (stitch: Stitch): boolean =>
  /^(couching|whipstitch|ladder|blanket|backstitch|zigzag)$/.test(stitch);
