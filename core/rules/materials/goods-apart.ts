import { CURRENCY_SIGNS, CURRENCY_WORDS, UNIT_WORDS } from '../../lexicon/units.ts';
import { readNumber } from '../../text/read-number.ts';
import { isNumberAt } from '../../text/starts-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { withMarks } from '../../text/with-marks.ts';
import { wordAt as w } from '../../text/word-at.ts';
import { wordSet } from '../../text/word-set.ts';
import { readUnit } from '../amounts/find-amount.ts';
import { LEXICON } from '../lexicon-index.ts';

/** Words of buying: in a note without one figures are lengths, blocks or hours. */
const BUYING = wordSet(
  'bought buy bot bt bght got get paid cost picked ordered shopping shop receipt purchased purchase need needed £ $ €',
);
const CENTS = /^\d{1,3}\.\d\d$/;
/** How things are sold; "a pack of pins", and of cloth that was cut "a piece of" is none. */
const SOLD_IN =
  /^(?:packs?|packets?|pkts?|pks?|packages?|pkgs?|box|boxes|spools?|reels?|skeins?|hanks?|balls?|rolls?|cards?|cones?|fat-quarters?)$/;
/** Behind these a pack or a spool has its count or its name already. */
const LEADS_TO_UNIT =
  /^(?:a|an|the|one|this|that|each|per|another|half|of|whole|full|new|big|small|large|little|the|my|her|\/|@|for|at|with|from|in|and|&|\+|plus|or|first|last|next|other|bought|got|need|needed|used|buy|get|ordered|have|,|to|is|was|some|no|any|more|queen|king|size)$/;

/**
 * "3 reels 7.50 | 2 packs needles 3.60 | tulle 50cm", "2 balls cream dk for the ties | pack of pins": goods told one behind the other
 * without a mark get the comma that stands between them in writing, so that a price belongs to what is named before it.
 */
export function withGoodsApart(said: Token[]): Token[] {
  const tokens = withClothApart(said);
  if (!tokens.some((t) => BUYING.has(t.w))) return tokens;
  const cuts = new Map<number, string>();
  let goods = false;
  for (let i = 1; i < tokens.length; i++) {
    goods ||= isGood(tokens, i) || SOLD_IN.test(tokens[i]!.w);
    const end = goods ? endOfPrice(tokens, i) : undefined;
    if (end !== undefined && beginsGood(tokens, end)) cuts.set(end, ',');
    if (goods && isPackOf(tokens, i)) cuts.set(i, ',');
  }
  return withMarks(tokens, cuts);
}

const isGood = (tokens: Token[], i: number): boolean =>
  LEXICON.longestAt(tokens, i)?.payloads.some((s) => s.k === 'material') ?? false;

/** The index behind the price that begins at `i`, with "each", "/m" or "a yard" behind it. */
function endOfPrice(tokens: Token[], i: number): number | undefined {
  const t = tokens[i]!;
  let end: number;
  if (CURRENCY_SIGNS.has(t.w) && tokens[i + 1]?.kind === 'number') end = i + 2;
  else if (t.w === '@' && tokens[i + 1]?.kind === 'number') end = i + 2;
  else if (CURRENCY_SIGNS.has(w(tokens, i - 1)) || w(tokens, i - 1) === '@') return undefined;
  else if (Object.hasOwn(CURRENCY_WORDS, t.w) && isNumberAt(tokens, i - 1)) end = i + 1;
  else if (CENTS.test(t.w)) end = i + 1;
  // "40 g beeswax 4 | 3 packs pins"
  else if (
    t.kind === 'number' &&
    isWhole(t) &&
    tokens[i - 1]!.kind === 'word' &&
    !readUnit(tokens, i - 1, true)
  )
    return isWhole(tokens[i + 1]) &&
      SOLD_IN.test(w(tokens, i + 2)) &&
      !/^(?:row|block|col|column|rows)$/.test(w(tokens, i - 1))
      ? i + 1
      : undefined;
  else return undefined;
  if (/^(?:each|ea|apiece|tog|together|total|altogether)$/.test(w(tokens, end))) return end + 1;
  if (w(tokens, end) === 'the' && /^(?:lot|pair|two|set)$/.test(w(tokens, end + 1))) return end + 2;
  // "twelve dollars a yard", but "twelve dollars | a spool of thread"
  if (/^(?:\/|a|per)$/.test(w(tokens, end))) {
    const unit = readUnit(tokens, end + 1, true);
    if (unit && w(tokens, unit.next) !== 'of') return unit.next;
  }
  return end;
}

const isWhole = (t: Token | undefined): boolean => t?.kind === 'number' && /^\d{1,3}$/.test(t.w);

/** Does a count with its unit, or a thing of the shop, begin at `i`? */
function beginsGood(tokens: Token[], i: number): boolean {
  const first = tokens[i];
  if (!first || first.kind === 'mark') return false;
  if (Object.hasOwn(UNIT_WORDS, first.w) && !SOLD_IN.test(first.w)) return false;
  if (/^(?:a|an|another)$/.test(first.w))
    return readUnit(tokens, i + 1, false) !== undefined && w(tokens, i + 2) === 'of';
  const count = readNumber(tokens, i);
  if (count) return readUnit(tokens, count.next, !count.inWords) !== undefined || isGood(tokens, count.next);
  if (
    /^(?:and|&|plus|for|from|at|in|on|with|off|on|of|to|the|per|each|i|it|which|that|so|but|then|reduced|incl|including|postage|used)$/.test(
      first.w,
    )
  )
    return false;
  // "2.95 | tulle 50cm", "5.20 | white cotton thread", "6.40 | spool navy thread"
  return [0, 1, 2].some(
    (n) =>
      isGood(tokens, i + n) &&
      tokens.slice(i, i + n).every((t) => t.kind === 'word' && !/^(?:for|of|and|in|the)$/.test(t.w)),
  );
}

/** "(cream dk for the ties) | pack of pins": what things are sold in, with no count before it. */
const isPackOf = (tokens: Token[], i: number): boolean =>
  SOLD_IN.test(tokens[i]!.w) &&
  w(tokens, i + 1) === 'of' &&
  isGood(tokens, i + 2) &&
  tokens[i - 1]!.kind === 'word' &&
  !isNumberAt(tokens, i - 1) &&
  !LEADS_TO_UNIT.test(tokens[i - 1]!.w) &&
  !Object.hasOwn(UNIT_WORDS, tokens[i - 1]!.w);

/** Behind these the amount is what is done something with. */
const LEADS_TO_AMOUNT =
  /^(?:with|by|from|of|in|into|on|onto|to|at|for|and|&|\+|or|plus|but|than|then|so|i|we|it|that|there|is|are|was|were|'s|has|have|'ve|had|got|get|only|just|about|around|roughly|nearly|almost|over|behind|under|another|more|extra|the|my|some|all|last|used|use|using|uses|took|take|takes|need|needs|needed|want|wants|bought|buy|ordered|put|laid|left|spare|still|also|maybe|say|out|off|up|through|good|yesterday|today|tonight|point|short|full|odd)$/;

/** "patched 2-4 | quarter yard of the dimity | took me half an hour": how much cloth went into it, told without a mark on either side. */
function withClothApart(tokens: Token[]): Token[] {
  if (!tokens.some((t) => t.w === 'of')) return tokens;
  const cuts = new Map<number, string>();
  for (let i = 2; i < tokens.length - 3; i++) {
    const first = tokens[i]!;
    const count = /^(?:a|an)$/.test(first.w) ? i + 1 : i;
    const amount = readNumber(tokens, count);
    if (!amount || tokens[i - 1]!.kind === 'mark') continue;
    // "patched 2-4 | quarter yard of …", and no four and a quarter
    const block = tokens[i - 2]!.w === '-' && tokens[i - 3]?.kind === 'number';
    if (isNumberAt(tokens, count - 1) && !(block && /^(?:quarter|half)$/.test(first.w))) continue;
    const unit = readUnit(tokens, amount.next, !amount.inWords);
    if (!unit || w(tokens, unit.next) !== 'of') continue;
    const cloth = /^(?:the|that|my|this)$/.test(w(tokens, unit.next + 1)) ? unit.next + 2 : unit.next + 1;
    const before = tokens[i - 1]!;
    if (LEADS_TO_AMOUNT.test(before.w)) continue;
    const deed = LEXICON.longestAt(tokens, i - 1)?.payloads.some(
      (s) => s.k === 'action' && s.form !== 'base',
    );
    if (deed && !/^(?:patched|darned|done|netted|backed|lined|replaced)$/.test(before.w)) continue;
    if (!/^(?:yd|m|cm|in|fat-quarter)$/.test(unit.unit)) continue;
    cuts.set(i, ',');
    const took = tokens.findIndex((t, k) => k > cloth && k < cloth + 4 && t.w === 'took');
    if (took > 0) cuts.set(took, ',');
  }
  return withMarks(tokens, cuts);
}
