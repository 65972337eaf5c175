import type { Item } from '../item.ts';

/** Gives an item the senses of a phrase of the lexicon; one that it has already stays. */
export function applySenses(item: Item, senses: { k: string; v?: unknown; form?: unknown }[]): void {
  for (const s of senses) {
    if (s.k === 'finding') item.finding ??= s.v as NonNullable<Item['finding']>;
    else if (s.k === 'fail') item.fail = true;
    else if (s.k === 'seam') item.seam = true;
    else if (s.k === 'stitches') item.stitches = true;
    else if (s.k === 'action') item.action ??= { v: s.v, form: s.form } as NonNullable<Item['action']>;
    else if (s.k === 'stitch') item.stitch ??= s.v as NonNullable<Item['stitch']>;
    else if (s.k === 'material') item.material ??= s.v as NonNullable<Item['material']>;
    else if (s.k === 'object') item.object ??= s.v as NonNullable<Item['object']>;
    else if (s.k === 'part') item.part ??= s.v as string;
    else if (s.k === 'task') item.task ??= s.v as NonNullable<Item['task']>;
    else if (s.k === 'topic') item.topic ??= s.v as NonNullable<Item['topic']>;
    else if (s.k === 'measure') item.measure ??= s.v as NonNullable<Item['measure']>;
  }
  // "seams are letting go" begins like "seams are a quarter inch"
  if (item.measure === 'seam' && /^seams? (are|is|'s)$/.test(item.w)) item.seam = true;
  if (item.stitch && WEAK_STITCHES.has(item.w)) item.weakStitch = true;
}

/** Stitch words that may be something else. */
const WEAK_STITCHES = new Set([
  'hand',
  'machine',
  'blanket',
  'running',
  'slip',
  'ladder',
  'whip',
  'ditch',
  'couch',
  'straight',
  'mach',
  'little running',
]);
