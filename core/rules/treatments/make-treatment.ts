import type { Action } from '../../../shared/vocabulary.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isOthers, tellsOldRepair } from './by-others.ts';
import { isCloth } from './is-cloth.ts';
import { isKindOfWork } from './make/is-kind-of-work.ts';
import type { Making } from './make/making.ts';
import { placesTold } from './make/places-told.ts';
import { stateTold, waitsFor } from './make/state-told.ts';
import { tellMendedByOthers } from './make/tell-mended-by-others.ts';
import { isForGood, TAKES_STITCH } from './stitch-of.ts';

/** The treatment that a clause tells with one way of working; undefined where it tells none. */
export function makeTreatment(given: Making): Draft | undefined {
  const { state, clause, v, way, stitch } = given;
  let { placed } = given;
  const { items } = clause;
  // "I'll leave tails of an inch": how long the ends are. Looked for in the words: the length's own items were taken before
  const behind = items[way.at]!.j;
  if (
    way.action === 'leave' &&
    state.tokens.slice(behind, behind + 4).some((t) => /^(tails?|ends)$/.test(t.w))
  )
    return undefined;
  // "label it once it's bound", "I'll net it when the tulle comes": not yet so
  if (way.form !== 'base' && waitsFor(clause) && state.clauses.length > 1) return undefined;
  // "the calico ones want lining": no backing is spoken of
  // "every calico block is to have a backing cloth sewn in behind"
  const isLining = way.rule === 'treatment.as-thing' && way.action === 'stabilize';
  const isStuff =
    /^treatment\.(?:cloth-behind|net-over)$/.test(way.rule) &&
    placed.items.every((x) => x === way.stuff || isNewLining(items, x));
  if ((way.rule === 'treatment.a-lining' || isLining || isStuff) && placed.kind === 'general')
    placed = { ...placed, kind: 'none', places: [], items: [] };
  let status = stateTold({ ...given, placed });
  if (status === undefined) return undefined;
  // "going to put interfacing behind it and then zigzag over the tear": to be done, as the other is
  const told = state.drafts.findLast((d) => d.entry.kind === 'treatment')?.entry;
  if (
    /^treatment\.(?:stitched-shut|verb-resew)$/.test(way.rule) &&
    status === 'done' &&
    items[way.at]!.action?.form !== 'past' &&
    told?.kind === 'treatment' &&
    told.state === 'planned' &&
    state.drafts.at(-1)?.sentence === v.sentence
  )
    status = 'planned';
  // "whole lot couched down", after the net was told of
  const couched =
    way.action === 'resew' &&
    stitch?.stitch === 'couching' &&
    placed.kind !== 'specific' &&
    !state.drafts.some((d) => d.entry.kind === 'treatment') &&
    state.memory.treatment?.action === 'overlay' &&
    /^(doing|planned)$/.test(state.memory.treatment.state) &&
    !items.some((x) => x.seam || x.finding);
  const action = couched
    ? 'overlay'
    : isSupportIn(state, way.rule, placed)
      ? 'stabilize'
      : way.action === 'cut' &&
          /^(planned|considering|dropped)$/.test(status) &&
          isCutOut(items, way.at) &&
          // "cut out and a new piece set in" is told whole by what follows
          !state.clauses[v.index + 1]?.items.some((x) => /^(new|fresh|replacements?)\b/.test(x.w))
        ? 'replace'
        : way.action!;
  if (isOthers(items, way.at)) {
    tellMendedByOthers(state, v, items[way.at]!, placed, action);
    return undefined;
  }
  if (tellsOldRepair(state, clause, v, way.at, placed)) return undefined;
  // "darn or patch?", then "patch is off": given up, for there is none to take off
  if (
    way.rule === 'treatment.is-off' &&
    way.object === 'old-patch' &&
    [...state.memory.open.filter((o) => !o.passed), ...(state.memory.plans ?? [])].some((o) =>
      way.items.some((x) => x.action?.v === o.action),
    ) &&
    !(state.memory.mentions ?? []).some((m) => m.finding === 'old-repair')
  )
    return undefined;
  // "meant to patch 4-1, but the patch is off"
  if (
    way.rule === 'treatment.is-off' &&
    way.object === 'old-patch' &&
    state.drafts.some(
      ({ entry: d }) =>
        d.kind === 'treatment' && d.state === 'dropped' && way.items.some((x) => x.action?.v === d.action),
    )
  )
    return undefined;
  // "it's the darn, then", "net for 2-4 then": one of two ways is chosen
  if (
    way.form === 'noun' &&
    status === 'done' &&
    way.rule !== 'treatment.cloth-in' &&
    isChosen(state, items, placed, action)
  )
    status = 'planned';
  // "doing the mending", "starting the cutting": a kind of work, with no place or thing named
  if (isKindOfWork({ ...given, placed }, action, status)) return undefined;
  // "the old batting that can stay right where it is"
  const stays =
    action === 'leave' && placed.kind !== 'specific' && placed.kind !== 'general'
      ? items.slice(0, way.at + 1).find((x) => /^(batting|backing|binding|border)$/.test(x.object ?? ''))
          ?.object
      : undefined;
  if (stays) placed = { ...placed, kind: 'general', places: [stays] };
  const {
    places,
    how,
    items: placeItems,
    implied,
  } = placesTold({ ...given, placed }, action, status, couched);
  const slots: Parameters<typeof makeDraft>[2] = {
    action: [action, way.rule, way.items],
    state: [status, `state.${status}`, items[way.at]],
    ...(way.object && action === 'remove' ? { object: [way.object, way.rule, way.items] } : {}),
    ...(places
      ? {
          places: [
            places,
            implied ? 'place.carried' : 'place.said',
            placeItems.length ? placeItems : undefined,
            implied ? 'implied' : 'said',
          ],
        }
      : {}),
    ...(stitch && TAKES_STITCH.has(action) && !(action === 'baste' && isForGood(stitch.stitch))
      ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] }
      : {}),
  };
  const draft = makeDraft('treatment', v, slots, how);
  if (placed.outside && !placed.places.length) {
    draft.outside = true;
    (draft.entry as { places?: string[] }).places = [];
    draft.placed = 'none';
  }
  // the order of slots as people read them
  const e = draft.entry as Record<string, unknown>;
  if (!e['stitch'] && action === 'resew' && way.items[0]?.stitch) e['stitch'] = way.items[0].stitch;
  // "hand quilted", "machine quilting"
  const manner = /^(quilt|resew|bind)$/.test(action)
    ? /^(hand|machine) /.exec(way.items[0]?.w ?? '')?.[1]
    : undefined;
  if (!e['stitch'] && manner) {
    e['stitch'] = manner;
    draft.origins['stitch'] = { rule: `stitch.${manner}`, how: 'said', ...spanOfItem(way.items[0]!) };
  }
  return draft;
}

/** "an organdy lining stitched in behind": the lining that is put there, and not the quilt's own. */
const isNewLining = (items: Item[], lining: Item): boolean => {
  const k = items.indexOf(lining);
  return (
    /^(?:lining|backing)$/.test(lining.w) &&
    (isCloth(items[k - 1]) || items[k - 1]?.fabric !== undefined) &&
    !/^(?:the|that|its|old|original)$/.test(items[k - 2]?.w ?? '')
  );
};

/** "net it or cut it out", "the lower one gets cut out": a block's piece, which a new one comes in for; strips and borders are only cut. */
const isCutOut = (items: Item[], k: number): boolean =>
  / out (?!of (?!it|that|there|them|the block))/.test(
    wordsBetween(items, items[k]!.w.endsWith(' out') ? k : k + 1, k + 6),
  ) &&
  !items.some((x) => x.measure === 'strip' || x.part || x.quantity || /strip|square|patch|border/.test(x.w));

/** "the lawn's in", where a support was decided on or thought of for the place, and no new piece: that support. */
function isSupportIn({ memory, drafts }: ReaderState, rule: string, placed: ClausePlaces): boolean {
  if (rule !== 'treatment.cloth-in') return false;
  const here = placed.places.length ? placed.places : memory.focus;
  const told = [
    ...(memory.plans ?? []),
    ...memory.open.filter((o) => !o.passed),
    ...drafts.flatMap(({ entry: e }) =>
      e.kind === 'treatment' && e.action && /^(?:planned|considering)$/.test(e.state)
        ? [{ action: e.action, places: e.places ?? [] }]
        : [],
    ),
  ].filter((p) => p.places.some((q) => here.includes(q)));
  return told.some((p) => p.action === 'stabilize') && !told.some((p) => p.action === 'replace');
}

/** One of two ways that stood open is named, and no verb tells that it is on already. */
const isChosen = ({ memory }: ReaderState, items: Item[], placed: ClausePlaces, action: Action): boolean =>
  memory.open.some(
    (o) =>
      !o.passed &&
      o.action === action &&
      (!placed.places.length || o.places.some((p) => placed.places.includes(p))),
  ) &&
  !items.some(
    (x, k) =>
      /^(has|have|had|'ve|got|put|now|on|laid|went|did|done|already|took)$/.test(x.w) &&
      // "back on 2-2, new piece wins"
      !(x.w === 'on' && items[k - 1]?.w === 'back') &&
      // "net on top, then"
      !(x.w === 'on' && /^(top|the)$/.test(items[k + 1]?.w ?? '')),
  );

const spanOfItem = (x: Item): { from: number; to: number } => ({
  from: x.token.from,
  to: x.end ?? x.token.to,
});
