import type { LengthUnit, Measure } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';

type Reads = {
  isNumber: (x: Item | undefined) => boolean;
  lengthUnit: (x: Item | undefined) => LengthUnit | undefined;
};
export type PlainSize = { of: Measure; at: number; head: Item; places?: string[] | undefined };

const LEADS = /^(?:the|each|every|all|all the|new|my|its|those|these|a|and|finished)$/;
const IS =
  /^(?:is|are|was|were|'s|'re|going|gonna|be|will|'ll|should|must|on|:|=|-|,|at|of|to|about|around|roughly|just|a|good|scant|full|cut|now|all|come|comes|out|finish|finished|measure|measures)$/;
const BEHIND =
  /^(?:|,|\.|;|and|&|\+|\)|wide|across|square|sq|each|all|deep|on|finished|a|with|but|every|per)$/;

/** No seam allowance is wider: "three inches of seam resewn" tells how long. */
const MOST_SEAM: Record<string, number> = { in: 1, cm: 2.5, mm: 25 };

/** What is told of by a bare size: strips, borders, blocks, sashing. */
function headOf(x: Item): Measure | undefined {
  if (x.measure === 'strip') return 'strip';
  if (x.part === 'border' || x.place?.places[0]?.startsWith('border')) return 'border';
  if (/^(?:blocks?|blks?|squares)$/.test(x.w)) return 'block';
  return undefined;
}

/**
 * "strips: 2.5 in", "the squares are six inch", "binding strips are 2 1/4 in", "border: 5 in": a size that stands by itself behind what it is of.
 * "put the border on at 5 inches", "two centimetres of seam".
 */
export function plainSizes(items: Item[], { isNumber, lengthUnit }: Reads, shared?: LengthUnit): PlainSize[] {
  const out: PlainSize[] = [];
  for (let k = 0; k < items.length; k++) {
    const head = items[k]!;
    const of = headOf(head);
    let from = k;
    while (from > 0 && LEADS.test(w(items, from - 1))) from--;
    const opens = from === 0 || /^(?:[,.;:&+(\n]|--|and|with)$/.test(w(items, from - 1));
    if (of && opens) {
      let at = k + 1;
      while (IS.test(w(items, at)) && !isNumber(items[at]) && at < k + 6) at++;
      // "strips: five", where another size has its unit
      const unit = lengthUnit(items[at]) ?? (/^[:,=]$/.test(w(items, at - 1)) ? shared : undefined);
      if (at > k && isNumber(items[at]) && /^(?:in|cm|mm)$/.test(unit ?? '') && BEHIND.test(w(items, at + 1)))
        out.push({ of, at, head, places: of === 'border' ? head.place?.places : undefined });
    }
    // "put the border on at 5 inches", "borders went on at 4 1/2 in"
    if (
      head.part === 'border' &&
      items.slice(Math.max(0, k - 4), k + 4).some((x) => /^(?:on|added|sewed|sewn)$/.test(x.w))
    ) {
      const at = items.findIndex((x, m) => m > k && m < k + 7 && isNumber(x) && w(items, m - 1) === 'at');
      if (at > 0 && /^(?:in|cm|mm)$/.test(lengthUnit(items[at]) ?? ''))
        out.push({ of: 'border', at, head, places: head.place?.places });
    }
    // "left 2 cm of seam", "half an inch of seam allowance"
    if (
      head.seam &&
      w(items, k - 1) === 'of' &&
      isNumber(items[k - 2]) &&
      items[k - 2]!.quantity!.value! <= (MOST_SEAM[lengthUnit(items[k - 2]) ?? ''] ?? 0)
    )
      out.push({ of: 'seam', at: k - 2, head });
  }
  return out;
}

/**
 * "sixty two at the top sixty three at the foot eighty down the left": numbers and sides in turn, the number first each time. Pairs of the
 * index of the number and of the side.
 */
export function sidesInTurn(
  items: Item[],
  isNumber: Reads['isNumber'],
  sideOf: (x: Item) => Measure | undefined,
): [Measure, number, number][] {
  const marks = items.flatMap((x, k) =>
    isNumber(x) ? [{ k, of: undefined }] : sideOf(x) ? [{ k, of: sideOf(x) }] : [],
  );
  const pairs: [Measure, number, number][] = [];
  for (let n = 0; n + 1 < marks.length; n += 2) {
    const [figure, side] = [marks[n]!, marks[n + 1]!];
    if (figure.of || !side.of || side.k - figure.k > 6) return [];
    pairs.push([side.of, figure.k, side.k]);
  }
  return marks.length % 2 === 0 && pairs.length >= 3 ? pairs : [];
}
