import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { wordsBetween } from '../words-between.ts';

/** Damage that has a size. */
const DAMAGE = wordSet(
  'hole holes tear tears rip rips gap gaps split splits slit slits gash gashes rent rents seam seams stain stains mark marks spot spots patch patches darn darns lump lumps burn burns pucker puckers crack cracks',
);
const WHO = wordSet('i you we one anyone anybody he she they');
const COULD = wordSet("could can 'd might would can't couldn't");
/** With what, or for whom, it is big enough: the words after which nothing more is said of the size. */
const THROUGH = wordSet('through into in inside down with across under behind up on off over from to by');
const LONGEST = 12;

const SEAMS = wordSet('seam seams');

/** Where the words end that tell how big the damage at `i` is: "(a hole) I could put my fist through". */
function endOfHowBig(tokens: Token[], i: number): number | undefined {
  let k = i + 1;
  if (tokens[k]?.w === 'that' || tokens[k]?.w === 'which') k++;
  if (!WHO.has(tokens[k]?.w ?? '') || !COULD.has(tokens[k + 1]?.w ?? '')) return undefined;
  k += 2;
  // "a hole I could darn", "a tear I can't decide about" tell of something else
  if (!TRIES.test(wordsBetween(tokens, k, k + 3).trim())) return undefined;
  for (let m = k + 2; m < Math.min(tokens.length, i + LONGEST); m++) {
    const { w, kind } = tokens[m]!;
    if (kind === 'mark') return undefined;
    if (THROUGH.has(w) && !/^(?:my|your|a|an|the|his|her|it|two|three)$/.test(tokens[m + 1]?.w ?? ''))
      return m + 1;
    // "a hole you could put your fist through the bottom of" goes on
  }
  return undefined;
}

/** What one could do with so big a hole. */
const TRIES =
  /^(?:(?:just|nearly|almost|easily|about|well|very|not|quite|only|comfortably) )*(?:put|get|stick|poke|push|shove|fit|drive|post|pass|thread|see|read|lose|throw|climb|walk|run|slide|slip|drop|hide|march|sail|fly|reach|feel)\b/;

/**
 * "a hole I could put my fist through in the bottom row": how big it is, said with what one could do to it, falls out, so that the
 * place behind is that of the damage. Of a seam it says that it is open ("a seam you could post a letter through").
 */
export function withoutHowBig(tokens: Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    out.push(token);
    if (!DAMAGE.has(token.w)) continue;
    const end = endOfHowBig(tokens, i);
    if (end === undefined) continue;
    if (SEAMS.has(token.w)) out.push({ ...tokens[end - 1]!, w: 'open', kind: 'word' });
    i = end - 1;
  }
  return out;
}

/** What damage is of, or how big: "(ink?)", "(small)", "(tea, I think)". */
const OF_WHAT = wordSet(
  'ink inky tea coffee wine rust blood oil grease water urine cocoa jam paint wax soot candle iron scorch damp mould small smaller large big bigger tiny long short bad worse old new faint slight minor fresh nasty brown yellow black dark light sm lg possibly probably maybe perhaps i think guess suspect ? , - or cat dog mouse moth again too very quite rather a the',
);

/** "stain (ink?) on 2-1, another (tea) on 2-3": what stands between brackets behind the damage falls out, and its place follows. */
export function withoutOfWhat(tokens: Token[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const before = out.at(-1)?.w ?? '';
    if (token.w === '(' && (DAMAGE.has(before) || before === 'another' || before === 'one')) {
      const end = tokens.findIndex((t, k) => k > i && t.w === ')');
      const inside = tokens.slice(i + 1, end);
      if (end > i + 1 && end < i + 7 && end < tokens.length - 1 && inside.every((t) => OF_WHAT.has(t.w))) {
        i = end;
        continue;
      }
    }
    const size = token.w === '(' ? endOfSize(tokens, i, out) : undefined;
    if (size !== undefined) {
      i = size;
      continue;
    }
    out.push(token);
  }
  return out;
}

/** "tears: 2-2 (two inches), 3-3 (small)": how big it is at each of the places. Gives where the bracket closes. */
function endOfSize(tokens: Token[], i: number, before: Token[]): number | undefined {
  const last = before.at(-1);
  if (!last || (last.kind !== 'number' && !COUNT.test(last.w))) return undefined;
  const stop = before.findLastIndex((t) => /^[.;!?\n]$/.test(t.w));
  if (!before.slice(stop + 1).some((t) => DAMAGE.has(t.w) || TORN.test(t.w))) return undefined;
  const end = tokens.findIndex((t, k) => k > i && t.w === ')');
  const inside = tokens.slice(i + 1, end);
  return end > i + 1 &&
    end < i + 7 &&
    inside.every((t) => OF_WHAT.has(t.w) || SIZE.test(t.w) || t.kind === 'number')
    ? end
    : undefined;
}
const COUNT = /^(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)$/;
const TORN = /^(?:torn|ripped|stained|split|frayed|worn|faded|thin|holed|tears|holes|rips|stains)$/;
const SIZE =
  /^(?:inch|inches|in|"|cm|mm|half|quarter|one|two|three|four|five|six|about|roughly|badly|all|over|slightly|right|through|size|of|dime|penny|pea|egg|palm|hand)$/;
