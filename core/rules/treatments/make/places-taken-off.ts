import type { Draft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import { splitBlock, unique } from '../../places/grid.ts';
import type { ClausePlaces } from '../../places/places-of-clause.ts';
import type { ReaderState } from '../../reader-state.ts';
import type { Making } from './making.ts';

/** "took out the ties and the batting": the other layer is taken off too, and is not where the ties were. */
function withoutTakenToo(items: Item[], placed: ClausePlaces): ClausePlaces {
  if (!placed.items.length || !placed.items.every((x) => x.place?.kind === 'part' && x.object)) return placed;
  const where = placed.items.filter((x) => {
    let k = items.indexOf(x) - 1;
    while (/^(the|old|its|all|whole|that)$/.test(items[k]?.w ?? '')) k--;
    return !/^(and|,|&|\+)$/.test(items[k]?.w ?? '');
  });
  if (where.length === placed.items.length) return placed;
  if (!where.length) return { ...placed, places: [], items: [], kind: 'none' };
  return { ...placed, places: where.flatMap((x) => x.place!.places), items: where };
}

/** Where something was taken off, and how that came; no places where none are told. */
export function placesTakenOff({ state, clause, v, way, placed: told }: Making): {
  places: string[] | undefined;
  how: Draft['placed'];
} {
  const { items } = clause;
  let places: string[] | undefined;
  let how: Draft['placed'] = 'said';
  const object = way.object!;
  const own = object === 'binding' || object === 'backing' || object === 'batting' || object === 'border';
  const placed = own ? told : withoutTakenToo(items, told);
  const specific = placed.kind === 'specific' ? placed.places : [];
  if (own) {
    places = specific.length ? specific : [object];
    if (object === 'border' && specific.length)
      places = specific.filter((p) => p.startsWith('border') || splitBlock(p));
    // "took that border off": the side last spoken of
    if (
      placed.kind === 'pronoun' &&
      placed.items.every((x) => x.place!.rule === 'place.that-one') &&
      placed.places.every((p) => p.startsWith(object === 'border' ? 'border-' : 'edge-'))
    )
      places = placed.places;
    if (!places.length) places = [object];
    // "as for the top border, I unpicked it"
    const side = object === 'border' ? 'border-' : object === 'binding' ? 'edge-' : '-';
    if (!specific.length && state.topic?.sentence === v.sentence) {
      const headed = state.topic.places.filter((p) => p.startsWith(side));
      if (headed.length) places = headed;
    }
    // "the binding's worn down the left side, so I've had it off there": the side where it was found
    const there = !specific.length && placed.kind !== 'general' ? sideThere(state, items, side) : undefined;
    if (there) {
      places = there;
      how = 'carried';
    }
    const part = object === 'batting' && !specific.length ? outOfThose(state, items) : undefined;
    if (part) {
      places = part;
      how = 'carried';
    }
  } else if (
    placed.kind === 'specific' ||
    (placed.kind === 'general' && placed.places.some((p) => p !== 'top'))
  )
    places = placed.places.filter((p) => p !== 'quilt' || placed.places.length === 1);
  else if (
    object === 'ties' ||
    object === 'pins' ||
    // "the old quilting has to come out", at the beginning: all of it
    (object === 'quilting' &&
      placed.kind === 'none' &&
      !state.memory.focus.length &&
      !state.drafts.some((d) => 'places' in d.entry)) ||
    way.items.some((x) => /^(basting|tacking)\b/.test(x.w))
  ) {
    // "the pins are out of them": the pins of what was tied, where "took them out" are the pins
    const outOf = placed.items.some((x) => /^(of|from|off)$/.test(items[items.indexOf(x) - 1]?.w ?? ''));
    places =
      placed.kind === 'pronoun' &&
      (object === 'ties' || outOf) &&
      !placed.items.some((x) => x.place!.rule === 'place.it')
        ? placed.places
        : // "quilting all snapped along the top, picked out the rest"
          placed.kind === 'none' && brokenHere(state, v.sentence)
          ? brokenHere(state, v.sentence)
          : // "rows 1-3: ties out"
            placed.kind === 'none' &&
              state.topic?.sentence === v.sentence &&
              state.topic.places.every((p) => splitBlock(p))
            ? state.topic.places
            : undefined;
    if (!places?.length && way.form === 'past') places = plannedFor(state, object);
    how = 'unneeded';
  } else if (object === 'label' && placed.kind === 'none') {
    places = undefined;
    how = 'unneeded';
  }
  // "found two pins in 3-2 and took them out", "there's a tag on the back, I'll take it off"
  if (/^(pins|label)$/.test(object) && !places?.length && placed.kind !== 'specific') {
    places = whereTold(state, v.index, object);
    if (places) how = 'carried';
  }
  // "those are out, and row four too"
  const others = way.rule === 'treatment.off-by-now' ? alsoOff(state, items, way.at, placed) : undefined;
  if (others) places = unique([...others, ...placed.places]);
  return { places, how };
}

/** Where the clause before told of the thing that is taken off now. */
function whereTold({ clauses, drafts }: ReaderState, index: number, object: string): string[] | undefined {
  const before = clauses[index - 1];
  if (!before?.items.some((x) => x.object === object)) return undefined;
  if (drafts.some((d) => d.clause === index - 1 && d.entry.kind !== 'material')) return undefined;
  const places = before.items.filter((x) => x.place && x.object !== object).flatMap((x) => x.place!.places);
  return places.length && !places.includes('quilt') ? unique(places) : undefined;
}

/** "those are out, and row four too": the places that "those" are, where others are named beside them. */
function alsoOff(
  { memory }: ReaderState,
  items: Item[],
  at: number,
  placed: ClausePlaces,
): string[] | undefined {
  if (placed.kind !== 'specific' || !/^(those|they|them|both|these|it)$/.test(items[at - 2]?.w ?? ''))
    return undefined;
  return items.slice(at + 1).some((x) => /^(too|also|as well)$/.test(x.w)) &&
    items.slice(0, at).every((x) => !placed.items.includes(x))
    ? memory.treatment?.places
    : undefined;
}

/** "unpicked the quilting along that row and pulled the wadding out of it", "so that stretch of it came out": the batting of the blocks just told. */
function outOfThose(state: ReaderState, items: Item[]): string[] | undefined {
  const ofThem = items.some(
    (x, k) =>
      /^place\.(?:it|them|those|that-one|both)$/.test(x.place?.rule ?? '') &&
      /^(of|from|under|behind|beneath)$/.test(items[k - 1]?.w ?? ''),
  );
  const stretch = items.some(
    (x, k) =>
      /^(stretch|bit|part|section|patch|piece)$/.test(x.w) && /^(that|this)$/.test(items[k - 1]?.w ?? ''),
  );
  if (!ofThem && !stretch) return undefined;
  const told = state.drafts.findLast((d) => 'places' in d.entry && d.entry.places?.length)?.entry;
  const places = told && 'places' in told ? (told.places ?? []) : [];
  return places.length && places.every((p) => splitBlock(p)) ? [...places] : undefined;
}

/** "the old ties have to come out of the top two rows", then "all those ties are out now": where it was meant to be done. */
const plannedFor = ({ memory, drafts }: ReaderState, object: string): string[] | undefined =>
  drafts.some((d) => 'places' in d.entry && d.entry.places?.length)
    ? undefined
    : memory.plans?.findLast((p) => p.action === 'remove' && p.object === object)?.places;

/** Where ties or stitches were just told to be broken. */
function brokenHere(state: ReaderState, sentence: number): string[] | undefined {
  const last = state.drafts.at(-1);
  return last?.entry.kind === 'condition' &&
    last.entry.finding === 'broken-stitching' &&
    last.sentence === sentence
    ? last.entry.places
    : undefined;
}

/** Sides told last in this note, or spoken of last, where the clause says "there" or "along it". */
function sideThere(state: ReaderState, items: Item[], side: string): string[] | undefined {
  if (!items.some((x) => x.w === 'there' && x.place)) return undefined;
  const told = state.drafts.findLast((d) => 'places' in d.entry && d.entry.places?.length)?.entry;
  const places = told && 'places' in told ? (told.places ?? []) : state.memory.focus;
  return places.length && places.every((p) => p.startsWith(side)) ? [...places] : undefined;
}
