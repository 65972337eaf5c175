import { readCount, readOrdinal } from '../../../text/read-number.ts';
import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';
import { contrasted } from '../contrast/contrasted.ts';
import { middleOf } from '../grid.ts';
import { spokenTogether } from '../group-spoken-of.ts';
import { oneOfThem } from '../one-of-them.ts';
import { outermostCorner } from '../outermost.ts';
import type { PlaceContext, PlaceFound } from '../place-found.ts';
import { pointingTo } from './pointing-to.ts';

/**
 * "(2-2, 3-4 and 5-1 are frayed,) all but the last of them need net", "all of those except the middle one", "all bar 3-4": of the blocks
 * just told, without those that are named. `placeAt` reads the blocks named at a token.
 */
export function allBut(
  tokens: Token[],
  i: number,
  ctx: PlaceContext,
  placeAt: (j: number) => PlaceFound | undefined,
): PlaceFound | undefined {
  if (!/^(all|every)$/.test(w(tokens, i))) return undefined;
  let j = i + 1;
  if (w(tokens, i) === 'every' && w(tokens, j++) !== 'one') return undefined;
  const named = j;
  if (w(tokens, j) === 'of' && /^(them|those|these)$/.test(w(tokens, j + 1))) j += 2;
  else if (/^(those|these)$/.test(w(tokens, j))) j++;
  const but = exceptAt(tokens, j);
  const group = but ? spokenTogether(ctx) : undefined;
  if (!but || !group || group.length < 3) return undefined;
  // "all of them but 3-4": what is excepted from words that stand there is read with the whole sentence
  const out =
    endAt(tokens, but, group, ctx) ??
    cornerOf(tokens, but, group) ??
    memberOf(tokens, but, group, ctx) ??
    (j === named ? namedAt(tokens, but, group, placeAt) : undefined);
  // "row 3 tied, all but 3-4", "all but 2-2, sorry", "all but 3-4, which is sound"
  const behind = w(tokens, out?.next ?? i);
  const heads = i === 0 || /^([,.;:(]|--|and)$/.test(w(tokens, i - 1));
  if (heads ? !VERB.test(behind) : /^(that|which)$/.test(behind)) return undefined;
  if (!out) return undefined;
  const rest = group.filter((p) => !out.places.includes(p));
  return { ...pointingTo(out.next, rest, 'place.all-but-one'), bar: out.places };
}

const VERB =
  /^(is|'s|are|'re|was|were|has|have|had|needs?|wants?|gets?|got|will|'ll|can|could|should|looks?|smells?)$/;

/** The index behind "but", "except for", "apart from"; undefined where none stands at `j`. */
function exceptAt(tokens: Token[], j: number): number | undefined {
  const two = `${w(tokens, j)} ${w(tokens, j + 1)}`;
  if (/^(except for|but for|apart from|aside from|other than|but not)$/.test(two)) return j + 2;
  return /^(but|except|bar|barring|excepting|save|minus)$/.test(w(tokens, j)) ? j + 1 : undefined;
}

/** "the last", "the first one", "the middle one of them", "the last two": which of the group. */
function endAt(
  tokens: Token[],
  k: number,
  group: string[],
  ctx: PlaceContext,
): { places: string[]; next: number } | undefined {
  if (w(tokens, k) !== 'the') return undefined;
  const word = w(tokens, k + 1);
  const many = /^(first|last)$/.test(word) ? readCount(tokens, k + 2) : undefined;
  const counted = many && many.value > 1 && many.value < group.length ? many : undefined;
  const nth = readOrdinal(tokens, k + 1);
  const middle = /^(middle|centre|center)$/.test(word) ? middleOf(group, ctx.grid) : undefined;
  const one = middle ?? (word === 'last' ? group.at(-1) : group[(nth?.value ?? 0) - 1]);
  if (!counted && !one) return undefined;
  let next = counted?.next ?? nth?.next ?? k + 2;
  if (/^(one|block|ones|blocks)$/.test(w(tokens, next))) next++;
  // "all but the last row"
  if (/^(row|column|col|corner|side|edge|border|time|day|week|of|in)s?$/.test(w(tokens, next))) {
    if (w(tokens, next) !== 'of' || !/^(them|those|these)$/.test(w(tokens, next + 1))) return undefined;
    next += 2;
  }
  const places = counted
    ? word === 'first'
      ? group.slice(0, counted.value)
      : group.slice(-counted.value)
    : [one!];
  return { places, next };
}

/** "all but the top left": of the group, the one that lies farthest up and farthest left. */
function cornerOf(
  tokens: Token[],
  k: number,
  group: string[],
): { places: string[]; next: number } | undefined {
  const at = w(tokens, k) === 'the' ? k + 1 : k;
  const [up, side] = [w(tokens, at), w(tokens, at + 1)];
  if (!/^(top|upper|bottom|lower)$/.test(up) || !/^(left|right)$/.test(side)) return undefined;
  let next = at + 2;
  while (/^(hand|corner|one|block)$/.test(w(tokens, next))) next++;
  if (/^(of|side|edge)$/.test(w(tokens, next))) return undefined;
  const place = outermostCorner(group, up, side);
  return place ? { places: [place], next } : undefined;
}

/** "all but the bottom one", "all except the row five one": the one of the group that is picked so. */
function memberOf(
  tokens: Token[],
  k: number,
  group: string[],
  ctx: PlaceContext,
): { places: string[]; next: number } | undefined {
  const picked = oneOfThem(tokens, k, ctx) ?? contrasted(tokens, k, ctx);
  return picked?.places.length &&
    picked.places.length < group.length &&
    picked.places.every((p) => group.includes(p))
    ? picked
    : undefined;
}

/** "all but 3-4": a block of the group that is named. */
function namedAt(
  tokens: Token[],
  k: number,
  group: string[],
  placeAt: (j: number) => PlaceFound | undefined,
): { places: string[]; next: number } | undefined {
  const named = placeAt(w(tokens, k) === 'the' ? k + 1 : k);
  return named?.places.length && named.places.every((p) => group.includes(p)) ? named : undefined;
}
