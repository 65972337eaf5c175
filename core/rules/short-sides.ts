import type { Token } from '../text/tokenise.ts';
import { LEXICON } from './lexicon-index.ts';
import { isNumberWord } from './slips/small-number-said.ts';

const CORNERS: Record<string, [string, string]> = {
  tl: ['top', 'left'],
  tr: ['top', 'right'],
  bl: ['bottom', 'left'],
  br: ['bottom', 'right'],
};
const SIDES: Record<string, string> = { l: 'left', r: 'right', t: 'top', b: 'bottom' };
const THING = /^(?:corners?|blocks?|blks?|blk|squares?|ones?|sides?|edges?|borders?|bdrs?|hand|of|half)$/;
/** Parts whose own corner or side is meant. */
const PART =
  /^(?:bkg|backing|bdg|binding|border|borders|bdr|bdrs|edge|edges|batting|batt|top|quilt|qlt|label)$/;

/**
 * Corners and sides in short hand: "top R + bottom L corner blocks", "TR: net, hand" and "top left: torn" (the block in that corner),
 * "edge L: fray" (the left edge).
 */
export function nameShortSides(tokens: Token[]): Token[] {
  const out: Token[] = [];
  tokens.forEach((t, k) => {
    const said = out.at(-1);
    if (isShort(tokens, k)) out.push({ ...t, w: SIDES[t.w]! });
    else if (isSideBehind(tokens, k)) {
      // "edge L": the side before the thing, as it would be said
      out.pop();
      out.push({ ...said!, w: SIDES[t.w]!, to: said!.from }, { ...said!, to: t.to });
    } else if (isCorner(tokens, k)) {
      const [up, across] = CORNERS[t.w]!;
      out.push({ ...t, w: up, to: t.from }, { ...t, w: across, glued: false }, block(t));
    } else if (isBareCorner(tokens, k)) out.push(t, block(t));
    else out.push(t);
  });
  return out.length === tokens.length && out.every((t, k) => t === tokens[k]) ? tokens : out;
}

const block = (t: Token): Token => ({ ...t, w: 'block', kind: 'word', from: t.to, glued: false });

const isShort = (tokens: Token[], k: number): boolean =>
  isShortLine(tokens, k) ||
  (/^[rl]$/.test(tokens[k]!.w) &&
    /^(top|bottom|upper|lower|bot|btm)$/.test(tokens[k - 1]?.w ?? '') &&
    tokens[k + 1]?.kind !== 'number' &&
    !(tokens[k + 1]?.w === '/' && tokens[k + 1]!.glued));

/** "R col: dye ran", "B row faded"; "r col 3" is a row and a column */
const isShortLine = (tokens: Token[], k: number): boolean =>
  (/^[rl]$/.test(tokens[k]!.w)
    ? /^(?:hand|col|cols|column|columns)$/.test(tokens[k + 1]?.w ?? '')
    : /^[tb]$/.test(tokens[k]!.w) && tokens[k + 1]?.w === 'row') &&
  !/^(?:\d+|row|block|r|b)$/.test(tokens[k - 1]?.w ?? '') &&
  tokens[k + 2]?.kind !== 'number' &&
  !isNumberWord(tokens[k + 2]);

/** Does a piece of a list begin at the token? */
const opens = (tokens: Token[], k: number): boolean =>
  k === 0 || /^(?:[,;:.&+(\n]|--|and|then|also)$/.test(tokens[k - 1]!.w);

const isHeading = (tokens: Token[], k: number): boolean =>
  tokens[k]?.w === ':' || (tokens[k]?.w === '-' && !tokens[k]!.glued) || tokens[k]?.w === '=';

const isFinding = (tokens: Token[], k: number): boolean =>
  LEXICON.longestAt(tokens, k)?.payloads.some((s) => s.k === 'finding' || s.k === 'fail') ?? false;

/** "edge L: fray", "border B - stain" */
const isSideBehind = (tokens: Token[], k: number): boolean =>
  Object.hasOwn(SIDES, tokens[k]!.w) &&
  /^(?:edge|border|bdr|side)$/.test(tokens[k - 1]?.w ?? '') &&
  !/^(?:top|bottom|left|right|l|r|t|b|upper|lower)$/.test(tokens[k - 2]?.w ?? '') &&
  !/^(?:\+|&|and|\/)$/.test(tokens[k + 1]?.w ?? '') &&
  (isHeading(tokens, k + 1) || isFinding(tokens, k + 1) || tokens[k + 1] === undefined);

/** "TR: net", "hole in BL", "BR torn" */
function isCorner(tokens: Token[], k: number): boolean {
  if (!Object.hasOwn(CORNERS, tokens[k]!.w)) return false;
  // "TL + TR corners frayed": the noun behind the last of them
  let noun = k + 1;
  while (/^(?:[+&,/]|and)$/.test(tokens[noun]?.w ?? '') && Object.hasOwn(CORNERS, tokens[noun + 1]?.w ?? ''))
    noun += 2;
  if (THING.test(tokens[noun]?.w ?? '')) return false;
  for (let m = k - 1; m >= 0 && m > k - 5 && !/^[,;.:\n]$/.test(tokens[m]!.w); m--)
    if (PART.test(tokens[m]!.w)) return false;
  return opens(tokens, k) || /^(?:in|at|on)$/.test(tokens[k - 1]!.w) || isFinding(tokens, k - 1);
}

/** "top left: net, hand", "bottom right torn": the place of a block at the head of what is told of it. */
const isBareCorner = (tokens: Token[], k: number): boolean =>
  /^(?:left|right)$/.test(tokens[k]!.w) &&
  /^(?:top|bottom|upper|lower|bot|btm)$/.test(tokens[k - 1]?.w ?? '') &&
  opens(tokens, k - 1) &&
  (isHeading(tokens, k + 1) || isFinding(tokens, k + 1));
