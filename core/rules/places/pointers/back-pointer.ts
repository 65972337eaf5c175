import { CURRENCY_WORDS, SMALL_MONEY_WORDS } from '../../../lexicon/units.ts';
import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { findFabric } from '../../fabrics/find-fabric.ts';
import { wordsBetween } from '../../words-between.ts';
import { unique } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { UNIT_AFTER } from '../place-tokens.ts';
import { inBetween } from './in-between.ts';
import { ledPointer } from './led-pointer.ts';
import { endsOrTells, others, sidesTold } from './other-sides.ts';
import { plural } from './plural.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';
import { everythingElse, restOfIt } from './rest-of-it.ts';
import { otherRows, thoseLines } from './those-lines.ts';

/** What an amount or a price is counted in. */
const isUnit = (word: string): boolean =>
  UNIT_AFTER.has(word) ||
  Object.hasOwn(CURRENCY_WORDS, word) ||
  Object.hasOwn(SMALL_MONEY_WORDS, word) ||
  /^(yards?|metres?|meters?|cm|inches|feet|skeins?|spools?|reels?|balls?|packs?|rolls?)$/.test(word);

/** Does "other two" begin what is told, so that its "the" was only left out? */
const othersUnled = (tokens: Token[], i: number): boolean =>
  /^(|[,.;:]|\n|and|but|then)$/.test(w(tokens, i - 1)) &&
  /^(two|three|four|five|six|[2-6]|ones)$/.test(w(tokens, i + 1)) &&
  !/^(row|rows|column|columns|sides?|edges?|borders?|corners?|of)$/.test(w(tokens, i + 2));

/** "it", "that one", "them", "those two", "both", "there", "the same block", "the other one", "that whole row", "the rest of the row". */
export function backPointer(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const word = w(tokens, i);
  const after = w(tokens, i + 1);
  const { focus } = ctx;
  // "net on 2-2 only, other two left as is"
  if (word === 'other' && othersUnled(tokens, i)) {
    const led = [...tokens.slice(0, i), { ...tokens[i]!, w: 'the' }, ...tokens.slice(i)];
    const found = backPointer(led, i, ctx);
    return found && { ...found, next: found.next - 1 };
  }
  // "others: darn", "others I'll do later"
  if (word === 'others' && /^(|[,.;]|\n|and|but|then)$/.test(w(tokens, i - 1))) {
    const led = [...tokens.slice(0, i), { ...tokens[i]!, w: 'the' }, ...tokens.slice(i)];
    const found = ledPointer(led, i, ctx);
    return found && { ...found, next: found.next - 1 };
  }
  // "rest of that row tomorrow"
  if (
    word === 'rest' &&
    after === 'of' &&
    /^(?:that|this|the) (?:row|column|col) $/.test(`${w(tokens, i + 2)} ${w(tokens, i + 3)} `) &&
    /^(|[,.;:]|\n|and|but|then|now)$/.test(w(tokens, i - 1))
  ) {
    const led = [...tokens.slice(0, i), { ...tokens[i]!, w: 'the' }, ...tokens.slice(i)];
    const found = backPointer(led, i, ctx);
    if (found) return { ...found, next: found.next - 1 };
  }
  // "fused interfacing behind that and 2-1", "net over that, 20 min"
  if (
    word === 'that' &&
    /^(behind|over|under|underneath|beneath|below|above|on|round|around|across|beside|to|with)$/.test(
      w(tokens, i - 1),
    ) &&
    (after === '' || /^([.,;!&+]|and|too|as|then|now|in|with|by|for|first|instead)$/.test(after))
  )
    return pointingTo(i + 1, focus, 'place.that-one');
  // "the seam between that and 4-5"
  if (
    (word === 'that' || word === 'it') &&
    after === 'and' &&
    w(tokens, i - 1) === 'between' &&
    focus.length === 1
  )
    return pointingTo(i + 1, focus, 'place.that-one');
  // "spot-cleaned that with a drop of detergent", "darned that by hand"
  if (
    word === 'that' &&
    /[^e]ed$/.test(w(tokens, i - 1)) &&
    /^(with|by|using|too|again|as|twice)$/.test(after) &&
    focus.length > 0
  )
    return pointingTo(i + 1, focus, 'place.that-one');
  if (word === 'that' || word === 'this' || word === 'the' || word === 'same')
    return ledPointer(tokens, i, ctx) ?? (word === 'the' ? restOfIt(tokens, i, ctx) : undefined);
  if (
    word === 'corner' &&
    /^(the|that|this)$/.test(w(tokens, i - 2)) &&
    !/^(of|block|at|diagonally)$/.test(after)
  ) {
    const corner = groupsBack(ctx).find((g) => g.some((p) => p.startsWith('corner')));
    if (corner)
      return pointingTo(
        i + 1,
        corner.filter((p) => p.startsWith('corner')),
        'place.the-corner',
      );
  }
  // "both the others need net", "all the rest are fine"
  if (/^(both|all)$/.test(word) && after === 'the' && /^(others?|rest)$/.test(w(tokens, i + 2))) {
    const rest = backPointer(tokens, i + 1, ctx);
    if (rest && (word === 'all' || rest.places.length === 2)) return rest;
  }
  // "the binding's off both those sides", "those two edges": the sides just told
  if (/^(both|those|these)$/.test(word)) {
    let k = i + 1;
    while (/^(of|those|these|two|three|the|2|3)$/.test(w(tokens, k)) && k < i + 4) k++;
    if (/^(sides|edges|borders)$/.test(w(tokens, k))) {
      const sides = focus.filter((p) => /^(border|edge)-/.test(p));
      // "put them on both sides", where the left and right borders were taken off
      const told = word !== 'both' || k > i + 1 || sides.every((p) => /-(left|right)$/.test(p));
      if (told && sides.length > 1 && sides.length === focus.length)
        return pointingTo(k + 1, sides, 'place.those-sides');
    }
  }
  // "the rest of the borders", "the remaining sides", after one of them
  if (/^(rest|remaining|remainder)$/.test(word)) {
    let k = i + 1;
    while (/^(of|the|two|three|2|3)$/.test(w(tokens, k)) && k < i + 4) k++;
    const side = focus.find((p) => /^(border|edge)-/.test(p));
    const noun = w(tokens, k);
    if (side && (/^borders?$/.test(noun) ? side.startsWith('border') : /^(sides|edges)$/.test(noun)))
      return others(ctx, k + 1, `${side.split('-')[0]}s`);
  }
  // "other three: leave or replace", "remaining two tomorrow"
  if (/^(other|remaining)$/.test(word) && !/^(the|every|each|any|no)$/.test(w(tokens, i - 1))) {
    const n = readCount(tokens, i + 1);
    const side = focus.find((p) => /^(border|edge|corner)-/.test(p));
    if (n?.value === 3 && side)
      return others(
        ctx,
        /^(sides|borders|edges|corners)$/.test(w(tokens, n.next)) ? n.next + 1 : n.next,
        `${side.split('-')[0]}s`,
      );
    // "other 2 rows tied"
    if (n && /^(rows|rose)$/.test(w(tokens, n.next))) {
      const rows = otherRows(ctx, n.value, n.next + 1);
      if (rows) return rows;
    }
    // "other two sides tomorrow"
    const named = n !== undefined && /^(sides|borders|edges)$/.test(w(tokens, n.next));
    const both = n?.value === 2 ? sidesTold(ctx) : undefined;
    // "top + R on, other two tmrw"
    if (n && both && (named || endsOrTells(w(tokens, n.next))))
      return others({ ...ctx, focus: both }, named ? n.next + 1 : n.next, `${both[0]!.split('-')[0]}s`);
    if (
      n &&
      side &&
      /^(sides|borders|edges|corners)$/.test(w(tokens, n.next)) &&
      focus.length + n.value === 4
    )
      return others(ctx, n.next + 1, `${side.split('-')[0]}s`);
  }
  // "pressed the pair of them", "the two of them want net": both, and three as well; "forty minutes (for) the pair of them" is how long,
  // and "same again, the two of them, on the block above" what was spoken of
  if (
    w(tokens, i - 1) === 'the' &&
    !/^(?:for|,|min|mins|minutes?|hours?|hrs?|dollars|pounds|euros)$/.test(w(tokens, i - 2)) &&
    after === 'of' &&
    /^(?:them|those|these|'em)$/.test(w(tokens, i + 2))
  ) {
    const n = word === 'pair' ? 2 : readCount(tokens, i)?.value;
    const group = n && n > 1 ? plural(ctx, n) : [];
    if (group.length === n) return pointingTo(i + 3, group, 'place.all-of-them');
  }
  // "all 3 netted"
  if (word === 'all') {
    const n = readCount(tokens, i + 1);
    if (
      n &&
      n.value > 1 &&
      n.value < 20 &&
      // "all three of them"; behind a comma they only count what was told before it ("the tulle is on, all three of them")
      ((w(tokens, i - 1) !== ',' &&
        /^of (?:them|those|these|'em) $/.test(wordsBetween(tokens, n.next, n.next + 2).trimStart())) ||
        (!isUnit(w(tokens, n.next)) &&
          !/^(rows?|blocks?|columns?|corners?|sides?|borders?|of|layers?|skeins?|spools?)$/.test(
            w(tokens, n.next),
          )))
    ) {
      const next = w(tokens, n.next) === 'of' ? n.next + 2 : n.next;
      const group = [
        ctx.cloth ?? [],
        focus,
        [...(ctx.earlier.at(-1) ?? []), ...focus],
        plural(ctx, n.value),
      ].find((g) => unique(g).length === n.value);
      if (group) return pointingTo(next, unique(group), 'place.all-of-them');
    }
  }
  const rest =
    everythingElse(tokens, i, ctx) ??
    restOfIt(tokens, i, ctx) ??
    thoseLines(tokens, i, ctx) ??
    inBetween(tokens, i, ctx);
  if (rest) return rest;
  // "every one of them", "each of those": what "them" is
  if ((word === 'every' || word === 'each') && !/^(other)$/.test(after)) {
    let k = i + 1;
    while (/^(single|last|one)$/.test(w(tokens, k)) && k < i + 4) k++;
    if (
      w(tokens, k) === 'of' &&
      /^(them|those|these)$/.test(w(tokens, k + 1)) &&
      !/^(blocks?|squares?|rows?|seams?|ties|pieces?|patches|\w+ones)$/.test(w(tokens, k + 2))
    ) {
      const places = plural(ctx);
      if (places.length > 1) return pointingTo(k + 2, places, 'place.them');
    }
  }
  // "one of the others", "one of those": which can't be known
  if (
    !/^(every|each|single|last)$/.test(w(tokens, i - 1)) &&
    (word === 'one' || word === 'another') &&
    after === 'of' &&
    /^(the|those|these|them)$/.test(w(tokens, i + 2)) &&
    (w(tokens, i + 2) !== 'the' || /^(others|blocks|corners|squares|rest)$/.test(w(tokens, i + 3)))
  )
    return pointingTo(w(tokens, i + 2) === 'the' ? i + 4 : i + 3, [], 'place.one-of');
  // "then there was another one with a hole in it": a block that nobody has named
  if (
    word === 'another' &&
    /^(one|block|square)$/.test(after) &&
    /^(with|has|had|that|which|where|is|'s|was|needs|wants)$/.test(w(tokens, i + 2))
  )
    return pointingTo(i + 2, [], 'place.one-of');
  // "three more of them": which can't be known either
  const more = after === 'more' || /^(another|few)$/.test(word) ? readCount(tokens, i) : undefined;
  if (
    more &&
    w(tokens, more.next) === 'more' &&
    w(tokens, more.next + 1) === 'of' &&
    /^(those|these|them|'em)$/.test(w(tokens, more.next + 2))
  )
    return pointingTo(more.next + 3, [], 'place.one-of');
  // "there was a hole" only says that it is
  if (word === 'there' && /^('s|is|are|was|were|'re)$/.test(after)) return undefined;
  // "did some cutting here a while back": of late, and no place
  if (
    word === 'here' &&
    /^ (?:a (?:good |long |little )?while|lately|recently|of late|the other|last (?:week|night|month|evening)|this (?:week|morning|evening)|back in|just now|some time) /.test(
      wordsBetween(tokens, i + 1, i + 4),
    )
  )
    return undefined;
  // "got that interfacing off of there": from where the interfacing is
  if (
    word === 'there' &&
    /^(?:of|from)$/.test(w(tokens, i - 1)) &&
    / (?:that|those) (?:old )?(?:interfacing|patch|patches|darn) (?:off|out|away) $/.test(
      wordsBetween(tokens, Math.max(0, i - 6), i - 1),
    )
  )
    return undefined;
  if (word === 'it' || word === 'there' || word === 'here') return pointingTo(i + 1, focus, 'place.it');
  if (word === 'them' || word === 'they' || word === 'both' || word === 'these') {
    if (
      word === 'both' &&
      (after === 'of' ||
        ['sides', 'ways', 'ends', 'edges', 'borders', 'layers', 'were', 'are', 'had'].includes(after) ===
          true)
    ) {
      // "both of the bunnies" names its cloth itself
      if (
        after === 'of' &&
        !/^(them|those|these|it)$/.test(w(tokens, i + 2)) &&
        !/^(two|ones|blocks|squares|pieces|corners|rows)$/.test(w(tokens, i + 3))
      )
        return undefined;
      if (after === 'of') return pointingTo(i + 3, plural(ctx, 2), 'place.both');
      if (['sides', 'ways', 'ends', 'edges', 'borders', 'layers'].includes(after)) return undefined;
    }
    // and so does "both ochre print blocks"
    if (word === 'both' && ctx.fabrics && findFabric(tokens, i + 1, ctx.fabrics)) return undefined;
    return pointingTo(
      i + 1,
      plural(ctx, word === 'both' ? 2 : undefined),
      word === 'both' ? 'place.both' : 'place.them',
    );
  }
  if (word === 'those') {
    const count = readCount(tokens, i + 1);
    // "I took those three dollars each", "those two metres": a price, an amount
    const n = count && !isUnit(w(tokens, count.next)) ? count : undefined;
    return pointingTo(n ? n.next : i + 1, plural(ctx, n && n.value > 1 ? n.value : undefined), 'place.those');
  }
  return undefined;
}
