import { startsNumber } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { isSetBack, readUnit } from './find-amount.ts';
import { isSum } from './is-sum.ts';

/** Does a sentence of the note name a price although no word of buying stands in it? A price ends its own sentence and not the note. */
export const tellsPrice = (tokens: Token[]): boolean => sentencesOf(tokens).some(hasPrice);

function hasPrice(tokens: Token[]): boolean {
  if (tokens.some((_t, i) => isSetBack(tokens, i))) return true;
  // "pins 3.50, needles 2.80"
  if (tokens.filter((t, i) => /^\d{1,3}\.\d\d$/.test(t.w) && i > 0 && SOLD.test(tokens[i - 1]!.w)).length > 1)
    return true;
  // "5 yds at 8.99 = 44.95"
  if (
    tokens.some(
      (t, i) => t.w === '=' && /^\d+\.\d\d$/.test(tokens[i + 1]?.w ?? '') && !readUnit(tokens, i + 2, true),
    )
  )
    return true;
  // "linen for the binding, 1.5 m, 12 a metre", "olive flannel 11.50/yd", "worked out at 4.20 a yard"
  if (
    tokens.some(
      (t, i) =>
        /^(\/|a|per|the)$/.test(t.w) &&
        (t.w !== 'the' || /^\d+\.\d\d$/.test(tokens[i - 1]?.w ?? '')) &&
        /^(yd|yard|m|metre|meter|reel|spool|skein|ball|pack|packet|roll|card|hank)$/.test(
          tokens[i + 1]?.w ?? '',
        ) &&
        (/\.\d\d$/.test(tokens[i - 1]?.w ?? '') ||
          (tokens[i - 1]?.kind === 'number' &&
            tokens[i - 2]?.w === ',' &&
            tokens.slice(0, i - 2).some((_x, n) => n > 0 && readUnit(tokens, n, true)))),
    )
  )
    return true;
  if (tokens.some((_t, i) => isSumOfSale(tokens, i))) return true;
  // "a spool of thread, three dollars forty", "two yards of tulle at four-fifty a yard": the same in words
  if (tokens.some((_t, i) => isSpokenSale(tokens, i))) return true;
  // "the yarn was five fifty sorry"
  const end = tokens.findLastIndex((t) => !/^(?:[.!,]|ea|each|tot|total|both|sorry|actually)$/.test(t.w));
  const cents = tokens[end];
  // "and a spool of cream thread 3.20", "a thimble, 2.10"
  if (cents?.kind === 'number' && /^\d{1,3}\.\d\d$/.test(cents.w))
    return tokens.some((t) => SOLD_BY.test(t.w) || SOLD.test(t.w)) && !tokens.some((t) => MEASURED.test(t.w));
  // "a queen size pack of batting thirty two ninety nine": goods and, at the very end, dollars and cents in words
  if (
    cents?.kind !== 'word' ||
    !startsNumber(cents.w) ||
    !startsNumber(tokens[tokens.indexOf(cents) - 1]?.w ?? '')
  )
    return false;
  if (!/^(ninety|fifty|forty|twenty|nine|five|seventy|eighty)$/.test(cents.w)) return false;
  // "the calico was three fifty"
  const was = tokens.findLastIndex((t) => /^(was|were|is|came|cost)$/.test(t.w));
  return tokens.some((t) => SOLD_BY.test(t.w)) || (was > 0 && end - was <= 4 && isSum(tokens, was + 1));
}

/** A length or a pack of something, as it is sold: "a metre", "3 yds", "two spools". */
const SALE_UNIT =
  /^(?:yds?|yards?|metres?|meters?|packs?|packets?|rolls?|spools?|reels?|skeins?|balls?|hanks?|cards?|quarters?)$/;
const WORK =
  /^(?:start|started|stop|stopped|finish|finished|till|until|from|since|mending|piecing|tying|quilting|binding|cutting|cleaning|survey|lunch|tea)$/;
const ALTOGETHER =
  /^(?:together|altogether|all in|in all(?! (?:round|around|over|the way|along|sides|directions|four))|all told|the lot|the pair|for the|with the|with p|in total|total)/;

/** "a metre of net at 5.40", "3 yds of muslin and 2 spools of thread, 22.40 together", "paid 14.60 on thread", "sent off for a metre of it, 18.50". */
function isSumOfSale(tokens: Token[], i: number): boolean {
  if (!/^\d{1,3}\.\d\d$/.test(tokens[i]!.w)) return false;
  const before = tokens[i - 1]?.w ?? '';
  if (/^(?:spent|paid)$/.test(before)) return true;
  const sold = tokens
    .slice(0, i)
    .some(
      (t, k) =>
        SALE_UNIT.test(t.w) &&
        k > 0 &&
        (tokens[k - 1]!.kind === 'number' ||
          startsNumber(tokens[k - 1]!.w) ||
          /^(?:a|half|fat|another)$/.test(tokens[k - 1]!.w)),
    );
  if (!sold || tokens.some((t) => WORK.test(t.w) || /^(?:used|wide|long|by|x)$/.test(t.w))) return false;
  const behind = tokens
    .slice(i + 1, i + 4)
    .map((t) => t.w)
    .join(' ');
  if (before === 'at' || before === '@')
    return (
      /^(?:|[a-z])/.test(tokens[i - 2]?.w ?? '') &&
      tokens.slice(Math.max(0, i - 6), i).some((t) => SALE_UNIT.test(t.w))
    );
  if (before !== ',' && before !== ':') return false;
  return behind === '' || ALTOGETHER.test(behind);
}

/** "a spool of thread, three dollars forty", "tulle at four-fifty a yard": money by its name behind goods as they are sold, or dollars and cents by the unit. */
function isSpokenSale(tokens: Token[], i: number): boolean {
  const { w: word } = tokens[i]!;
  const number = (t: Token | undefined): boolean => t !== undefined && startsNumber(t.w);
  if (/^(?:dollars?|pounds?|euros?|quid|bucks?)$/.test(word))
    return (
      (number(tokens[i - 1]) || tokens[i - 1]?.kind === 'number') &&
      tokens[i + 1]?.w !== 'of' &&
      tokens
        .slice(0, i - 1)
        .some(
          (t, k) =>
            SALE_UNIT.test(t.w) &&
            k > 0 &&
            (number(tokens[k - 1]) || tokens[k - 1]!.kind === 'number' || tokens[k - 1]!.w === 'fat'),
        )
    );
  if (!/^(?:a|per|the)$/.test(word) || !SALE_UNIT.test(tokens[i + 1]?.w ?? '') || !number(tokens[i - 1]))
    return false;
  const joined = tokens[i - 2]?.w === '-' ? 1 : 0;
  return TENS.test(tokens[i - 1]!.w) && number(tokens[i - 2 - joined]);
}
const TENS = /^(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|five|nine)$/;

function sentencesOf(tokens: Token[]): Token[][] {
  const out: Token[][] = [[]];
  for (const t of tokens)
    if (t.kind === 'mark' && /^[.;!?\n]$/.test(t.w)) out.push([]);
    else out.at(-1)!.push(t);
  return out;
}

/** What things of a shop come in. */
const SOLD_BY = /^(pack|packet|package|roll|bolt|spool|reel|skein|ball|hank)s?$/;

/** Things of a shop. */
const SOLD =
  /^(thread|vinegar|net|tulle|muslin|calico|interfacing|fusible|detergent|soap|needles?|sharps|betweens|pins|thimbles?|yarn|floss|wadding|batting|soap|chalk|scissors)$/;

/** Words of the tape measure. */
const MEASURED =
  /^(wide|long|width|length|by|x|side|diagonal|diag|strips?|seam|border|cm|mm|inches|used|start|stop|at)$/;
