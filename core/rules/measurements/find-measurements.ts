import type { LengthUnit, Measure } from '../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET, UNIT_WORDS } from '../../lexicon/units.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import { borderSides } from './border-sides.ts';
import { withoutDeniedLength } from './not-so-long.ts';
import { plainSizes, sidesInTurn } from './plain-sizes.ts';
import { sizesOtherwise } from './sizes-otherwise.ts';
import { widthForCount } from './strip-count.ts';

export type MeasureFound = {
  of: Measure;
  value?: number;
  unit?: LengthUnit;
  items: Item[];
  place?: string[] | undefined;
  rule: string;
};

const lengthUnit = (item: Item | undefined): LengthUnit | undefined => {
  const unit = item?.quantity?.unit;
  if (isMil(item)) return 'mm';
  return unit && LENGTH_UNIT_SET.has(unit) ? (unit as LengthUnit) : undefined;
};
/** "mil" counts as millimetres where lengths are told. */
const isMil = (item: Item | undefined): boolean => item?.quantity?.unit === 'ml' && /\bmils?$/.test(item.w);
/** A length, or a number that may be one; "one" in "one way", "one side" is none. */
const isNumber = (item: Item | undefined): boolean =>
  item?.quantity?.value !== undefined &&
  item.w !== 'one' &&
  (item.quantity.unit === undefined ||
    // "the blocks are eighteen square"
    / square$/.test(item.w) ||
    LENGTH_UNIT_SET.has(item.quantity.unit) ||
    isMil(item));

/** "top 178, bottom 177, all cm", "top 62, bottom 61 3/4 (in)": a unit that is told once, apart from any figure. */
export function bareUnit(items: Item[]): LengthUnit | undefined {
  const bare = items.find((x, k) => {
    const [before, after] = [w(items, k - 1), w(items, k + 1)];
    if (before === '(' && after === ')')
      return /^(in|cm|mm|inches|inch|centimetres|centimeters|metres)$/.test(x.w);
    // "seams 3/8, all in": no price beside it
    if (x.w === 'in') return before === 'all' && after === '' && !items.some((y) => y.cost);
    return (
      /^(cm|mm|inches|centimetres|centimeters|metres)$/.test(x.w) &&
      (/^(all|in|,|both|everything|figures)$/.test(before) ||
        // "border 6, strip 4, inches both"
        (before === '' && /^(both|throughout|everywhere)$/.test(after)) ||
        // "sixty two across by eighty down inches"
        (after === '' && /^(across|down|long|wide|high|tall|round)$/.test(before)) ||
        // "cm all of it: top 158 …"
        (before === '' && after === 'all') ||
        // "a hundred and eighty eight one way and a hundred and ninety six the other, centimetres that is"
        (after === 'that' && /^('s|is)$/.test(w(items, k + 2))))
    );
  });
  return bare && (UNIT_WORDS[bare.w] as LengthUnit);
}

/**
 * Lengths with what they are of. `sentence` are the items of the whole sentence: "A by B", lists of four sides, two
 * diagonals and "strips at 2 1/2" are read from there. A unit said once holds for the list.
 */
export function findMeasurements(
  said: Item[],
  noteUnit?: LengthUnit,
  unitOfAll?: LengthUnit,
): MeasureFound[] {
  const items = withoutDeniedLength(said);
  const found: MeasureFound[] = [];
  const used = new Set<number>();
  const all = ` ${items.map((x) => x.w).join(' ')} `;
  const bare = bareUnit(items);
  const shared = items.map(lengthUnit).find((u) => u !== undefined) ?? bare ?? noteUnit;
  const push = (
    of: Measure,
    k: number | undefined,
    rule: string,
    extra: Item[] = [],
    place?: string[],
  ): void => {
    const q = k === undefined ? undefined : items[k]!;
    if (k !== undefined) used.add(k);
    const value = q?.quantity?.value;
    // "blocks twenty-five centimetres, the border nine": in the unit told last
    const before = items.slice(0, k ?? 0).findLast((x) => lengthUnit(x));
    const unit = lengthUnit(q) ?? lengthUnit(before) ?? shared;
    found.push({
      of,
      ...(value !== undefined ? { value } : {}),
      ...(unit ? { unit } : {}),
      items: [...extra, ...(q ? [q] : [])],
      place,
      rule,
    });
  };
  // "four inches of backing over all the way round", "backing three inches proud"
  for (let k = 0; k < items.length; k++)
    if (
      isNumber(items[k]) &&
      lengthUnit(items[k]) &&
      HANGS_OVER.test(
        ` ${items
          .slice(k + 1, k + 9)
          .map((x) => x.w)
          .join(' ')} `,
      )
    )
      push('overhang', k, 'measure.hangs-over');
  // "backing to stick out 3 in all round", "let the batting hang over two inches"
  if (items.some((x) => /^(?:backing|batting)$/.test(x.part ?? '')))
    for (let k = 2; k < items.length; k++)
      if (lengthUnit(items[k]) && !used.has(k) && STICKS_OUT.test(wordsBetween(items, k - 7, k)))
        push('overhang', k, 'measure.hangs-over');
  // "trimmed the backing to leave two inches all round"
  if (items.some((x) => /^(?:backing|batting)$/.test(x.part ?? '')))
    for (let k = 1; k < items.length; k++)
      if (
        /^(?:leave|leaving|left)$/.test(w(items, k - 1)) &&
        lengthUnit(items[k]) &&
        /^(?:all|round|around|each|on|every)$/.test(w(items, k + 1)) &&
        !used.has(k)
      )
        push('overhang', k, 'measure.hangs-over', [items[k - 1]!]);
  // "tied it every four inches", "a knot every 10 cm"
  for (let k = 1; k < items.length; k++)
    if (w(items, k - 1) === 'every' && isNumber(items[k]) && lengthUnit(items[k]))
      push('tie-spacing', k, 'measure.every', [items[k - 1]!]);
  // "ties at four inches", "knots at 10 cm"
  for (let k = 2; k < items.length; k++)
    if (
      /^(?:at|to)$/.test(w(items, k - 1)) &&
      isNumber(items[k]) &&
      lengthUnit(items[k]) &&
      !used.has(k) &&
      /^(?:ties|knots|tied it|tying it|ties are|ties go)$/.test(w(items, k - 2)) &&
      !/^(?:long|tails?|ends)$/.test(w(items, k + 1))
    )
      // "trimmed the ties to an inch": how long their ends are left
      push(
        /^(?:trim|cut|clip|snip)/.test(w(items, k - 3) === 'the' ? w(items, k - 4) : w(items, k - 3))
          ? 'tail'
          : 'tie-spacing',
        k,
        'measure.ties-at',
        [items[k - 1]!],
      );
  // "a yard and a half wide by two long"
  for (let k = 0; k + 3 < items.length; k++)
    if (
      isNumber(items[k]) &&
      /^(wide|across|long|high)$/.test(w(items, k + 1)) &&
      /^(by|x|×)$/.test(w(items, k + 2)) &&
      isNumber(items[k + 3])
    ) {
      const wide = /^(wide|across)$/.test(w(items, k + 1));
      push(wide ? 'width' : 'length', k, 'measure.by', [items[k + 1]!]);
      push(wide ? 'length' : 'width', k + 3, 'measure.by', [items[k + 4] ?? items[k + 3]!]);
    }
  // "seven foot one the long way", "58 inches the short way"
  for (let k = 1; k + 2 < items.length; k++)
    if (
      w(items, k) === 'the' &&
      /^(long|short|narrow|wide|other)$/.test(w(items, k + 1)) &&
      w(items, k + 2) === 'way' &&
      isNumber(items[k - 1]) &&
      lengthUnit(items[k - 1]) &&
      !used.has(k - 1) &&
      (w(items, k + 1) !== 'other' || / (?:across|wide) /.test(all)) &&
      !/ (?:corner|diagonal|diagonally) /.test(all)
    )
      push(/^(long|other)$/.test(w(items, k + 1)) ? 'length' : 'width', k - 1, 'measure.way', [
        items[k + 1]!,
      ]);
  // "104 centimetres across, 166 down"
  for (let k = 1; k < items.length; k++)
    if (
      w(items, k) === 'down' &&
      // "eighty down the left": a side
      !/^ (?:the |its )?(?:left|right) /.test(wordsBetween(items, k + 1, k + 3)) &&
      isNumber(items[k - 1]) &&
      !used.has(k - 1) &&
      / (across|wide) /.test(all) &&
      (bare || items.some(lengthUnit) || / measured /.test(all))
    )
      push('length', k - 1, 'measure.down', [items[k]!]);
  // "62 1/2 by 76", "60 x 72 in"
  for (let k = 0; k + 2 < items.length; k++) {
    if (
      isNumber(items[k]) &&
      /^(by|x|×|\*)$/.test(w(items, k + 1)) &&
      isNumber(items[k + 2]) &&
      !used.has(k)
    ) {
      const first = items[k]!;
      const second = items[k + 2]!;
      if (
        !lengthUnit(first) &&
        !lengthUnit(second) &&
        // "trimmed off all sides. 58 1/2 x 77": a sentence of nothing else
        items.length > 4 &&
        !bare &&
        !/\b(measure|measures|measured|measuring|size|top|backing|batting|wide|long|quilt|inches|comes|came|runs|squared|trimmed|ended|finished|finishes|washing|washed|pressing|pressed|shrunk|(?:it|whole thing|whole lot|whole of it) (is|was|'s))\b/.test(
          all,
        )
      )
        continue;
      if (
        !lengthUnit(first) &&
        !lengthUnit(second) &&
        first.quantity!.value! < 15 &&
        second.quantity!.value! < 15 &&
        !/\b(measured|inches|cm)\b/.test(all)
      )
        continue;
      // "blocks are nine inches, the whole top sixty-eight by eighty-six": of what was named last
      const since = items.findLastIndex(
        (x, m) =>
          m < k && (x.part === 'top' || x.part === 'backing' || x.part === 'batting' || /\bquilt$/.test(x.w)),
      );
      // "the backing piece is 70 in by 84": the piece is that part
      const own = since >= 0 && w(items, since + 1) === 'piece' ? since + 2 : since + 1;
      const named = wordsBetween(items, Math.max(k - 6, own), k);
      if (/\b(blocks?|patch|hole|piece|scrap|squares?|label|box)\b/.test(named)) {
        if (/\bblocks?\b/.test(named) && first.quantity!.value === second.quantity!.value) {
          push('block', k, 'measure.block-square');
          used.add(k + 2);
        }
        continue;
      }
      // "border strips cut 5 in x 60 in"
      if (/\bstrips?\b/.test(all) && first.quantity!.value! < second.quantity!.value! / 2) {
        push('strip', k, 'measure.strip');
        used.add(k + 2);
        continue;
      }
      const unit = lengthUnit(second) ?? lengthUnit(first) ?? shared;
      found.push({
        of: 'width',
        value: first.quantity!.value!,
        ...(unit ? { unit: lengthUnit(first) ?? unit } : {}),
        items: [first],
        rule: 'measure.by',
      });
      found.push({
        of: 'length',
        value: second.quantity!.value!,
        ...(unit ? { unit } : {}),
        items: [second],
        rule: 'measure.by',
      });
      used.add(k);
      used.add(k + 2);
    }
  }
  // "top left to bottom right 101 in, top right to bottom left 102"
  if (CORNERS.test(all))
    for (let k = 0; k < items.length; k++)
      if (isNumber(items[k]) && !used.has(k) && CORNERS.test(wordsBetween(items, Math.max(0, k - 9), k)))
        push('diagonal', k, 'measure.diagonal');
  const bothWays = twoDiagonals(items, used);
  if (bothWays) for (const k of bothWays) push('diagonal', k, 'measure.diagonal');
  // "borders cut at 5 in", "binding cut and joined, 2 in wide"
  const cut = cutWidth(items, used);
  // "cut the backing at 210 cm wide": how wide it is, and no strip
  const layer = items.some((x, k) => /^(?:backing|batting)$/.test(x.part ?? '') && k < (cut ?? 0));
  if (cut !== undefined && !items.some((x) => x.measure === 'strip'))
    push(
      layer ? 'width' : 'strip',
      cut,
      'measure.cut-at',
      layer ? [] : [items.find((x) => x.action?.v === 'cut')!],
    );
  // "cut the binding strips two and a quarter inches and the border ones at five": strips of another part
  const first = items.findIndex((x) => x.measure === 'strip' || / strips?$/.test(x.w));
  const other =
    first < 0 || !items.some((x) => x.action?.v === 'cut')
      ? -1
      : items.findIndex((x, k) => k > first && /\bones?$/.test(x.w));
  if (other > 0 && items[other]!.place?.kind !== 'blocks' && shared) {
    const at = [other + 1, other + 2].find((k) => isNumber(items[k]) && !used.has(k));
    if (at !== undefined && isEnd(items, at + 1)) push('strip', at, 'measure.cut-at');
  }
  if (shared)
    for (const { at, places, side } of borderSides(items, isNumber, lengthUnit))
      if (!used.has(at)) push('border', at, 'measure.border', [side], places);
  // Four sides told apart: "top 62 1/2, bottom 63, L side 80 1/4, R side 80"
  const sideWords: Record<string, Measure> = {
    top: 'side-top',
    bottom: 'side-bottom',
    btm: 'side-bottom',
    bot: 'side-bottom',
    foot: 'side-bottom',
    left: 'side-left',
    right: 'side-right',
    l: 'side-left',
    r: 'side-right',
    // "sides: t 1.62 m b 1.60 l 2.05 r 2.04"
    ...(/ (t|b) [0-9].* (l|r) [0-9]| (l|r) [0-9].* (t|b) [0-9]/.test(all)
      ? { t: 'side-top' as const, b: 'side-bottom' as const }
      : {}),
  };
  const sides: [Measure, number, number][] = [];
  const twins: [Measure, number, number][] = [];
  for (let k = 0; k < items.length; k++) {
    const head =
      w(items, k)
        .split(' ')
        .find((x) => Object.hasOwn(sideWords, x)) ??
      // "the right edge is frayed", then "it's thirty-six across the top": of the whole, and of no side
      (items[k]!.place?.places.length === 1 && items[k]!.place!.rule !== 'place.it'
        ? /^(?:edge|border)-(top|bottom|left|right)$/.exec(items[k]!.place!.places[0]!)?.[1]
        : undefined);
    if (!head || !Object.hasOwn(sideWords, head)) continue;
    // "the two right-hand columns" are no side
    if (items[k]!.place?.places[0]?.startsWith('border') || items[k]!.place?.kind === 'blocks') continue;
    let m = k + 1;
    while (
      m < items.length &&
      m < k + 7 &&
      !isNumber(items[m]) &&
      /^(side|edge|hand|is|'s|comes|at|runs|to|measures|measured|reads|:|=|down|along|the|one|of|out|was|across|i|get|got|make|it)$/.test(
        w(items, m),
      )
    )
      m++;
    if (isNumber(items[m]) && !used.has(m) && !/^(by|x)$/.test(w(items, m + 1))) {
      sides.push([sideWords[head]!, m, k]);
      // "top and bottom 62 in"
      const twin = /^(?:and|&|\+)$/.test(w(items, k - 1)) ? sideWords[w(items, k - 2)] : undefined;
      if (twin && !sides.some(([of]) => of === twin)) twins.push([twin, m, k - 2]);
    } else if (!(/^(?:and|&|\+)$/.test(w(items, k + 1)) && Object.hasOwn(sideWords, w(items, k + 2)))) {
      // "62 1/2 along the top"
      let b = k - 1;
      while (b > 0 && b > k - 4 && /^(along|at|on|the|down|across|,)$/.test(w(items, b))) b--;
      if (b >= 0 && isNumber(items[b]) && b < k - 1 && !used.has(b)) sides.push([sideWords[head]!, b, k]);
    }
  }
  // "60 top, 72 right, 61 bottom"
  const numberFirst = items.flatMap((x, k): [Measure, number, number][] => {
    const of = sideWords[x.w] ?? sideWords[/^edge-(\w+)$/.exec(x.place?.places[0] ?? '')?.[1] ?? ''];
    return of && isNumber(items[k - 1]) && !used.has(k - 1) && !isNumber(items[k + 1])
      ? [[of, k - 1, k]]
      : [];
  });
  const inTurn = sidesInTurn(
    items,
    isNumber,
    (x) => sideWords[x.w] ?? sideWords[/^edge-(\w+)$/.exec(x.place?.places[0] ?? '')?.[1] ?? ''],
  );
  if (numberFirst.length >= 3) sides.splice(0, sides.length, ...numberFirst);
  else if (inTurn.length) sides.splice(0, sides.length, ...inTurn);
  // "top 58 in, bottom 59, sides both 77"
  for (let k = 0; sides.length && k < items.length; k++) {
    if (w(items, k) !== 'sides') continue;
    let m = k + 1;
    while (/^(both|are|were|is|each|:|=)$/.test(w(items, m))) m++;
    // "sides: 60 top, 72 right": the word heads them all
    if (
      !isNumber(items[m]) ||
      used.has(m) ||
      /^ (?:(?:at|on|along|the) )*(?:top|bottom|left|right)\b/.test(wordsBetween(items, m + 1, m + 4))
    )
      continue;
    // "the sides are 203 and 204 cm"
    const second =
      /^(?:and|&)$/.test(w(items, m + 1)) && isNumber(items[m + 2]) && isEnd(items, m + 3) ? m + 2 : m;
    push('side-left', m, 'measure.side', [items[k]!]);
    push('side-right', second, 'measure.side', [items[k]!]);
  }
  // "the left side's eighty inches and the right's seventy nine"
  const opposite =
    sides.length === 2 && sides.every(([, m, at]) => m > at) && items.some(lengthUnit) && SIDED.test(all);
  const told = new Set([...sides, ...twins].map(([of]) => of)).size;
  if (sides.length >= 3 || opposite || (sides.length && / sides /.test(all)) || (twins.length && told > 2)) {
    for (const [of, m, k] of twins) push(of, m, 'measure.side', [items[k]!]);
    for (const [, m] of twins) used.delete(m);
    for (const [of, m, k] of sides) if (!used.has(m)) push(of, m, 'measure.side', [items[k]!]);
  }
  // Named measures
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const word = item.w;
    const of = item.measure;
    if (word === 'w' || word === 'l') {
      if (isNumber(items[k + 1]) && !used.has(k + 1))
        push(word === 'w' ? 'width' : 'length', k + 1, 'measure.letter', [item]);
      else if (word === 'w' && /^[:=]$/.test(w(items, k + 1)) && isNumber(items[k + 2]))
        push('width', k + 2, 'measure.letter', [item]);
      continue;
    }
    if (!of) {
      // "with ten-inch blocks"
      if (
        /^(blocks|blks)$/.test(word) &&
        isNumber(items[k - 1]) &&
        /^(in|cm|mm)$/.test(lengthUnit(items[k - 1]) ?? '') &&
        !used.has(k - 1)
      )
        push('block', k - 1, 'measure.blocks', [item]);
      else if (
        /^(blocks?|blks?)$/.test(word) &&
        isNumber(items[k + 1]) &&
        (lengthUnit(items[k + 1]) || (shared && /^(blocks|blks)$/.test(word) && isEnd(items, k + 2))) &&
        !used.has(k + 1)
      )
        push('block', k + 1, 'measure.blocks', [item]);
      // "block 3-2 is only eleven inches where the others are twelve"
      else if (oneBlock(items, k, used) !== undefined)
        push('block', oneBlock(items, k, used), 'measure.blocks', [item], item.place!.places);
      else if (BLOCKS.test(word) && blockSide(items, k, used, shared) !== undefined)
        push('block', blockSide(items, k, used, shared), 'measure.blocks', [item]);
      // "Blocks, 22 cm."
      else if (
        /^(blocks|blks)$/.test(word) &&
        w(items, k + 1) === ',' &&
        lengthUnit(items[k + 2]) &&
        isEnd(items, k + 3)
      )
        push('block', k + 2, 'measure.blocks', [item]);
      // "trimmed the blocks to nine and a half inches"
      else if (
        /^(blocks?|squares?) (to|at)$/.test(word) &&
        isNumber(items[k + 1]) &&
        lengthUnit(items[k + 1])
      )
        push('block', k + 1, 'measure.blocks', [item]);
      // "the sashing strips are two inches"
      else if (
        / strips$/.test(word) &&
        /^(are|at|:|=)$/.test(w(items, k + 1)) &&
        isNumber(items[k + 2]) &&
        !used.has(k + 2) &&
        lengthUnit(items[k + 2])
      )
        push('strip', k + 2, 'measure.strip', [item]);
      else if (word === 'blocks' && /^(run|are|measure|finish|come|at|come out|to)$/.test(w(items, k + 1))) {
        const m = nextNumber(items, k + 1, used, 5);
        if (m !== undefined) push('block', m, 'measure.blocks', [item]);
      } else if (
        (item.part === 'border' || item.object === 'border' || item.place?.places[0]?.startsWith('border')) &&
        (!/\b(strips?)\b/.test(all) ||
          (isNumber(items[k + 1]) &&
            isEnd(items, k + 2) &&
            // "cutting strips for the border, four inches"
            !/\bstrips? (?:for|of) (?:the |a |my )?$/.test(wordsBetween(items, 0, k))))
      ) {
        const m =
          isNumber(items[k + 1]) &&
          // "border three and an eighth seams a quarter", but "border half inch seams"
          (items[k + 2]?.measure !== 'seam' || isNumber(items[k + 3])) &&
          (lengthUnit(items[k + 1]) || (shared && (isEnd(items, k + 2) || items[k + 2]!.measure)))
            ? k + 1
            : /^(is|are|at|wide|of|measures|runs|'s|finishes)$/.test(w(items, k + 1)) &&
                isNumber(items[k + 2]) &&
                (lengthUnit(items[k + 2]) || shared || /^all$/.test(w(items, k + 3))) &&
                !items.slice(k + 3, k + 14).some((x) => x.w === 'wide')
              ? k + 2
              : undefined;
        if (m !== undefined && !used.has(m) && !/\b(trim|trimmed|off)\b/.test(all))
          push(
            / cut /.test(all) && !isEnd(items, k + 2) ? 'strip' : 'border',
            m,
            / cut /.test(all) && !isEnd(items, k + 2) ? 'measure.strip' : 'measure.border',
            [item],
            item.place?.places,
          );
        else if (
          isNumber(items[k - 1]) &&
          lengthUnit(items[k - 1]) &&
          !used.has(k - 1) &&
          // "five inch borders", "inch and a half borders"
          / (?:inch|in|cm) /.test(` ${w(items, k - 1).replace(/-/g, ' ')} `)
        )
          push('border', k - 1, 'measure.border', [item], item.place?.places);
      }
      continue;
    }
    // "strips joined with diagonal seams"
    if (of === 'diagonal' && items[k + 1]?.seam) continue;
    if (of === 'diagonal') {
      // "ninety-nine and three quarters corner to corner, with ten-inch blocks"
      const before = previousNumber(items, k, used, 1);
      // "the two diagonals are …" counts them
      const told = before !== undefined && /^(?:two|both|2)$/.test(w(items, before)) ? undefined : before;
      if (told !== undefined && !/^(?:is|'s|:|=|are|was)$/.test(w(items, k + 1)))
        push('diagonal', told, 'measure.diagonal', [item]);
      // "corner to corner I measured it now that it's dry and it's 246 one way and 249 the other"
      let m = nextNumber(items, k, used, / one way /.test(all) ? 15 : 8);
      if (told !== undefined && !used.has(told)) continue;
      if (told !== undefined && !/\b(?:other|second|one way)\b/.test(all)) continue;
      if (m === undefined) {
        const b = previousNumber(items, k, used, 4);
        if (b !== undefined) push('diagonal', b, 'measure.diagonal', [item]);
        continue;
      }
      let count = told === undefined ? 0 : 1;
      while (m !== undefined && count < 2) {
        push('diagonal', m, 'measure.diagonal', count ? [] : [item]);
        count++;
        m = nextNumber(items, m, used, 8);
        if (
          m !== undefined &&
          items.slice(items.indexOf(item) + 1, m).some((x) => x.measure && x.measure !== 'diagonal')
        )
          break;
      }
      continue;
    }
    if (of === 'seam') {
      if (word === 'seam' || word === 'seams') {
        const b = previousNumber(items, k, used, 1);
        if (
          b !== undefined &&
          lengthUnit(items[b]) &&
          items[b]!.quantity!.value! <=
            (lengthUnit(items[b]) === 'mm' ? 25 : lengthUnit(items[b]) === 'cm' ? 2.5 : 1)
        )
          push('seam', b, 'measure.seam', [item]);
        else {
          const m = isNumber(items[k + 1])
            ? k + 1
            : /^(is|are|at|of|:|=|,)$/.test(w(items, k + 1)) && isNumber(items[k + 2])
              ? k + 2
              : isFarther(items, k);
          if (
            m !== undefined &&
            !used.has(m) &&
            (lengthUnit(items[m]) ?? shared) &&
            items[m]!.quantity!.value! <=
              ({ mm: 25, cm: 2.5, in: 1 } as Record<string, number>)[lengthUnit(items[m]) ?? shared!]!
          )
            push('seam', m, 'measure.seam', [item]);
        }
        continue;
      }
      const b = previousNumber(items, k, used, 2);
      // "seam allowance of one"
      const one = w(items, k + 1) === 'of' && w(items, k + 2) === 'one' && shared ? k + 2 : undefined;
      const m = b ?? one ?? nextNumber(items, k, used, 6);
      if (m !== undefined) push('seam', m, 'measure.seam', [item]);
      continue;
    }
    if (of === 'strip') {
      const own = /^(strips?|border strips|binding strips|strip width)$/.test(word)
        ? (counted(items, k, used) ??
          previousNumber(items, k, used, 2) ??
          (isNumber(items[k + 1]) ||
          /^(?:@|of)$/.test(w(items, k + 1)) ||
          /\b(?:cut|cutting|at|wide|width)\b|\bstrips? for (?:the |a |my )?(?:borders?|binding|sashing) /.test(
            all,
          )
            ? nextNumber(items, k, used, 8)
            : undefined))
        : undefined;
      // "strips are cut at um inches with quarter inch seams": that length is of the seams
      const width = own !== undefined && items[own + 1]?.measure === 'seam' ? undefined : own;
      // "cut 2 1/2 in, 8 strips": how many, and not how wide
      const m = width === undefined ? undefined : (widthForCount(items, width, used) ?? width);
      if (
        m !== undefined &&
        // "cut 2 1/4 strips": nobody cuts a quarter of a strip
        (lengthUnit(items[m]) || shared || !Number.isInteger(items[m]!.quantity!.value)) &&
        lengthUnit(items[m]) !== 'yd' &&
        lengthUnit(items[m]) !== 'm'
      )
        push('strip', m, 'measure.strip', [item]);
      else if (
        m === undefined &&
        /\bstrips? at inches|at (?:inches|centimetres|cm|millimetres|mm)|(?:inches|many \w+) wide\b/.test(
          all,
        ) &&
        !items.some((x, n) => x.quantity && items[n + 1]?.measure !== 'seam')
      ) {
        found.push({
          of: 'strip',
          unit: /\b(?:cm|centimetres)\b/.test(all) ? 'cm' : /\b(?:mm|millimetres)\b/.test(all) ? 'mm' : 'in',
          items: [item],
          rule: 'measure.strip-unsaid',
        });
      }
      continue;
    }
    if (of === 'tie-spacing') {
      // "quilting lines two inches apart": no ties
      if (/ (?:quilting|stitching|parallel|straight) (?:lines|rows) /.test(all)) continue;
      const b = previousNumber(items, k, used, 3) ?? nextNumber(items, k, used, 3);
      if (b !== undefined) push('tie-spacing', b, 'measure.tie-spacing', [item]);
      continue;
    }
    if (of === 'tail') {
      if (
        word === 'ends' &&
        !/\b(tie|ties|tied|tying|trim|trimmed|long|knot|knots|apart|spaced)\b| (?:snipped|clipped|cut) the ends | ends (?:snipped|clipped|cut) to /.test(
          all,
        )
      )
        continue;
      const b = previousNumber(items, k, used, 3) ?? nextNumber(items, k, used, 5);
      if (b !== undefined) push('tail', b, 'measure.tail', [item]);
      continue;
    }
    if (of === 'overhang') {
      const b = previousNumber(items, k, used, 4) ?? nextNumber(items, k, used, 5);
      if (b !== undefined) {
        let side = sideBehind(items, b);
        push('overhang', b, 'measure.overhang', [item], side?.places);
        // "five centimetres along the top edge and eight along the bottom"
        while (side) {
          const next = /^(and|,|&)$/.test(w(items, side.next)) ? side.next + 1 : side.next;
          side = isNumber(items[next]) && !used.has(next) ? sideBehind(items, next) : undefined;
          if (side) push('overhang', next, 'measure.overhang', [], side.places);
        }
      }
      continue;
    }
    if (of === 'width' || of === 'length' || of === 'block' || of === 'border') {
      const strip = /\bstrips?\b/.test(all);
      let m: number | undefined;
      if (/^(wide|across|long|high|tall|in length)$/.test(word)) m = previousNumber(items, k, used, 1);
      else m = nextNumber(items, k, used, 5) ?? previousNumber(items, k, used, 2);
      if (m === undefined) continue;
      // "inch long tails": read with the tails
      if (word === 'long' && /^(tails?|ends)$/.test(w(items, k + 1))) continue;
      if (
        (of === 'width' || of === 'length') &&
        /\b(tear|hole|rip|split|stain|seam|patch|gap|piece|yards? of|bit)\b/.test(all) &&
        !/\b(quilt|top|it 's|it is|width|measured|measures|wide and)\b/.test(all)
      )
        continue;
      // "border 85 mm, blocks 24 cm, width 158": the border has its width already
      // "the top border is four and a half inches wide": and of which side
      const bordered = found.some((m) => m.of === 'border')
        ? undefined
        : items
            .slice(Math.max(0, k - 14), k)
            .findLast(
              (x, at, before) =>
                x.part === 'border' ||
                (x.place?.places[0]?.startsWith('border-') &&
                  !before.slice(at + 1).some((y) => y.part || y.place || y.w === 'quilt')),
            );
      // "ten down and eight across" counts blocks
      if (word === 'across' && !items.some(lengthUnit) && !bare && !/ measured /.test(all)) continue;
      if (!lengthUnit(items[m]) && !shared) {
        if (!/\b(width|length|wide|long)\b/.test(word) && !(word === 'across' && / measured /.test(all)))
          continue;
      }
      // "binding 2 1/4 in wide": the strip that it is cut from, and no width of the quilt
      const bindingStrip = of === 'width' && isBindingWidth(items, m);
      push(
        (strip || bindingStrip) && of === 'width' ? 'strip' : bordered && of === 'width' ? 'border' : of,
        m,
        `measure.${of}`,
        [item],
        of === 'width' ? bordered?.place?.places : undefined,
      );
    }
  }
  // "seams 1/4, blocks 11 1/2 sq. all inches": the unit that is told for all of them
  const forAll = bare ?? unitOfAll;
  const unitOf = (x: Item | undefined): LengthUnit | undefined =>
    lengthUnit(x) ?? (isNumber(x) ? forAll : undefined);
  const plain = [
    ...plainSizes(items, { isNumber, lengthUnit: unitOf }, shared),
    ...sizesOtherwise(items, lengthUnit),
  ];
  for (const { of, at, head, places } of plain)
    if (!used.has(at)) push(of, at, `measure.${of}`, [head], places);
  return found;
}

/** "measured 88 inches one way corner to corner and 90 the other": the two diagonals, wherever it is said that they are such. */
function twoDiagonals(items: Item[], used: Set<number>): [number, number] | undefined {
  if (!items.some((x) => x.measure === 'diagonal' || x.w === 'diagonally')) return undefined;
  const first = items.findIndex(
    (x, k) =>
      isNumber(x) &&
      !used.has(k) &&
      /^ (?:in |on )?(?:one|1) (?:way|direction|diagonal) /.test(behindOf(items, k)),
  );
  if (first < 0) return undefined;
  const second = items.findIndex(
    (x, k) =>
      k > first &&
      k < first + 14 &&
      isNumber(x) &&
      !used.has(k) &&
      /^ (?:in |on )?(?:the )?other /.test(behindOf(items, k)),
  );
  return second < 0 ? undefined : [first, second];
}

/** Is the length at `m` told of a new binding, and of nothing named since? Folded on the quilt ("old binding is 3/8 inch wide") it is narrower than any strip. */
function isBindingWidth(items: Item[], m: number): boolean {
  const near = items.slice(Math.max(0, m - 6), m);
  const at = near.findLastIndex((x) => x.part === 'binding' || x.material === 'binding');
  const { value, unit } = items[m]!.quantity ?? {};
  const inches = (value ?? 0) / (unit === 'mm' ? 25.4 : unit === 'cm' ? 2.54 : 1);
  return (
    at >= 0 &&
    inches >= 1.2 &&
    inches < 6 &&
    !/^(?:old|original|existing)$/.test(near[at - 1]?.w ?? '') &&
    !near.slice(at + 1).some((x) => x.part || x.place || /^(?:quilt|top|it|[.;])$/.test(x.w))
  );
}

const behindOf = (items: Item[], k: number): string => wordsBetween(items, k + 1, k + 5);

/** The width of what was cut into strips, border, binding or sashing: the length behind "at", or the one by itself. */
function cutWidth(items: Item[], used: Set<number>): number | undefined {
  const cut = items.findIndex((x) => x.action?.v === 'cut');
  if (cut < 0) return undefined;
  const strips = items.some((x) => /^(?:border|binding|sashing)/.test(x.part ?? x.place?.places[0] ?? ''));
  for (let m = cut + 1; m < Math.min(items.length, cut + 12); m++) {
    const x = items[m]!;
    if (
      /^(?:blocks?|squares?|patch|patches|piece|label|back|off|away|down)$/.test(x.w) ||
      x.place?.kind === 'blocks'
    )
      return undefined;
    if (!isNumber(x) || used.has(m)) continue;
    const unit = lengthUnit(x);
    if (unit ? !/^(?:in|cm|mm)$/.test(unit) : Number.isInteger(x.quantity!.value)) return undefined;
    const after = w(items, m + 1);
    // "… at six and a half inches, quarter inch seams": the other length is the seam's
    if (/^seams?$/.test(after)) return undefined;
    if (w(items, m - 1) === 'at') return m;
    if (strips && (after === 'wide' || isEnd(items, m + 1)) && !/^(?:every|by|of)$/.test(w(items, m - 1)))
      return m;
    return undefined;
  }
  return undefined;
}

const CORNERS =
  / (?:top|bottom|upper|lower) (?:left|right) (?:corner )?to (?:the )?(?:top|bottom|upper|lower) (?:left|right) /;

const STICKS_OUT =
  / (?:(?:stick|stand|hang|poke|reach|come|run|go|show|lap|extend|project|protrude|overhang)(?:s|es|ing)?|stuck|stood|hung|sticking) (?:(?:out|over|proud|beyond|past|outside|it|the (?:top|edges?|patchwork))(?: of)? ){0,3}(?:by |about |a good |around |roughly |at least |for ){0,2}$/;

const HANGS_OVER =
  /^ (?:of (?:the )?(?:backing|batting|back|wadding) (?:all (?:the way )?(?:round|around)|(?:on|at) (?:every|each|all))|(?:of (?:the )?(?:backing|batting|back|wadding) (?:left |showing |sticking |hanging |poking )?(?:out )?)?(?:over|proud|extra|showing|spare|beyond|past|outside|bigger|larger|wider) (?:all (?:the way )?(?:round|around)|on (?:every|each|all)|round|around|(?:than )?the (?:top|edges?|patchwork|quilt top)))/;

const SIDED = / (left|right|top|bottom) (side|edge|one)? ?('s|is|was|comes|measures|at|[0-9])/;

/** "cut six strips from the indigo, two and a half inches": the number before only counts them. */
function counted(items: Item[], k: number, used: Set<number>): number | undefined {
  const before = previousNumber(items, k, used, 2);
  const after = nextNumber(items, k, used, 9);
  return before !== undefined && after !== undefined && !lengthUnit(items[before]) && lengthUnit(items[after])
    ? after
    : undefined;
}

const BLOCKS =
  /^(?:(?:all|every|each|most|a|the|both)(?: of)?(?: the)? )?(?:blocks?|blks?|squares?|hexagons?|hex|hexes|hexies?|diamonds?)$/;
/** "a block is nine inches", "all the blocks are 24 cm", "blocks vary but mostly nine inches": of each, and nothing but its side. */
const OF_EACH = /^(?:a|all|every|each|most|mostly|all the|most of the)$/;

/** "3-2 is only eleven inches", "row 2 block 1 measures 30 cm square": the side of one block. */
function oneBlock(items: Item[], k: number, used: Set<number>): number | undefined {
  const { place } = items[k]!;
  if (place?.kind !== 'blocks' || place.places.length !== 1) return undefined;
  if (!/^(is|'s|measures|was|measured|finishes|comes)$/.test(w(items, k + 1))) return undefined;
  // "the net over 3-4 is ten inches square": of the net
  if (/^(?:over|in|on|behind|at|for|of|under|from)$/.test(w(items, k - 1))) return undefined;
  let m = k + 2;
  while (/^(only|just|about|out|at|to|barely|nearly|a|scant|full)$/.test(w(items, m)) && !items[m]!.quantity)
    m++;
  const unit = lengthUnit(items[m]);
  if (!isNumber(items[m]) || used.has(m) || !/^(in|cm|mm)$/.test(unit ?? '')) return undefined;
  if (items[m]!.quantity!.value! < (unit === 'in' ? 3 : unit === 'cm' ? 8 : 80)) return undefined;
  return isEnd(items, m + 1) ||
    /^(square|where|while|not|and|across|a|on|per|instead|when|against)$/.test(w(items, m + 1))
    ? m
    : undefined;
}

/** "the blocks have a side of 260 mm", "blocks, 8 inches each": the number that tells the side of a block. */
function blockSide(
  items: Item[],
  k: number,
  used: Set<number>,
  shared: LengthUnit | undefined,
): number | undefined {
  let m = k + 1;
  let told = / /.test(w(items, k)) && OF_EACH.test(w(items, k).split(' ')[0]!);
  told ||= OF_EACH.test(w(items, k - 1)) || (w(items, k - 1) === 'the' && OF_EACH.test(w(items, k - 2)));
  while (
    m < k + 9 &&
    /^(a|the|of|to|at|about|around|roughly|each|all|'s|was|were|mostly|mainly|nearly|just|vary|but|works?|have|has|with|run|runs|are|is|measure|measures|finish|finished|finishes|come|comes|out|:|=|,|cut|side|sides|edge|size|square|length)$/.test(
      w(items, m),
    )
  ) {
    if (
      /^(side|sides|size|measures?|mostly|mainly|vary|finish|finishes|finished|square|run|runs|come|comes)$/.test(
        w(items, m),
      )
    )
      told = true;
    m++;
  }
  // "w 148, l 171 cm, hexagon side 3.5"
  const unit = lengthUnit(items[m]) ?? shared;
  if (!isNumber(items[m]) || !unit || used.has(m) || unit === 'yd' || unit === 'm') return undefined;
  if (
    told &&
    !isEnd(items, m + 1) &&
    !/^(square|each|on|a|per|finished|by|or|across|wide)$/.test(w(items, m + 1))
  )
    return undefined;
  const behind = `${w(items, m + 1)} ${w(items, m + 2)} ${w(items, m + 3)}`;
  return told || /^(square|each|on a side|a side|on each|per side)/.test(behind) ? m : undefined;
}

/** "along the top edge", "at the sides", "on the left": the side of the quilt named behind a length. */
function sideBehind(items: Item[], k: number): { places: string[]; next: number } | undefined {
  let m = k + 1;
  while (/^(along|on|at|across|down|over|the|both)$/.test(w(items, m)) && m < k + 4) m++;
  const named = items[m]?.place?.places ?? [];
  const places = named.every((p) => /^edge-/.test(p)) && named.length ? named : SIDE_EDGES[w(items, m)];
  if (!places || (m === k + 1 && !items[m]?.place)) return undefined;
  return { places, next: /^(edge|side|end)$/.test(w(items, m + 1)) ? m + 2 : m + 1 };
}
const SIDE_EDGES: Record<string, string[]> = {
  top: ['edge-top'],
  bottom: ['edge-bottom'],
  left: ['edge-left'],
  right: ['edge-right'],
  sides: ['edge-left', 'edge-right'],
};

const isEnd = (items: Item[], k: number): boolean => /^(,|\.|;|and|&|\)|)$/.test(w(items, k));

/** "seams on this old thing are three eighths of an inch": the length behind the verb, with what they lie in between. */
function isFarther(items: Item[], k: number): number | undefined {
  if (!/^(on|in|of|here|all)$/.test(w(items, k + 1))) return undefined;
  for (let m = k + 2; m < k + 8; m++) {
    if (!items[m] || items[m]!.token.kind === 'mark' || items[m]!.action || items[m]!.fail) return undefined;
    if (/^(is|are|was|were|run|runs|look|looks|measure|come)$/.test(w(items, m)))
      return [m + 1, m + 2].find((q) => isNumber(items[q]) && lengthUnit(items[q]));
  }
  return undefined;
}

function nextNumber(items: Item[], k: number, used: Set<number>, reach: number): number | undefined {
  for (let m = k + 1; m < Math.min(items.length, k + 1 + reach); m++) {
    if (isNumber(items[m]) && !used.has(m)) return m;
    if (items[m]!.cost || items[m]!.duration || items[m]!.place?.kind === 'blocks') return undefined;
    // "width __ cm, length 190 cm": a gap was left for its number
    if (w(items, m) === 'many') return undefined;
  }
  return undefined;
}
function previousNumber(items: Item[], k: number, used: Set<number>, reach: number): number | undefined {
  for (let m = k - 1; m >= Math.max(0, k - reach); m--) {
    if (isNumber(items[m]) && !used.has(m)) return m;
    if (/^(,|and|\.|;)$/.test(w(items, m))) return undefined;
  }
  return undefined;
}
