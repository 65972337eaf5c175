import type { Place } from '../../../shared/entry.ts';
import type { QuiltGrid } from '../../../shared/quilt.ts';
import { nameOfPlace } from '../../shape/name-of-place.ts';
import { shapeOf } from '../../shape/shape-of.ts';
import { countPhrase, type Spelling } from './figure-phrases.ts';
import { listPhrase } from './list-phrase.ts';

/** What must be known of a quilt to say its places as people say them. */
export type Grid = Pick<QuiltGrid, 'rows' | 'blocks' | 'fabrics' | 'shape' | 'placeNames'> & {
  spelling: Spelling;
};

const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
];

type Phrase = { preposition: string; text: string };

/** Named parts with the preposition that damage or work takes there. */
const PARTS: Record<string, Phrase> = {
  quilt: { preposition: 'across', text: 'the whole quilt' },
  top: { preposition: 'across', text: 'the patchwork top' },
  batting: { preposition: 'in', text: 'the batting' },
  backing: { preposition: 'in', text: 'the backing' },
  binding: { preposition: 'along', text: 'the binding' },
  border: { preposition: 'in', text: 'the border' },
  'border-top': { preposition: 'in', text: 'the top border' },
  'border-right': { preposition: 'in', text: 'the right border' },
  'border-bottom': { preposition: 'in', text: 'the bottom border' },
  'border-left': { preposition: 'in', text: 'the left border' },
  edge: { preposition: 'along', text: 'the edge' },
  'edge-top': { preposition: 'along', text: 'the top edge' },
  'edge-right': { preposition: 'along', text: 'the right edge' },
  'edge-bottom': { preposition: 'along', text: 'the bottom edge' },
  'edge-left': { preposition: 'along', text: 'the left edge' },
  'corner-top-left': { preposition: 'at', text: 'the top left corner' },
  'corner-top-right': { preposition: 'at', text: 'the top right corner' },
  'corner-bottom-right': { preposition: 'at', text: 'the bottom right corner' },
  'corner-bottom-left': { preposition: 'at', text: 'the bottom left corner' },
  sashing: { preposition: 'in', text: 'the sashing' },
};
const SIDES = ['top', 'right', 'bottom', 'left'];
const CORNERS = ['top-left', 'top-right', 'bottom-right', 'bottom-left'];

/** `3-2` -> `[3, 2]`; null for a named part. */
export function blockAt(place: Place): [row: number, block: number] | null {
  const match = /^(\d+)-(\d+)$/.exec(place);
  return match ? [Number(match[1]), Number(match[2])] : null;
}

const ordinal = (n: number): string => ORDINALS[n - 1] ?? `${n}${suffix(n)}`;
function suffix(n: number): string {
  const tens = n % 100;
  if (tens > 10 && tens < 14) return 'th';
  return ['th', 'st', 'nd', 'rd'][n % 10] ?? 'th';
}

/** 1, 2, 3, 5 -> ["1 to 3", "5"]; pairs stay apart. */
function runs(numbers: readonly number[], say: (n: number) => string): string[] {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const out: string[] = [];
  for (let i = 0; i < sorted.length; ) {
    let j = i;
    while (sorted[j + 1] === sorted[j]! + 1) j++;
    if (j - i >= 2) out.push(`${say(sorted[i]!)} to ${say(sorted[j]!)}`);
    else for (let k = i; k <= j; k++) out.push(say(sorted[k]!));
    i = j + 1;
  }
  return out;
}
const numbersIn = (numbers: readonly number[]): string => listPhrase(runs(numbers, String), 'british');

function rowsWord(rows: readonly number[]): string {
  return `${rows.length === 1 ? 'row' : 'rows'} ${numbersIn(rows)}`;
}

function blockPhrases(blocks: ReadonlySet<string>, grid: Grid): string[] {
  const shape = shapeOf(grid);
  const total = shape.blocks.length;
  const only = blocks.size === 1 ? nameOfPlace(grid, [...blocks][0]!) : undefined;
  if (only) return [only];
  // Most entries name one block, and no rule below can say that shorter.
  if (blocks.size === 1) return byRow(blocks, grid);
  if (blocks.size === total) return ['every block'];
  const left = new Set(blocks);
  const out: string[] = [];
  const take = (places: Iterable<string>): void => {
    for (const place of places) left.delete(place);
  };
  const fabrics = Object.entries(grid.fabrics ?? {})
    .map(([name, places]) => ({ name, places: [...new Set(places.filter((p) => blockAt(p)))] }))
    .filter((fabric) => fabric.places.length > 1)
    .sort((a, b) => b.places.length - a.places.length);
  for (const fabric of fabrics) {
    if (fabric.places.length === left.size && fabric.places.every((place) => left.has(place))) {
      return [`the ${fabric.name} blocks`];
    }
  }
  if (total >= 8 && total - blocks.size <= 2) {
    const missing = shape.blocks.filter((place) => !blocks.has(place));
    return [`every block but ${listPhrase(byRow(missing, grid), grid.spelling)}`];
  }
  const wholeRows: number[] = [];
  if (grid.blocks > 1) {
    for (let row = 1; row <= grid.rows; row++) {
      const places = shape.row(row);
      if (places.length > 1 && places.every((place) => left.has(place))) {
        wholeRows.push(row);
        take(places);
      }
    }
  }
  if (wholeRows.length) out.push(`all of ${rowsWord(wholeRows)}`);
  const wholeColumns: number[] = [];
  if (grid.rows > 1) {
    for (let block = 1; block <= grid.blocks; block++) {
      const places = shape.column(block);
      // A column that crosses whole rows is still a whole column if most of it is left to say.
      const open = places.filter((place) => left.has(place)).length;
      if (places.every((place) => blocks.has(place)) && open >= 2) {
        wholeColumns.push(block);
        take(places);
      }
    }
  }
  if (wholeColumns.length) {
    out.push(`all of ${wholeColumns.length === 1 ? 'column' : 'columns'} ${numbersIn(wholeColumns)}`);
  }
  for (const [name, places] of Object.entries(grid.placeNames ?? {})) {
    if (!places.every((place) => left.has(place))) continue;
    out.push(`the ${name.replace(/^the /i, '')}`);
    take(places);
  }
  for (const fabric of fabrics) {
    if (fabric.places.every((place) => left.has(place))) {
      out.push(`the ${fabric.name} blocks`);
      take(fabric.places);
    }
  }
  return [...out, ...byRow(left, grid)];
}

/** "the second and third blocks of row 3"; rows with the same blocks are said together. */
function byRow(places: Iterable<string>, grid: Grid): string[] {
  const rows = new Map<number, number[]>();
  for (const place of places) {
    const at = blockAt(place);
    if (at) rows.set(at[0], [...(rows.get(at[0]) ?? []), at[1]]);
  }
  const alike = new Map<string, { blocks: number[]; rows: number[] }>();
  for (const [row, blocks] of [...rows].sort((a, b) => a[0] - b[0])) {
    const sorted = [...new Set(blocks)].sort((a, b) => a - b);
    const key = sorted.join();
    const found = alike.get(key);
    if (found) found.rows.push(row);
    else alike.set(key, { blocks: sorted, rows: [row] });
  }
  return [...alike.values()].map(({ blocks, rows: inRows }) => {
    const which = `the ${listPhrase(runs(blocks, ordinal), 'british')} block${blocks.length === 1 && inRows.length === 1 ? '' : 's'}`;
    return grid.rows === 1 ? which : `${which} of ${rowsWord(inRows)}`;
  });
}

function partPhrases(parts: readonly string[], grid: Grid): Phrase[] {
  const left = new Set(parts);
  const out: Phrase[] = [];
  const family = (
    prefix: string,
    sides: readonly string[],
    preposition: string,
    one: string,
    many: string,
  ): void => {
    const found = sides.filter((side) => left.has(`${prefix}-${side}`));
    if (found.length < 2) return;
    for (const side of found) left.delete(`${prefix}-${side}`);
    const text =
      found.length === sides.length
        ? `all four ${many}`
        : `the ${listPhrase(
            found.map((side) => side.replace('-', ' ')),
            grid.spelling,
          )} ${many}`;
    out.push({ preposition, text: found.length === 1 ? `the ${found[0]} ${one}` : text });
  };
  family('edge', SIDES, 'along', 'edge', 'edges');
  family('border', SIDES, 'in', 'border', 'borders');
  family('corner', CORNERS, 'at', 'corner', 'corners');
  for (const part of parts) {
    if (!left.delete(part)) continue;
    if (part === 'batting' && grid.spelling === 'british') {
      out.push({ preposition: 'in', text: 'the wadding' });
    } else out.push(PARTS[part] ?? { preposition: 'in', text: part });
  }
  return out;
}

function phrases(places: readonly Place[], grid: Grid): Phrase[] {
  const blocks = new Set<string>();
  const parts: string[] = [];
  for (const place of places) {
    if (blockAt(place)) blocks.add(place);
    else if (!parts.includes(place)) parts.push(place);
  }
  const said = blocks.size ? blockPhrases(blocks, grid).map((text) => ({ preposition: 'in', text })) : [];
  return [...said, ...partPhrases(parts, grid)];
}

/**
 * Places as people say them: "the second and third blocks of row 3", "all of column 1", "the gingham
 * blocks", "all four corners". Empty for no places.
 */
export function placesPhrase(places: readonly Place[], grid: Grid): string {
  return listPhrase(
    phrases(places, grid).map((phrase) => phrase.text),
    grid.spelling,
  );
}

/**
 * The same with its preposition: "in the second block of row 3 and along the top edge". With `most`,
 * anything that takes more phrases than that is counted instead: "in 17 blocks and the backing".
 */
export function inPlaces(places: readonly Place[], grid: Grid, most = Number.POSITIVE_INFINITY): string {
  let said = phrases(places, grid);
  if (said.length > most) {
    const blocks = new Set(places.filter((place) => blockAt(place))).size;
    const parts = said.filter((phrase) => !/block|row|column/.test(phrase.text));
    const counted = { preposition: 'in', text: `${countPhrase(blocks)} block${blocks === 1 ? '' : 's'}` };
    said = blocks ? [counted, ...parts] : parts;
  }
  const groups: { preposition: string; texts: string[] }[] = [];
  for (const phrase of said) {
    const group = groups.find((one) => one.preposition === phrase.preposition);
    if (group) group.texts.push(phrase.text);
    else groups.push({ preposition: phrase.preposition, texts: [phrase.text] });
  }
  return listPhrase(
    groups.map((group) => `${group.preposition} ${listPhrase(group.texts, grid.spelling)}`),
    grid.spelling,
  );
}

/**
 * "between the first and second blocks of row 5", for seams each told by the two blocks it joins;
 * nothing where one of them is not two neighbours.
 */
export function betweenBlocks(pairs: readonly (readonly Place[])[], grid: Grid): string | undefined {
  const said: string[] = [];
  for (const pair of pairs) {
    const [a, b] = pair.map(blockAt);
    if (pair.length !== 2 || !a || !b) return undefined;
    if (Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) !== 1) return undefined;
    said.push(`between ${listPhrase(byRow(pair, grid), grid.spelling)}`);
  }
  return said.length ? listPhrase([...new Set(said)], grid.spelling) : undefined;
}

/** "row 3, block 2" for tables and labels, where the eye looks for figures. */
export function placeLabel(place: Place, spelling: Spelling): string {
  const at = blockAt(place);
  if (at) return `row ${at[0]}, block ${at[1]}`;
  if (place === 'batting' && spelling === 'british') return 'wadding';
  return (PARTS[place]?.text ?? place).replace(/^the /, '');
}

/** Whether more than one thing is meant, for "seam" or "seams". */
export function isPlural(places: readonly Place[]): boolean {
  return (
    new Set(places).size !== 1 || ['quilt', 'top', 'edge', 'border', 'binding'].includes(places[0] ?? '')
  );
}
