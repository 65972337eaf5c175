import type { Item } from '../item.ts';
import { splitBlock, unique } from './grid.ts';

const GENERAL = new Set(['quilt', 'top', 'backing', 'batting', 'binding', 'sashing', 'border', 'edge']);
const isPronoun = (item: Item): boolean =>
  ['place.it', 'place.them', 'place.both', 'place.those', 'place.that-one'].includes(item.place?.rule ?? '');

export type ClausePlaces = {
  places: string[];
  items: Item[];
  kind: 'specific' | 'general' | 'pronoun' | 'none';
  outside: boolean;
  unknown: boolean;
};

/**
 * The places that a clause is about. Blocks, sides and corners win over a part named as a whole ("the batting is lumpy in
 * the last two blocks"), a part over a pronoun; "the whole quilt" only counts alone.
 */
export function placesOfClause(items: Item[]): ClausePlaces {
  const placed = items.filter((x) => x.place);
  const outside = placed.some((x) => x.place!.outside && !x.place!.places.length);
  const specific = placed.filter((x) => !isPronoun(x) && x.place!.places.some((p) => !GENERAL.has(p)));
  if (specific.length) {
    const blocks = specific.filter((x) => x.place!.places.some((p) => splitBlock(p)));
    const softCorner = specific.filter((x) => x.place!.soft);
    // "the corner of 3-2": the corner is the block's
    const chosen = blocks.length && softCorner.length ? specific.filter((x) => !x.place!.soft) : specific;
    return {
      places: unique(chosen.flatMap((x) => x.place!.places)),
      items: chosen,
      kind: 'specific',
      outside,
      unknown: false,
    };
  }
  const general = placed.filter((x) => !isPronoun(x) && x.place!.places.length);
  if (general.length) {
    const parts = general.filter((x) => x.place!.places[0] !== 'quilt');
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
    unknown: placed.some((x) => !x.place!.places.length),
  };
}
