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

/** "it's net over the face or silk crepeline": one deed, read once for each stuff. */
function twoStuffs(items: Item[], here: TreatmentDraft[]): boolean {
  const [first, second] = here;
  const or = items.findIndex((x) => x.w === 'or');
  if (
    here.length !== 2 ||
    first!.entry.action !== second!.entry.action ||
    first!.entry.action !== 'overlay' ||
    !items.slice(0, Math.max(0, or)).some(isStuff)
  )
    return false;
  const other = stuffBehind(items, or);
  if (!other) return false;
  for (const d of here) d.entry.state = 'considering';
  second!.entry.fabric ??= other.fabric?.names[0] ?? other.w;
  second!.origins['action'] = { ...second!.origins['action']!, rule: 'treatment.other-stuff' };
  return true;
}

/**
 * "patch 2-3 with the muslin or with the lawn, can't decide", "either the ecru net or the grey tulle over 3-4": one deed in question with
 * one of two stuffs is two ways, each of them open.
 */
export function otherStuff(state: ReaderState, clause: Clause, index: number, made: Draft[]): void {
  const { items } = clause;
  const here = made.filter(isTreatment);
  if (twoStuffs(items, here)) return;
  const source: TreatmentDraft | undefined =
    here.length === 1
      ? here[0]
      : !here.length && clause.joint === 'or'
        ? state.drafts.findLast((d): d is TreatmentDraft => isTreatment(d) && d.clause === index - 1)
        : undefined;
  if (
    !source ||
    !/^(?:considering|planned)$/.test(source.entry.state) ||
    !WITH_STUFF.test(source.entry.action ?? '')
  )
    return;
  const or = here.length ? items.findIndex((x) => x.w === 'or') : -1;
  if (here.length && (or < 1 || !items.slice(Math.max(0, or - 3), or).some(isStuff))) return;
  const other = stuffBehind(items, or);
  if (!other) return;
  // "3-3 gets net or crepeline over it": which of the two is not decided
  if (source.entry.state === 'planned') {
    if (!here.length) return;
    source.entry.state = 'considering';
  }
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

/** "maybe net over 2-3; maybe crepeline over 2-3": the ways of a choice are told apart by the stuff of each. */
export function tellStuffsApart({ drafts, clauses }: ReaderState): void {
  const open = drafts.filter(
    (d): d is TreatmentDraft =>
      isTreatment(d) && d.entry.state === 'considering' && WITH_STUFF.test(d.entry.action ?? ''),
  );
  if (open.length < 2) return;
  const stuffOf = (d: TreatmentDraft): string | undefined => clauses[d.clause]?.items.find(isStuff)?.w;
  open.forEach((d, n) => {
    const stuff = stuffOf(d);
    const first = open
      .slice(0, n)
      .find(
        (x) =>
          x.clause !== d.clause &&
          x.entry.action === d.entry.action &&
          x.entry.places?.join() === d.entry.places?.join(),
      );
    if (!stuff || !first || !stuffOf(first) || stuffOf(first) === stuff) return;
    d.entry.fabric ??= stuff;
    d.origins['action'] = { ...d.origins['action']!, rule: 'treatment.other-stuff' };
  });
}
