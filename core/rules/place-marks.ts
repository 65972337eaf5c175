import { ORDINAL_WORDS } from '../text/number-words.ts';
import type { Token } from '../text/tokenise.ts';

const NUMBER = /^\d{1,2}$/;
const FROM_TO = /^(?:to|through|thru|till|until|up|down|right|along|all|the|way|across|over)$/;

/** "col. 5, rows 2-4", "blk. 3": the stop of a word cut short, and no end of a sentence. */
export const withoutShortStops = (tokens: Token[]): Token[] =>
  tokens.some((t, k) => isShortStop(tokens, k, t))
    ? tokens.filter((t, k) => !isShortStop(tokens, k, t))
    : tokens;

const isShortStop = (tokens: Token[], k: number, t: Token): boolean =>
  t.w === '.' &&
  t.glued &&
  /^(?:cols?|blks?|blck|rw|sq|nos?)$/.test(tokens[k - 1]?.w ?? '') &&
  // "wadding lumpy, last col. 1-5 old repair": there it ends the sentence
  !/^(?:last|first|left|right|hand|middle|centre|center|end|that|this|same|whole|next|\w+(?:st|nd|rd|th))$/.test(
    tokens[k - 2]?.w ?? '',
  ) &&
  NUMBER.test(tokens[k + 1]?.w ?? '') &&
  tokens[k + 2]?.w !== '-';

/** "row 5 - 2nd & 3rd patched", "row 5: 2nd, 4th": a row as a heading, and its blocks by their numbers, as they would be said. */
export function withRowHeadings(tokens: Token[]): Token[] {
  const at = tokens.findIndex(
    (t, k) =>
      /^[-:]$/.test(t.w) &&
      (t.w === ':' || !t.glued) &&
      NUMBER.test(tokens[k - 1]?.w ?? '') &&
      /^(?:row|r|col|column|rw)$/.test(tokens[k - 2]?.w ?? '') &&
      (isOrdinal(tokens, k + 1) || ORDINAL_WORDS.includes(tokens[k + 1]?.w ?? '')),
  );
  if (at < 0) return tokens;
  const list: Token[] = [];
  let k = at + 1;
  while (isOrdinal(tokens, k) || /^(?:,|&|\+|and)$/.test(tokens[k]?.w ?? '')) {
    const t = tokens[k]!;
    const word = isOrdinal(tokens, k) ? ORDINAL_WORDS[Number(t.w) - 1] : undefined;
    list.push(word ? { ...t, w: word, kind: 'word', to: tokens[k + 1]!.to } : t);
    k += word ? 2 : 1;
  }
  return [...tokens.slice(0, at), { ...tokens[at]!, w: ':' }, ...list, ...withRowHeadings(tokens.slice(k))];
}

/** "2nd", which is a figure and its ending. */
const isOrdinal = (tokens: Token[], k: number): boolean =>
  NUMBER.test(tokens[k]?.w ?? '') &&
  /^(?:st|nd|rd|th)$/.test(tokens[k + 1]?.w ?? '') &&
  tokens[k + 1]!.glued &&
  ORDINAL_WORDS[Number(tokens[k]!.w) - 1] !== undefined;

/**
 * Marks and doubled words of typed shorthand, as words that are known: "1-1..1-4" and "2-2 right through to 2-5" as "to", "2-1, -2, -4"
 * as "2-1, 2-2, 2-4", "6-2 ✓" as "6-2 done". Nothing is changed where no block was named before.
 */
export function namePlaceMarks(tokens: Token[]): Token[] {
  if (!tokens.some((t, i) => endsBlock(tokens, i - 1) && /^(?:[.…✓✔☑,]|through|thru|right|all)$/.test(t.w)))
    return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    const run = endsBlock(out, out.length - 1) ? fromTo(tokens, i) : 0;
    if (run) {
      out.push({ ...t, w: 'to', kind: 'word', to: tokens[i + run - 1]!.to, glued: false });
      const first = tokens[i + run]!;
      out.push({ ...first, glued: false });
      i += run;
    } else if (/^[✓✔☑]$/.test(t.w)) out.push({ ...t, w: 'done', kind: 'word', glued: false });
    else if (t.w === '-' && out.at(-1)?.w === ',' && endsBlock(out, out.length - 2) && isLone(tokens, i)) {
      const row = out[out.length - 4]!;
      out.push({ ...row, from: t.from, to: t.from, glued: false }, { ...t, glued: true });
    } else out.push(t);
  }
  return out;
}

/** Does a block as it is typed, "2-1", end at the token? */
const endsBlock = (tokens: Token[], i: number): boolean =>
  NUMBER.test(tokens[i]?.w ?? '') && tokens[i - 1]?.w === '-' && NUMBER.test(tokens[i - 2]?.w ?? '');

const beginsBlock = (tokens: Token[], i: number): boolean => endsBlock(tokens, i + 2);

/** ", -2" and no length or price behind it. */
const isLone = (tokens: Token[], i: number): boolean =>
  NUMBER.test(tokens[i + 1]?.w ?? '') && tokens[i + 1]!.glued && tokens[i + 2]?.w !== '-';

/** How many tokens from `i` say "to" before another block: "..", "…", "through to", "all the way along to". */
function fromTo(tokens: Token[], i: number): number {
  const { w } = tokens[i]!;
  let n = 0;
  if (w === '…') n = 1;
  else if (w === '.' && tokens[i]!.glued) while (tokens[i + n]?.w === '.' && n < 4) n++;
  else while (FROM_TO.test(tokens[i + n]?.w ?? '') && n < 5) n++;
  const marks = w === '.' || w === '…';
  const said = marks
    ? n > 1 || w === '…'
    : n > 1 && /^(?:to|through|thru|till|until)$/.test(tokens[i + n - 1]!.w);
  return said && beginsBlock(tokens, i + n) ? n : 0;
}
