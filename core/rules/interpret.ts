import type { Action } from '../../shared/vocabulary.ts';
import type { Clause } from './clause/clause.ts';
import { view } from './clause-view.ts';
import { findConditions } from './conditions/find-conditions.ts';
import { makeCondition } from './conditions/make-condition.ts';
import { tellApart } from './conditions/told-apart.ts';
import type { Draft } from './draft.ts';
import { type Item, makeItem } from './item.ts';
import { readDoubtfulCloth } from './materials/doubtful-cloth.ts';
import { readMaterials } from './materials/read-materials.ts';
import { looksUndecided } from './mood.ts';
import { mendedCloth, withCloths } from './places/cloth-worked-on.ts';
import { edgesOfBlocks } from './places/edges-of-blocks.ts';
import { findMention } from './places/find-mention.ts';
import { splitBlock, unique } from './places/grid.ts';
import { type ClausePlaces, placesOfClause } from './places/places-of-clause.ts';
import { oneWithin, spokenOf, spokenOfToo } from './places/spoken-of.ts';
import type { ReaderState } from './reader-state.ts';
import { absorbed } from './treatments/absorbed.ts';
import { doneAsPlanned, takenUp } from './treatments/as-planned.ts';
import { askBetween } from './treatments/ask-between.ts';
import { bareStuff } from './treatments/bare-stuff.ts';
import { MENDED_ONCE, mendedByOthers } from './treatments/by-others.ts';
import { findWays } from './treatments/find-ways.ts';
import { gapped, gappedRemoval } from './treatments/gapped.ts';
import { isManner } from './treatments/is-manner.ts';
import { isTreatment } from './treatments/is-treatment.ts';
import { makeTreatment } from './treatments/make-treatment.ts';
import { sameAgain, toFollow } from './treatments/same-again.ts';
import { begunAlong, soFar } from './treatments/so-far.ts';
import { standingTold } from './treatments/standing-told.ts';
import { closedAtOnce, fastening, sewnOver } from './treatments/stitch-alone.ts';
import { sameStitch, stitchOf, TAKES_STITCH } from './treatments/stitch-of.ts';
import { thisNotThat } from './treatments/this-not-that.ts';
import { tendedTo, unsaidDeed } from './treatments/unsaid-deed.ts';
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
  tellApart(state.drafts, clauses);
  readLengthsAhead(state);
  minutesOfDeed(state);
  wholeVerdict(state);
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
  const used = new Set<Item>();

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
  const alsoOff = gappedRemoval(state, v, clause, told);
  if (alsoOff) {
    state.drafts.push(alsoOff);
    state.carried = told.places;
    return;
  }
  const made: Draft[] = [];
  // of several ways in one clause the stitch belongs to the one that it was said after
  const sewn =
    stitch && ways.findLast((x) => x.at <= items.indexOf(stitch.item) && TAKES_STITCH.has(x.action!));
  for (const way of ways) {
    const own =
      !sewn || sewn === way || sewn.action === way.action || /\bboth\b/.test(words) ? stitch : undefined;
    const draft = makeTreatment({ state, clause, v, way, sentence, placed, stitch: own });
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
  const over = stitch && sewnOver(state, v, made, stitch);
  const elsewhere = !made.length && stitch ? gapped(state, v, clause, placed, stitch) : undefined;
  if (elsewhere) made.push(elsewhere);
  askBetween(state, clause, made);
  state.drafts.push(...made, ...(over ? [over] : []));
  // "pieced the new border and sewed it on, all by machine": the stitch of all that was told in the sentence
  if (stitch && / (?:all|both) (?:done )?by (?:hand|machine) /.test(words))
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
      // "backed with lawn because it's gone thin, whipst"
      (clause.joint !== '' && /^(,|-|--)$/.test(items[items.indexOf(stitch.item) - 1]?.w ?? '')))
  )
    fastening(state, v, stitch, placed);

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
    if (unsaid) state.drafts.push(unsaid);
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

  dropIdea(state, v, words);
  if (!made.length) callOff(state, v, words);
  if (/ (?:no|not) /.test(sentence) && / (?:just|only|simply|instead) /.test(sentence)) thisNotThat(state, v);
  if (!made.length && !state.drafts.some((d) => d.clause === index))
    toFollow(state, v, clause, placed, stitch);
  if (
    made.every((d) => isTreatment(d) && d.entry.state === 'dropped') &&
    /^(none|pronoun|specific)$/.test(told.kind) &&
    state.memory.open.length &&
    state.drafts.every((d) => d.clause !== index || (isTreatment(d) && d.entry.state === 'dropped'))
  )
    chooseIdea(state, v, told.kind === 'specific' ? told.places : undefined);
  if (
    placesAfterColon(state, clause, placed) ||
    placesWhereItSits(state, clause, index, placed) ||
    placesAdded(state, clause, index, placed) ||
    placesNarrowed(state, clause, placed) ||
    // "rows 2 and 3 still to do, in red wool": of what is planned no goods are used yet
    state.drafts.some((d) => d.clause === index && d.origins['state']?.rule === 'treatment.to-follow')
  ) {
    state.carried = placed.places;
    return;
  }

  // 4. Same again.
  if (
    !made.length &&
    !state.drafts.some((d) => d.clause === index && /^(condition|treatment)$/.test(d.entry.kind))
  )
    sameAgain(state, clause, v, placed, stitch);

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

/**
 * "3-2: …", "other three: …", "the bottom border, either …": places named before anything is said of them stand for the
 * rest of their sentence.
 */
function topicAfter(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ClausePlaces,
): ReaderState['topic'] {
  const said = state.drafts.some((d) => d.clause === index);
  const told = state.topic?.sentence === clause.sentence;
  const cloth = placed.kind === 'none' && !told ? mendedCloth(clause.items, state) : undefined;
  const named =
    placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt') || cloth;
  // "the two shattered ones: it's crepeline": told by what was found there
  const described = placed.kind === 'specific' && !placed.items.length;
  const light = (x: Item): boolean =>
    Boolean(x.place || x.fabric || x.seam || x.quantity) ||
    /^(the|old|and|,|&|\+|\/|also|too|each|all|full|whole|in|of|on|for|at|as|now|then|ok|so|right|back|to|seam|blocks?|squares?|pieces?|again|both|that|this|those|these|only|just|one|ones|question|matter|about|with|regarding|yes|decided|is|'s|worst|worse|"|')$/.test(
      x.w,
    );
  // "3-4 I can't decide: net or leave", "3-4 could go either way, patch or leave": in doubt, before the ways are told
  if (
    !said &&
    named &&
    clause.items.every((x) => light(x) || (described && x.finding) || IN_DOUBT.test(x.w)) &&
    (clause.items.every((x) => light(x) || (described && x.finding)) ||
      looksUndecided(wordsBetween(clause.items)))
  )
    return {
      places: cloth?.places ?? placed.places,
      sentence: clause.sentence,
      ...(told && state.topic?.finding ? { finding: state.topic.finding } : {}),
    };
  const standing = told ? state.topic : undefined;
  // "now the thumb hole | I'm torn between …"
  if (standing && !said && placed.places.every((p) => standing.places.includes(p))) return standing;
  if (standing && (placed.kind === 'none' || placed.kind === 'pronoun')) return standing;
  return undefined;
}

const IN_DOUBT =
  /^(undecided|unsure|unresolved|could|might|may|go|goes|either|way|i|we|ca|can|n't|not|never|decide|decided|make|made|up|my|our|mind|minds|do|know|sure|yet|still|have|'ve|has|tbd|tbc|toss|torn|'m|am|two|about|dunno|no|idea|clue|well|hmm|really|what|ask|open|be|choose|settle|settled|fence|one|will|'ll|another|thing|matter|case|story|it|other|to be decided|up in the air|in the air|air|wondering|wonder|think|thinking)$/;

/** "black velvet: faded in every block": of those told before the mark, and not of the quilt. */
function everyOneOf(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces {
  if (!isHeaded(state, clause) || !told.items.length) return told;
  return told.items.every((x) => x.place!.rule === 'place.all-blocks')
    ? { ...told, places: state.topic!.places }
    : told;
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

const MARKS_OFF = /^(:|-|--)$/;

/** "Rip: fusible behind it. Seam: ladder stitch": damage told before heads what was done there, and is not found anew. */
function headsWithDamage(state: ReaderState, clause: Clause, index: number): boolean {
  const next = state.clauses[index + 1];
  if (!next || next.sentence !== clause.sentence) return false;
  const thing = clause.items.filter((x) => !LEADS_IN.test(x.w));
  const [only] = thing;
  if (!only || thing.length > 2 || !(only.finding || only.seam) || thing.some((x) => x.place || x.fabric))
    return false;
  // "then the seam, ladder stitch"
  const sewn = next.joint === ',' && only.seam && next.items[0]!.stitch;
  if (!sewn && !MARKS_OFF.test(next.joint)) return false;
  if (!next.items.some((x) => x.action || x.material || x.stitch)) return false;
  const { i, token } = only;
  const places = findMention([makeItem(i, i, 'the', token), ...thing], state.memory.mentions ?? []);
  if (!places) return false;
  state.topic = { places, sentence: clause.sentence };
  state.carried = places;
  return true;
}
const LEADS_IN = /^(ok|okay|right|so|now|then|and|well|first|next|the|that|for|as|to|,|also)$/;

/** "right edge: sound", "black velvet - sound": a place stands before the mark. */
const isHeaded = (state: ReaderState, clause: Clause): boolean =>
  MARKS_OFF.test(clause.joint) && state.topic?.sentence === clause.sentence;

/** "ties: half of them gone": what stands before a colon is what is spoken of behind it. */
function headingThing(state: ReaderState, clause: Clause, index: number): string | undefined {
  // "ties: rows 1-3 gone, row 4 loose": the heading holds for the sentence
  let first = index;
  while (!MARKS_OFF.test(state.clauses[first]!.joint)) {
    first--;
    if (state.clauses[first]?.sentence !== clause.sentence) return undefined;
  }
  const heading = state.clauses[first - 1];
  if (heading?.sentence !== clause.sentence) return undefined;
  // "seam at 2-4: open", "3-3/3-4 seam - split"
  if (first === index && heading.items.length <= 6 && heading.items.some((x) => x.seam)) return 'seam';
  if (heading.items.length > 3) return undefined;
  const object = heading.items.at(-1)?.object;
  return object && (STITCHED.test(object) || (first === index && clause.joint === ':')) ? object : undefined;
}
const STITCHED = /^(ties|quilting|stitching)$/;

/** What "it" and "them" are when something is taken off: the thing last spoken of in the note, else before it. */
function thingSpokenOf(state: ReaderState, index: number): string | undefined {
  // "someone had left pins in the top border, and I have taken them out": told of in the clause before, as nothing found or done
  const before = state.clauses[index - 1];
  const left = before?.items.find((x) => /^(pins|label)$/.test(x.object ?? ''));
  if (left && !state.drafts.some((d) => d.clause === index - 1 && d.entry.kind !== 'material'))
    return left.object;
  for (const d of [...state.drafts].reverse()) {
    const e = d.entry;
    if (e.kind === 'treatment' && e.object) return e.object;
    if (e.kind === 'treatment' && e.action === 'resew') return 'seam';
    // "cut the border strips, pieced them and sewed them on"
    if (e.kind === 'treatment' && /^(cut|piece)$/.test(e.action ?? '')) {
      const of = /^(border|binding)/.exec(e.places?.[0] ?? '')?.[1];
      if (of) return of;
    }
    if (e.kind === 'treatment' && e.action === 'bind') return 'binding';
    // "do I leave the batting or pull it out"
    if (e.kind === 'treatment' && e.action === 'leave') {
      const told = state.clauses[d.clause]?.items.find((x) => x.object || x.finding === 'old-repair');
      if (told) return told.finding === 'old-repair' ? 'old-patch' : told.object;
    }
    if (e.kind === 'condition') {
      if (e.finding === 'lumpy-batting') return 'batting';
      if (e.finding === 'old-repair') return 'old-patch';
      if (e.finding === 'split-seam') return 'seam';
      if (e.finding === 'broken-stitching')
        return state.clauses[d.clause]?.items.some((x) => x.object === 'ties') ||
          (d.origins['finding'] &&
            /tie/.test(
              state.tokens
                .filter((t) => t.from >= d.origins['finding']!.from && t.to <= d.origins['finding']!.to)
                .map((t) => t.w)
                .join(' '),
            ))
          ? 'ties'
          : 'quilting';
      // "the binding is frayed along the bottom, so off it came"
      if (state.clauses[d.clause]?.items.some((x) => x.part === 'binding')) return 'binding';
      const part = e.places?.[0];
      if (part === 'backing' || part === 'batting' || part === 'binding') return part;
      if (part?.startsWith('border')) return 'border';
    }
  }
  const { treatment } = state.memory;
  return (
    treatment?.object ??
    (treatment?.action === 'bind' ? 'binding' : state.memory.thing) ??
    // "that seam's gone again", then "redid it"
    (state.memory.condition?.finding === 'split-seam' && state.memory.lastKind === 'condition'
      ? 'seam'
      : undefined)
  );
}

/** "stained: 2-1, 2-5": places that a colon adds to what was just found without any. */
function placesAfterColon(state: ReaderState, clause: Clause, placed: ClausePlaces): boolean {
  const named = placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt');
  const last = state.drafts.at(-1);
  const e = last?.entry;
  // "label on, bottom L corner"
  const label = e?.kind === 'treatment' && e.action === 'label' && !e.places?.length && clause.joint === ',';
  if (!(MARKS_OFF.test(clause.joint) || label) || !named) return false;
  if (!clause.items.every((x) => x.place || BETWEEN_PLACES.test(x.w))) return false;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  // "binding worn: left side, bottom": of the part, its sides
  const sides =
    e.places?.length === 1 &&
    /^(binding|border|edge)$/.test(e.places[0]!) &&
    placed.places.every((p) => /^(edge|border|corner)-/.test(p));
  if (!sides && !label && (clause.joint !== ':' || (e.places?.length && last.placed === 'said')))
    return false;
  e.places = placed.places;
  last.placed = 'said';
  if (placed.outside) last.outside = true;
  return true;
}

/** "stains in columns three and four, but only from row four down": of the places just told, those that are named now. */
function placesNarrowed(state: ReaderState, clause: Clause, placed: ClausePlaces): boolean {
  if (!/^(but|,|--|-)$/.test(clause.joint) || placed.kind !== 'specific') return false;
  // "the damask has bled, 2-4 only"
  if (!/^(only|just)$/.test(clause.items[0]!.w) && clause.items.at(-1)!.w !== 'only') return false;
  if (!clause.items.every((x) => x.place || NARROWING.test(x.w))) return false;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  const whole = e.places?.length === 1 && e.places[0] === 'quilt';
  const left = whole ? placed.places : (e.places?.filter((p) => placed.places.includes(p)) ?? []);
  if (!left.length) return false;
  e.places = left;
  return true;
}
const NARROWING = /^(only|just|in|on|at|along|from|of|the|and|,|to|down|up|blocks?|really|mind|you|though)$/;

/** What joins the places of a list: "where 3-2 meets 4-2, and 4-2 to 4-3", "5-1 with 5-2, 6-1 with 6-2". */
const BETWEEN_PLACES =
  /^(,|\/|and|&|\+|the|in|on|also|all|full|whole|of|where|meets?|joins?|to|with|between|from|at|both)$/;

const SITS = /^(sits?|runs?|goes|reaches|lies|spreads?|stretches|crosses|is|'s|ran|went)$/;
/** "a brown ring, coffee I'd have said, that sits right across 4-4 and 4-5": where the damage lies that was told without a place. */
function placesWhereItSits(state: ReaderState, clause: Clause, index: number, placed: ClausePlaces): boolean {
  const { items, joint } = clause;
  if (placed.kind !== 'specific') return false;
  const relative = items.findIndex(
    (x, k) => /^(that|which)$/.test(x.w) && (k === 0 || items[k - 1]!.w === ','),
  );
  if (!SITS.test(items[joint === 'which' ? 0 : relative + 1]?.w ?? '')) return false;
  if (joint !== 'which' && relative < 0) return false;
  if (items.some((x) => x.finding || x.fail || (x.action && !x.seam) || x.material)) return false;
  const last = state.drafts.at(-1);
  if (
    last?.entry.kind !== 'condition' ||
    last.placed === 'said' ||
    last.sentence !== clause.sentence ||
    last.clause === index
  )
    return false;
  last.entry.places = placed.places;
  last.placed = 'said';
  return true;
}

/**
 * "moth: the first three of the top row, and then the two under those", "vacuumed the front and then the back, twenty minutes in
 * all": more places of what was just told.
 */
function placesAdded(state: ReaderState, clause: Clause, index: number, placed: ClausePlaces): boolean {
  if (!/^(then|also)$/.test(clause.joint)) return false;
  const parts = placed.kind === 'general' && placed.places[0] !== 'quilt';
  if (placed.kind !== 'specific' && !parts) return false;
  if (
    !clause.items.every(
      (x) =>
        x.place ||
        x.duration ||
        /^(,|and|&|\+|the|in|on|also|all|of|for|then|too|straight|down|altogether|both|pair|two|lot|it|took|me|so|far|now|done|together)$/.test(
          x.w,
        ),
    )
  )
    return false;
  const next = state.clauses[index + 1];
  if (
    next?.sentence === clause.sentence &&
    next.items.some((x) => x.finding || x.fail || x.action || x.stitch)
  )
    return false;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  // "top and bottom borders are on and then the left one"
  const ofParts = parts || !placed.places.some(splitBlock);
  if (!e.places?.some((p) => (ofParts ? p !== 'quilt' && !splitBlock(p) : splitBlock(p)))) return false;
  e.places = unique([...e.places, ...placed.places]);
  const took = clause.items.find((x) => x.duration);
  if (took && e.kind === 'treatment' && e.minutes === undefined) {
    e.minutes = took.duration!.minutes;
    last.origins['minutes'] = {
      rule: 'time.minutes',
      how: 'said',
      from: took.token.from,
      to: took.end ?? took.token.to,
    };
  }
  return true;
}
