import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { splitBlock, unique } from '../../rules/places/grid.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { POINTERS, places } from './items.ts';
import { change, type Work } from './mending.ts';

/** Findings of the last note that this one says are none: "there was no hole there", "it wasn't a hole". */
export function deniedFindings(work: Work, items: Item[]): { s: Standing; item: Item }[] {
  const out: { s: Standing; item: Item }[] = [];
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    if (!x.finding) continue;
    const before = items.slice(Math.max(0, k - 5), k).map((y) => y.w);
    const no = before.findLastIndex((w) => /^(no|not|n't|never|without)$/.test(w));
    if (
      no < 0 ||
      before
        .slice(no + 1)
        .some((w) => !/^(a|an|any|real|the|actually|really|that|even|such|actual|after|all|been)$/.test(w))
    )
      continue;
    // "no holes" may be told of the next place; "no hole there", "there was no hole" looks back
    const back =
      /^(there|here|in|on|at|after|it|that|though)$/.test(items[k + 1]?.w ?? '') ||
      before.slice(0, no).some((w) => /^(there|that|it|was|were|is|'s|did|does)$/.test(w)) ||
      (no === 0 &&
        k < 3 &&
        items.length <= 10 &&
        !places(items).length &&
        !items.some((y) => /^(anywhere|other|others|else|more|otherwise)$/.test(y.w))) ||
      x.token.from >= items.at(-1)!.token.from;
    if (!back) continue;
    const named = places(items);
    const s = work.standing.find(
      ({ was }) =>
        was.kind === 'condition' &&
        was.finding === x.finding &&
        (!named.length || placesOf(was).some((p) => named.includes(p))),
    );
    if (s && work.standing.length > 1) out.push({ s, item: x });
  }
  return out;
}

export function denyFindings(work: Work, items: Item[]): void {
  for (const { s, item } of deniedFindings(work, items)) {
    // another finding took its place already
    if (JSON.stringify(s.draft.entry) !== JSON.stringify(s.was) || !work.standing.includes(s)) continue;
    const replaced = work.standing.some(
      (o) => o !== s && o.was.kind === 'condition' && JSON.stringify(o.was) !== JSON.stringify(o.draft.entry),
    );
    if (replaced || work.standing.length < 2) continue;
    work.standing.splice(work.standing.indexOf(s), 1);
    work.used.add(item);
    work.changed = true;
  }
}

/** A deed of the last note that was told as done and is not: "I haven't done that yet", "that's only planned". */
export const NOT_DONE =
  / (?:(?:not|n't|never) (?:(?:been|actually|even|really) )?(?:done|started|begun|touched|reached|got to|got round to|patched|sewn|sewed|done it|done that|done them|do that|do it|happened|finished it)(?: (?:it|that|them|any of it|any of that|yet|there))*|still to (?:do|be done)|(?:only|just|still) (?:planned|planning|a plan|the plan|an idea|thinking)|(?:planned|planning) (?:it |that )?only|(?:is|'s) (?:the plan|a plan)|have n't \w+ed (?:it|that|them)(?: yet)?|i 'm (?:only )?going to(?= (?:do (?:it|that|them) )?$)) /;

/** "didn't finish though, still at it", "it's not quite finished actually": what was told as done is still in hand. */
const UNFINISHED =
  /^ (?:(?:oh|well|no|nope|actually|hmm|but|sorry|wait|though|,|i|we|it|that|'s|is|was|did|have|has|had) )*(?:not|n't|never) (?:(?:quite|actually|fully|all|really|yet|completely|entirely) )*(?:finish|finished|finished off|complete|completed|done with)(?: (?:it|that|them|with it|yet|though|actually|off|either|quite))*(?: [.!])*(?: (?:,|-|\.|so|i 'm|im|it 's|just|only) ?(?:.{0,20}\b(?:still (?:at it|going|on it|working on it|doing it|in hand)|half (?:way|done)|halfway|nearly|almost|to go|left)\b.{0,24})?)? ?$/;

export function stillInHand(standing: Standing[], words: string): boolean {
  if (words.length > 90 || !UNFINISHED.test(words)) return false;
  const deeds = standing.filter(({ was }) => was.kind === 'treatment');
  const only = deeds[0]?.was;
  if (deeds.length !== 1 || only?.kind !== 'treatment' || only.state !== 'done' || !only.action) return false;
  put(deeds[0]!.draft, 'state', 'doing', 'amend.still-in-hand', []);
  return true;
}

/** "just 4-3, haven't touched 4-2 yet": what is said after the "haven't", where a place is named there. */
function undone(items: Item[]): Item[] {
  const not = items.findIndex((x) => x.w === "n't");
  return items.slice(not).some((x) => x.place?.places.length) ? items.slice(Math.max(0, not)) : items;
}

/** Does it say of some of the places of a deed that they are not done? */
export const isPartUndone = (work: Work, items: Item[]): boolean => {
  const named = places(undone(items));
  return (
    items.length <= 12 &&
    named.length > 0 &&
    / (?:is|are|was|were|has|have) n't (?:been )?(?:done|finished|started|touched|reached|got to|got round to) /.test(
      work.words,
    ) &&
    !items.some((x) => x.finding || x.duration || x.quantity?.unit) &&
    work.standing.some(({ was }) => {
      const all = was.kind === 'treatment' && was.state === 'done' ? placesOf(was) : [];
      return all.length > named.length && named.every((p) => all.includes(p));
    })
  );
};

/** "the four corners are still to do": told of other places than the last note's. */
export function toldOfOthers(standing: Standing[], items: Item[]): boolean {
  const named = places(items).filter((p) => splitBlock(p) || /^(?:corner|edge|border)-/.test(p));
  const held = standing.flatMap(({ was }) => placesOf(was));
  return named.length > 0 && held.length > 0 && !named.some((p) => held.includes(p));
}

export function notDone(work: Work, items: Item[]): void {
  if (!NOT_DONE.test(work.words) || work.changed || toldOfOthers(work.standing, items)) return;
  const done = work.standing.filter(
    ({ draft: { entry: e } }) =>
      e.kind === 'treatment' && (e.state === 'done' || e.state === 'doing') && e.action !== undefined,
  );
  if (!done.length) return;
  // "the second one isn't done yet": of several, that one
  const named = unique(
    undone(items)
      .filter((x) => x.place?.places.length && (!POINTERS.has(x.place.rule) || x.place.kind === 'blocks'))
      .flatMap((x) => x.place!.places),
  );
  const holds = (s: Standing): boolean => {
    const all = placesOf(s.draft.entry);
    return named.length > 0 && named.length < all.length && named.every((p) => all.includes(p));
  };
  const part = done.some(holds);
  for (const s of done) {
    // "3-5's still to do", of one list: the other deeds are done
    if (part && !holds(s)) continue;
    const all = placesOf(s.draft.entry);
    if (named.length && named.length < all.length && named.every((p) => all.includes(p))) {
      setApart(work, s, named);
      continue;
    }
    change(
      work,
      s,
      'state',
      / (?:thinking|idea|maybe|might) /.test(work.words) ? 'considering' : 'planned',
      'state',
      [],
    );
    change(work, s, 'minutes', undefined, 'state', []);
  }
  // what was not done has used nothing
  if (!part)
    work.standing = work.standing.filter(
      ({ draft: { entry: e } }) => !(e.kind === 'material' && e.use === 'used' && e.quantity === undefined),
    );
}

/** Some places of a deed are only planned: they become an entry of their own. */
function setApart(work: Work, s: Standing, planned: string[]): void {
  if (s.was.kind !== 'treatment') return;
  const { minutes: _minutes, ...rest } = structuredClone(s.was);
  const draft: Draft = {
    ...s.draft,
    entry: { ...rest, state: 'planned', places: planned },
    origins: { ...s.draft.origins },
  };
  delete draft.origins['minutes'];
  change(
    work,
    s,
    'places',
    placesOf(s.draft.entry).filter((p) => !planned.includes(p)),
    'state',
    [],
  );
  work.standing.splice(work.standing.indexOf(s) + 1, 0, { draft, was: structuredClone(draft.entry) });
}
