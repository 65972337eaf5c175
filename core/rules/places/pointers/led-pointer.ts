import { UNIT_WORDS } from '../../../lexicon/units.ts';
import { readCount } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { wordsBetween } from '../../words-between.ts';
import { columnOf, rowOf, splitBlock } from '../grid.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { nthOf } from './nth-of-them.ts';
import { toldOneByOne } from './plural.ts';
import { groupsBack, pointingTo } from './pointing-to.ts';
import { restOfGroup, restOfLine } from './rest-of-it.ts';
import { otherCorner, theCorner } from './the-corner.ts';
import { theOther } from './the-other.ts';

/** A pointer that "that", "this", "the" or "same" opens. */
export function ledPointer(tokens: Token[], i: number, ctx: PlaceContext): PlaceFound | undefined {
  const word = w(tokens, i);
  const after = w(tokens, i + 1);
  const { grid, focus } = ctx;
  // "make that one pack": the number, and no block
  if (
    word === 'that' &&
    after === 'one' &&
    /^(?:make|call)$/.test(w(tokens, i - 1)) &&
    Object.hasOwn(UNIT_WORDS, w(tokens, i + 2))
  )
    return undefined;
  const skip = after === 'same' ? 1 : 0;
  const noun = w(tokens, i + 1 + skip);
  // "that whole row", "same column", but not "that row three"
  const whole = /^(whole|entire|full|complete)$/.test(noun);
  const lineNoun = whole ? w(tokens, i + 2 + skip) : noun;
  const lineEnd = i + (whole ? 3 : 2) + skip;
  if (whole || ((word !== 'the' || skip) && !readCount(tokens, lineEnd))) {
    const at = splitBlock(focus.at(-1) ?? '');
    const isRow = lineNoun === 'row';
    if (at && (isRow || lineNoun === 'column' || lineNoun === 'col'))
      return pointingTo(
        lineEnd,
        isRow ? rowOf(grid, at.row) : columnOf(grid, at.block),
        isRow ? 'place.that-row' : 'place.that-column',
      );
  }
  if (noun === 'rest') {
    const line = restOfLine(tokens, i, ctx);
    if (line) return line;
  }
  if (noun === 'other') {
    const corner = otherCorner(tokens, i + 2, ctx);
    if (corner) return corner;
  }
  const left = word === 'the' && noun === 'rest' ? restOfGroup(tokens, i + 2, ctx) : undefined;
  if (left) return left;
  if (/^(other|remaining)$/.test(noun) || (noun === 'others' && word === 'the'))
    return theOther(tokens, i, ctx);
  // "quilted that length afresh", of a side; without one a length is measured
  const stretch =
    (word === 'that' || word === 'this' || skip > 0) &&
    /^(length|run|stretch|strip|part)$/.test(lineNoun) &&
    focus.length > 0 &&
    focus.every((p) => /^(border|edge)-/.test(p));
  if (stretch) return pointingTo(lineEnd, focus, 'place.that-one');
  if (
    (word === 'that' || word === 'this' || (word === 'the' && skip) || word === 'same') &&
    [
      'one',
      'block',
      'piece',
      'corner',
      'square',
      'spot',
      'place',
      'stretch',
      'section',
      'bit',
      'side',
      'edge',
      'border',
      'area',
    ].includes(noun) &&
    !readCount(tokens, i + 2 + skip)
  ) {
    if (isPieceTakenOut(tokens, i, noun)) return undefined;
    if (noun === 'corner') {
      const corner = groupsBack(ctx).find((g) => g.some((p) => p.startsWith('corner')));
      if (corner) return pointingTo(i + 2 + skip, corner, 'place.that-corner');
    }
    // "spot clean that border", when blocks or the faces were spoken of since
    const kind = noun === 'border' || noun === 'edge' ? `${noun}-` : undefined;
    if (kind && !focus.some((p) => p.startsWith(noun))) {
      const side = groupsBack(ctx).find((g) => g.some((p) => p.startsWith(kind)));
      if (side)
        return pointingTo(
          i + 2 + skip,
          side.filter((p) => p.startsWith(kind)),
          'place.that-one',
        );
      if (noun === 'border') return undefined;
    }
    return pointingTo(i + 2 + skip, focus, 'place.that-one');
  }
  // "4-3's the worse of the two", then "dabbed at the worse one"
  if (
    word === 'the' &&
    /^(worse|worst|bad|nasty|nastier|nastiest|poor|awkward)$/.test(noun) &&
    w(tokens, i + 2) === 'one' &&
    focus.length === 1
  )
    return pointingTo(i + 3, focus, 'place.that-one');
  // "the second of them", "the first of those two"
  if (word === 'the') {
    const nth = nthOf(tokens, i, ctx);
    if (nth) return nth;
  }
  if (word === 'the' && noun === 'corner' && /^(diagonally|opposite)$/.test(w(tokens, i + 2)))
    return undefined;
  const corner = word === 'the' && noun === 'corner' ? theCorner(tokens, i, ctx) : undefined;
  if (corner) return corner;
  // "(1-1 torn, 1-2 stained.) vac'd the lot": what goes over the whole of a quilt
  if (
    word === 'the' &&
    noun === 'lot' &&
    w(tokens, i + 2) !== 'of' &&
    GOES_OVER_ALL.test(wordsBetween(tokens, i - 4, i))
  )
    return { next: i + 2, places: ['quilt'], how: 'said', rule: 'place.the-lot', kind: 'part' };
  const many =
    ctx.cloth && (noun === 'lot' || ctx.cloth.length === 2)
      ? ctx.cloth
      : ((noun === 'lot' ? toldOneByOne(ctx) : undefined) ?? focus);
  if (word !== 'same' && (noun === 'pair' || (noun === 'lot' && word === 'the')) && many.length > 1) {
    const of = w(tokens, i + 2) === 'of' && /^(them|those|these)$/.test(w(tokens, i + 3));
    return pointingTo(of ? i + 4 : i + 2, many, 'place.the-pair');
  }
  return undefined;
}

const GOES_OVER_ALL =
  / (?:vac|vac 'd|vac'd|vacced|vacuum|vacuumed|vacuuming|hoover|hoovered|hoovering|wash|washed|washing|hand washed|rinse|rinsed|soaked|air|aired|airing)(?: (?:off|out|down|over|through|all))? $/;

const TAKEN =
  /^(?:take|took|taken|taking|pick|picked|picking|unpick|unpicked|unpicking|pull|pulled|pulling|cut|cutting|rip|ripped|ripping|get|got|getting|remove|removed|removing|lift|lifted|eased|had|have|snipped)$/;

/** "picked that piece out of 4-5", "took that piece right out", "that piece came out": what is taken out, and no place. */
function isPieceTakenOut(tokens: Token[], i: number, noun: string): boolean {
  if (!/^(?:piece|bit)$/.test(noun)) return false;
  const taken = TAKEN.test(w(tokens, i - 1));
  if (!taken && !/^(?:came|comes|coming|is|'s|was)$/.test(w(tokens, i + 2))) return false;
  const at = taken ? i + 2 : i + 3;
  return /^(?:out|off|away)$/.test(
    w(tokens, /^(?:right|clean|clear|straight|all|carefully)$/.test(w(tokens, at)) ? at + 1 : at),
  );
}
