import type { Entry } from '../../../shared/entry.ts';
import type { MaterialUnit } from '../../../shared/vocabulary.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { areSamePlaces, placesOf, type Standing } from '../standing.ts';

export const POINTERS = new Set(['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one']);

/** Parts named as wholes: as often the stuff as the place. */
export const WHOLES = new Set(['quilt', 'top', 'backing', 'batting', 'binding', 'sashing', 'border', 'edge']);

export const LENGTHS = new Set<MaterialUnit>(['yd', 'in', 'ft', 'm', 'cm', 'mm']);

export const JOINTS = new Set([',', 'and', '&', '+', 'but', 'so', 'then', 'plus', 'while', 'with']);

export const STOPS = new Set(['.', ';', '!', '?', '\n', ':', '--', '(', ')']);

const stem = (word: string): string => (word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word);

export const places = (items: Item[]): string[] =>
  items
    .filter((y) => y.place?.places.length && !POINTERS.has(y.place.rule) && y.place.kind !== 'pointer')
    .flatMap((y) => y.place!.places);

/** Stuffs that stand in each other's place. */
export const sameUse = (a: string | undefined, b: string | undefined): boolean =>
  a === b ||
  [a, b].every((m) => /^(fabric|backing|net|interfacing)$/.test(m ?? '')) ||
  [a, b].every((m) => /^(thread|tie-thread)$/.test(m ?? '')) ||
  [a, b].every((m) => /^(detergent|other|adhesive)$/.test(m ?? ''));

export const describes = (x: Item): boolean =>
  x.token.kind === 'word' &&
  !sensed(x) &&
  !x.place &&
  /^[a-z]{3,}$/.test(x.w) &&
  !/^(the|some|was|were|that|this|not|with|and|but|for|should|have|been|just|only|rather|sorry|mean|meant|actually|used|from|wait|hang|hold|call|made|make|say|said|called|than|put|yes|nope|they|read|it)$/.test(
    x.w,
  );

/** The item `k` to `m` as one that names blocks. */
export const asPlace = (
  items: Item[],
  k: number,
  m: number,
  places: string[],
  rule = 'amend.block',
): Item => ({
  i: items[k]!.i,
  j: items[m]!.j,
  w: items
    .slice(k, m + 1)
    .map((x) => x.w)
    .join(' '),
  token: items[k]!.token,
  end: items[m]!.end ?? items[m]!.token.to,
  place: { next: items[m]!.j, places, how: 'implied', rule, kind: 'blocks' },
});

export const sameSort = (a: Item, b: Item): boolean =>
  (['finding', 'action', 'stitch', 'material', 'task', 'place', 'object', 'fabric'] as const).some(
    (k) => a[k] !== undefined && b[k] !== undefined,
  );

export const sameSense = (a: Item, b: Item): boolean =>
  sensed(a) && Boolean(b.material || b.object || b.stitch || b.task);

export const sensed = (x: Item): boolean =>
  Boolean(
    x.place?.places.length ||
      x.quantity ||
      x.cost ||
      x.duration ||
      x.span ||
      x.clock ||
      x.stitch ||
      x.finding ||
      x.action ||
      x.material ||
      x.fabric ||
      x.object ||
      x.task,
  );

/** "Blue-and-white gingham": its words, as a token has them. */
export const wordsOfName = (name: string): string[] => name.toLowerCase().split(/[\s-]+/);

export const named = (e: Entry, x: Item): boolean =>
  e.kind === 'material' &&
  e.name !== undefined &&
  x.token.kind === 'word' &&
  wordsOfName(e.name)
    .map(stem)
    .some((word) => word.length > 2 && word === stem(x.w.split(' ').at(-1)!));

export const bareNumber = (x: Item | undefined): boolean =>
  x?.quantity?.value !== undefined && !x.quantity.unit;

export const samePlaces = (s: Standing, e: Entry): boolean =>
  [s.was, s.draft.entry].some((x) => areSamePlaces(placesOf(x), placesOf(e)));

export const sharesPlace = (a: Entry, b: Entry): boolean => placesOf(a).some((p) => placesOf(b).includes(p));

/** Can it stand on its own beside the mended entries? */
export const complete = (d: Draft): boolean =>
  (d.placed === 'said' && placesOf(d.entry).length > 0) ||
  (d.entry.kind === 'material' && d.entry.material !== undefined && d.entry.quantity !== undefined);
