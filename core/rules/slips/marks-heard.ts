import type { Token } from '../../text/tokenise.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { isNumberWord, isSmallNumber } from './small-number-said.ts';

/** Signs that were read aloud, and commas and dashes that the recogniser wrote for others. */
export const MARKS_HEARD: readonly SlipRule[] = [
  ({ tokens, i }) => {
    const mark = mendedMark(tokens, i);
    return mark ? readAs(tokens[i]!, mark) : undefined;
  },
  // "the padding shifted in 2 to 5": the dash of a block's name
  ({ tokens, i }) => {
    const t = tokens[i]!;
    if (!/^(?:to|too)$/.test(t.w) || !isDashOfBlock(tokens, i)) return undefined;
    return {
      tokens: [
        { ...t, kind: 'mark', w: '-', glued: true, heard: t.w },
        { ...tokens[i + 1]!, glued: true },
      ],
      took: 2,
      rule: 'slip.dash',
    };
  },
  // "r4 plus r5", "worn top plus bottom"
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'plus' &&
    PLACE_WORD.test(before.at(-1)?.w ?? '') &&
    PLACE_WORD.test(tokens[i + 1]?.w ?? '')
      ? readAs(tokens[i]!, '+')
      : undefined,
  // "patched w/ the plaid", "w/o net"
  ({ tokens, i }) =>
    tokens[i]!.w === 'w' && tokens[i + 1]?.w === '/' && tokens[i + 1]!.glued
      ? tokens[i + 2]?.w === 'o' && tokens[i + 2]!.glued
        ? { ...readAs(tokens[i]!, 'without'), took: 3 }
        : { ...readAs(tokens[i]!, 'with'), took: 2 }
      : undefined,
  // "net o/ the front", "crepeline o/lay"
  ({ tokens, i }) =>
    tokens[i]!.w === 'o' && tokens[i + 1]?.w === '/' && tokens[i + 1]!.glued
      ? tokens[i + 2]?.w === 'lay' && tokens[i + 2]!.glued
        ? { ...readAs(tokens[i]!, 'overlay'), took: 3 }
        : { ...readAs(tokens[i]!, 'over'), took: 2 }
      : undefined,
  // "closed seam 3-2/4-2": the article is left out
  ({ tokens, i, before }) =>
    /^seams?$/.test(tokens[i]!.w) &&
    /^(?:closed|sewed|resewed|restitched|stitched|opened|fixed|mended|shut)$/.test(before.at(-1)?.w ?? '')
      ? withThe(tokens[i]!)
      : undefined,
  // "other 2 rows tied", "other one - fine"
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'other' &&
    /^(?:|[.;\n])$/.test(before.at(-1)?.w ?? '') &&
    (/^ones?$/.test(tokens[i + 1]?.w ?? '') ||
      /^(?:rows|columns|cols|blocks|blks)$/.test(tokens[i + 2]?.w ?? ''))
      ? withThe(tokens[i]!)
      : undefined,
  // "rest of r3 done": the rest of row 3
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'rest' &&
    tokens[i + 1]?.w === 'of' &&
    /^(r|rows?|cols?|columns?)$/.test(tokens[i + 2]?.w ?? '') &&
    !/^(the|all)$/.test(before.at(-1)?.w ?? '')
      ? {
          tokens: [
            { ...tokens[i]!, w: 'the' },
            { ...tokens[i]!, glued: false },
          ],
          took: 1,
        }
      : undefined,
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'r' &&
    tokens[i + 1]?.kind === 'number' &&
    tokens[i + 1]!.glued &&
    before.at(-1)?.w === 'of' &&
    before.at(-2)?.w === 'rest'
      ? readAs(tokens[i]!, 'row')
      : undefined,
  // "3-5 do.": ditto
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'do' && before.at(-1)?.kind === 'number' && /^(|[.,;\n])$/.test(tokens[i + 1]?.w ?? '')
      ? readAs(tokens[i]!, 'ditto')
      : undefined,
  // "w slash mustard corduroy": with
  ({ tokens, i }) =>
    tokens[i]!.w === 'w' && tokens[i + 1]?.w === 'slash'
      ? { ...readAs(tokens[i]!, 'with', 'slip.sign'), took: 2 }
      : undefined,
  // "blanket street round it": st., the short form of stitch, read aloud
  ({ tokens, i, before }) =>
    tokens[i]!.w === 'street' && STITCH_KIND.test(before.at(-1)?.w ?? '')
      ? readAs(tokens[i]!, 'stitch', 'slip.sign')
      : undefined,
];

const withThe = (token: Token): { tokens: Token[]; took: number } => ({
  tokens: [
    { ...token, w: 'the' },
    { ...token, glued: false },
  ],
  took: 1,
});

const STITCH_KIND = /^(?:blanket|running|straight|ladder|whip|back|slip|herringbone|overcast)$/;
/** What may stand on either side of a "plus" between places. */
const PLACE_WORD = /^(?:top|bottom|left|right|sides?|r\d+|b\d+|[1-9])$/;

const OF_A_PLACE = /^(?:half|some|most|all|there|it|they|the)$/;
/**
 * The recogniser writes a comma where she ended a sentence: "…out of the top three rows, in row two half of them were gone". A
 * place that opens a clause with its own subject begins a new sentence; "still open, whether …" lists what is open.
 */
function mendedMark(tokens: readonly Token[], i: number): string | undefined {
  // "seam 4-1 | 5-1 parted": the two blocks on either side of it
  if (tokens[i]!.w === '|' && /^(?:seams?|joins?)$/.test(tokens[i - 4]?.w ?? '') && tokens[i + 2]?.w === '-')
    return '/';
  // "4-1 - fraying | 5-2 - faded", "3-3 patched // 4-4 - hole"
  if (tokens[i]!.w === '|')
    return tokens[i - 1]?.kind === 'number' && tokens[i + 1]?.kind === 'number' ? ',' : '.';
  if (tokens[i]!.w === '/' && tokens[i + 1]?.w === '/') return '.';
  if (tokens[i]!.w === '/' && tokens[i - 1]?.w === '/') return ',';
  // "4-5: hole / patched / 30 min": a slash that stands by itself is a comma, but in "106 / 107" and "replace? / patch?"
  if (tokens[i]!.w === '/' && !tokens[i]!.glued && !tokens[i + 1]?.glued && tokens[i - 1]?.w !== '?') {
    if (endsAsked(tokens, i)) return undefined;
    if (tokens[i - 1]?.kind !== 'number' || tokens[i + 1]?.kind !== 'number') return ',';
  }
  if (tokens[i]!.w !== ',') return undefined;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  if (/^(?:in|on)$/.test(w(1)) && /^(?:row|column|block)$/.test(w(2)) && OF_A_PLACE.test(w(4))) return '.';
  // "… in blocks two to five, row five is fine"
  if (
    /^(?:row|column)$/.test(w(1)) &&
    /^(?:is|'s|has|had|looks|was|needs|wants)$/.test(w(3)) &&
    (tokens[i + 2]?.kind === 'number' || isNumberWord(tokens[i + 2])) &&
    tokens.slice(Math.max(0, i - 12), i).some((t) => /^(?:is|'s|has|had|have|are|'ve|was|were)$/.test(t.w))
  )
    return '.';
  if (w(-1) === 'open' && w(-2) === 'still' && /^(?:whether|what|which|how)$/.test(w(1))) return ':';
  return undefined;
}

/** "2-3: net over / a darn?": what is parted is asked, as ways to choose from. */
const endsAsked = (tokens: readonly Token[], i: number): boolean =>
  tokens.slice(i + 1, i + 9).find((t) => /^[.;!?\n,/]$/.test(t.w))?.w === '?';

/** Two small numbers with a "to" between them, the first at token `i`. */
const isToPair = (tokens: readonly Token[], i: number): boolean =>
  isSmallNumber(tokens[i]) && /^(?:to|too)$/.test(tokens[i + 1]?.w ?? '') && isSmallNumber(tokens[i + 2]);

/**
 * "shifted in 2 to 5", "laid over one to two", "1 to 2 is all done", "2 to 4 2 to 5 2 to 6": the "to" at token `i` is the dash of a
 * block's name where one is awaited and no stretch of rows, hours or lengths can be meant.
 */
function isDashOfBlock(tokens: readonly Token[], i: number): boolean {
  if (!isToPair(tokens, i - 1)) return false;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  const opens = i === 1 || tokens[i - 2]?.w === '.';
  // named one after the other
  if (isToPair(tokens, i + 2) && opens) return true;
  if (isToPair(tokens, i - 4) && (isToPair(tokens, i + 2) || i === 4 || isToPair(tokens, i - 7))) return true;
  // of a stretch it would be "are"
  if (opens && /^(?:is|'s|has|needs|was|wants)$/.test(w(2))) return true;
  return (
    /^(?:in|on|over|behind)$/.test(w(-2)) &&
    !/^(?:rows?|blocks?|columns?|from)$/.test(w(-3)) &&
    /^(?:|,|\.|;|and|is|'s|has|had|needs|got|wants|was|with|by|as|i|which|are|patched|darned|resewn)$/.test(
      w(2),
    )
  );
}
