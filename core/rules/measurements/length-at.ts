import { readCount } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { findQuantity, readUnit } from '../amounts/find-amount.ts';
import { type Item, makeItem } from '../item.ts';

/** Words of which one tells that lengths are told. */
const MEASURE_TALK = wordSet(
  'measured measure measures wide width long length border borders inches inch in cm mm centimetre centimetres centimeter centimeters diagonal diagonals diag diags by x × seam seams w',
);

/** The sides as they stand before a length each. */
const SIDE = wordSet('top bottom btm left right l r t b');

const CENTIMETRES = wordSet('cm centimetre centimetres centimeter centimeters');

const MILLIMETRES = wordSet('mm mil mils millimetre millimetres millimeter millimeters');

/** Of what lengths a note tells: any, those of more than two sides, those in millimetres, those in centimetres. */
type LengthTalk = {
  measuring: boolean;
  sided: boolean;
  inMillimetres: boolean;
  inCentimetres: boolean;
};

/** Asked once a note, before its tokens are gone through. */
export function lengthTalk(tokens: Token[]): LengthTalk {
  const talk = { measuring: false, sided: false, inMillimetres: false, inCentimetres: false };
  let sides = 0;
  for (const { w } of tokens) {
    if (MEASURE_TALK.has(w)) talk.measuring = true;
    if (SIDE.has(w)) sides++;
    if (MILLIMETRES.has(w)) talk.inMillimetres = true;
    if (CENTIMETRES.has(w)) talk.inCentimetres = true;
  }
  talk.sided = sides > 2;
  return talk;
}

/** A length, or what one is told of, that would be read as a block, an hour or nothing where no lengths are told. */
export const lengthAt = (tokens: Token[], i: number, talk: LengthTalk): Item | undefined =>
  (talk.measuring ? (blockSize(tokens, i) ?? sideLetter(tokens, i) ?? seamFraction(tokens, i)) : undefined) ??
  (talk.measuring ? (decimalBy(tokens, i) ?? inStrips(tokens, i)) : undefined) ??
  (talk.sided ? sideLength(tokens, i) : undefined) ??
  (talk.inMillimetres ? fourFigures(tokens, i) : undefined) ??
  (talk.inCentimetres ? threeFigures(tokens, i) : undefined);

/** "blocks 10", "blocks 11 1/2 in": the size of the blocks and no block, where a note tells lengths. */
function blockSize(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(blocks|blks)$/.test(token.w)) return oneBlockSize(tokens, i);
  const before = tokens[i - 1]?.w ?? '';
  let k = i + 1;
  // "with blocks of 30 cm"
  const of = tokens[k]?.w === 'of';
  if (of || tokens[k]?.w === ':' || tokens[k]?.w === '=') k++;
  const quantity = findQuantity(tokens, k);
  if (!quantity?.value || (of && !quantity.unit)) return undefined;
  // "two and a half yards long blocks eleven inches"
  if (
    !/^(,|\.|;|the|and|with|)$/.test(before) &&
    (!quantity.unit || !/^(long|wide|inches|in|cm|high|tall)$/.test(before))
  )
    return undefined;
  const after = tokens[quantity.next]?.w ?? '';
  if (!quantity.unit && !/^(,|\.|;|sq|square|)$/.test(after)) return undefined;
  if (quantity.unit && !/^(in|cm|mm|ft)$/.test(quantity.unit)) return undefined;
  // "blocks 3, 4 and 5" is a list of blocks
  if (!quantity.unit && after === ',' && tokens[quantity.next + 1]?.kind === 'number') return undefined;
  return { ...makeItem(i, i + 1, token.w, token), measure: 'block' };
}

/** `block 12", border 4"` */
function oneBlockSize(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(block|blk)$/.test(token.w) || !/^(,|\.|;|)$/.test(tokens[i - 1]?.w ?? '')) return undefined;
  const quantity = findQuantity(tokens, i + 1);
  const unit = tokens[(quantity?.next ?? 0) - 1]?.w ?? '';
  if (
    !quantity?.value ||
    !(
      /^("|inch|inches|cm|mm)$/.test(unit) ||
      (!quantity.unit &&
        (!Number.isInteger(quantity.value) ||
          // "sizes in cm: w 150, l 190, block 30"
          (quantity.value > 15 && tokens.some((t) => /^(?:cm|mm)$/.test(t.w)))))
    ) ||
    !/^(,|\.|;|)$/.test(tokens[quantity.next]?.w ?? '')
  )
    return undefined;
  return { i, j: i + 1, w: token.w, token, measure: 'block' };
}

/** "L 204, R 204.5": the letters of two sides, where a block could not be meant. */
function sideLetter(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (token.w !== 'r' && token.w !== 'l') return undefined;
  const k = /^(side|edge|:|=)$/.test(tokens[i + 1]?.w ?? '') ? i + 2 : i + 1;
  const quantity = tokens[k]?.kind === 'number' ? findQuantity(tokens, k) : undefined;
  // "border L 9.5 cm, R 9": the other side was told just before
  const other = (): boolean =>
    tokens[i - 1]?.w === ',' &&
    tokens.slice(Math.max(0, i - 6), i).some((t) => t.w === 'l' || t.w === 'left');
  if (!quantity?.value) return undefined;
  if (quantity.value < 20 && Number.isInteger(quantity.value) && !quantity.unit && !other()) return undefined;
  if (quantity.unit && !/^(in|cm|mm|ft|m)$/.test(quantity.unit)) return undefined;
  return {
    ...makeItem(i, i + 1, token.w, token),
    ...(token.w === 'l' ? { measure: 'length' as const } : {}),
  };
}

/** "1/4 seams", "seams 3/8, top 71 in": how much is sewn in, and no block. */
function seamFraction(tokens: Token[], i: number): Item | undefined {
  const [above, slash, below] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (slash?.w !== '/' || !/^[1357]$/.test(above!.w) || !/^(?:4|8|16)$/.test(below?.w ?? ''))
    return undefined;
  if (!tokens.some((t) => /^(?:in|inch|inches|"|cm|mm|ft)$/.test(t.w))) return undefined;
  const seams = /^(?:seams?|sa|allowance|allowances)$/;
  const before = /^(?:of|is|are|at|:|=)$/.test(tokens[i - 1]?.w ?? '') ? i - 2 : i - 1;
  const after = tokens[i + 3]?.w ?? '';
  if (!seams.test(after) && !(seams.test(tokens[before]?.w ?? '') && /^[,.;&]?$/.test(after)))
    return undefined;
  const quantity = { next: i + 3, value: above!.value! / below!.value!, rule: 'amount.number' };
  return { ...makeItem(i, i + 3, `${above!.w} / ${below!.w}`, above!), end: below!.to, quantity };
}

/** "in strips of 6 cm", "cut in strips 2 1/2 in wide": how it is cut, and no silk that hangs in strips. */
function inStrips(tokens: Token[], i: number): Item | undefined {
  if (!/^(?:in|into)$/.test(tokens[i]!.w) || tokens[i + 1]?.w !== 'strips') return undefined;
  let k = i + 2;
  while (/^(?:of|at|about|roughly|each|cut|,)$/.test(tokens[k]?.w ?? '')) k++;
  const unit = findQuantity(tokens, k)?.unit;
  return unit && /^(?:in|cm|mm|ft)$/.test(unit)
    ? { ...makeItem(i + 1, i + 2, 'strips', tokens[i + 1]!), i, j: i + 2, measure: 'strip' }
    : undefined;
}

/** "1.5 by 2 metres": how wide it is, and no block. */
function decimalBy(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^\d+\.\d+$/.test(token.w) || !/^(?:by|x|×)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
  const other = findQuantity(tokens, i + 2);
  if (!other?.unit || !/^(?:in|cm|mm|ft|m|yd)$/.test(other.unit)) return undefined;
  return {
    ...makeItem(i, i + 1, token.w, token),
    quantity: { next: i + 1, value: token.value!, rule: 'amount.number' },
  };
}

/** "top 1.62 m, bottom 1.6, left 2.05": a length behind each side, and no block. */
function sideLength(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (token.kind !== 'number' || !SIDE.has(tokens[i - 1]?.w ?? '') || !/^\d+\.\d+$/.test(token.w))
    return undefined;
  const quantity = findQuantity(tokens, i);
  if (!quantity || (quantity.unit && !/^(in|cm|mm|ft|m)$/.test(quantity.unit))) return undefined;
  return {
    i,
    j: quantity.next,
    w: tokens
      .slice(i, quantity.next)
      .map((t) => t.w)
      .join(' '),
    token,
    end: tokens[quantity.next - 1]!.to,
    quantity,
  };
}

/** "one eighty by two ten centimetres", "two oh five long" where centimetres are told: 180, 210, 205. */
function threeFigures(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  if (!/^(?:one|two|three)$/.test(token.w) || /^(?:rows?|columns?|blocks?)$/.test(tokens[i - 1]?.w ?? ''))
    return undefined;
  const oh = tokens[i + 1]?.w === 'oh';
  const rest = readCount(tokens, oh ? i + 2 : i + 1);
  if (!rest?.inWords || (oh ? rest.value > 9 : rest.value < 10 || rest.value > 99)) return undefined;
  const unit = readUnit(tokens, rest.next, false);
  const after = tokens[rest.next]?.w ?? '';
  if (
    unit
      ? unit.unit !== 'cm'
      : tokens[i - 1]?.w !== 'by' && !/^(?:by|wide|across|long|high|down|x|×)$/.test(after)
  )
    return undefined;
  const next = unit ? unit.next : rest.next;
  const value = readCount(tokens, i)!.value * 100 + rest.value;
  return {
    ...makeItem(
      i,
      next,
      tokens
        .slice(i, next)
        .map((t) => t.w)
        .join(' '),
      token,
    ),
    end: tokens[next - 1]!.to,
    quantity: { next, value, ...(unit ? { unit: 'cm' as const } : {}), rule: 'amount.number' },
  };
}

/** "sixteen twenty", "eighteen oh five" where millimetres are told: 1620, 1805. */
function fourFigures(tokens: Token[], i: number): Item | undefined {
  const token = tokens[i]!;
  const first = token.kind === 'word' ? readCount(tokens, i) : undefined;
  if (!first || first.value < 10 || first.value > 99) return undefined;
  const oh = tokens[first.next]?.w === 'oh';
  const second = readCount(tokens, oh ? first.next + 1 : first.next);
  if (!second?.inWords || (oh ? second.value > 9 : second.value < 10)) return undefined;
  const unit = readUnit(tokens, second.next, false);
  if (unit && unit.unit !== 'mm' && unit.unit !== 'ml') return undefined;
  const next = unit?.next ?? second.next;
  const words = tokens.slice(i, next).map((t) => t.w);
  return {
    ...makeItem(i, next, words.join(' '), token),
    end: tokens[next - 1]!.to,
    quantity: { next, value: first.value * 100 + second.value, unit: 'mm', rule: 'amount.four-figures' },
  };
}
