import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { splitBlock, unique } from './grid.ts';

const GENERAL = new Set(['quilt', 'top', 'backing', 'batting', 'binding', 'sashing', 'border', 'edge']);
const isPronoun = (item: Item): boolean =>
  ['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one'].includes(item.place?.rule ?? '');

export type ClausePlaces = {
  places: string[];
  items: Item[];
  kind: 'specific' | 'general' | 'pronoun' | 'none';
  outside: boolean;
  /** "one of the others": a place is meant that can't be known. */
  unknown: boolean;
  /** "row two and the brown stripe": the blocks of a cloth are among them already. */
  withCloths?: boolean;
};

/**
 * The places that a clause is about. Blocks, sides and corners win over a part named as a whole ("the batting is lumpy in
 * the last two blocks"), a part over a pronoun; "the whole quilt" only counts alone.
 */
export function placesOfClause(given: Item[]): ClausePlaces {
  const items = withoutSummary(sashingAlone(sidesOfBorder(given)));
  const ofPart = items.some(
    (x) => x.place?.kind === 'part' && !/^(quilt|top)$/.test(x.place.places[0] ?? ''),
  );
  const placed = items.filter(
    (x, k) =>
      x.place &&
      !isEdgeOfBlock(items, k) &&
      !isBlocksOwnEdge(items, k) &&
      !(ofPart && x.place.rule === 'place.half') &&
      !isDenied(items, k) &&
      !isNearEdge(items, k),
  );
  const outside = placed.some((x) => x.place!.outside && !x.place!.places.length);
  const specific = placed.filter((x) => !isPronoun(x) && x.place!.places.some((p) => !GENERAL.has(p)));
  if (specific.length) {
    const blocks = specific.filter((x) => x.place!.places.some((p) => splitBlock(p)));
    // "the corner of 3-2": the corner is the block's
    // "2-4 is torn along the bottom": the side too
    const loose = (x: Item): boolean =>
      Boolean(x.place!.soft) || /^place\.(side-alone|part-then-side|half)$/.test(x.place!.rule);
    const firm = specific.filter((x) => !loose(x));
    // "the top right corner and 2-3": told in one list with them it is no corner of the block
    const chosen =
      blocks.some((x) => !loose(x)) && specific.some(loose)
        ? specific.filter((x) => !loose(x) || (x.place!.rule === 'place.corner' && isListed(items, x, firm)))
        : specific;
    // "the face, the back and all four corners": parts named in one list with them belong to it
    const inList = placed.filter(
      (x) =>
        !chosen.includes(x) &&
        !isPronoun(x) &&
        x.place!.places.some((p) => GENERAL.has(p) && p !== 'quilt') &&
        // "the left border and the top": its own top
        !(x.w === 'top' && chosen.some((y) => y.place!.places.some((p) => /^(border|edge)-/.test(p)))) &&
        isListed(items, x, chosen),
    );
    // "pressed rows 1 and 2, front and back": from both sides
    const bothSides =
      facesOf(inList) &&
      chosen.length === blocks.length &&
      items.indexOf(inList[0]!) > items.indexOf(chosen.at(-1)!);
    const listed = bothSides ? [] : inList;
    const kept = narrower(chosen, items);
    const crossed = listed.length ? undefined : (restOfRow(items, chosen) ?? crossing(items, kept));
    if (crossed) return { places: crossed, items: chosen, kind: 'specific', outside, unknown: false };
    const first = firstOfPair(items, kept) ?? pointedBeside(items, kept);
    return {
      places: unique([
        ...(first?.place?.places ?? []),
        ...[...listed, ...kept].flatMap((x) => x.place!.places),
      ]),
      items: chosen,
      kind: 'specific',
      outside,
      unknown: false,
    };
  }
  const general = placed.filter((x) => !isPronoun(x) && x.place!.places.length);
  // "that one has a split seam at the outside edge": the edge of the block
  const outer =
    general.length > 0 &&
    items.some((x) => x.seam || x.finding === 'split-seam') &&
    general.every((x) => x.place!.places[0] === 'edge') &&
    placed.some((x) => isPronoun(x) && x.place!.places.some((p) => splitBlock(p)));
  if (general.length && !outer) {
    const parts = general.filter((x) => x.place!.places[0] !== 'quilt');
    // "vacuumed the whole thing, front and back": all of it, told once more by its faces
    if (facesOf(parts) && ALL_OF_IT.test(wordsBetween(items, 0, items.indexOf(parts[0]!))))
      return { places: ['quilt'], items: [parts[0]!], kind: 'general', outside, unknown: false };
    const chosen = parts.length ? parts : general;
    return {
      places: unique(chosen.flatMap((x) => x.place!.places)),
      items: chosen,
      kind: 'general',
      outside,
      unknown: false,
    };
  }
  const pronouns = placed.filter(isPronoun);
  if (pronouns.length) {
    const places = unique(pronouns.at(-1)!.place!.places);
    return { places, items: pronouns, kind: places.length ? 'pronoun' : 'none', outside, unknown: false };
  }
  return {
    places: [],
    items: [],
    kind: 'none',
    outside,
    unknown: placed.some((x) => x.place!.rule === 'place.one-of'),
  };
}

/** "2-3 is torn and 4-2 is faded and both are mouldy": does the pronoun hold more than what the sentence told last? */
export const holdsMoreThan = (placed: ClausePlaces, told: string[]): boolean =>
  placed.kind === 'pronoun' &&
  placed.places.length > told.length &&
  placed.items.every((x) => /^place\.(both|those|them|all-of-them)$/.test(x.place!.rule)) &&
  told.every((p) => splitBlock(p) && placed.places.includes(p));

const facesOf = (parts: Item[]): boolean => {
  const told = unique(parts.flatMap((x) => x.place!.places));
  return told.length === 2 && told.includes('top') && told.includes('backing');
};

const ALL_OF_IT =
  / (?:(?:(?:the|this) )?(?:whole|entire) (?:thing|quilt|lot)|the lot|everything|it all|all of it|all over|whole quilt)(?: [a-z]+ed)?(?: down| over| off)? (?:[,(-] )?(?:on |both |from )?(?:the |its )?$/;

/** "it's too near the edge": which way, and no place of its own. */
const isNearEdge = (items: Item[], k: number): boolean =>
  items[k]!.place!.places.join() === 'edge' &&
  items[k - 1]?.w === 'the' &&
  (items[k - 2]?.w === 'near' ||
    (items[k - 2]?.w === 'to' && /^(close|near|next)$/.test(items[k - 3]?.w ?? '')));

/** "frayed in 2-3 and 4-2, not in the other one": a place that it is not at, where it was told before where it is. */
function isDenied(items: Item[], k: number): boolean {
  const at = /^(in|on|at|along|the|its)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
  // "the top without its borders is out of square"
  if (items[at]?.w === 'without' && items.slice(0, at).some((x) => x.place?.places.length)) return true;
  // "trimmed the batting flush with the top": how far, and not what
  if (items[at]?.w === 'with' && /^(flush|level|even)$/.test(items[at - 1]?.w ?? '')) return true;
  // "stains on 1-2 and 3-2, nothing on the one between"
  return (
    /^(not|nothing)$/.test(items[at]?.w ?? '') &&
    items.slice(0, at).some((x) => x.place?.places.length && !isPronoun(x))
  );
}

/** "the top two rows, they're in good shape, every last block": every block of those, and not of the quilt. */
function withoutSummary(items: Item[]): Item[] {
  const at = items.findIndex(
    (x, k) =>
      /^place\.(every-block|all-blocks)$/.test(x.place?.rule ?? '') &&
      // "the red has run in rows one and two every block"
      (items[k - 1]?.w === ',' || /row|column/.test(items[k - 1]?.place?.rule ?? '')),
  );
  if (at < 1) return items;
  const all = items[at]!.place!.places;
  const named = items.slice(0, at).some((x) => {
    const places = x.place?.places ?? [];
    return places.length > 1 && places.length < all.length && places.every((p) => all.includes(p));
  });
  return named ? items.filter((_x, k) => k !== at) : items;
}

/** "between that one and its neighbour to the right": the one pointed at is the first of the two. */
function firstOfPair(items: Item[], kept: Item[]): Item | undefined {
  const at = items.findIndex((x) => x.w === 'between');
  const first = items[at + 1];
  return at >= 0 &&
    first?.place &&
    isPronoun(first) &&
    first.place.places.length === 1 &&
    /^(and|&)$/.test(items[at + 2]?.w ?? '') &&
    kept.includes(items[at + 3]!)
    ? first
    : undefined;
}

/** "fused interfacing behind that & 2-1", "patched 2-1 and that one": what is pointed at is one of the list. */
function pointedBeside(items: Item[], kept: Item[]): Item | undefined {
  const joint = items.findIndex(
    (x, k) =>
      (/^(and|&|\+|plus)$/.test(x.w) &&
        ((isPointed(pointedBefore(items, k)) && kept.includes(listedBehind(items, k)!)) ||
          (kept.includes(items[k - 1]!) &&
            isPointed(items[k + 1]) &&
            !items[k + 2]?.w.startsWith('that')))) ||
      // "trimmed it, the left one too"
      (x.w === ',' &&
        isPointed(items[k - 1]) &&
        kept.includes(listedBehind(items, k)!) &&
        tooAt(items, items.indexOf(listedBehind(items, k)!) + 1)),
  );
  if (joint >= 0)
    return [pointedBefore(items, joint)!, items[joint + 1]!].find((x) => x !== undefined && isPronoun(x));
  // "that one's finished as well and the first three of the next"
  const [subject] = items;
  const rest = items.findIndex((x) => kept.includes(x));
  return /^place\.(that-one|those|them|both|all-of-them)$/.test(subject?.place?.rule ?? '') &&
    /^('s|is|are|'re|were)$/.test(items[1]?.w ?? '') &&
    rest === items.length - 1 &&
    /^(and|&|\+|plus)$/.test(items[items[rest - 1]!.w === 'the' ? rest - 2 : rest - 1]!.w)
    ? subject
    : undefined;
}
/** What is pointed at before a joint, where a comma may stand between: "trimmed it, and the left one". */
const pointedBefore = (items: Item[], k: number): Item | undefined =>
  items[k - 1]?.w === ',' ? items[k - 2] : items[k - 1];
/** What is listed behind a joint, over the small words before it: "and also the left one". */
const listedBehind = (items: Item[], k: number): Item | undefined => {
  let at = k + 1;
  while (at < k + 4 && !items[at]?.place && /^(and|the|also|then|its|both|on)$/.test(items[at]?.w ?? ''))
    at++;
  // "added it and the top border is faded": the next statement
  return at > k + 1 && IS_SAID_OF.test(items[at + 1]?.w ?? '') ? undefined : items[at];
};
const IS_SAID_OF = /^('s|is|are|'re|has|have|was|were|needs?|wants?|looks?|will|'ll|gets?|got)$/;
const tooAt = (items: Item[], k: number): boolean =>
  /^(too|also|as well)$/.test(items[k]?.w ?? '') || (items[k]?.w === 'as' && items[k + 1]?.w === 'well');
const isPointed = (x: Item | undefined): boolean =>
  x?.place !== undefined &&
  /^place\.(that-one|those|it|them)$/.test(x.place.rule) &&
  x.place.places.length < 5;

/** Words that may stand between the places of one list, and those that join them. */
const WITHIN_LIST =
  /^(,|and|&|\+|plus|the|all|both|its|also|blocks?|squares?|in|on|at|of|then|as|well|along|together|with|round|around|as well as|along with|together with|and also)$/;
const JOINS_LIST = /^(,|and|&|\+|plus|as well as|along with|together with|and also)$/;

/** Does `x` stand in one list with one of the others: "the backing and 2-3", "2-3, 2-4 and the sashing"? */
function isListed(items: Item[], x: Item, others: Item[]): boolean {
  const at = items.indexOf(x);
  for (const step of [1, -1]) {
    let joins = false;
    for (let k = at + step; items[k] && Math.abs(k - at) < 10; k += step) {
      const { w, place } = items[k]!;
      if (others.includes(items[k]!)) {
        if (joins) return true;
        break;
      }
      // "border on, top and bottom only": only behind what joins is it "on" the next
      if (/^(in|on|at|of|round|around)$/.test(w) && joins !== step > 0) break;
      if (
        JOINS_LIST.test(w) ||
        (w === 'as' && items[k + 1]?.w === 'well') ||
        (w === 'with' && items[k - 1]?.w === 'along')
      )
        joins = true;
      else if (isOneMore(items, k)) continue;
      // "rows 1-3 only, and the backing", but "the batting, and only the upper one"
      else if (!WITHIN_LIST.test(w) && !place && !items[k]!.fabric && !(w === 'only' && items[k - 1]?.place))
        break;
    }
  }
  return false;
}

const ONE_MORE =
  /^(another|another one|one|one more|some|some more|more|again|a|second|third|further|two|three|few|couple|of|similar|smaller|bigger|little|small|big|fainter|larger|worse|others?|there 's|there is|'s|too)$/;

/** "oil on 3-5, and another on the backing": between what joins and where the next one is. */
function isOneMore(items: Item[], k: number): boolean {
  let from = k;
  let to = k;
  if (LEADS_PLACE.test(items[k]!.w)) from--;
  while (isMore(items[from])) from--;
  while (isMore(items[to])) to++;
  return (
    from < to &&
    isMore(items[from + 1]) &&
    JOINS_LIST.test(items[from]?.w ?? '') &&
    LEADS_PLACE.test(items[to]?.w ?? '')
  );
}
const isMore = (x: Item | undefined): boolean =>
  x !== undefined && (ONE_MORE.test(x.w) || Boolean(x.quantity && !x.quantity.unit)) && !x.place;
const LEADS_PLACE = /^(in|on|at|along|down|across|near|by|over|up|round|around)$/;

const isRows = (x: Item): boolean =>
  /^place\.(row|ordinal-row|counted-rows|that-row|row-heard)$/.test(x.place!.rule);
const isColumns = (x: Item): boolean =>
  /^place\.(column|ordinal-column|counted-columns|side-column|that-column)$/.test(x.place!.rule);

/**
 * "row three has a water mark that runs from the second block to the end", "row five is stained as far as the third block":
 * the row was named, and then where in it the thing begins or stops.
 */
function restOfRow(items: Item[], chosen: Item[]): string[] | undefined {
  const [row, block] = chosen;
  if (!row || !block || chosen.length > 2) return undefined;
  const at = splitBlock(block.place!.places[0] ?? '');
  if (
    !isRows(row) ||
    block.place!.places.length !== 1 ||
    !row.place!.places.includes(block.place!.places[0]!)
  )
    return undefined;
  const k = items.indexOf(block);
  const before = wordsBetween(items, k - 5, k);
  const after = wordsBetween(items, k + 1, k + 6);
  const along = row.place!.places.filter((p) => splitBlock(p)?.row === at!.row);
  if (/ from (?:the |about |around )?$/.test(before))
    return /^ (?:right |all the way )?(?:to the (?:right hand |far |right )?(?:end|edge|side) |onwards? |on |along |across |over |rightwards? )/.test(
      after,
    )
      ? along.filter((p) => splitBlock(p)!.block >= at!.block)
      : undefined;
  return / (?:as far as|up to|along to|across to|through to|right to|over to) (?:the |about )?$/.test(before)
    ? along.filter((p) => splitBlock(p)!.block <= at!.block)
    : undefined;
}

/**
 * Rows and columns of one clause cross: "mildew in the last two columns, just the bottom three rows of them", "column five
 * down to row four". Joined by "and" they are both meant.
 */
function crossing(items: Item[], kept: Item[]): string[] | undefined {
  if (kept.length !== 2) return undefined;
  const [first, second] = kept as [Item, Item];
  // "the seam between rows two and three has split in block four"
  if (
    items.some((x) => x.seam) &&
    isRows(first) &&
    /^place\.(block-same-row|block-alone)$/.test(second.place!.rule) &&
    /^(in|at|by)$/.test(items[items.indexOf(second) - 1]?.w ?? '')
  ) {
    const blocks = second.place!.places.map((p) => splitBlock(p)?.block);
    return first.place!.places.filter((p) => blocks.includes(splitBlock(p)?.block));
  }
  // "row four, the seam between columns two and three"
  const [few, many] =
    first.place!.places.length <= second.place!.places.length ? [first, second] : [second, first];
  if (
    items.some((x) => x.seam) &&
    ((isRows(few) && isColumns(many)) || (isColumns(few) && isRows(many))) &&
    items.some((x) => x.w === 'between')
  )
    return many.place!.places.filter((p) => few.place!.places.includes(p));
  if (!((isRows(first) && isColumns(second)) || (isColumns(first) && isRows(second)))) return undefined;
  const between = ` ${items
    .slice(items.indexOf(first) + 1, items.indexOf(second))
    .map((x) => x.w)
    .join(' ')} `;
  const line = splitBlock(second.place!.places.at(-1) ?? '');
  const lines = (p: string): number => (isRows(second) ? splitBlock(p)!.row : splitBlock(p)!.block);
  const at = line && (isRows(second) ? line.row : line.block);
  if (at !== undefined && / (down|up|out|over|along|across) to | as far as | until | till /.test(between)) {
    const up = / up to /.test(between) && isRows(second);
    return first.place!.places.filter((p) => splitBlock(p) && (up ? lines(p) >= at : lines(p) <= at));
  }
  const after = items[items.indexOf(second) + 1]?.w;
  // "columns one and two from row three down"
  if (/ from (?:the )?$/.test(between) && second.place!.places.length > first.place!.places.length / 2) {
    const both = first.place!.places.filter((p) => second.place!.places.includes(p));
    if (both.length) return both;
  }
  // "in the right-hand column and in the last row": both
  if (/^ (?:and|&|\+) (?:also )?(?:in|on|along) /.test(between)) return undefined;
  if (/ (just|only|in|of|but only) /.test(between) || after === 'of')
    return first.place!.places.filter((p) => second.place!.places.includes(p));
  return undefined;
}

/** A row named and then some of its blocks ("the bottom row, from blocks one and seven"): the blocks are meant, where they are not told of besides. */
function narrower(list: Item[], items: Item[]): Item[] {
  return list.filter(
    (x) =>
      !list.some(
        (y) =>
          y !== x &&
          !joinedBesides(items, y) &&
          y.place!.places.length < x.place!.places.length &&
          y.place!.places.every((p) => x.place!.places.includes(p)) &&
          list.indexOf(y) > list.indexOf(x),
      ),
  );
}

/** "row four and 4-2", "the top two rows and both 1-1 and 3-2": told besides, and not as what is meant of it. */
function joinedBesides(items: Item[], x: Item): boolean {
  let k = items.indexOf(x) - 1;
  // "and the first two blocks in it", "and the second one in"
  if (/^(in|of|along)$/.test(items[k + 2]?.w ?? '') || / (?:in|of) (?:it|that|them|there)$/.test(x.w))
    return false;
  while (/^(the|both|all|also|of)$/.test(items[k]?.w ?? '')) k--;
  return /^(and|&|\+|plus|as well as|along with|together with)$/.test(items[k]?.w ?? '');
}

/** "the sashing between 2-2 and 2-3": the sashing, and no block. */
function sashingAlone(items: Item[]): Item[] {
  const at = items.findIndex((x) => x.part === 'sashing');
  if (at < 0 || !/^(between|around|round|beside|below|above|under|over|next)$/.test(items[at + 1]?.w ?? ''))
    return items;
  return items.filter((x, k) => !(k > at && x.place?.kind === 'blocks'));
}

/** "the border's gone tender across the top": the side is the border's. */
function sidesOfBorder(items: Item[]): Item[] {
  const sided = (x: Item): boolean => /^place\.side(-alone)?$/.test(x.place?.rule ?? '');
  if (!items.some((x) => x.part === 'border') || !items.some(sided)) return items;
  return items.map((x) =>
    x.place && sided(x)
      ? { ...x, place: { ...x.place, places: x.place.places.map((p) => p.replace('edge-', 'border-')) } }
      : x,
  );
}

/** "3-4 torn at the bottom edge", "2-3, a stain near its right edge": of the block that was told before. */
function isBlocksOwnEdge(items: Item[], k: number): boolean {
  const place = items[k]!.place!;
  if (place.kind !== 'part' || !place.places.every((p) => p.startsWith('edge-'))) return false;
  if (!/ (edge|side)$/.test(items[k]!.w)) return false;
  const lead = /^(the|its)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
  if (!/^(at|along|near|on|by|down|across|in|close to|towards?)$/.test(items[lead]?.w ?? '')) return false;
  if (/^(and|&|plus)$/.test(items[lead - 1]?.w ?? '') || isOneMore(items, lead)) return false;
  const before = items.slice(0, lead);
  // "bound it from 6-1 along the bottom edge"
  if (before.some((x) => x.part || (x.place && x.place.kind !== 'blocks') || x.action)) return false;
  return before.some((x) => x.finding || x.fail) && before.some((x) => x.place?.places.length === 1);
}

/** "along the left edge of 3-1": the block is meant, and the edge is its own. */
function isEdgeOfBlock(items: Item[], k: number): boolean {
  const place = items[k]!.place!;
  if (place.kind !== 'part' || !place.places.every((p) => /^(edge|corner)/.test(p))) return false;
  // "2-2's whole left side has come away"
  const whose = /^(whole|entire|own|very)$/.test(items[k - 1]?.w ?? '') ? k - 2 : k - 1;
  if (items[whose]?.w === "'s" && items[whose - 1]?.place?.kind === 'blocks') return true;
  let m = k + 1;
  if (items[m]?.w !== 'of' && items[m]?.w !== 'in') return false;
  m++;
  if (items[m]?.w === 'the') m++;
  return items[m]?.place?.kind === 'blocks' && items[m]!.place!.places.length === 1;
}
