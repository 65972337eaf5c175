import type { Action, Stitch, TreatmentState } from '../../shared/vocabulary.ts';
import { STITCH_PHRASES } from '../lexicon/stitches.ts';
import { type Clause, isPredicate } from './clause.ts';
import { type ConditionFound, findConditions } from './conditions/find-conditions.ts';
import { type Draft, makeDraft } from './draft.ts';
import type { Item } from './item.ts';
import { readMaterials } from './materials/read-materials.ts';
import { mentionsOf } from './mentions-of.ts';
import { looksUndecided, stateOf } from './mood.ts';
import { findMention } from './places/find-mention.ts';
import { splitBlock, unique } from './places/grid.ts';
import { type ClausePlaces, placesOfClause } from './places/places-of-clause.ts';
import type { ReaderState } from './reader-state.ts';
import { findWays } from './treatments/find-ways.ts';
import type { Way } from './treatments/way.ts';
import { readBegun, readDurations } from './work/read-work.ts';

/** Treatments of the whole quilt where no place is said. */
const WHOLE_QUILT = new Set<Action>([
  'wash',
  'dry',
  'bind',
  'layer',
  'baste',
  'square-up',
  'photograph',
  'measure',
  'press',
  'tie',
  'quilt',
  'clean',
]);
const NO_PLACE_NEEDED = new Set<Action>(['cut', 'piece', 'add-border', 'label', ...WHOLE_QUILT]);

const view = (clause: Clause, index: number): { index: number; sentence: number; items: Item[] } => ({
  index,
  sentence: clause.sentence,
  items: clause.items,
});

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
      !next.items.some((x) => x.action || x.finding || x.material)
        ? ` ${next.items.map((x) => x.w).join(' ')} `
        : '';
    readClause(state, clause, c, sentence + (looksUndecided(tail) ? tail : ''), sentenceItems);
  }
  return state.drafts;
}

/** Work on a block that does not say what: "seen to 4-1", "that's 5-2 out of the way", "2-3 ok now". */
const UNSAID_DEED =
  / (?:did|done|treated|finished|mended|repaired|fixed|took care of|taken care of|sorted|sorted out|dealt with|saw to|seen to|attended to|worked on|tackled|finished off|polished off|had a go at|been at|got through|made good|put right|set to rights|ticked off|crossed off|wrapped up|out of the way) /;

/** The same of what was last spoken of: "took care of those", "sorted that one out", "it's been seen to". */
const TENDED =
  /^ (?:(?:oh|right|ok|okay|so|and|well|there|,|now|i|i 've|'ve|have|just|also|then|we|that 's) )*(?:took care of|taken care of|sorted|dealt with|saw to|seen to|attended to|put right|made good|treated|mended|repaired|fixed|tackled|finished off) (?:it|that|them|those|these|this|both|'em|em|both of (?:them|those)|all of (?:them|those)|that one|this one|the (?:lot|pair|two)(?: of (?:them|those))?)(?: (?:one|ones|two|three|up|out|now|too|as well|all|both|already|today|tonight|this morning|this afternoon|this evening|last night|yesterday|then))*(?: [.!])* $/;

/** "somebody long ago mended 1-4 with a piece of a shirt" */
const MENDED_ONCE =
  / (?:somebody|someone|whoever|some (?:fool|clot|soul)|they|she|he) (?:(?:has|had|must have|'d|'s|once|long|ago|years|back|before|already|did|just) ){0,4}(?:mended|repaired|fixed|darned|patched|had a go at|botched|bodged) /;

/** An old repair at the place named; nothing where no place is said. */
function mendedByOthers(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  placed: ClausePlaces,
): void {
  // "4-6, somebody fixed it": the place was named first
  const lead = state.clauses[v.index - 1];
  if (
    placed.kind === 'none' &&
    !placed.outside &&
    lead?.sentence === v.sentence &&
    lead.items.every((x) => x.place)
  )
    placed = placesOfClause(lead.items);
  const outside = placed.outside && !placed.places.length;
  if (!outside && (placed.kind !== 'specific' || !placed.places.some((p) => splitBlock(p)))) return;
  const draft = makeDraft(
    'condition',
    v,
    {
      finding: ['old-repair', 'condition.mended-by-others', v.items],
      places: [outside ? [] : placed.places, 'place.said', placed.items],
    },
    outside ? 'none' : 'said',
  );
  if (outside) draft.outside = true;
  state.drafts.push(draft);
}

function readClause(
  state: ReaderState,
  clause: Clause,
  index: number,
  sentence: string,
  sentenceItems: Item[],
): void {
  const v = view(clause, index);
  const { items } = clause;
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  const used = new Set<Item>();

  // 2. Treatments.
  const thing = thingSpokenOf(state);
  const ways = findWays(items, thing).filter((way) => !way.items.some((x) => used.has(x) && !x.span));
  const stitch = stitchOf(items);
  const told = placesOfClause(items.filter((x) => !isMaterialPlace(x, items) && !isManner(x, items)));
  const placed =
    told.kind === 'none' ||
    told.items.every((x) => x.place!.rule === 'place.those' || x.place!.rule === 'place.both')
      ? (spokenOf(state, clause, told) ?? told)
      : ways.length
        ? (oneWithin(state, clause, told) ?? told)
        : told;
  const made: Draft[] = [];
  // of several ways in one clause the stitch belongs to the one that it was said after
  const sewn =
    stitch && ways.findLast((x) => x.at <= items.indexOf(stitch.item) && TAKES_STITCH.has(x.action!));
  for (const way of ways) {
    const own =
      !sewn || sewn === way || sewn.action === way.action || /\bboth\b/.test(words) ? stitch : undefined;
    const draft = treatment(state, clause, v, way, sentence, placed, own);
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
  state.drafts.push(...made);

  // 3. Conditions.
  const treating = made.length > 0;
  for (const c of findConditions(items, treating, used, thing)) condition(state, v, c, placed, treating);

  // "seam 3-1/3-2 open, ladder stitch, 10 min": found, and closed in the same breath
  if (!made.length && stitch) {
    const closed = closedAtOnce(state, v, stitch);
    if (closed) {
      made.push(closed);
      state.drafts.push(closed);
    }
  }

  // A stitch told by itself says how the last treatment was done, or closes the seam that was just found open.
  if (!made.length && stitch && !state.drafts.some((d) => d.clause === index))
    fastening(state, v, stitch, placed);

  // Work on a place without saying what: "did five one and six four last night".
  if (
    !made.length &&
    told.kind === 'specific' &&
    !state.drafts.some((d) => d.clause === index) &&
    UNSAID_DEED.test(words) &&
    !/ (what|did n't|have n't|not|undecided|how|same|somebody|someone|she|he|they|once|before now|years) /.test(
      words,
    )
  )
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          ...(ongoing(state, sentenceItems)
            ? { action: [ongoing(state, sentenceItems), 'treatment.of-task', undefined, 'implied'] }
            : {}),
          state: ['done', 'treatment.unsaid', undefined],
          places: [placed.places, 'place.said', placed.items],
        },
        'said',
      ),
    );

  if (
    !state.drafts.length &&
    state.clauses[0] === clause &&
    state.memory.last &&
    state.memory.focus.length &&
    TENDED.test(
      items.length <= 14
        ? words
            .replace(
              /(?: ,| in| took| for)? (?:about |all of )?(?:\S+ ){1,4}(?:minutes|mins|min|hours?|hrs?) $/,
              ' ',
            )
            .replace(/ , quarter of an hour $|(?: ,)? half an hour $/, ' ')
        : words,
    )
  )
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          state: ['done', 'treatment.unsaid', undefined],
          places: [[...state.memory.focus], 'place.spoken-of', undefined, 'implied'],
          minutes: [items.find((x) => x.duration)?.duration?.minutes, 'time.minutes', undefined],
        },
        'carried',
      ),
    );

  if (!made.length && !state.drafts.some((d) => d.clause === index) && MENDED_ONCE.test(words))
    mendedByOthers(state, v, placed);
  if (!made.length && !state.drafts.some((d) => d.clause === index)) {
    const carried = doneAsPlanned(state, v, words, stitch);
    if (carried) {
      made.push(carried);
      state.drafts.push(carried);
    }
  }

  if (!made.length) dropIdea(state, v, words);
  if (!made.length && !state.drafts.some((d) => d.clause === index)) planAgain(state, v, placed);
  if (!made.length && placed.kind === 'none' && !state.drafts.some((d) => d.clause === index))
    chooseIdea(state, v);
  if (placesAfterColon(state, clause, placed) || placesAdded(state, clause, index, placed)) {
    state.carried = placed.places;
    return;
  }

  // 4. Same again.
  if (!made.length && !state.drafts.some((d) => d.clause === index && d.entry.kind === 'condition'))
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

/** "closed the seam in row two", where one seam of that row was found open: that seam. */
function oneWithin(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.kind !== 'specific' || told.items.length !== 1 || told.places.length < 3) return undefined;
  const inside = [...(state.memory.mentions ?? []), ...mentionsOf(state.drafts)].filter(
    (m) => m.finding && m.places.length <= 2 && m.places.every((p) => told.places.includes(p)),
  );
  const places = findMention(clause.items, inside);
  return places && places.length <= 2 ? { ...told, places } : undefined;
}

/** "sewed up the tear", "the worn ones want net": the places that such a thing was told of before. */
function spokenOf(state: ReaderState, clause: Clause, told: ClausePlaces): ClausePlaces | undefined {
  if (told.outside || told.unknown || state.topic?.sentence === clause.sentence) return undefined;
  const here = mentionsOf(state.drafts);
  const places =
    findMention(clause.items, here) ??
    findMention(
      clause.items,
      // what this note is about comes before what others were about
      (state.memory.mentions ?? []).filter(
        (m) => !state.carried.length || m.places.some((p) => state.carried.includes(p)),
      ),
    );
  return places ? { ...told, kind: 'specific', places } : undefined;
}

/**
 * "3-2: …", "other three: …", "the bottom border, either …": places named before anything is said of them stand for the
 * rest of their sentence.
 */
function topicAfter(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ReturnType<typeof placesOfClause>,
): ReaderState['topic'] {
  const said = state.drafts.some((d) => d.clause === index);
  const told = state.topic?.sentence === clause.sentence;
  const cloth = placed.kind === 'none' && !told ? mendedCloth(clause.items, state) : undefined;
  const named =
    placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt') || cloth;
  const light = (x: Item): boolean =>
    Boolean(x.place || x.fabric || x.seam || x.quantity) ||
    /^(the|and|,|&|in|of|on|for|at|as|now|then|ok|so|right|back|to|seam|block|again|both|that|this|those|these|only|just|one|ones|question|matter|about|with|regarding|yes|decided|"|')$/.test(
      x.w,
    );
  if (!said && named && clause.items.every(light))
    return { places: cloth?.places ?? placed.places, sentence: clause.sentence };
  const standing = state.topic?.sentence === clause.sentence ? state.topic : undefined;
  if (standing && (placed.kind === 'none' || placed.kind === 'pronoun')) return standing;
  return undefined;
}

/** "linen for the backing": the backing is what it is for, not where. */
function isMaterialPlace(item: Item, items: Item[]): boolean {
  if (!item.part || !item.material) return false;
  const k = items.indexOf(item);
  const before = items[k - 1]?.w ?? '';
  const quantity = items.slice(Math.max(0, k - 4), k).some((x) => x.quantity?.unit);
  return quantity && before !== 'the';
}

/** "the crepeline idea is off", "the support from behind is abandoned", "new backing idea scrapped": one of the ways that stood open. */
function dropIdea(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  words: string,
): void {
  const gone =
    / (idea|plan|option|notion|scheme)( is|'s| 's)? (off|out|scrapped|dropped|abandoned|gone|dead|no good|rejected|shelved)\b/.test(
      words,
    ) ||
    /( is| 's| was| were| are| been) (now )?(abandoned|scrapped|off the table|out of the question|off the cards|forgotten|dropped|rejected|dismissed|discounted|ruled out|discarded|vetoed|shelved)\b/.test(
      words,
    ) ||
    /( is| 's) (off|out)( now| then)? $/.test(words);
  if (!gone) return;
  const open = state.memory.open.findLast((o) => namesWay(v.items, o.action));
  if (!open) return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [open.action, 'treatment.idea-dropped', v.items],
        state: ['dropped', 'state.dropped', v.items],
        ...(open.object ? { object: [open.object, 'treatment.idea-dropped', undefined, 'implied'] } : {}),
        places: [[...open.places], 'place.of-open', undefined, 'implied'],
      },
      'carried',
    ),
  );
}

/** Do these words name such a treatment, by its verb or its stuff? */
const namesWay = (items: Item[], action: Action): boolean =>
  items.some(
    (x) =>
      (x.material === 'net' && action === 'overlay') ||
      x.action?.v === action ||
      (x.w === 'patch' && action === 'patch') ||
      (/^(new|fresh|replacement)$/.test(x.w) && action === 'replace') ||
      ((x.fabric || x.material === 'fabric') && /^(replace|patch|stabilize)$/.test(action)) ||
      (x.material === 'interfacing' && action === 'stabilize') ||
      (/^supports?$/.test(x.w) && action === 'stabilize') ||
      (/^replacements?$/.test(x.w) && action === 'replace'),
  );

/** "net.", "patch wins", "the darn, then": one of the ways that stood open, and no word besides. */
function chooseIdea(state: ReaderState, v: { index: number; sentence: number; items: Item[] }): void {
  const { items } = v;
  if (state.drafts.length || state.clauses.reduce((n, c) => n + c.items.length, 0) > 8) return;
  if (
    !items.every((x) => CHOICE.test(x.w) || x.material === 'net' || x.material === 'interfacing' || x.action)
  )
    return;
  const open = state.memory.open.findLast((o) => namesWay(items, o.action));
  if (!open) return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [open.action, 'treatment.chosen', items],
        state: ['planned', 'treatment.chosen', items],
        ...(open.object ? { object: [open.object, 'treatment.chosen', undefined, 'implied'] } : {}),
        places: [[...open.places], 'place.of-open', undefined, 'implied'],
      },
      'carried',
    ),
  );
}
const CHOICE =
  /^(the|a|an|right|ok|okay|so|then|it|is|'s|be|wins|won|it'll|'ll|will|shall|yes|yeah|well|go|going|for|with|i|'ve|have|decided|definitely|settled|chosen|chose|final|answer|my|new|fresh|and|--|-|now|patch|darn|support|replacement|piece)$/;

/** The treatment that the task in hand consists of, where it is but one: tying, quilting, binding. */
function ongoing(state: ReaderState, sentence: Item[]): Action | undefined {
  const task =
    sentence.find((x) => x.task && ['tying', 'quilting', 'binding'].includes(x.task) && x.part !== 'binding')
      ?.task ?? state.memory.running;
  return task === 'tying' ? 'tie' : task === 'quilting' ? 'quilt' : undefined;
}

/** What "it" and "them" are when something is taken off: the thing last spoken of in the note, else before it. */
function thingSpokenOf(state: ReaderState): string | undefined {
  for (const d of [...state.drafts].reverse()) {
    const e = d.entry;
    if (e.kind === 'treatment' && e.object) return e.object;
    if (e.kind === 'treatment' && e.action === 'resew') return 'seam';
    if (e.kind === 'condition') {
      if (e.finding === 'lumpy-batting') return 'batting';
      if (e.finding === 'old-repair') return 'old-patch';
      if (e.finding === 'broken-stitching')
        return d.origins['finding'] &&
          /tie/.test(
            state.tokens
              .filter((t) => t.from >= d.origins['finding']!.from && t.to <= d.origins['finding']!.to)
              .map((t) => t.w)
              .join(' '),
          )
          ? 'ties'
          : 'quilting';
      const part = e.places?.[0];
      if (part === 'backing' || part === 'batting' || part === 'binding') return part;
      if (part?.startsWith('border')) return 'border';
    }
  }
  return state.memory.treatment?.object ?? state.memory.thing;
}

type TreatmentDraft = Draft & { entry: Extract<Draft['entry'], { kind: 'treatment' }> };
const isTreatment = (d: Draft): d is TreatmentDraft => d.entry.kind === 'treatment';

/** Sewing that only says how the treatment before was fastened: "a patch …, edges turned under and sewn down by hand". */
const FASTENED = new Set<Action>(['patch', 'overlay', 'stabilize', 'replace', 'bind', 'add-border', 'label']);

/**
 * A verb that goes on with the treatment before it instead of telling a new one: the same action again, how it was
 * fastened, or the cutting out that a replacement begins with.
 */
function absorbed(state: ReaderState, made: Draft[], draft: Draft, clause: Clause): boolean {
  if (!isTreatment(draft)) return false;
  const before = [...state.drafts, ...made]
    .filter(isTreatment)
    .filter((d) => d.sentence >= draft.sentence - (draft.placed === 'said' ? 0 : 1));
  const e = draft.entry;
  // "laid the net, tacked it first, then couched it down": the couching is of the net
  const last =
    e.action === 'resew' &&
    before.at(-1)?.entry.action === 'baste' &&
    FASTENED.has(before.at(-2)?.entry.action ?? 'tie')
      ? before.at(-2)
      : before.at(-1);
  if (!last) return false;
  const p = last.entry;
  // "washed the whole thing in the tub": where, and no second wash
  if (
    e.action === 'wash' &&
    p.action === 'wash' &&
    last.sentence === draft.sentence &&
    clause.items.some((x) => /^in the (tub|bath)$/.test(x.w)) &&
    !clause.items.some((x) => x.action?.v === 'wash' && !/^in the /.test(x.w))
  )
    return true;
  const carried = draft.placed !== 'said' || (last.clause === draft.clause && draft.placed === last.placed);
  if (
    e.action === 'replace' &&
    (p.action === 'cut' || (p.action === 'remove' && p.object === 'piece')) &&
    p.state === e.state &&
    !p.places?.some((x) => x.startsWith('border') || x === 'binding' || x === 'backing')
  ) {
    if (carried && p.places?.length) e.places = p.places;
    const list = made.includes(last) ? made : state.drafts;
    list.splice(list.indexOf(last), 1);
    return false;
  }
  if (!carried) return false;
  const loose = clause.items.some(
    (x) =>
      x.seam || (x.finding && x.finding !== 'sound') || (x.part === 'edge' && !isManner(x, clause.items)),
  );
  const goesOn =
    (e.action === p.action && e.action !== 'remove') ||
    (e.action === 'resew' && FASTENED.has(p.action!) && !loose) ||
    (e.action === 'stabilize' &&
      p.action === 'patch' &&
      clause.items.some((x) => /^fus(ed|ing|e)$/.test(x.w))) ||
    (e.action === 'piece' && p.action === 'replace');
  if (!goesOn || e.state !== p.state) return false;
  if (e.stitch && p.stitch && e.stitch !== p.stitch && e.action !== p.action) return false;
  if (e.stitch) {
    p.stitch = e.stitch;
    if (draft.origins['stitch']) last.origins['stitch'] = draft.origins['stitch'];
  }
  return true;
}

/** "over the top", "over the face", "from the front": how it is done, not where. */
function isManner(item: Item, items: Item[]): boolean {
  const k = items.indexOf(item);
  // "couched it at the edges", "whipstitched all round the edge": how a cloth is held down
  if (item.part === 'edge')
    return (
      item.place?.places[0] === 'edge' &&
      /^(round|around|along|at|by)$/.test(
        /^(the|its|all|both)$/.test(items[k - 1]?.w ?? '')
          ? (items[k - 2]?.w ?? '')
          : (items[k - 1]?.w ?? ''),
      ) &&
      items.some((x) => x.stitch && x !== item) &&
      !items.some((x) => x.seam || x.part === 'binding' || x.fail)
    );
  if (item.part !== 'top' && item.part !== 'backing') return false;
  if (item.part === 'backing')
    return (
      !items.some((x) => x.object === 'label' || x.object === 'ties') &&
      /^(from|through)$/.test(items[k - 2]?.w ?? '') &&
      items[k - 1]?.w === 'the' &&
      items.some((x) => x.action || (x.place !== item.place && x.place?.kind === 'blocks'))
    );
  return (
    /^(over|on|across|from|onto)$/.test(
      items[k - 1]?.w === 'the' || items[k - 1]?.w === 'its'
        ? (items[k - 2]?.w ?? '')
        : (items[k - 1]?.w ?? ''),
    ) &&
    (item.w === 'face' || item.w === 'top' || item.w === 'front') &&
    items.some(
      (x) =>
        x.material === 'net' ||
        x.w === 'one' ||
        x.w === 'patch' ||
        x.action?.v === 'overlay' ||
        // "stitched the rip shut over the top"
        (x.action?.v === 'resew' && items.some((y) => y.w === 'over')),
    )
  );
}

function stitchOf(items: Item[]): { stitch: Stitch; item: Item } | undefined {
  let best: { stitch: Stitch; item: Item; rank: number } | undefined;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.stitch) continue;
    const before = items[k - 1]?.w ?? '';
    const after = items[k + 1];
    if (item.weakStitch) {
      if (
        /^(a|the|this|that|camp|wool|my|one|other|washing|sewing|old|left|right|free|these|is|'s)$/.test(
          before,
        ) &&
        !(after?.action || after?.stitch)
      )
        continue;
      if (
        (item.w === 'hand' || item.w === 'machine') &&
        !(
          after?.action ||
          after?.stitch ||
          after === undefined ||
          /^(,|by|and|\.|quilting|work|sewn|for|in|on)$/.test(after.w) ||
          before === ',' ||
          before === 'by'
        )
      )
        continue;
      if (
        item.w === 'blanket' &&
        !(before === ',' || before === 'in' || before === 'with' || after === undefined)
      )
        continue;
      if (item.fabric) continue;
    }
    if (item.fabric && !/stitch/.test(item.w)) continue;
    if (/^(no|not|n't|without|instead of)$/.test(before)) continue;
    if (items.slice(Math.max(0, k - 3), k).some((x) => x.w === 'no')) continue;
    const rank = STITCH_PHRASES[item.stitch].rank;
    if (!best || rank > best.rank) best = { stitch: item.stitch, item, rank };
  }
  return best;
}

const TAKES_STITCH = new Set<Action>([
  'resew',
  'patch',
  'replace',
  'stabilize',
  'overlay',
  'darn',
  'quilt',
  'bind',
  'add-border',
  'piece',
  'label',
  'baste',
  'tie',
]);

function treatment(
  state: ReaderState,
  clause: Clause,
  v: { index: number; sentence: number; items: Item[] },
  way: Way,
  sentence: string,
  placed: ReturnType<typeof placesOfClause>,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  const { items } = clause;
  // "I'll leave tails of an inch": how long the ends are. Looked for in the words: the length's own items were taken before
  const behind = items[way.at]!.j;
  if (
    way.action === 'leave' &&
    state.tokens.slice(behind, behind + 4).some((t) => /^(tails?|ends)$/.test(t.w))
  )
    return undefined;
  let mood = stateOf(clause, way.at, way.form, sentence);
  if (
    way.action === 'leave' &&
    /^(touching|touch|alone)$|^(no|n't|not|nothing|do|did|doing|hands) /.test(items[way.at]!.w)
  )
    mood = 'done';
  if (
    way.action === 'dry' &&
    items[way.at]!.w === 'dry' &&
    way.form === 'base' &&
    !/^(to|will|'ll|must|flat|should|and)$/.test(items[way.at - 1]?.w ?? '')
  )
    mood = 'done';
  // "it's laid out on the rack to dry"
  if (
    way.action === 'dry' &&
    items[way.at - 1]?.w === 'to' &&
    items
      .slice(Math.max(0, way.at - 9), way.at - 1)
      .some((x) => /^(laid|lying|laying|spread|hung|hanging|draped|pegged|flat)\b/.test(x.w)) &&
    !items.some((x) => /^(will|'ll|must|should|gonna|need|needs|tomorrow|then)$/.test(x.w))
  )
    mood = 'doing';
  if (mood === 'denied') {
    const open =
      way.action &&
      state.memory.open.find(
        (o) =>
          o.action === way.action &&
          (!placed.places.length || o.places.some((p) => placed.places.includes(p))),
      );
    if (!open) return undefined;
    mood = 'dropped';
  }
  let status = mood as TreatmentState;
  // "at it from seven till nine, picking the ties out": the stretch is over
  if (
    status === 'doing' &&
    !items.some((x) => /^(now|still|currently|'m|am|rn)$/.test(x.w)) &&
    state.drafts.some((d) => d.entry.kind === 'work' && d.entry.start && d.entry.end)
  )
    status = 'done';
  if (status === 'done' && way.form === 'past' && goesOnPlanned(state, clause)) status = 'planned';
  if (way.action === 'leave') status = leaveState(clause, sentence, status);
  if (way.form === 'noun' && status === 'done' && /\b(or|either)\b/.test(sentence) && clause.asked)
    status = 'considering';
  const action = way.action!;
  if (isOthers(items, way.at)) {
    const topical = state.topic?.sentence === v.sentence ? state.topic.places : [];
    const told = placed.kind === 'specific' ? placed.places : topical;
    if (['resew', 'patch', 'darn', 'stabilize', 'overlay', 'replace'].includes(action) && told.length)
      state.drafts.push(
        makeDraft(
          'condition',
          v,
          {
            finding: ['old-repair', 'condition.mended-by-others', items[way.at]],
            places: [told, 'place.said', placed.items],
          },
          'said',
        ),
      );
    else if (placed.outside && !placed.places.length) {
      const draft = makeDraft(
        'condition',
        v,
        {
          finding: ['old-repair', 'condition.mended-by-others', items[way.at]],
          places: [[], 'place.said', placed.items],
        },
        'none',
      );
      draft.outside = true;
      state.drafts.push(draft);
    }
    return undefined;
  }
  if (tellsOldRepair(state, clause, v, way.at, placed)) return undefined;
  // "it's the darn, then", "net for 2-4 then": one of two ways is chosen
  if (
    way.form === 'noun' &&
    status === 'done' &&
    state.memory.open.some(
      (o) =>
        o.action === action && (!placed.places.length || o.places.some((p) => placed.places.includes(p))),
    ) &&
    !items.some((x) => /^(has|have|had|'ve|got|put|now|on|laid|went|did|done|already|took)$/.test(x.w))
  )
    status = 'planned';
  // "doing the mending", "starting the cutting": a kind of work, with no place or thing named
  const verb = items[way.at]!;
  if (
    verb.task &&
    status !== 'dropped' &&
    !stitch &&
    verb.action?.form === 'ing' &&
    way.rule.startsWith('treatment.verb') &&
    placed.kind === 'none' &&
    !items.some(
      (x) =>
        x !== verb && ((x.object && !x.task) || x.fabric || x.finding || x.seam || x.material === 'fabric'),
    ) &&
    !finishedTask(items, way.at) &&
    !/\b(it|them)\b/.test(
      items
        .slice(way.at + 1, way.at + 3)
        .map((x) => x.w)
        .join(' '),
    ) &&
    !['soaking', 'drying', 'washing'].includes(verb.w)
  )
    return undefined;
  let places: string[] | undefined;
  let how: Draft['placed'] = 'said';
  let placeItems = placed.items;
  let implied = false;
  if (action === 'remove') {
    const object = way.object!;
    const own = object === 'binding' || object === 'backing' || object === 'batting' || object === 'border';
    const specific = placed.kind === 'specific' ? placed.places : [];
    if (own) {
      places =
        specific.length && !(object === 'backing' || object === 'batting')
          ? specific
          : specific.length
            ? specific
            : [object];
      if (object === 'border' && specific.length)
        places = specific.filter((p) => p.startsWith('border') || splitBlock(p));
      if (object === 'binding' && specific.length) places = specific;
      if (!places.length) places = [object];
    } else if (
      placed.kind === 'specific' ||
      (placed.kind === 'general' && placed.places.some((p) => p !== 'top'))
    )
      places = placed.places.filter((p) => p !== 'quilt' || placed.places.length === 1);
    else if (object === 'ties' || object === 'pins') {
      places =
        placed.kind === 'pronoun' &&
        object === 'ties' &&
        !placed.items.some((x) => x.place!.rule === 'place.it')
          ? placed.places
          : undefined;
      how = 'unneeded';
    } else if (object === 'label' && placed.kind === 'none') {
      places = undefined;
      how = 'unneeded';
    }
  } else if (placed.kind === 'specific' || placed.kind === 'general') {
    places = clothWithin(state, items, placed) ?? placed.places;
    if (
      placed.kind === 'general' &&
      (action === 'bind' || action === 'layer') &&
      places.every((p) => ['binding', 'top', 'backing', 'batting', 'quilt'].includes(p))
    )
      places = ['quilt'];
    if (placed.kind === 'general' && action === 'baste') places = ['quilt'];
    if (action === 'add-border' && !places.some((p) => p.startsWith('border'))) places = ['border'];
    if (action === 'label' && places.length && places[0] === 'quilt') places = undefined;
    if (action === 'bind' && placed.kind === 'specific' && places)
      places = places.map((p) => p.replace(/^border-/, 'edge-'));
  }
  // "cut the whole thing out" of a block
  if (
    places?.[0] === 'quilt' &&
    ['replace', 'patch', 'darn', 'resew', 'stabilize', 'overlay', 'cut'].includes(action) &&
    placed.items.some((x) => /whole (thing|lot)/.test(x.w)) &&
    (state.carried.length || state.memory.focus.length)
  )
    places = undefined;
  if ((action === 'cut' || action === 'piece') && (places === undefined || places[0] === 'quilt')) {
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
  if (places === undefined && how !== 'unneeded') {
    const cloth = mendedCloth(items, state);
    if (cloth) {
      places = cloth.places;
      placeItems = [cloth.item];
    }
  }
  if (places === undefined && how !== 'unneeded') {
    const open = status === 'dropped' ? state.memory.open.filter((o) => o.action === action) : [];
    const carried =
      open.length && !(placed.kind === 'pronoun' && placed.places.length)
        ? [...open.at(-1)!.places]
        : carriedPlaces(state, v, way, placed);
    if (carried) {
      places = carried;
      how = 'carried';
      implied = true;
      placeItems = [];
    } else if (NO_PLACE_NEEDED.has(action)) {
      places =
        WHOLE_QUILT.has(action) && !(action === 'press')
          ? ['quilt']
          : action === 'add-border'
            ? ['border']
            : action === 'press'
              ? ['quilt']
              : undefined;
      how = 'unneeded';
    } else {
      places = [];
      how = 'none';
    }
  }
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
    ...(stitch && TAKES_STITCH.has(action)
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

const spanOfItem = (x: Item): { from: number; to: number } => ({
  from: x.token.from,
  to: x.end ?? x.token.to,
});

const OTHERS = new Set([
  'she',
  'he',
  'they',
  'members',
  'kids',
  'children',
  'grandmother',
  'gran',
  'granny',
  'nan',
  'maker',
  'someone',
  'somebody',
  'sister',
  'aunt',
  'auntie',
  'mother',
  'mum',
  'women',
  'ladies',
  'street',
  'class',
  'who',
  'girls',
  'pupils',
  'teachers',
  'family',
  'wife',
  'guild',
  'club',
  'sisters',
  'neighbours',
  'neighbors',
  'crew',
  'cousins',
  'daughters',
  'people',
  'folk',
  'cousin',
  'daughter',
  'whoever',
  'clot',
  'idiot',
  'fool',
  'restorer',
  'repairer',
  'mender',
  'dealer',
]);

/** "did the basting", "finished the layering": the whole of it is done, where no time is told with it. */
const finishedTask = (items: Item[], at: number): boolean =>
  /^(baste|layer|wash|bind|label|press)$/.test(items[at]!.action?.v ?? '') &&
  items[at - 1]?.w === 'the' &&
  /^(did|done|finished|completed)$/.test(items[at - 2]?.w ?? '') &&
  !items.some((x) => x.span || x.clock || x.duration);

/** Work told of others, long ago: "the kids sewed it up", "what somebody fused behind there". */
function isOthers(items: Item[], at: number): boolean {
  if (
    items[at]?.action?.form !== 'past' &&
    !/^(put|stuck|glued|ironed|patch|fusible|set|laid)$/.test(items[at]?.w ?? '')
  )
    return false;
  for (let m = at - 1; m >= Math.max(0, at - 4); m--) {
    const w = items[m]!.w;
    if (
      OTHERS.has(w) ||
      (w === 'owner' && /^(previous|former|last|earlier|past|old)$/.test(items[m - 1]?.w ?? ''))
    )
      return !items
        .slice(m + 1, at)
        .some((x) =>
          /^(wants|want|would|'d|asked|likes|needs|needed|says|said|'re|are|were|be|been|being|getting|get|gets|'ll|will|need|should|must|can|could)$/.test(
            x.w,
          ),
        );
    if (w === 'i' || w === 'and' || w === ',') return false;
  }
  return false;
}

/** "an old repair in 3-3, interfacing glued on behind": how the old repair was made, and no work of today. */
function tellsOldRepair(
  state: ReaderState,
  clause: Clause,
  v: { sentence: number },
  at: number,
  placed: ReturnType<typeof placesOfClause>,
): boolean {
  const { items } = clause;
  const found = state.drafts.at(-1);
  const here = items.some((x, k) => x.finding === 'old-repair' && isPredicate(items, k));
  const before =
    found?.entry.kind === 'condition' &&
    found.entry.finding === 'old-repair' &&
    found.sentence === v.sentence;
  if (!here && !(before && placed.kind !== 'specific')) return false;
  if (items.some((x) => /^(i|'ve|i've|now|new|today|tonight)$/.test(x.w))) return false;
  const verb = items[at]!;
  const past =
    verb.action?.form === 'past' ||
    /^(glued|stuck|sewn|stitched|fused|ironed|tacked|interfacing|fusible)$/.test(verb.w);
  return (
    past &&
    (here || /^(with|,|)$/.test(clause.joint)) &&
    !/^(took|taken|removed|peeled|unpicked)$/.test(verb.w)
  );
}

/** "1-1 to be replaced, 1-2 patched": the second leans on the "to be" of the first. */
function goesOnPlanned(state: ReaderState, clause: Clause): boolean {
  if (!/^(,|and|&)$/.test(clause.joint)) return false;
  if (clause.items.some((x) => /^(is|was|are|were|'s|has|have|had|'ve|i|got|now|already)$/.test(x.w)))
    return false;
  const before = state.clauses[state.clauses.indexOf(clause) - 1];
  if (!before || before.sentence !== clause.sentence) return false;
  const last = state.drafts.at(-1);
  if (last?.entry.kind !== 'treatment' || last.entry.state !== 'planned') return false;
  const told = ` ${before.items.map((x) => x.w).join(' ')} `;
  return / (to be|will be|'ll be|gets|get|getting|must be|should be|needs|wants|has to be|have to be) /.test(
    told,
  )
    ? before.items.some((x) => x.action?.form === 'past')
    : goesOnPlanned(state, before);
}

function leaveState(clause: Clause, sentence: string, status: TreatmentState): TreatmentState {
  if (status === 'dropped') return 'dropped';
  if (clause.asked || looksUndecided(sentence)) return 'considering';
  return 'done';
}

/** Blocks that a net or a cloth behind has just been laid on: what "tacked it first" fastens. */
function fastenedOver(state: ReaderState): string[] | undefined {
  const laid = state.drafts.findLast(
    (d) =>
      d.entry.kind === 'treatment' &&
      (d.entry.action === 'overlay' || d.entry.action === 'stabilize' || d.entry.action === 'patch') &&
      d.entry.state !== 'dropped' &&
      d.entry.places?.some((p) => splitBlock(p)),
  );
  return (laid?.entry as { places?: string[] } | undefined)?.places;
}

/** Where the same treatment stands as undecided: "going with the patch", "it shall be the net", "darned it in the end". */
function openPlaces(
  state: ReaderState,
  action: Action | undefined,
  placed: ReturnType<typeof placesOfClause>,
): string[] | undefined {
  const open = state.memory.open.findLast((o) => o.action === action && o.places.length);
  if (!open) return undefined;
  if (placed.kind === 'none') return open.places;
  if (placed.kind !== 'pronoun') return undefined;
  const told = placed.places.filter((p) => open.places.includes(p));
  return told.length || !placed.places.some((p) => splitBlock(p)) ? open.places : undefined;
}

/** "net's on", after "the net's what I'm going to do": where the last treatment told was planned and now is told as done. */
function plannedPlaces(
  state: ReaderState,
  action: Action | undefined,
  placed: ReturnType<typeof placesOfClause>,
): string[] | undefined {
  const planned = state.memory.treatment;
  if (!action || placed.kind !== 'none' || planned?.action !== action || planned.state !== 'planned')
    return undefined;
  return planned.places.length ? planned.places : undefined;
}

/** "over the madder stripe in rows two and five": of the rows or columns named, the blocks of the cloth that is worked on. */
function clothWithin(
  state: ReaderState,
  items: Item[],
  placed: ReturnType<typeof placesOfClause>,
): string[] | undefined {
  const k = items.findIndex((x) => x.fabric?.names.length === 1);
  if (
    k < 0 ||
    !placed.items.some((x) => /row|column|area|all-/.test(x.place!.rule) && x.place!.places.length > 1)
  )
    return undefined;
  if (!/^(the|that|those|all|every)$/.test(items[k - 1]?.w ?? '')) return undefined;
  if (/^(with|w|from|using|by)$/.test(items[k - 2]?.w ?? '')) return undefined;
  const blocks = state.fabrics.blocks[items[k]!.fabric!.names[0]!] ?? [];
  const inside = placed.places.filter((p) => blocks.includes(p));
  return inside.length ? inside : undefined;
}

/** The cloth that is worked on ("all the brown check ones want …"), not the one put in: where it occurs in the quilt. */
function mendedCloth(items: Item[], state: ReaderState): { places: string[]; item: Item } | undefined {
  const item = items.find((x) => x.fabric);
  if (!item?.fabric || item.fabric.names.length !== 1) return undefined;
  const k = items.indexOf(item);
  const before = items.slice(Math.max(0, k - 4), k).map((x) => x.w);
  const one = oneOfCloth(items, k, state);
  if (one) return one.length ? { places: one, item } : undefined;
  const led = before.filter(
    (_, n) => n >= before.findLastIndex((b, m) => b && items[k - before.length + m]?.action),
  );
  if (
    led.some((b) => /^(with|w|from|using|some|bought|in|of|a|use)$/.test(b)) &&
    !/\b(all|every|each|both|two|three) (of )?(the |those |them )?$/.test(`${before.join(' ')} `)
  )
    return undefined;
  const subject =
    k <= 3 || /^(all|every|each|the|those|two|three|both|four|2|3|4)$/.test(before.at(-1) ?? '');
  if (!subject) return undefined;
  const { bar } = item.fabric;
  const places = (state.fabrics.blocks[item.fabric.names[0]!] ?? []).filter((p) => !bar?.includes(p));
  return places.length ? { places, item } : undefined;
}

/**
 * "the white twill one", "the other yellow", "one of the prints", "the bunny underneath it": one block of a cloth that is in
 * several. The one last spoken of, or the one not yet spoken of; an empty list where it can't be known. Undefined where the
 * words mean all of it.
 */
function oneOfCloth(items: Item[], k: number, state: ReaderState): string[] | undefined {
  const item = items[k]!;
  const blocks = unique((item.fabric?.names ?? []).flatMap((n) => state.fabrics.blocks[n] ?? []));
  if (blocks.length < 2) return undefined;
  const before = items.slice(Math.max(0, k - 3), k).map((x) => x.w);
  const lead = ` ${before.join(' ')} `;
  if (/ (one|1|another|which) of (the|these|those|my)? ?$/.test(lead)) return [];
  const other = / (other|others|remaining|rest of the|last remaining)( two| three| four| five| \d)? $/.test(
    lead,
  );
  const noun = items[k + 1]?.w ?? '';
  const single =
    /^(one|block|piece|square)$/.test(noun) &&
    !/ (every|each|all|the two|any|two|three|both) $/.test(lead) &&
    !/ (every|each) $/.test(lead);
  const final = single && / last $/.test(lead);
  if (!other && !single) return undefined;
  const spoken = [
    ...[...state.drafts].reverse().map((d) => (d.entry as { places?: string[] }).places ?? []),
    state.memory.focus,
    ...[...state.memory.earlier].reverse(),
  ];
  const last = spoken.find((g) => g.some((p) => blocks.includes(p)));
  if (other || final) {
    if (!last) return [];
    const rest = blocks.filter((p) => !last.includes(p));
    const count = items.slice(Math.max(0, k - 2), k).find((x) => x.quantity && !x.quantity.unit)
      ?.quantity?.value;
    return rest.length === 1 ||
      count === rest.length ||
      (!final && /^(ones|blocks|pieces|squares)$|s$/.test(noun || item.w))
      ? rest
      : [];
  }
  const within = last?.filter((p) => blocks.includes(p)) ?? [];
  return within.length === 1 ? within : [];
}

/** Places that the clause does not say: those of this sentence, of the damage pointed at, or of "it". */
function carriedPlaces(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  way: Way | undefined,
  placed: ReturnType<typeof placesOfClause>,
): string[] | undefined {
  const { items } = v;
  const action = way?.action;
  if (placed.outside || placed.unknown) return undefined;
  const lastInNote = [...state.drafts]
    .reverse()
    .find(
      (d) =>
        (d.entry.kind === 'treatment' || d.entry.kind === 'condition') &&
        (d.entry as { places?: string[] }).places?.length,
    );
  const lastPlaces = (lastInNote?.entry as { places?: string[] } | undefined)?.places;
  const pronoun = placed.kind === 'pronoun';
  const whole = action !== undefined && WHOLE_QUILT.has(action);
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : undefined;
  if (topical && (!pronoun || placed.items.every((x) => x.place!.rule !== 'place.that-one'))) return topical;
  // "the tear", "that hole": where it was found
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    const finding = item.finding ?? (item.seam ? 'split-seam' : undefined);
    if (!finding || (item.seam && /^(lines?|allowances?)$/.test(items[k + 1]?.w ?? ''))) continue;
    const definite = items.slice(Math.max(0, k - 4), k).some((x) => /^(the|that|this|those|its)$/.test(x.w));
    if (!definite) continue;
    const inNote = [...state.drafts]
      .reverse()
      .find((d) => d.entry.kind === 'condition' && d.entry.finding === finding);
    const known = (inNote?.entry as { places?: string[] } | undefined)?.places ?? state.memory.found[finding];
    if (known?.length) return known;
  }
  const open = openPlaces(state, action, placed) ?? plannedPlaces(state, action, placed);
  if (open && !(lastInNote && lastPlaces?.length)) return open;
  if (pronoun) {
    const it = placed.items.some((x) => x.place!.rule === 'place.it');
    if (action === 'baste') {
      const held = fastenedOver(state);
      if (held) return held;
    }
    if (!it && action !== undefined && ['wash', 'bind', 'layer', 'baste', 'square-up'].includes(action))
      return ['quilt'];
    if (
      it &&
      whole &&
      [
        'wash',
        'bind',
        'layer',
        'baste',
        'square-up',
        'photograph',
        'measure',
        'dry',
        'quilt',
        'tie',
      ].includes(action)
    ) {
      if (
        ['tie', 'quilt', 'dry', 'photograph'].includes(action) &&
        lastInNote &&
        lastInNote.sentence === v.sentence &&
        lastPlaces?.some((p) => splitBlock(p) || (action === 'photograph' && p !== 'quilt'))
      )
        return lastPlaces;
      return ['quilt'];
    }
    if (it && lastInNote && lastPlaces?.length) return lastPlaces;
    return placed.places;
  }
  if (lastInNote && lastPlaces) {
    const sameSentence = lastInNote.sentence === v.sentence;
    if (action === 'baste') {
      const held = fastenedOver(state);
      if (held) return held;
    }
    if (
      action &&
      [
        'wash',
        'bind',
        'layer',
        'baste',
        'square-up',
        'photograph',
        'measure',
        'add-border',
        'label',
      ].includes(action)
    )
      return undefined;
    if (whole && !sameSentence && !lastPlaces.some((p) => splitBlock(p))) return undefined;
    if (action === 'cut' || action === 'piece')
      return lastPlaces.some((p) => /^(border|binding)/.test(p) || (p === 'backing' && sameSentence))
        ? lastPlaces
        : undefined;
    if (sameSentence || items.some((x) => x.action || x.object || x.stitch)) {
      if (items.some((x) => x.w === 'another')) return undefined;
      return lastPlaces;
    }
  }
  if (state.carried.length && way && !items.some((x) => x.w === 'another')) return state.carried;
  // "the patch", "that patch", "the old one": something pointed at carries the place from the conversation
  if (
    way &&
    action === 'remove' &&
    items.some((x) => /^(that|the|those|this)$/.test(x.w)) &&
    way.object !== 'ties' &&
    state.memory.focus.length
  )
    return state.memory.focus;
  return undefined;
}

/** "stained: 2-1, 2-5": places that a colon adds to what was just found without any. */
function placesAfterColon(
  state: ReaderState,
  clause: Clause,
  placed: ReturnType<typeof placesOfClause>,
): boolean {
  if (clause.joint !== ':' || placed.kind !== 'specific') return false;
  if (!clause.items.every((x) => x.place || /^(,|and|&|\+|the|in|on|also|all|of)$/.test(x.w))) return false;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (!last || (e?.kind !== 'condition' && e?.kind !== 'treatment') || last.sentence !== clause.sentence)
    return false;
  if (e.places?.length && last.placed === 'said') return false;
  e.places = placed.places;
  last.placed = 'said';
  return true;
}

/** "moth: the first three of the top row, and then the two under those": more places of what was just told. */
function placesAdded(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ReturnType<typeof placesOfClause>,
): boolean {
  if (!/^(then|also)$/.test(clause.joint) || placed.kind !== 'specific') return false;
  if (
    !clause.items.every(
      (x) => x.place || /^(,|and|&|\+|the|in|on|also|all|of|then|too|straight|down)$/.test(x.w),
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
  if (!e.places?.some((p) => splitBlock(p))) return false;
  e.places = unique([...e.places, ...placed.places]);
  return true;
}

function condition(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  c: ConditionFound,
  placed: ReturnType<typeof placesOfClause>,
  treating: boolean,
): void {
  const { items } = v;
  let places: string[] | undefined;
  let how: Draft['placed'] = 'said';
  const fabric = items.find((x) => x.fabric);
  // "2-2 has an old patch, with the edges all ravelling": the patch's edges
  const ownEdges =
    placed.kind === 'general' &&
    placed.places[0] === 'edge' &&
    (items[0]?.w === 'with' || items.some((x, k) => x === placed.items[0] && items[k - 1]?.w === 'its')) &&
    state.drafts.at(-1)?.sentence === v.sentence;
  if (placed.kind === 'specific' || (placed.kind === 'general' && !ownEdges)) places = placed.places;
  let usedFabric: Item | undefined;
  // "a stain somewhere", "there's another rusty mark somewhere": not where the last thing was
  let unknown =
    placed.unknown ||
    ((placed.kind === 'none' || (placed.kind === 'pronoun' && placed.items.every((x) => x.w === 'there'))) &&
      items.some(
        (x, k) =>
          /^(somewhere|someplace)$/.test(x.w) &&
          !/^(in|on|near|along|around|by|at)$/.test(items[k + 1]?.w ?? ''),
      ));
  if (fabric?.fabric) {
    const { names, bar } = fabric.fabric;
    const blocks = unique(names.flatMap((n) => state.fabrics.blocks[n] ?? [])).filter(
      (p) => !bar?.includes(p),
    );
    const k = items.indexOf(fabric);
    const before = items.slice(Math.max(0, k - 3), k).map((x) => x.w);
    const putIn = before.some((b) => /^(with|w|from|using)$/.test(b));
    if (!putIn) {
      usedFabric = fabric;
      const before = { ...state, drafts: state.drafts.filter((d) => d.clause !== v.index) };
      const one = placed.kind === 'specific' ? undefined : oneOfCloth(items, k, before);
      const near = items
        .slice(k + 1, k + 4)
        .find(
          (x) =>
            x.place &&
            /^(under|underneath|beneath|behind|below|in|at)$/.test(items[items.indexOf(x) - 1]?.w ?? ''),
        );
      const told =
        placed.kind === 'pronoun' && near && items.indexOf(near) < c.at
          ? placed.places.filter((p) => blocks.includes(p))
          : [];
      if (placed.kind === 'specific' && placed.places.some((p) => splitBlock(p))) {
        // "the gray stripe in row four": the cloth's blocks of those named, where there are any
        const inside = placed.places.filter((p) => blocks.includes(p));
        const lines = placed.items.some(
          (x) =>
            /row|column|counted|area|every|all-/.test(x.place!.rule) && x.place!.rule !== 'place.row-block',
        );
        if (inside.length && lines) places = inside;
      } else if (one) {
        places = one;
        if (!one.length) unknown = true;
      } else if (
        told.length &&
        told.length < blocks.length &&
        !items.some((x) => /^(every|all|each)$/.test(x.w))
      ) {
        // "the bunny underneath it"
        places = told;
      } else if (state.topic?.sentence === v.sentence && placed.kind === 'none') {
        places = state.topic.places;
      } else if (
        placed.kind === 'none' ||
        placed.kind === 'pronoun' ||
        (placed.kind === 'general' && placed.places[0] === 'quilt')
      ) {
        // "beginning with the corner block, …, the gingham is threadbare"
        const inside = state.drafts.length ? [] : state.carried.filter((p) => blocks.includes(p));
        places =
          inside.length && !items.slice(0, k).some((x) => /^(every|all|each|both)$/.test(x.w))
            ? inside
            : blocks;
      }
    }
  }
  const part = partOfFinding(items, c);
  if (!places?.length && part) places = [part];
  const under = c.finding === 'lumpy-batting' ? placeOver(state, v, items) : undefined;
  if (under) places = under;
  else if (c.finding === 'lumpy-batting' && (!places || placed.kind === 'general'))
    places = placed.kind === 'general' && placed.places[0] !== 'quilt' ? placed.places : ['batting'];
  if (!places?.length && c.finding === 'out-of-square') places = ['quilt'];
  // "it smells musty": a smell is the whole quilt's
  if (
    c.finding === 'mildew' &&
    (placed.kind === 'none' ||
      (placed.kind === 'pronoun' && placed.items.every((x) => x.place!.rule === 'place.it'))) &&
    !places?.length &&
    !usedFabric &&
    items.some((x) =>
      /\b(smell|smells|smelling|smelled|smelt|whiff|pong|reek|reeks|stink|stinks|niff)\b/.test(x.w),
    ) &&
    state.drafts.at(-1)?.sentence !== v.sentence
  )
    places = ['quilt'];
  if (!places?.length && unknown) {
    places = [];
    how = 'none';
  } else if (!places?.length) {
    const carried = treating
      ? (state.drafts.at(-1)?.entry as { places?: string[] } | undefined)?.places
      : carriedForCondition(state, v, c, placed);
    if (carried?.length) {
      places = carried;
      how = 'carried';
    } else if (!placed.outside && OVERALL.test(` ${items.map((x) => x.w).join(' ')} `)) {
      places = ['quilt'];
    } else {
      places = [];
      how = 'none';
    }
  }
  if (placed.outside && !placed.places.length) {
    places = [];
    how = 'none';
  }
  if (c.pointed) return;
  // "The tear in the striped one, yes.", "So: the hole.": named as what is spoken of next
  if (!treating && namesOnly(state, v, c)) {
    const known = places.length ? places : state.memory.found[c.finding];
    if (known?.length) state.carried = known;
    return;
  }
  // Already told and only pointed at again
  const next = state.clauses[v.index + 1];
  const worked =
    treating ||
    (next?.sentence === v.sentence && next.items.some((x, k) => x.action && isPredicate(next.items, k)));
  if (
    worked &&
    isKnown(state, c.finding, places) &&
    items.slice(Math.max(0, c.at - 3), c.at).some((x) => /^(the|that|this)$/.test(x.w))
  )
    return;
  const draft = makeDraft(
    'condition',
    v,
    {
      finding: [c.finding, c.rule, c.items],
      places: [
        places,
        how === 'carried' ? 'place.carried' : 'place.said',
        how === 'said' ? (placed.items.length ? placed.items : usedFabric) : undefined,
        how === 'carried' ? 'implied' : 'said',
      ],
      ...(usedFabric?.fabric
        ? {
            fabric: [
              usedFabric.fabric.names.length === 1 ? usedFabric.fabric.names[0] : usedFabric.fabric.words,
              'fabric.named',
              usedFabric,
            ],
          }
        : {}),
    },
    how,
  );
  if (placed.outside && !placed.places.length) draft.outside = true;
  const twin = state.drafts.at(-1);
  if (
    twin?.entry.kind === 'condition' &&
    twin.entry.finding === c.finding &&
    twin.entry.places?.length === 1 &&
    twin.entry.places[0] === 'batting' &&
    places[0] !== 'batting' &&
    places.length
  ) {
    twin.entry.places = places;
    return;
  }
  if (treating) {
    // the damage comes before what was done about it
    const at = state.drafts.findIndex((d) => d.clause === v.index && d.entry.kind === 'treatment');
    state.drafts.splice(at < 0 ? state.drafts.length : at, 0, draft);
  } else state.drafts.push(draft);
}

/** "musty throughout", "faded all over": the whole quilt, where no place is said or carried. */
const OVERALL =
  / (all over|throughout|everywhere|right through|all through|from end to end|top to bottom|from top to toe|overall|generally|the lot of it|from one end to the other) /;

/** A finding with "the" and no verb, known already or worked on in what follows: it only says what is meant. */
function namesOnly(state: ReaderState, v: { index: number; items: Item[] }, c: ConditionFound): boolean {
  const { items } = v;
  const lead = items.findIndex(
    (x) => !/^(so|now|as|for|right|ok|okay|and|then|well|oh|that|'s|regarding|about|to|back|on)$/.test(x.w),
  );
  if (
    lead < 0 ||
    lead >= c.at ||
    (!/^(the|that|this|those)$/.test(items[lead]!.w) && !/^(that|this)$/.test(items[lead - 1]?.w ?? ''))
  )
    return false;
  if (c.at - lead > 3) return false;
  if (
    items.some(
      (x, k) =>
        k !== c.at &&
        (x.finding ||
          x.fail ||
          (x.action && isPredicate(items, k)) ||
          /^(is|'s|are|was|were|has|have|had|goes|runs|looks|there)$/.test(x.w)),
    )
  )
    return false;
  const next = state.clauses.slice(v.index + 1, v.index + 4);
  return (
    Boolean(state.memory.found[c.finding]?.length) ||
    next.some((n) => n.items.some((x, k) => x.action && isPredicate(n.items, k)))
  );
}

/** "a stain on 4-3 and the batting is lumpy under it": where the batting lies. */
function placeOver(state: ReaderState, v: { sentence: number }, items: Item[]): string[] | undefined {
  const k = items.findIndex(
    (x, m) =>
      /^place\.(it|that-one|them|those)$/.test(x.place?.rule ?? '') &&
      /^(under|underneath|beneath|behind|below|inside|in)$/.test(items[m - 1]?.w ?? ''),
  );
  if (k < 0) return undefined;
  const last = state.drafts.findLast((d) => d.sentence === v.sentence);
  const here = (last?.entry as { places?: string[] } | undefined)?.places;
  const places = here?.length ? here : items[k]!.place!.places;
  return places.some((p) => splitBlock(p)) ? places : undefined;
}

const isKnown = (state: ReaderState, finding: string, places: string[]): boolean => {
  const known = state.memory.found[finding as keyof typeof state.memory.found];
  return known !== undefined && places.some((p) => known.includes(p));
};

function partOfFinding(items: Item[], c: ConditionFound): string | undefined {
  const part = items.find((x) => x.part && items.indexOf(x) < c.at) ?? items.find((x) => x.part);
  return part?.part && part.part !== 'quilt' ? part.part : undefined;
}

function carriedForCondition(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  c: ConditionFound,
  placed: ReturnType<typeof placesOfClause>,
): string[] | undefined {
  const last = [...state.drafts]
    .reverse()
    .find(
      (d) =>
        (d.entry.kind === 'condition' || d.entry.kind === 'treatment') &&
        d.sentence >= v.sentence - 1 &&
        (d.entry as { places?: string[] }).places?.length,
    );
  const lastPlaces = (last?.entry as { places?: string[] } | undefined)?.places;
  const topical = state.topic?.sentence === v.sentence ? state.topic.places : undefined;
  if (topical && placed.kind === 'none') return topical;
  if (
    c.finding === 'broken-stitching' &&
    !placed.places.length &&
    c.items.some((x) => /ties?/.test(x.w)) &&
    !lastPlaces
  )
    return ['quilt'];
  if (placed.kind === 'pronoun') {
    if (last && last.sentence === v.sentence) return lastPlaces;
    return placed.places;
  }
  if (last && last.sentence === v.sentence) return lastPlaces;
  if (last && v.items.length < 8) return lastPlaces;
  // "there's another of those marks somewhere"
  if (v.items.some((x) => /^(somewhere|someplace)$/.test(x.w))) return undefined;
  if (
    v.items.some(
      (x, k) =>
        /^(under|underneath|it|there|that|beneath|behind)$/.test(x.w) &&
        !(x.w === 'there' && /^('s|is|are|was|were)$/.test(v.items[k + 1]?.w ?? '')),
    ) &&
    state.memory.focus.length
  )
    return state.memory.focus;
  if (state.carried.length) return state.carried;
  return undefined;
}

function fastening(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
  placed: ReturnType<typeof placesOfClause>,
): void {
  const last = state.drafts
    .filter(isTreatment)
    .filter((d) => d.sentence >= v.sentence - 1)
    .at(-1);
  if (placed.kind === 'specific') return;
  if (last && !last.entry.stitch && last.entry.action && TAKES_STITCH.has(last.entry.action)) {
    last.entry.stitch = stitch.stitch;
    last.origins['stitch'] = {
      rule: `stitch.${stitch.stitch}`,
      how: 'said',
      from: stitch.item.token.from,
      to: stitch.item.end ?? stitch.item.token.to,
    };
    return;
  }
  const found = state.drafts.at(-1);
  // "the seam from last night: backstitch", "that seam: whipst., 12 min"
  const seam = !last && placed.kind === 'none' ? seamNamed(state, v) : undefined;
  if (seam?.length) {
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          action: ['resew', 'treatment.stitch-alone', stitch.item],
          state: ['done', 'treatment.stitch-alone', stitch.item],
          places: [seam, 'place.carried', undefined, 'implied'],
          stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item],
        },
        'carried',
      ),
    );
    return;
  }
  if (
    !last &&
    found?.entry.kind === 'condition' &&
    ['split-seam', 'tear', 'broken-stitching'].includes(found.entry.finding) &&
    found.entry.places?.length
  )
    state.drafts.push(sewnShut(v, found.entry.places, stitch));
}

/** A seam or tear closed, told by the stitch alone. */
const sewnShut = (
  v: { index: number; sentence: number; items: Item[] },
  places: string[],
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft =>
  makeDraft(
    'treatment',
    v,
    {
      action: ['resew', 'treatment.stitch-alone', stitch.item],
      state: ['done', 'treatment.stitch-alone', stitch.item],
      places: [places, 'place.carried', undefined, 'implied'],
      stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item],
    },
    'carried',
  );

/** "the reverse is to follow tomorrow", "r3 to go tmrw", "4-7 next": the treatment before is planned for other places. */
function planAgain(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  placed: ReturnType<typeof placesOfClause>,
): void {
  const { items } = v;
  if (placed.kind !== 'specific' && !(placed.kind === 'general' && placed.places[0] !== 'quilt')) return;
  const words = ` ${items.flatMap((x) => (x.place ? [] : [x.w])).join(' ')} `;
  if (
    !/ (to follow|to go|to do|next|tomorrow|tmrw|tmw|later|follows|following|still to (do|go|come)|to come) /.test(
      words,
    )
  )
    return;
  const light = (x: Item): boolean =>
    Boolean(x.place || x.seam) ||
    /^(the|and|,|&|\+|is|are|'s|to|follow|follows|go|do|come|next|tomorrow|tmrw|tmw|later|still|then|on|in|for|will|'ll|be|now|all|both|of|rest|too|also|morning|evening|after|that|-|--|\()$/.test(
      x.w,
    );
  if (!items.every(light)) return;
  const last = state.drafts.findLast(isTreatment)?.entry;
  const source = last ?? (state.memory.lastKind === 'treatment' ? state.memory.treatment : undefined);
  if (!source?.action || source.state === 'considering' || source.state === 'dropped') return;
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [source.action, 'treatment.to-follow', undefined, 'implied'],
        state: ['planned', 'treatment.to-follow', items],
        ...(source.object ? { object: [source.object, 'treatment.to-follow', undefined, 'implied'] } : {}),
        places: [placed.places, 'place.said', placed.items],
      },
      'said',
    ),
  );
}

/** Where the seam is that was named, with nothing said of it, just before in the same sentence. */
function seamNamed(state: ReaderState, v: { index: number; sentence: number }): string[] | undefined {
  const before = state.clauses[v.index - 1];
  if (!before || before.sentence !== v.sentence || !before.items.some((x) => x.seam)) return undefined;
  if (state.drafts.some((d) => d.clause === v.index - 1)) return undefined;
  if (state.topic?.sentence === v.sentence) return state.topic.places;
  const placed = placesOfClause(before.items);
  if (placed.places.length) return placed.places;
  return carriedPlaces(state, view(before, v.index - 1), undefined, placed) ?? state.memory.focus;
}

/** "the reverse is to follow tomorrow", "rows 7 to 9 tmrw", "four still to go": the same there, another day. */
const TO_FOLLOW =
  / (?:to follow|follows|to come|to go|still to (?:do|go|come)|left to do|tomorrow|tmrw|next time|another (?:day|evening|night)) /;

/** "2-3 ditto, 40" after a treatment told with its minutes: minutes again. */
function bareMinutes(state: ReaderState, clause: Clause): Item | undefined {
  const last = clause.items.at(-1);
  const n = last?.quantity?.unit === undefined ? last?.quantity?.value : undefined;
  if (!n || n < 5 || n > 240 || clause.items.some((x) => x.duration)) return undefined;
  const timed = state.memory.last?.entries.some(
    ({ entry: e }) => e.kind === 'treatment' && e.minutes !== undefined,
  );
  return timed ? last : undefined;
}

/** "so I've done that", "that's done now, by hand", after a plan: the plan carried out. */
function doneAsPlanned(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  words: string,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  if (
    !/ (?:i 've|i have|'ve|have|i|all|just|now|and|so) (?:now |just |already )?(?:done|did) (?:that|it|them|those|both)(?: one| ones| all)? | (?:that|it|those|they)(?: one| ones)? (?:'s|is|are|'re) (?:all |now )*done /.test(
      words,
    )
  )
    return undefined;
  const plan = state.memory.last?.entries.findLast(({ entry: e }) => e.kind === 'treatment')?.entry;
  if (plan?.kind !== 'treatment' || plan.state !== 'planned' || !plan.action) return undefined;
  return makeDraft(
    'treatment',
    v,
    {
      action: [plan.action, 'treatment.as-planned', undefined, 'implied'],
      state: ['done', 'treatment.as-planned', v.items],
      ...(plan.object ? { object: [plan.object, 'treatment.as-planned', undefined, 'implied'] } : {}),
      places: [plan.places ?? [], 'place.carried', undefined, 'implied'],
      ...(stitch && TAKES_STITCH.has(plan.action)
        ? { stitch: [stitch.stitch, `stitch.${stitch.stitch}`, stitch.item] }
        : {}),
    },
    'carried',
  );
}

/** A stitch told behind the damage it closes, in one clause: that is the treatment. */
function closedAtOnce(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  stitch: NonNullable<ReturnType<typeof stitchOf>>,
): Draft | undefined {
  const found = state.drafts.findLast((d) => d.clause === v.index);
  if (found?.entry.kind !== 'condition' || !found.entry.places?.length) return undefined;
  if (!['split-seam', 'tear', 'broken-stitching'].includes(found.entry.finding)) return undefined;
  const at = v.items.indexOf(stitch.item);
  if (!/^(,|-|--)$/.test(v.items[at - 1]?.w ?? '')) return undefined;
  const damage = v.items.findIndex((x) => x.finding || x.fail);
  if (damage < 0 || damage > at || v.items.slice(at + 1).some((x) => x.finding || x.fail)) return undefined;
  return sewnShut(v, found.entry.places, stitch);
}

/** "same on the next two", "the one below the same", "ditto 3-4", "and the next two rows too". */
function sameAgain(
  state: ReaderState,
  clause: Clause,
  v: { index: number; sentence: number; items: Item[] },
  placed: ReturnType<typeof placesOfClause>,
  stitch: ReturnType<typeof stitchOf>,
): void {
  const words = ` ${clause.items.map((x) => x.w).join(' ')} `;
  const short = clause.items.length <= 9;
  const same =
    / (same|ditto|likewise|as is|as are|identical|as before|similarly|so is|so are|so has|so does|so did|so 's|just as bad|no better|as bad) /.test(
      words,
    ) ||
    (short && / (as well|too|also|again) /.test(words) && placed.kind === 'specific') ||
    (state.clauses.length === 1 &&
      short &&
      placed.kind === 'specific' &&
      / (and|also|plus) /.test(words.slice(0, 10)) &&
      clause.items.every((x) => x.place || /^(and|also|plus|the|,|in|on|then|now|&)$/.test(x.w))) ||
    /^ (" |'' )/.test(words) ||
    (short && placed.kind !== 'none' && placed.kind !== 'pronoun' && TO_FOLLOW.test(words));
  const cloth = same && placed.kind === 'none' ? mendedCloth(clause.items, state) : undefined;
  if (
    !same ||
    (!placed.places.length &&
      !cloth &&
      !placed.outside &&
      !/ (same again|ditto|likewise|as before|same (way|deal|treatment|thing|story|procedure|process|method)) /.test(
        words,
      ))
  )
    return;
  if (
    / same (thread|stitch|fabric|cloth|colou?r|needle|yarn|as before thread|wool) /.test(words) &&
    !placed.places.length
  )
    return;
  const last = [...state.drafts]
    .reverse()
    .find((d) => d.entry.kind === 'treatment' || d.entry.kind === 'condition');
  // "the same again on the remaining two taffeta blocks"
  const places = placed.places.length ? placed.places : (cloth?.places ?? []);
  if (
    last &&
    last.entry.kind === 'condition' &&
    !/ (same again|same treatment|same deal|done the same|did the same) /.test(words)
  ) {
    const { finding } = last.entry;
    state.drafts.push(
      makeDraft(
        'condition',
        v,
        {
          finding: [finding, 'condition.same', undefined, 'implied'],
          places: [places, 'place.said', placed.items],
        },
        places.length ? 'said' : 'none',
      ),
    );
    return;
  }
  const from = last?.entry.kind === 'treatment' ? last.entry : undefined;
  const memory = state.memory;
  if (
    !from &&
    memory.lastKind === 'condition' &&
    memory.condition &&
    !/ (same again|same treatment|did|done|i) /.test(words)
  ) {
    state.drafts.push(
      makeDraft(
        'condition',
        v,
        {
          finding: [memory.condition.finding, 'condition.same', undefined, 'implied'],
          places: [places, 'place.said', placed.items],
        },
        places.length ? 'said' : 'none',
      ),
    );
    return;
  }
  const source = from ?? memory.treatment;
  if (!source?.action) return;
  const say = stitch?.stitch ?? source.stitch;
  const bare = bareMinutes(state, clause);
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [source.action, 'treatment.same-again', undefined, 'implied'],
        state: [
          (/ (want|wants|need|needs|will|'ll|to get|to do|to come|gets?) /.test(words) ||
            TO_FOLLOW.test(words)) &&
          source.state !== 'considering'
            ? 'planned'
            : source.state,
          'treatment.same-again',
          undefined,
          'implied',
        ],
        ...(source.object ? { object: [source.object, 'treatment.same-again', undefined, 'implied'] } : {}),
        places: [places, 'place.said', placed.items],
        ...(say ? { stitch: [say, 'treatment.same-again', stitch?.item, stitch ? 'said' : 'implied'] } : {}),
        ...(bare ? { minutes: [bare.quantity!.value, 'time.bare-minutes', bare] } : {}),
      },
      places.length ? 'said' : 'none',
    ),
  );
}
