import type { Token } from '../text/tokenise.ts';

const DONE = /^(?:done|treated|dealt with|handled|seen|tackled|mended|repaired|worked|finished)$/;
const WAYS = /^(?:manner|fashion|vein|style)$/;
const BE = /^(?:is|are|was|were|'s|'re)$/;

/**
 * Other words for "the same way": "has now been done likewise", "to be treated in like manner", "in similar fashion". And "is to have the
 * same", which is said of what is planned, as "is to get the same".
 */
export function nameTheSame(said: Token[]): Token[] {
  // "5-4: same", "top one - same": alone behind its place, as "ditto"
  const tokens = said.some((t, k) => isBare(said, k, t))
    ? said.map((t, k) => (isBare(said, k, t) ? { ...t, w: 'ditto' } : t))
    : said;
  const sewn = stitchBehind(tokens);
  if (sewn) return sewn;
  const at = tokens.findIndex((t) => /^(?:likewise|similarly|manner|fashion|vein|style|same)$/.test(t.w));
  if (at < 0) return tokens;
  const { w } = tokens[at]!;
  const word = (i: number): string => tokens[i]?.w ?? '';
  const say = (from: number, to: number, words: string[]): Token[] => [
    ...tokens.slice(0, from),
    ...words.map((x): Token => ({ ...tokens[from]!, w: x, kind: 'word', to: tokens[to - 1]!.to })),
    ...tokens.slice(to),
  ];
  // "has been done likewise", "done similarly"
  if (/^(?:likewise|similarly)$/.test(w) && DONE.test(word(at - 1)))
    return say(at, at + 1, ['the', 'same', 'way']);
  // "in like manner", "in a similar fashion", "after the same fashion"
  if (WAYS.test(w)) {
    const like = at - 1;
    if (!/^(?:like|similar|identical|same)$/.test(word(like))) return tokens;
    const from = /^(?:a|an|the)$/.test(word(like - 1)) ? like - 2 : like - 1;
    return /^(?:in|after)$/.test(word(from)) ? say(from, at + 1, ['the', 'same', 'way']) : tokens;
  }
  // "the lower two are to have the same"
  if (
    w === 'same' &&
    word(at - 1) === 'the' &&
    word(at - 2) === 'have' &&
    word(at - 3) === 'to' &&
    BE.test(word(at - 4))
  )
    return say(at - 2, at - 1, ['get']);
  return tokens;
}

const isBare = (tokens: Token[], k: number, { w }: Token): boolean =>
  w === 'same' &&
  /^(?::|-|--)$/.test(tokens[k - 1]?.w ?? '') &&
  /^(?:|[.,;!\n]|but|only|too|again)$/.test(tokens[k + 1]?.w ?? '');

const STITCHED: Record<string, string> = {
  whipped: 'whipstitch',
  whipstitched: 'whipstitch',
  zigzagged: 'zigzag',
  herringboned: 'herringbone',
  backstitched: 'backstitch',
  couched: 'couching',
  machined: 'machine',
};

/** "3-3 same but whipped", "ditto, only zigzagged": the stitch in which the same was done, and no deed of its own. */
function stitchBehind(tokens: Token[]): Token[] | undefined {
  const at = tokens.findIndex(
    (t, k) =>
      Object.hasOwn(STITCHED, t.w) &&
      /^(?:but|only|just)$/.test(tokens[k - 1]?.w ?? '') &&
      [k - 2, k - 3].some((m) => /^(?:same|ditto)$/.test(tokens[m]?.w ?? '')) &&
      /^(?:|[.,;!\n]|and|this|by|instead)$/.test(tokens[k + 1]?.w ?? ''),
  );
  return at < 0 ? undefined : tokens.with(at, { ...tokens[at]!, w: STITCHED[tokens[at]!.w]! });
}
