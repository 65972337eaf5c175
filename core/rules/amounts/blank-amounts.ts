import { LENGTH_UNIT_SET, UNIT_WORDS } from '../../lexicon/units.ts';
import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';

const BLANK = /^[?_…]$/;
/** "border __ in": of a measure, where "in" could be nothing but inches. */
const MEASURED =
  /^(?:border|width|length|wide|long|seam|allowance|strips?|block|ties|apart|every|at|of|is|are|'s|'re|measures|measured|them|overhang|tails?|diagonal|by|x|×|:|=|,)$/;

/** A length unit that no number stands before, and what it then stands behind and before: "at inches", "are inches apart". */
const BARE_UNIT = /^(?:inch|inches|cm|cms|centimetres|centimeters|mm|millimetres|millimeters)$/;
const BEFORE_BARE = /^(?:at|every|of|is|are|be|was|were|'s|'re|about|roughly|measures?|comes?|to|cut)$/;
const BEHIND_BARE =
  /^(?:|wide|apart|long|deep|across|all|tails?|and|but|so|overhang|each|between|because|cos|since|as|for|round|on|to|this|now|today|[.,;:!?])$/;
const SOME_OF =
  /^(?:couple|few|matter|number|bit|lot|lots|pair|dozen|hundreds?|width|length|strips?|half|quarter)$/;

/** "ties ... in apart": dots for the number that is not there. */
const endOfDots = (tokens: Token[], from: number): number => {
  let next = from;
  while (tokens[next]?.w === '.' && tokens[next]!.kind === 'mark') next++;
  return next - from > 1 ? next : from;
};

/**
 * "?? cm of net", "border __ cm", "used _ skeins", "strips at um inches": a gap left for a number that she did not have. It
 * becomes a nought, which is no amount (`isNoAmount`): what is measured, and in what, is read as if the number stood there.
 */
export function nameBlanks(tokens: Token[]): Token[] {
  if (
    !tokens.some((t, i) =>
      t.kind === 'mark'
        ? BLANK.test(t.w) || endOfDots(tokens, i) > i
        : BARE_UNIT.test(t.w) && isBare(tokens, i),
    )
  )
    return tokens;
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    if (BARE_UNIT.test(t.w) && isBare(tokens, i)) {
      // "at em centimetres": a sound, and not "them"
      if (out.at(-1)?.w === 'them') out.pop();
      // "at, er, centimetres": the sound stood between commas
      while (out.at(-1)?.w === ',') out.pop();
      // "at something or other inches", "however many inches apart"
      out.length -= vagueBefore(tokens, i);
      out.push({ ...nought(t), to: t.from });
    }
    let next = endOfDots(tokens, i);
    while (tokens[next]?.kind === 'mark' && BLANK.test(tokens[next]!.w)) next++;
    if (next > i && awaitsNumber(tokens, i, next)) {
      out.push({ ...nought(t), to: tokens[next - 1]!.to });
      i = next - 1;
    } else out.push(t);
  }
  return out;
}

/** Words in a number's place: how many of them stand right before. */
const VAGUE = [
  ['something', 'or', 'other'],
  ['whatever', 'it', 'was'],
  ['however', 'many'],
  ['something'],
  ['x'],
  ['some'],
];
const vagueBefore = (tokens: Token[], i: number): number =>
  VAGUE.find((words) => words.every((w, k) => tokens[i - words.length + k]?.w === w))?.length ?? 0;

export const nought = (t: Token): Token => ({ ...t, w: '0', kind: 'number', value: 0, glued: false });

/** Does a unit stand where its number should have been said first? */
function isBare(tokens: Token[], i: number): boolean {
  const vague = vagueBefore(tokens, i);
  let at = i - 1 - (tokens[i - 1]?.w === 'them' ? 1 : vague);
  while (tokens[at]?.w === ',') at--;
  const before = tokens[at];
  // "tied in black crochet cotton, um, millimetres apart", whatever stands before
  if (tokens[i + 1]?.w === 'apart' && isNoCount(tokens, at, at < i - 1 - vague)) return true;
  if (!BEFORE_BARE.test(before?.w ?? '') || !BEHIND_BARE.test(tokens[i + 1]?.w ?? '')) return false;
  return !(tokens[i - 1]!.w === 'of' && SOME_OF.test(tokens[i - 2]?.w ?? ''));
}

/** Can this word be no amount that is counted in the unit behind it? A number can where a comma parts them. */
function isNoCount(tokens: Token[], at: number, parted: boolean): boolean {
  const t = tokens[at];
  if (!t) return false;
  // "twelve", "4"
  if (t.kind === 'number' || readCount(tokens, at)) return parted;
  return !SOME_OF.test(t.w) && !COUNTS.test(t.w) && !(t.w === 'of' && SOME_OF.test(tokens[at - 1]?.w ?? ''));
}
const COUNTS =
  /^(?:for|fore|too|won|ate|tree|free|several|many|some|a|an|or|so|to|odd|more|those|these|the|my|[½¼¾].*|-|–|\/)$/;

/** Does the unit that the marks stand before need a number, in the midst of a sentence? */
function awaitsNumber(tokens: Token[], from: number, next: number): boolean {
  const unit = tokens[next]?.w ?? '';
  const before = tokens[from - 1];
  // "is that right? pins are short": a mark right behind its word asks
  if (!before || (tokens[from]!.glued && tokens[from]!.w === '?') || !Object.hasOwn(UNIT_WORDS, unit))
    return false;
  if (/^(?:in|m|y|g|length|lengths|square|squares|card|cards|box|boxes|")$/.test(unit))
    return LENGTH_UNIT_SET.has(UNIT_WORDS[unit]!) && MEASURED.test(before.w);
  return true;
}
