import { nameOfPlace } from '../../core/shape/name-of-place.ts';
import { shapeOf } from '../../core/shape/shape-of.ts';
import type { Place } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

const PART_WORDS: Record<string, string> = {
  top: 'the top',
  batting: 'the batting',
  backing: 'the backing',
  binding: 'the binding',
  border: 'the border',
  'border-top': 'top border',
  'border-right': 'right border',
  'border-bottom': 'bottom border',
  'border-left': 'left border',
  edge: 'the edge',
  'edge-top': 'top edge',
  'edge-right': 'right edge',
  'edge-bottom': 'bottom edge',
  'edge-left': 'left edge',
  'corner-top-left': 'top left corner',
  'corner-top-right': 'top right corner',
  'corner-bottom-right': 'bottom right corner',
  'corner-bottom-left': 'bottom left corner',
  sashing: 'the sashing',
  quilt: 'the whole quilt',
};

/** `3-2` -> `[3, 2]`; null for a named part. */
export function blockOf(place: Place): [row: number, block: number] | null {
  const match = /^(\d+)-(\d+)$/.exec(place);
  return match ? [Number(match[1]), Number(match[2])] : null;
}

/** One place in words: "row 3, block 2", "top border". */
export function onePlaceWords(
  place: Place,
  spelling: 'british' | 'american' = 'british',
  grid: Pick<QuiltGrid, 'placeNames'> = {},
): string {
  const name = nameOfPlace(grid, place);
  if (name) return blockOf(place) ? `${name} (${place})` : name;
  const block = blockOf(place);
  if (block) return `row ${block[0]}, block ${block[1]}`;
  if (place === 'batting' && spelling === 'british') return 'the wadding';
  return PART_WORDS[place] ?? place;
}

const list = (items: string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

/**
 * Many places in as few words as a person would use: whole rows as rows, the rest by row.
 * `["4-1","4-2","4-3","2-2"]` on a grid three across -> "row 4 and row 2, block 2".
 */
export function placesWords(
  places: readonly Place[],
  grid: QuiltGrid,
  spelling: 'british' | 'american' = 'british',
): string {
  const byRow = new Map<number, number[]>();
  const parts: string[] = [];
  const shape = shapeOf(grid);
  const said = new Set(places);
  if (shape.blocks.length > 1 && shape.blocks.every((place) => said.has(place)))
    return list([
      'every block',
      ...places.filter((place) => !blockOf(place)).map((place) => onePlaceWords(place, spelling)),
    ]);
  const wholeRows: number[] = [];
  for (let row = 1; row <= grid.rows; row++) {
    const own = shape.row(row);
    if (own.length < 2 || !own.every((place) => said.has(place))) continue;
    wholeRows.push(row);
    for (const place of own) said.delete(place);
  }
  const names: string[] = [];
  for (const [name, named] of Object.entries(grid.placeNames ?? {})) {
    if (!named.every((place) => said.has(place))) continue;
    names.push(`the ${name.replace(/^the /i, '')}`);
    for (const place of named) said.delete(place);
  }
  for (const place of said) {
    const block = blockOf(place);
    if (!block) parts.push(onePlaceWords(place, spelling));
    else byRow.set(block[0], [...(byRow.get(block[0]) ?? []), block[1]]);
  }
  const phrases: string[] = [];
  for (const [row, blocks] of [...byRow].sort((a, b) => a[0] - b[0])) {
    const distinct = [...new Set(blocks)].sort((a, b) => a - b);
    if (distinct.length === 1) phrases.push(`row ${row}, block ${distinct[0]}`);
    else phrases.push(`row ${row}, blocks ${list(distinct.map(String))}`);
  }
  if (wholeRows.length === 1) phrases.unshift(`row ${wholeRows[0]}`);
  if (wholeRows.length > 1) phrases.unshift(`rows ${list(wholeRows.map(String))}`);
  const all = [...names, ...phrases, ...parts];
  return all.some((phrase) => phrase.includes(',')) && all.length > 1
    ? `${all.slice(0, -1).join('; ')} and ${all.at(-1)}`
    : list(all);
}
