import { BLOCK_WORDS, COLUMN_WORDS, ROW_SLIPS, ROW_WORDS } from '../../lexicon/place-words.ts';
import { countsOf } from '../../text/number-words.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { splitBlock, unique } from './grid.ts';
import type { PlaceContext } from './place-found.ts';

export const ROWS = new Set(ROW_WORDS);

export const ROWS_HEARD = new Set(ROW_SLIPS);

export const COLUMNS = new Set(COLUMN_WORDS);

/** The words for a column, without its bare letter. */
export const COLUMN_NOUNS = new Set(COLUMN_WORDS.filter((x) => x !== 'c'));

export const BLOCKS = new Set(BLOCK_WORDS);

/** The words for a block that can be nothing else: no bare letter, and not what was done to a top. */
export const BLOCK_NOUNS = new Set(BLOCK_WORDS.filter((x) => x !== 'b' && x !== 'blocked'));

export const isGluedNumber = (t: Token | undefined): boolean => t?.kind === 'number' && t.glued;

/** After these a number counts something, and is no block. */
export const UNIT_AFTER = new Set(
  "inch inches in cm mm m ml metre metres meter meters yard yards yd yds minutes minute min mins hour hours hr hrs h o'clock oclock am pm percent dollars dollar pounds pound quid pence euros euro spools spool reels reel skeins skein packs pack g grams oz fat each quarter quarters past point hundred dozen ply millimetres millimeters centimetres centimeters ft foot feet mil bits of ties stitches pins".split(
    ' ',
  ),
);

/** The row that "block three" belongs to when none is said: the row last spoken of. */
export function focusRow(ctx: PlaceContext): number | undefined {
  for (const places of [ctx.focus, ...ctx.earlier.slice(-3).reverse()]) {
    const rows = unique(places.map((p) => splitBlock(p)?.row).filter((r): r is number => r !== undefined));
    if (rows.length === 1) return rows[0];
    if (rows.length > 1) return undefined;
  }
  return undefined;
}

export const SMALL = countsOf(1, 12);

export function readSmallWord(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  return t && Object.hasOwn(SMALL, t.w) ? { value: SMALL[t.w]!, next: i + 1 } : undefined;
}

/** "one to" and "three for", where nothing that could be counted or reached follows. */
export function heardTwo(tokens: Token[], i: number): { value: number; next: number } | undefined {
  const t = tokens[i];
  // "three four had one too": one of what was told, and no block
  if (t?.w === 'too')
    return /^(had|has|have|got|'s|needs|wants)$/.test(w(tokens, i - 2)) && w(tokens, i - 1) === 'one'
      ? undefined
      : { value: 2, next: i + 1 };
  // "patched nine for with …", "three to is torn": a number, by what follows
  if (
    (t?.w === 'for' || t?.w === 'to') &&
    /^(|with|is|was|has|'s|and|by|,|\.|just|are|got|had|needs|wants|gets|sorry|then|i)$/.test(
      w(tokens, i + 1),
    ) &&
    !(w(tokens, i + 1) === 'i' && !/^(?:think|believe|mean|meant|reckon|guess)$/.test(w(tokens, i + 2))) &&
    !/^(from|row|rows|block|blocks|rose)$/.test(w(tokens, i - 2))
  )
    return { value: t.w === 'for' ? 4 : 2, next: i + 1 };
  // "rust on it four for not four five": against another block
  if (
    (t?.w === 'for' || t?.w === 'to') &&
    /^(?:no|not)$/.test(w(tokens, i + 1)) &&
    readSmallWord(tokens, i + 2) &&
    (readSmallWord(tokens, i + 3) || /^(?:for|to|too)$/.test(w(tokens, i + 3)))
  )
    return { value: t.w === 'for' ? 4 : 2, next: i + 1 };
  return undefined;
}
