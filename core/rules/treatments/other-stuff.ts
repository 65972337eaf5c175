import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { isCloth, isNet } from './is-cloth.ts';
import { isTreatment, type TreatmentDraft } from './is-treatment.ts';

const WITH_STUFF = /^(?:patch|overlay|stabilize|replace|darn)$/;
const LIGHT =
  /^(?:with|in|the|a|an|some|that|my|of|piece|bit|plain|fine|old|new|grey|gray|ecru|cream|white|black|brown|blue|dark|light|maybe|perhaps|else)$/;

const isStuff = (x: Item | undefined): boolean =>
  x !== undefined && !x.place && (isNet(x) || (isCloth(x) && x.w !== 'patch' && x.w !== 'piece'));

/** The stuff that stands right behind the "or" at `k`, with nothing but light words between. */
function stuffBehind(items: Item[], k: number): Item | undefined {
  let at = k + 1;
  while (at < k + 5 && LIGHT.test(items[at]?.w ?? '') && !isStuff(items[at])) at++;
  return isStuff(items[at]) ? items[at] : undefined;
}

/**
 * "patch 2-3 with the muslin or with the lawn, can't decide", "either the ecru net or the grey tulle over 3-4": one deed in question with
 * one of two stuffs is two ways, each of them open.
 */
export function otherStuff(state: ReaderState, clause: Clause, index: number, made: Draft[]): void {
  const { items } = clause;
  const here = made.filter(isTreatment);
  const source: TreatmentDraft | undefined =
    here.length === 1
      ? here[0]
      : !here.length && clause.joint === 'or'
        ? state.drafts.findLast((d): d is TreatmentDraft => isTreatment(d) && d.clause === index - 1)
        : undefined;
  if (source?.entry.state !== 'considering' || !WITH_STUFF.test(source.entry.action ?? '')) return;
  const or = here.length ? items.findIndex((x) => x.w === 'or') : -1;
  if (here.length && (or < 1 || !items.slice(Math.max(0, or - 3), or).some(isStuff))) return;
  const other = stuffBehind(items, or);
  if (!other) return;
  if (
    !here.length &&
    (items.some((x) => x.action && !x.material) || !state.clauses[index - 1]?.items.some(isStuff))
  )
    return;
  const copy: TreatmentDraft = {
    ...source,
    clause: index,
    entry: { ...source.entry, fabric: other.fabric?.names[0] ?? other.w },
    origins: { ...source.origins, action: { ...source.origins['action']!, rule: 'treatment.other-stuff' } },
  };
  state.drafts.push(copy);
  if (here.length) made.push(copy);
}
