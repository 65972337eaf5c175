import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import { splitBlock } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

/** "the strawberry print has faded, and the piece in row two is torn": of the row, the block of the cloth spoken of. */
export function narrowToCloth(
  place: PlaceFound,
  items: Item[],
  spoken: string[] | undefined,
  fabrics: FabricIndex,
): void {
  if (!/row|column/.test(place.rule) || place.places.length < 2) return;
  const lead = items
    .slice(-5, -1)
    .map((x) => x.w)
    .join(' ');
  if (
    !/\b(?:the|that) (?:one|ones|piece|pieces|bit|bits) (?:in|from|on|along|at|down in|up in)(?: the)?$/.test(
      lead,
    )
  )
    return;
  // "the check in row two is torn, the one in row four is fine"
  const names = items.findLast((x) => x.fabric)?.fabric?.names ?? [];
  const named = names.length === 1 ? fabrics.blocks[names[0]!] : undefined;
  // "the foulard gets net, all but the one in row six": excepted from the cloth that the sentence is about
  const excepted =
    /\b(?:but|except|excepting|bar|barring|save|not|from)(?: for)? the (?:one|ones|piece|block) \w+/.test(
      lead,
    );
  for (const cloth of excepted ? [named, spoken] : [spoken, named]) {
    const inside = place.places.filter((p) => cloth?.includes(p));
    if (!inside.length) continue;
    place.places = inside;
    return;
  }
}

/** "2-2, 3-3 and 4-4 have holes", then "patched the one in row two": a few blocks that were told together. */
export const fewSpokenOf = ({ focus }: PlaceContext): string[] | undefined =>
  focus.length > 1 && focus.length < 7 && focus.every((p) => splitBlock(p)) ? focus : undefined;

/** "the duck in row two", "the shattered taffeta in the first row", "the tweed in the corner": of the place, the cloth's own blocks. */
export function narrowToNamedCloth(
  items: Item[],
  grid: QuiltGrid,
  fabrics: FabricIndex,
  after: Token | undefined,
): void {
  const item = items.at(-1)!;
  const place = item.place!;
  const corner = CORNERS[place.places.length === 1 ? place.places[0]! : ''];
  if (
    item.fabric ||
    (!corner &&
      (place.places.length < 2 ||
        (place.kind !== 'blocks' && !/^place\.that-(row|column)$/.test(place.rule))))
  )
    return;
  let k = items.length - 2;
  while (k >= 0 && k > items.length - 6 && TO_ITS_PLACE.test(items[k]!.w)) k--;
  // "lavender check, col 4: both faded"
  const heading = after !== undefined && /^(:|-|--)$/.test(after.w) && opensSentence(items, k - 1);
  if (heading && items[k]?.w === ',' && k === items.length - 2 && items[k - 1]?.fabric) k--;
  const cloth = items[k]?.fabric;
  // "row four and the pinstripe in row two": in that list, but only where it lies in its own row
  const beside = items[k]?.place?.rule === 'place.cloth';
  if (!cloth || (items[k]!.place && !beside) || k === items.length - 2) return;
  // "the first block of row two and the gingham in row four": the "of" is the block's
  const lead = items.slice(Math.max(0, k - 4), k).map((x) => (x.place ? '' : x.w));
  if (
    PUT_IN.test(` ${lead.slice(-3).join(' ')} `) &&
    !/ (all|each|every|both|piece) of (the )?$/.test(` ${lead.join(' ')} `)
  )
    return;
  const blocks = cloth.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const named = corner ? [corner(grid)] : place.places;
  const inside = named.filter((p) => blocks.includes(p));
  if (!inside.length || (!corner && inside.length === named.length)) return;
  const { soft: _soft, ...kept } = place;
  if (beside) items[k]!.place = undefined;
  item.place = { ...kept, places: inside, kind: 'blocks', rule: 'place.cloth-within' };
}

/** Stuff that is put in, and not what lies there: "with the red dot in row three", "a piece of the check from the end". */
const PUT_IN =
  / (with|w|from|using|bought|of|out|into|onto|a|an|some|yards?|metres?|piece|scrap|bit|for|used) /;

const TO_ITS_PLACE =
  /^(in|on|at|of|along|down|up|over|from|by|near|inside|within|the|that|this|its|one|ones|block|blocks|piece|pieces|square|squares|there)$/;

const CORNERS: Record<string, (grid: QuiltGrid) => string> = {
  'corner-top-left': () => '1-1',
  'corner-top-right': ({ blocks }) => `1-${blocks}`,
  'corner-bottom-left': ({ rows }) => `${rows}-1`,
  'corner-bottom-right': ({ rows, blocks }) => `${rows}-${blocks}`,
};

/** "r3 teal dot: torn", "Row 4: the blue resist faded": of the row named first, the cloth's own blocks. */
export function narrowToClothBehind(items: Item[], fabrics: FabricIndex): void {
  let k = items.length - 2;
  if (items[k]?.w === 'the') k--;
  if (/^(?::|-|--)$/.test(items[k]?.w ?? '')) k--;
  const place = items[k]?.place;
  const cloth = items.at(-1)!.fabric!;
  if (place?.kind !== 'blocks' || place.places.length < 2 || !opensSentence(items, k)) return;
  const blocks = cloth.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const inside = place.places.filter((p) => blocks.includes(p));
  if (!inside.length || inside.length === place.places.length) return;
  items[k]!.place = { ...place, places: inside, rule: 'place.cloth-within' };
}

const opensSentence = (items: Item[], k: number): boolean =>
  k <= 0 || /^[.;\n]$/.test(items[k - 1]!.w) || (items[k - 1]!.w === 'the' && opensSentence(items, k - 1));
