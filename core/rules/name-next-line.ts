import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { wordAt as w } from '../text/word-at.ts';
import { LEXICON } from './lexicon-index.ts';

const LINE = /^(?:rows?|columns?|cols?)$/;
const JOINT = /^(?:and|&|,|to|through|-|\+)$/;
/** What is said of a line that is named by its number alone. */
const TELLS = /^(?:'s|is|has|are|have|was|were|looks?|smells?|shows?|needs?|wants?)$/;
/** Of several, and of one. */
const MANY = /^(?:are|have|were|look|smell|show|need|want)$/;
const BEFORE = /^(?:,|;|and|but|though|while|only|[a-z]+)$/;
const LEANS =
  /^(?:row|rows|block|blocks|column|columns|the|a|in|on|at|of|for|to|by|from|than|about|with|another|all|square|squares|number|or|between|got|has|have|had|are|is|'s|'ve)$/;
/** A line that stands as the subject begins its statement. */
const OPENS =
  /^(?:|[,;.:\n]|and|but|so|then|the|ok|okay|right|well|um|uh|er|now|all|whole|of|while|oh|that)$/;
/** Words of blocks: behind them a number alone is a block of the line. */
const OF_BLOCKS =
  /^(?:blocks?|blks?|squares?|first|second|third|fourth|fifth|last|ends?|middle|between|except|bar|but for)$/;

type Numbers = { values: number[]; next: number };

/** "two", "two and three", "2 + 3", "three to five" */
function numbersAt(tokens: Token[], from: number, most: number): Numbers | undefined {
  const values: number[] = [];
  let i = from;
  for (;;) {
    const n = readCount(tokens, i);
    if (!n || !Number.isInteger(n.value) || n.value < 1 || n.value > most) break;
    values.push(n.value);
    i = n.next;
    const joint = JOINT.test(w(tokens, i)) ? 1 : 0;
    if (!joint || !readCount(tokens, i + 1)) break;
    // "…, three's faded": the next statement
    if (w(tokens, i) === ',' && TELLS.test(w(tokens, readCount(tokens, i + 1)!.next))) break;
    i++;
  }
  return values.length ? { values, next: i } : undefined;
}

const isFound = (tokens: Token[], i: number): boolean =>
  LEXICON.longestAt(tokens, i)?.payloads.some((s) => s.k === 'finding') ?? false;

/**
 * "rows one and two are fine three's got mildew in it", "row one's sound, two and three are faded and four's musty", "columns 1 to 3 sound, 4
 * is faded": where whole lines were told of and a number beyond them is told of in the same note, it is of the next lines. The word is put in
 * before it. Behind "block two" or "the last one" a number is a block.
 */
export function nameNextLine(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => LINE.test(t.w))) return tokens;
  const out: Token[] = [];
  let word: 'row' | 'column' | undefined;
  let single = false;
  let last = 0;
  const most = (): number => (word === 'row' ? grid.rows : grid.blocks);
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    if (LINE.test(t.w)) {
      word = t.w.startsWith('row') ? 'row' : 'column';
      single = !t.w.endsWith('s');
      const told = numbersAt(tokens, i + 1, most());
      const subject =
        told &&
        OPENS.test(w(tokens, i - 1)) &&
        (TELLS.test(w(tokens, told.next)) || (single && isFound(tokens, told.next)));
      if (!told || !subject || (single && told.values.length > 1)) word = undefined;
      else {
        last = Math.max(...told.values);
        out.push(...tokens.slice(i, told.next));
        i = told.next - 1;
        continue;
      }
    } else if (OF_BLOCKS.test(t.w) || /^[!?\n]$/.test(t.w) || (!single && t.w === '.')) word = undefined;
    else if (word) {
      const told = numbersAt(tokens, i, most());
      const before = w(tokens, i - 1);
      const next =
        told && goesOn(tokens, i, told, last, single) && BEFORE.test(before) && !LEANS.test(before);
      if (told && (next || isSoTold(tokens, i, told))) {
        out.push({ ...t, w: told.values.length > 1 ? `${word}s` : word, kind: 'word' });
        last = Math.max(...told.values);
        out.push(...tokens.slice(i, told.next));
        i = told.next - 1;
        continue;
      }
      if (told && single && !/^[,;]$/.test(before)) word = undefined;
    }
    out.push(t);
  }
  return out.length === tokens.length ? tokens : out;
}

/** "row two wants a press and so do three and four": what was said of the line, told of others. */
const isSoTold = (tokens: Token[], i: number, { next }: Numbers): boolean =>
  /^(?:so|as)$/.test(w(tokens, i - 2)) &&
  /^(?:do|does|did|is|are|was|were|has|have|could|can|would|will|should|must)$/.test(w(tokens, i - 1)) &&
  /^(?:|[.,;:!\n]|and|but|too|also)$/.test(w(tokens, next));

/** Is the number, or are the numbers, told of as lines beyond the last? */
function goesOn(
  tokens: Token[],
  i: number,
  { values, next }: Numbers,
  last: number,
  single: boolean,
): boolean {
  const verb = w(tokens, next);
  if (!values.every((v) => v > last) || readCount(tokens, i - 1)) return false;
  if (TELLS.test(verb))
    return values.length > 1 ? verb !== 'is' && verb !== "'s" : !single || !MANY.test(verb);
  // "row 1 ok, 2 + 3 faded, 4 torn"
  return (
    single &&
    values[0] === last + 1 &&
    /^[,;]$/.test(w(tokens, i - 1)) &&
    isFound(tokens, next) &&
    !/(?:s|tear|hole|rip|stain|spot|mark)$/.test(verb)
  );
}
