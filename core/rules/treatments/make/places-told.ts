import type { Action, TreatmentState } from '../../../../shared/vocabulary.ts';
import type { Draft } from '../../draft.ts';
import type { Item } from '../../item.ts';
import { carriedPlaces, sideTakenOff, sinceOutside } from '../../places/carried-places.ts';
import { clothWithin, mendedCloth } from '../../places/cloth-worked-on.ts';
import { splitBlock } from '../../places/grid.ts';
import { sideOfDamage } from '../../places/side-of-damage.ts';
import type { ReaderState } from '../../reader-state.ts';
import { wordsBetween } from '../../words-between.ts';
import { isTreatment } from '../is-treatment.ts';
import { RUNS, upTo } from '../so-far.ts';
import { givenUpAt } from '../verdict.ts';
import { WHOLE_QUILT } from '../whole-quilt.ts';
import type { Making } from './making.ts';
import { placesTakenOff } from './places-taken-off.ts';

const ALL_ROUND = / all (?:the way )?(?:a?round|(?:four |the |its )*sides) /;
/** Are width and length of the quilt told in the sentence? */
const isSizeTold = (state: ReaderState, sentence: number): boolean =>
  state.drafts.some(
    ({ entry: e, sentence: n }) =>
      e.kind === 'measurement' && e.of === 'length' && n === sentence && e.places?.[0] === 'quilt',
  );
/** "trimmed it to 60 by 78 inches" */
const TO_SIZE = / (?:trim|trimmed|trimming) (?:it |the quilt |the whole thing )?(?:down |off |back )?to /;
const AND_SQUARED = / trim(?:med)? (?:it )?(?:up )?(?:(?:and|&|,|then|\+) )*squared? /;
const NO_PLACE_NEEDED = new Set<Action>(['cut', 'piece', 'add-border', 'label', ...WHOLE_QUILT]);

/** Where a treatment is: its places, how they came, and the words that gave them. */
export type TreatmentPlaces = {
  places: string[] | undefined;
  how: Draft['placed'];
  items: Item[];
  /** Taken from what was told before. */
  implied: boolean;
};

/** Where the deed of a clause is, by what is said in it, by its sentence and by what was spoken of before. */
export function placesTold(
  making: Making,
  action: Action,
  status: TreatmentState,
  couched: boolean,
): TreatmentPlaces {
  const { state, clause, v, way, sentence, placed } = making;
  const { items } = clause;
  let places: string[] | undefined;
  let how: Draft['placed'] = 'said';
  let placeItems = placed.items;
  let implied = false;
  if (action === 'remove') ({ places, how } = placesTakenOff(making));
  else if (placed.kind === 'specific' || placed.kind === 'general') {
    // "rows one and two tied up in the red worsted": the yarn, and not a cloth of the quilt
    places = (action === 'tie' ? undefined : clothWithin(state, items, placed)) ?? placed.places;
    if (
      placed.kind === 'general' &&
      (action === 'bind' || action === 'layer') &&
      places.every((p) => ['binding', 'top', 'backing', 'batting', 'quilt'].includes(p))
    )
      places = sideTakenOff(state, action, placed) ?? ['quilt'];
    if (placed.kind === 'general' && action === 'add-border' && places.every((p) => p === 'border'))
      places = sideTakenOff(state, action, placed) ?? places;
    if (placed.kind === 'general' && action === 'baste') {
      // "laid net over 2-2, basted round the edge": the edge of what was laid on
      const laid = state.drafts.findLast(isTreatment);
      const onIt =
        places.every((p) => p === 'edge') &&
        laid?.sentence === v.sentence &&
        /^(?:overlay|patch|stabilize)$/.test(laid.entry.action ?? '');
      places = onIt && laid.entry.places?.length ? [...laid.entry.places] : ['quilt'];
    }
    if (action === 'add-border' && !places.some((p) => p.startsWith('border'))) places = ['border'];
    // "the top comes to 71 by 90 and tomorrow I'll piece the new border": the top was but measured
    if (/^(?:add-border|piece|cut)$/.test(action) && places.some((p) => p.startsWith('border')))
      places = places.filter((p) => p !== 'top');
    if (action === 'label' && places.length && places[0] === 'quilt') places = undefined;
    // "sewed the binding on and put a patch on 3-2", "bind it and get the label on at the bottom right corner"
    if (action === 'bind' && placed.kind === 'specific' && places)
      places = places.every(
        (p) => splitBlock(p) || (p.startsWith('corner') && items.some((x) => x.object === 'label')),
      )
        ? ['quilt']
        : // "binding the left side": the verb, and no part beside it
          places
            .filter((p, _n, all) => p !== 'binding' || all.length === 1)
            .map((p) => p.replace(/^border-/, 'edge-'));
  }
  // "tied as far as row four", "pressed down to row three"
  if (
    places &&
    status === 'done' &&
    RUNS.has(action) &&
    places.length > 1 &&
    placed.items.length === 1 &&
    places.every((p) => splitBlock(p)) &&
    / (?:as far as|(?:up|down|through) to|up till|until) (?:the end of )?(?:the )?$/.test(
      wordsBetween(items, way.at + 1, items.indexOf(placed.items[0]!)),
    )
  )
    places = upTo(state, places, []) ?? places;
  // "cut the whole thing out" of a block
  if (
    places?.[0] === 'quilt' &&
    ['replace', 'patch', 'darn', 'resew', 'stabilize', 'overlay', 'cut'].includes(action) &&
    placed.items.some((x) => /whole (thing|lot)/.test(x.w)) &&
    (state.carried.length || state.memory.focus.length)
  )
    places = undefined;
  if ((action === 'cut' || action === 'piece') && (places === undefined || places[0] === 'quilt')) {
    // "border: yes. strips cut 7 cm wide"
    const settled = state.drafts.flatMap(({ entry: e }) =>
      e.kind === 'decision' && e.status === 'settled' && /^(border|binding|backing)$/.test(e.about)
        ? [e.about as string]
        : [],
    );
    if (settled.length === 1 && items.some((x) => x.measure === 'strip')) places = settled;
    const of = items.find(
      (x) =>
        /border/.test(x.w) ||
        x.part === 'binding' ||
        x.part === 'backing' ||
        /^binding|^bias/.test(x.w) ||
        (x.material && ['binding', 'backing'].includes(x.material)),
    );
    if (of) {
      const kind = /border/.test(of.w)
        ? 'border'
        : of.part === 'backing' || of.material === 'backing'
          ? 'backing'
          : 'binding';
      places = of.place?.places.some((p) => p.startsWith('border')) ? of.place.places : [kind];
      placeItems = [of];
    }
  }
  // "took both side borders off", then "going to piece new ones"
  if (
    /^(cut|piece)$/.test(action) &&
    (places === undefined || places.every((p) => p === 'quilt')) &&
    !state.drafts.some(isTreatment) &&
    state.memory.treatment?.object === 'border' &&
    items.some((x, k) => /^(ones?|strips?)$/.test(x.w) && /^(new|fresh)$/.test(items[k - 1]?.w ?? ''))
  )
    places = state.memory.treatment.places;
  // "binding worn along the left edge, so cut new strips for it"
  if (
    action === 'cut' &&
    !items.some((x) => x.part || x.object === 'border') &&
    items.some((x) => /\bstrips?$/.test(x.w))
  ) {
    const part = stripsFor(state, v.sentence);
    if (part) places = [part];
  }
  // "border strips cut 12 cm, left and right borders on"
  const strips =
    action === 'cut'
      ? items.slice(Math.max(0, way.at - 2), way.at).find((x) => x.object && x.measure === 'strip')
      : undefined;
  if (strips && !strips.place && placed.items.every((x) => items.indexOf(x) > way.at))
    places = [/^(border|binding)/.exec(strips.object!)?.[0] ?? places?.[0] ?? 'border'];
  // "trimmed a quarter inch off all sides", "trimmed and squared it up": the quilt
  if (
    places === undefined &&
    action === 'trim' &&
    (placed.kind === 'none' || placed.items.every((x) => x.place!.rule === 'place.it')) &&
    (ALL_ROUND.test(wordsBetween(items)) ||
      AND_SQUARED.test(sentence) ||
      (TO_SIZE.test(wordsBetween(items)) && isSizeTold(state, v.sentence)))
  ) {
    places = ['quilt'];
    how = 'unneeded';
  }
  // "4-5: hole, patched, maroon blanket": told of the place named first, the cloth is what was put in
  const headed = placed.kind === 'none' && state.topic?.sentence === v.sentence;
  // "5-5: gingham patch on": the cloth of the patch
  const ofPatch =
    headed && items[way.at - 1]?.fabric && /^(?:patch|patches|piece|square)$/.test(items[way.at]!.w);
  if (places === undefined && how !== 'unneeded' && !(headed && (ofPatch || laterThan(items, way.at)))) {
    const named = mendedCloth(items, state);
    // "1-4: the velvet wants darning" is of that block; "2-2: a silk patch", where 2-2 is no silk, of what goes on
    const inside = headed && named ? named.places.filter((p) => state.topic!.places.includes(p)) : undefined;
    const cloth = inside && named ? (inside.length ? { ...named, places: inside } : undefined) : named;
    // "lawn at the back of it", where the quilt has a lawn as well: what is put behind
    if (cloth && !(way.rule === 'treatment.cloth-behind' && cloth.item === way.stuff)) {
      places = cloth.places;
      placeItems = [cloth.item];
    }
  }
  // "leaving the old backing on": the part that stays
  const kept =
    places === undefined && action === 'leave' && placed.kind === 'none'
      ? items.find((x) => x.object && /^(backing|batting|binding|border)$/.test(x.object))
      : undefined;
  if (kept) {
    places = [kept.object!];
    placeItems = [kept];
  }
  // "new right border cut and sewn on"
  const cutBefore = way.rule === 'treatment.new-one-on' ? state.drafts.findLast(isTreatment) : undefined;
  if (
    places === undefined &&
    cutBefore?.sentence === v.sentence &&
    /^(cut|piece)$/.test(cutBefore.entry.action ?? '') &&
    cutBefore.entry.places?.every((p) => p.startsWith('border-'))
  ) {
    places = [...cutBefore.entry.places];
    how = 'carried';
    implied = true;
  }
  // "the binding came off in one piece, I'll wash it": what was just taken off, and not the quilt
  const off = state.drafts.findLast(isTreatment);
  if (
    places === undefined &&
    /^(wash|press|dry|clean)$/.test(action) &&
    off?.sentence === v.sentence &&
    off.entry.state === 'done' &&
    /^(binding|backing|border)$/.test(off.entry.object ?? '') &&
    placed.items.length > 0 &&
    placed.items.every((x) => x.place!.rule === 'place.it') &&
    /^(it|them)$/.test(items[way.at + 1]?.w ?? '')
  ) {
    places = off.entry.places?.length ? [...off.entry.places] : [off.entry.object!];
    how = 'carried';
    implied = true;
    placeItems = [];
  }
  if (places === undefined && how !== 'unneeded') {
    const open = status === 'dropped' ? state.memory.open.filter((o) => o.action === action) : [];
    const carried =
      open.length && !(placed.kind === 'pronoun' && placed.places.length)
        ? givenUpAt(state, open)
        : (carriedPlaces(state, v, way, placed) ?? (couched ? state.memory.treatment!.places : undefined));
    if (carried) {
      // "I'm sewing it on now", when the binding was what was spoken of: on the quilt
      places = action === 'bind' && carried.every((p) => p === 'binding') ? ['quilt'] : carried;
      how = 'carried';
      implied = true;
      placeItems = [];
    } else if (
      NO_PLACE_NEEDED.has(action) &&
      // "a stain in 2-9, spot-cleaned it", where there is no 2-9
      !(/^(?:clean|press|quilt|tie|photograph)$/.test(action) && sinceOutside(state))
    ) {
      places = WHOLE_QUILT.has(action)
        ? (openFor(state, action, items) ?? ['quilt'])
        : action === 'add-border'
          ? ['border']
          : undefined;
      how = 'unneeded';
    } else {
      places = [];
      how = 'none';
    }
  }
  places = sideOfDamage(state, action, places, placeItems) ?? places;
  return { places, how, items: placeItems, implied };
}

/** "just the spot cleaning", "quilting it is": where that way stood open, if that was at a named place. */
function openFor(state: ReaderState, action: Action, items: Item[]): string[] | undefined {
  if (items.some((x) => x.place && !/^place\.it$/.test(x.place.rule))) return undefined;
  const ways = state.memory.open.filter((o) => !o.passed && o.action === action);
  return ways.length === 1 && ways[0]!.places.length ? [...ways[0]!.places] : undefined;
}

/** Is the cloth named after the deed? */
const laterThan = (items: Item[], at: number): boolean => items.findIndex((x) => x.fabric) > at;

/** The binding or border that the sentence told of before: what strips are cut for. */
function stripsFor(state: ReaderState, sentence: number): string | undefined {
  const last = state.drafts.findLast((d) => d.entry.kind === 'condition' || d.entry.kind === 'treatment');
  if (!last || last.sentence < sentence - 1) return undefined;
  return state.clauses[last.clause]?.items.find((x) => x.part === 'binding' || x.part === 'border')?.part;
}
