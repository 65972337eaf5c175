import type { Action } from '../../shared/vocabulary.ts';
import type { Clause } from './clause/clause.ts';
import { everyOneOf, headingThing, headsWithDamage, isHeaded } from './clause/headed-clause.ts';
import { view } from './clause-view.ts';
import { allButNamed } from './conditions/all-but-named.ts';
import { findConditions } from './conditions/find-conditions.ts';
import { makeCondition } from './conditions/make-condition.ts';
import { mendedBefore } from './conditions/mended-before.ts';
import { withoutPointedAt } from './conditions/only-pointed-at.ts';
import { tellApart } from './conditions/told-apart.ts';
import type { Draft } from './draft.ts';
import type { Item } from './item.ts';
import { readDoubtfulCloth } from './materials/doubtful-cloth.ts';
import { readMaterials } from './materials/read-materials.ts';
import { looksUndecided } from './mood.ts';
import { mendedCloth, withCloths } from './places/cloth-worked-on.ts';
import { edgesOfBlocks } from './places/edges-of-blocks.ts';
import { placesOfClause } from './places/places-of-clause.ts';
import {
  placesAdded,
  placesAfterColon,
  placesNarrowed,
  placesWhereItSits,
} from './places/places-told-later.ts';
import { placesTrailing } from './places/places-trailing.ts';
import { oneWithin, spokenOf, spokenOfToo } from './places/spoken-of.ts';
import type { ReaderState } from './reader-state.ts';
import { thingSpokenOf } from './thing-spoken-of.ts';
import { topicAfter } from './topic-after.ts';
import { absorbed } from './treatments/absorbed.ts';
import { asModel } from './treatments/as-model.ts';
import { doneAsPlanned, sewnAsPlanned, takenUp } from './treatments/as-planned.ts';
import { askBetween } from './treatments/ask-between.ts';
import { bareStuff } from './treatments/bare-stuff.ts';
import { MENDED_ONCE, mendedByOthers } from './treatments/by-others.ts';
import { damageSeenTo } from './treatments/damage-seen-to.ts';
import { dropFinished } from './treatments/drop-finished.ts';
import { findWays } from './treatments/find-ways.ts';
import { gapped, gappedRemoval } from './treatments/gapped.ts';
import { isManner } from './treatments/is-manner.ts';
import { isTreatment } from './treatments/is-treatment.ts';
import { makeTreatment } from './treatments/make-treatment.ts';
import { maybeToo } from './treatments/maybe-too.ts';
import { otherStuff } from './treatments/other-stuff.ts';
import { ownersWord } from './treatments/owners-word.ts';
import { sameAgain } from './treatments/same-again.ts';
import { sameOnDamage } from './treatments/same-on-damage.ts';
import { begunAlong, soFar } from './treatments/so-far.ts';
import { standingTold } from './treatments/standing-told.ts';
import { closedAtOnce, fastening, sewnOver } from './treatments/stitch-alone.ts';
import { sameStitch, stitchOf, stitchOfEach, TAKES_STITCH } from './treatments/stitch-of.ts';
import { takenInTurn } from './treatments/taken-in-turn.ts';
import { thisNotThat } from './treatments/this-not-that.ts';
import { toFollow } from './treatments/to-follow.ts';
import { tendedTo, unsaidDeed } from './treatments/unsaid-deed.ts';
import { unsaidPlan } from './treatments/unsaid-plan.ts';
import { callOff, chooseIdea, dropIdea } from './treatments/verdict.ts';
import { wholeVerdict } from './treatments/whole-verdict.ts';
import { wordsBetween } from './words-between.ts';
import { minutesOfDeed } from './work/minutes-of-deed.ts';
import { readBegun, readDurations, readLengthsAhead } from './work/read-work.ts';

/** Reads every clause in turn and gives the drafts of the note's entries. */
export function interpret(state: ReaderState): Draft[] {
  const { clauses } = state;
  for (let c = 0; c < clauses.length; c++) {
    const clause = clauses[c]!;
    const sentenceItems = clauses.filter((x) => x.sentence === clause.sentence).flatMap((x) => x.items);
    const sentence = ` ${sentenceItems.map((x) => x.w).join(' ')} `;
    // An afterthought of its own ("can't make up my mind") speaks of the sentence before.
    const next = clauses[c + 1];
    const tail =
      next &&
      next.sentence === clause.sentence + 1 &&
      // "The fabric for 7-2, on the other hand, is an open question": a matter of its own
      !state.drafts.some((d) => d.entry.kind === 'decision' && d.sentence === next.sentence) &&
      !next.items.some((x) => x.action || x.finding || x.material) &&
      // "3-3 needs a darn. 3-4 could go either way": said of another block
      !namesOthers(next.items, sentenceItems)
        ? ` ${next.items.map((x) => x.w).join(' ')} `
        : '';
    readClause(state, clause, c, sentence + (looksUndecided(tail) ? tail : ''), sentenceItems);
  }
  dropFinished(state);
  withoutPointedAt(state);
  tellApart(state.drafts, clauses);
  allButNamed(state);
  readLengthsAhead(state);
  minutesOfDeed(state);
  wholeVerdict(state);
  ownersWord(state);
  readDoubtfulCloth(state);
  return state.drafts;
}

/** Do these words name blocks that the sentence before does not? */
const namesOthers = (items: Item[], before: Item[]): boolean =>
  items.some(
    (x) =>
      x.place?.kind === 'blocks' &&
      before.some((y) => y.place?.kind === 'blocks') &&
      x.place.places.some((p) => !before.some((y) => y.place?.places.includes(p))),
  );

function readClause(
  state: ReaderState,
  clause: Clause,
  index: number,
  sentence: string,
  sentenceItems: Item[],
): void {
  const v = view(clause, index);
  const { items } = clause;
  if (standingTold(state, clause, v) || headsWithDamage(state, clause, index)) return;
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  const used = new Set<Item>(sameOnDamage(state, items, words));

  // 2. Treatments.
  const heading = headingThing(state, clause, index);
  const thing = heading ?? thingSpokenOf(state, index);
  const ways = findWays(items, thing).filter((way) => !way.items.some((x) => used.has(x) && !x.span));
  const stitch = stitchOf(items) ?? sameStitch(state, items, words);
  const said = everyOneOf(
    state,
    clause,
    placesOfClause(
      edgesOfBlocks(
        state,
        clause,
        items.filter((x) => !isMaterialPlace(x, items) && !isManner(x, items) && !isEdgeOfRepair(x, items)),
      ),
    ),
  );
  const told = withCloths(state, items, said);
  const placed =
    told.kind === 'none' ||
    // "might take that patch off and redo it"
    (told.kind === 'pronoun' && told.items.every((x) => x.place!.rule === 'place.it')) ||
    told.items.every((x) => x.place!.rule === 'place.those' || x.place!.rule === 'place.both')
      ? (spokenOf(state, clause, told) ?? told)
      : ways.length
        ? (oneWithin(state, clause, told) ?? spokenOfToo(state, clause, told) ?? told)
        : told;
  // "somebody's aunt patched that with curtain stuff": found so, and no work of today
  const foundMended = mendedBefore(state, clause, v, placed);
  if (foundMended) {
    state.drafts.push(foundMended);
    state.carried = foundMended.entry.kind === 'condition' ? (foundMended.entry.places ?? []) : [];
    return;
  }
  const alsoOff = gappedRemoval(state, v, clause, told);
  if (alsoOff) {
    state.drafts.push(alsoOff);
    state.carried = told.places;
    return;
  }
  const made: Draft[] = [];
  const meant = state.drafts.filter((d) => d.entry.kind === 'treatment' && d.entry.state === 'planned');
  const sewn = stitchOfEach(items, ways, stitch, words);
  for (const way of ways) {
    const draft = makeTreatment({ state, clause, v, way, sentence, placed, stitch: sewn(way) });
    if (!draft) continue;
    if (absorbed(state, made, draft, clause)) {
      way.items.forEach((x) => {
        used.add(x);
      });
      continue;
    }
    made.push(draft);
    way.items.forEach((x) => {
      used.add(x);
    });
  }
  // "net then. Stitched down by hand": what was chosen is on, and its stuff used
  for (const d of meant)
    if (
      d.entry.kind === 'treatment' &&
      d.entry.state === 'done' &&
      !state.drafts.some((m) => m.clause === d.clause && m.entry.kind === 'material')
    )
      readMaterials(state, view(state.clauses[d.clause]!, d.clause), [d], new Set());
  sewnAsPlanned(state, v, made, sentence);
  const over = stitch && sewnOver(state, v, made, stitch);
  const elsewhere = !made.length && stitch ? gapped(state, v, clause, placed, stitch) : undefined;
  if (elsewhere) made.push(elsewhere);
  const seenTo = made.length ? undefined : damageSeenTo(state, v, words, placed, stitch);
  if (seenTo) {
    made.push(seenTo.draft);
    for (const x of seenTo.damage) used.add(x);
  }
  askBetween(state, clause, made);
  state.drafts.push(...made, ...(over ? [over] : []));
  otherStuff(state, clause, index, made);
  // "pieced the new border and sewed it on, all by machine": the stitch of all that was told in the sentence
  if (
    stitch &&
    / (?:all|both) (?:of (?:it|them) )?(?:done )?(?:by (?:hand|machine)|(?:hand|machine) (?:stitched|sewn|sewed|done|finished|sewing)) /.test(
      words,
    )
  )
    for (const { entry: e, sentence: n } of state.drafts)
      if (n === v.sentence && e.kind === 'treatment' && e.action && TAKES_STITCH.has(e.action) && !e.stitch)
        e.stitch = stitch.stitch;

  // 3. Conditions.
  const treating = made.length > 0;
  for (const c of findConditions(items, treating, used, thing, isHeaded(state, clause), heading))
    makeCondition(state, v, c, placed, treating);

  // "seam 3-1/3-2 open, ladder stitch, 10 min": found, and closed in the same breath
  if (!made.length && stitch) {
    const closed = closedAtOnce(state, v, stitch);
    if (closed) {
      made.push(closed);
      state.drafts.push(closed);
    }
  }

  // A stitch told by itself says how the last treatment was done, or closes the seam that was just found open.
  if (
    !made.length &&
    stitch &&
    (!state.drafts.some((d) => d.clause === index) ||
      // "patched them because they were worn blanket stitch round the edges"
      (/^(because|cos|coz|cause|as|since|where)$/.test(clause.joint) &&
        !stitch.item.weakStitch &&
        !/^(the|its|old|that|this|my)$/.test(items[items.indexOf(stitch.item) - 1]?.w ?? '')) ||
      // "backed with lawn because it's gone thin, whipst"
      (clause.joint !== '' && /^(,|-|--)$/.test(items[items.indexOf(stitch.item) - 1]?.w ?? '')))
  )
    fastening(state, v, stitch, placed);

  // "2-3 gets a patch, 2-4 maybe"
  const inQuestion =
    !made.length && !state.drafts.some((d) => d.clause === index)
      ? maybeToo(state, clause, v, placed)
      : undefined;
  if (inQuestion) {
    state.drafts.push(inQuestion);
    state.carried = placed.places;
    return;
  }

  // "2-3: net?"
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const stuff = bareStuff(state, clause, v, placed);
    if (stuff) {
      made.push(stuff);
      state.drafts.push(stuff);
    }
  }

  // "row four I only got as far as block two", "I'm on row five now"
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const reached = soFar(state, v, words, told, ongoing(state, sentenceItems));
    const along =
      reached ?? begunAlong(state, v, told, ongoing(state, sentenceItems), stitchOf(sentenceItems)?.stitch);
    if (along) state.drafts.push(along);
  }

  // Work on a place without saying what: "did five one and six four last night".
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const unsaid = unsaidDeed(state, v, words, told, placed, ongoing(state, sentenceItems), stitch);
    if (unsaid) {
      state.drafts.push(unsaid);
      // "did 1-4 with vinegar", of what was to be sponged: what it was done with
      if (isTreatment(unsaid) && unsaid.entry.action) made.push(unsaid);
    }
  }
  if (!state.drafts.length && state.clauses[0] === clause) {
    const tended = tendedTo(state, v, words);
    if (tended) state.drafts.push(tended);
  }

  if (!made.length && !state.drafts.some((d) => d.clause === index) && MENDED_ONCE.test(words))
    mendedByOthers(state, v, placed);
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const carried = [
      ...doneAsPlanned(state, v, words, sentence, stitch),
      ...takenUp(state, v, words, sentence),
    ];
    made.push(...carried);
    state.drafts.push(...carried);
  }

  if (!made.length && !state.drafts.some((d) => d.clause === index) && takenInTurn(state, clause, v)) return;
  dropIdea(state, v, words);
  if (!made.length) callOff(state, v, words);
  if (/ (?:no|not) /.test(sentence) && / (?:just|only|simply|instead) /.test(sentence)) thisNotThat(state, v);
  if (!made.length && !state.drafts.some((d) => d.clause === index))
    toFollow(state, v, clause, placed, stitch);
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const plan = unsaidPlan(state, v, words, told);
    if (plan) state.drafts.push(plan);
  }
  if (
    made.every((d) => isTreatment(d) && d.entry.state === 'dropped') &&
    /^(none|pronoun|specific)$/.test(told.kind) &&
    state.memory.open.length &&
    state.drafts.every((d) => d.clause !== index || (isTreatment(d) && d.entry.state === 'dropped'))
  )
    chooseIdea(state, v, told.kind === 'specific' ? told.places : undefined);
  const trailing = made.length ? undefined : placesTrailing(state, clause, index, placed, stitch);
  if (trailing) {
    readMaterials(state, v, [trailing], used);
    state.carried = placed.places;
    readDurations(state, clause, v, made, sentenceItems);
    return;
  }
  if (
    placesAfterColon(state, clause, placed) ||
    placesWhereItSits(state, clause, index, placed) ||
    placesAdded(state, clause, index, placed) ||
    placesNarrowed(state, clause, placed) ||
    // "rows 2 and 3 still to do, in red wool": of what is planned no goods are used yet
    state.drafts.some((d) => d.clause === index && d.origins['state']?.rule === 'treatment.to-follow')
  ) {
    state.carried = placed.places;
    readDurations(state, clause, v, made, sentenceItems);
    return;
  }

  // 4. Same again.
  if (
    !made.length &&
    !state.drafts.some((d) => d.clause === index && /^(condition|treatment)$/.test(d.entry.kind))
  )
    asModel(state, clause, v, placed, stitch) || sameAgain(state, clause, v, placed, stitch);

  // 5. Materials that the treatments used up.
  const again = state.drafts.at(-1);
  const doneAgain =
    !made.length && again?.clause === index && again.origins['action']?.rule === 'treatment.same-again'
      ? [again]
      : made;
  readMaterials(state, v, doneAgain, used);

  // 6. Lengths of time of single treatments, or of several together.
  readDurations(state, clause, v, made, sentenceItems);

  // 7. "started tying row one": a treatment in hand and the work begun.
  readBegun(state, v, words, made);

  if (placed.places.length && placed.kind !== 'none') state.carried = placed.places;
  else if (!state.drafts.some((d) => d.clause === index)) {
    const cloth = mendedCloth(items, state);
    if (cloth) state.carried = cloth.places;
  }
  state.topic = topicAfter(state, clause, index, placed);
}

/** "linen for the backing": the backing is what it is for, not where. */
function isMaterialPlace(item: Item, items: Item[]): boolean {
  if (!item.part || !item.material) return false;
  const k = items.indexOf(item);
  // "backing cloth sewn in behind": a support, and not the quilt's back
  if (
    /^backing (cloth|fabric|material)$/.test(item.w) &&
    / (?:behind|underneath) /.test(wordsBetween(items, k + 1))
  )
    return true;
  const before = items[k - 1]?.w ?? '';
  const quantity = items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit);
  return quantity && before !== 'the';
}

/** The treatment that the task in hand consists of, where it is but one: tying, quilting, binding. */
function ongoing(state: ReaderState, sentence: Item[]): Action | undefined {
  const task =
    // "the quilting's snapped": a thing, and no task
    sentence.find(
      (x, k) =>
        !(x.stitches && x.w === 'quilting' && sentence[k - 1]?.w === 'the') &&
        x.task &&
        ['tying', 'quilting', 'binding'].includes(x.task) &&
        x.part !== 'binding',
    )?.task ??
    state.drafts.flatMap(({ entry: e }) => (e.kind === 'work' && e.task ? [e.task] : []))[0] ??
    state.memory.running;
  return task === 'tying' ? 'tie' : task === 'quilting' ? 'quilt' : undefined;
}

/** "the edge of the patch is ravelling", "off the back of that repair": no edge and no back of the quilt. */
const isEdgeOfRepair = (item: Item, items: Item[]): boolean => {
  if (item.part !== 'edge' && !/^(edges?|back)$/.test(item.w)) return false;
  const k = items.indexOf(item);
  // "put a patch on it and stitched the edges down by hand"
  if (
    item.w === 'edges' &&
    /^(the|its|all|round|around)$/.test(items[k - 1]?.w ?? '') &&
    items.slice(Math.max(0, k - 4), k).some((x) => x.stitch || x.action?.v === 'resew') &&
    items.slice(0, k).some((x) => x.material || /^(patch|darn|net|piece)$/.test(x.w))
  )
    return true;
  // "that patch is fraying at the edges", "the patch is coming frayed all round the edges"
  if (
    item.part === 'edge' &&
    /^(the|its)$/.test(items[k - 1]?.w ?? '') &&
    /^(at|round|around|along|on)$/.test(items[k - 2]?.w ?? '') &&
    items
      .slice(0, k - 2)
      .some(
        (x, m) =>
          /^(patch|repair|darn|mend)$/.test(x.w) && /^(the|that|this|its)$/.test(items[m - 1]?.w ?? ''),
      )
  )
    return true;
  return (
    items[k + 1]?.w === 'of' &&
    /^(the|that|it|this)$/.test(items[k + 2]?.w ?? '') &&
    items
      .slice(k + 2, k + 5)
      .some((x) => x.finding === 'old-repair' || /^(patch|patches|darn|mend|repair|hole|tear|it)$/.test(x.w))
  );
};
