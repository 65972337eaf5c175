import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { placesOfClause } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from './is-treatment.ts';

const LIGHT =
  /^(a|an|the|some|bit|of|little|simple|plain|good|small|over|top|on|it|them|that|instead|then|for|this|time|new|one|after|all|now|i|'m|'ll|think|will|going|to|do|with|and|,|there|behind|round)$/;

/** The way that a word names for what is not, or is only, to be done. */
const wayOf = (x: Item | undefined) =>
  x?.action && x.action.form !== 'past' && !/^(leave|remove|quilt|measure)$/.test(x.action.v)
    ? x.action.v
    : undefined;

/**
 * "no patch on 2-3, just a darn", "not replacing it, only patching", "no replacing it, darning instead": one way is given up
 * and another, named by nothing but its noun, is to be done in its stead.
 */
export function thisNotThat(state: ReaderState, v: ClauseView): void {
  const told = state.clauses.filter((c) => c.sentence === v.sentence);
  if (state.clauses[v.index] !== told.at(-1)) return;
  const items = told.flatMap((c) => c.items);
  const no = items.findIndex((x) => /^(no|not)$/.test(x.w));
  if (no < 0) return;
  const at = items.findIndex((x, k) => k > no && k <= no + 3 && wayOf(x) !== undefined);
  if (at < 0 || !items.slice(no + 1, at).every((x) => LIGHT.test(x.w) || x.material)) return;
  const rest = items.slice(at + 1);
  const only = rest.findIndex((x) => /^(just|only|simply|instead)$/.test(x.w));
  if (only < 0) return;
  const chosen = rest.find((x, k) => wayOf(x) !== undefined && (rest[only]!.w === 'instead' || k > only));
  if (!chosen || wayOf(chosen) === wayOf(items[at])) return;
  const between = rest.slice(only + 1);
  if (!between.every((x) => x === chosen || LIGHT.test(x.w) || x.place || x.material || x.fabric)) return;
  const [out, into] = [wayOf(items[at])!, wayOf(chosen)!];
  const drafts = state.drafts.filter(isTreatment).filter((d) => d.sentence === v.sentence);
  const dropped = drafts.find((d) => d.entry.action === out);
  const own = placesOfClause(items);
  const places =
    own.kind === 'specific'
      ? own.places
      : (dropped?.entry.places ??
        (state.topic?.sentence === v.sentence ? state.topic.places : undefined) ??
        state.memory.open.findLast((o) => o.action === out)?.places ??
        state.memory.focus);
  if (!places.length) return;
  const say = (action: typeof out, word: Item, to: 'dropped' | 'planned') =>
    makeDraft(
      'treatment',
      v,
      {
        action: [action, 'treatment.this-not-that', word],
        state: [to, 'treatment.this-not-that', word],
        places: [[...places], 'place.of-open', undefined, 'implied'],
      },
      own.kind === 'specific' ? 'said' : 'carried',
    );
  if (!dropped) state.drafts.push(say(out, items[at]!, 'dropped'));
  if (!drafts.some((d) => d.entry.action === into)) state.drafts.push(say(into, chosen, 'planned'));
}
