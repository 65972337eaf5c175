import type { Action, TreatmentState } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { looksUndecided, stateOf } from '../mood.ts';
import { carriedPlaces, sideTakenOff } from '../places/carried-places.ts';
import { clothWithin, mendedCloth } from '../places/cloth-worked-on.ts';
import { splitBlock, unique } from '../places/grid.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { isAwaited } from '../to-come.ts';
import { wordsBetween } from '../words-between.ts';
import { isOthers, tellsOldRepair } from './by-others.ts';
import { isTreatment } from './is-treatment.ts';
import { RUNS, upTo } from './so-far.ts';
import { isHeadedToDo } from './standing-told.ts';
import { isForGood, type stitchOf, TAKES_STITCH } from './stitch-of.ts';
import { givenUpAt } from './verdict.ts';
import type { Way } from './way.ts';
import { WHOLE_QUILT } from './whole-quilt.ts';

const ALL_ROUND = / all (?:the way )?(?:a?round|(?:four |the |its )*sides) /;
const AND_SQUARED = / trim(?:med)? (?:it )?(?:up )?(?:(?:and|&|,|then|\+) )*squared? /;
const NO_PLACE_NEEDED = new Set<Action>(['cut', 'piece', 'add-border', 'label', ...WHOLE_QUILT]);

/**
 * "I shall unpick that patch this afternoon, after which the block will be either darned or replaced": meant outright, where the doubt is
 * of what another clause tells.
 */
function isMeant(state: ReaderState, clause: Clause, v: ClauseView, way: Way): boolean {
  if (way.form !== 'base' || clause.asked || clause.joint === 'or') return false;
  const before = wordsBetween(clause.items, 0, way.at);
  if (
    !/ (?:i|we) (?:shall|will|'ll|must|have to|am going to|'m going to|going to)(?: just| first)? $/.test(
      before,
    )
  )
    return false;
  if (looksUndecided(wordsBetween(clause.items))) return false;
  const others = state.clauses.filter((c) => c !== clause && c.sentence === v.sentence);
  const doubting = others.filter((c) => looksUndecided(wordsBetween(c.items)));
  return (
    doubting.length > 0 &&
    state.clauses[v.index + 1]?.joint !== 'or' &&
    doubting.every((c) => c.joint !== 'or' && c.items.some((x) => x.action))
  );
}

/** "when the tulle comes", "once it's bound", "as soon as I've had my tea": what is waited for, and not yet so. */
const waitsFor = (clause: Clause): boolean =>
  /^(when|once|as|until|till|after|if)$/.test(clause.joint) && isAwaited(wordsBetween(clause.items));

/** "took out the ties and the batting": the other layer is taken off too, and is not where the ties were. */
function placesTakenFrom(items: Item[], placed: ClausePlaces): string[] {
  if (!placed.items.every((x) => x.place?.kind === 'part' && x.object)) return placed.places;
  const where = placed.items.filter((x) => {
    let k = items.indexOf(x) - 1;
    while (/^(the|old|its|all|whole|that)$/.test(items[k]?.w ?? '')) k--;
    return !/^(and|,|&|\+)$/.test(items[k]?.w ?? '');
  });
  return where.length === placed.items.length ? placed.places : where.flatMap((x) => x.place!.places);
}

/** "gets lined", "to be taken off", "needs netting over": said of what it is done to, and not of who does it. */
const IS_TO_BE =
  / (?:gets?|getting|be|needs?|wants?) (?:\S+ ){0,2}\S+(?:ed|en|t|ing|put|off|over|behind|out) /;

export function makeTreatment(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  way: Way,
  sentence: string,
  placed: ClausePlaces,
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
  // "label it once it's bound", "I'll net it when the tulle comes": not yet so
  if (way.form !== 'base' && waitsFor(clause) && state.clauses.length > 1) return undefined;
  // "the calico ones want lining": no backing is spoken of
  // "every calico block is to have a backing cloth sewn in behind"
  const isStuff =
    way.rule === 'treatment.cloth-behind' && way.stuff && placed.items.every((x) => x === way.stuff);
  if ((way.rule === 'treatment.a-lining' || isStuff) && placed.kind === 'general')
    placed = { ...placed, kind: 'none', places: [], items: [] };
  let mood = stateOf(clause, way.at, way.form, sentence);
  if (
    way.action === 'leave' &&
    /^(touching|touch|alone|bother|bothering)$|^(no|n't|not|nothing|do|did|doing|hands) /.test(
      items[way.at]!.w,
    )
  )
    mood = 'done';
  if (
    way.action === 'dry' &&
    items[way.at]!.w === 'dry' &&
    way.form === 'base' &&
    !/^(to|will|'ll|must|flat|should|and)$/.test(items[way.at - 1]?.w ?? '') &&
    // "I'll wash it tomorrow, dry it flat, and then press it"
    !(way.at === 0 && items[1]?.place && state.drafts.at(-1)?.sentence === v.sentence)
  )
    mood = 'done';
  // "it's laid out on the rack to dry", "it's on the grass to dry"
  if (
    way.action === 'dry' &&
    items[way.at - 1]?.w === 'to' &&
    (items
      .slice(Math.max(0, way.at - 9), way.at - 1)
      .some((x) => /^(laid|lying|laying|spread|hung|hanging|draped|pegged|flat)\b/.test(x.w)) ||
      / (?:is|'s) (?:now |out )*(?:on|over|across) (?:\S+ ){1,4}to $/.test(wordsBetween(items, 0, way.at))) &&
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
    if (!open && !isRefused(items, way)) return undefined;
    mood = 'dropped';
  }
  // "I'm netting 3-3 when the tulle comes", "darning it as soon as I've had my tea"
  const next = state.clauses[v.index + 1];
  if (mood === 'doing' && way.form === 'ing' && next?.sentence === v.sentence && waitsFor(next))
    mood = 'planned';
  if (mood === 'considering' && isMeant(state, clause, v, way)) mood = 'planned';
  let status = mood as TreatmentState;
  if (
    way.rule === 'treatment.nothing' &&
    clause.joint !== 'or' &&
    !/ or /.test(sentence) &&
    status !== 'considering'
  )
    return undefined;
  // "at it from seven till nine, picking the ties out": the stretch is over
  if (
    status === 'doing' &&
    !items.some((x) => /^(now|still|currently|'m|am|rn)$/.test(x.w)) &&
    state.drafts.some((d) => d.entry.kind === 'work' && d.entry.start && d.entry.end)
  )
    status = 'done';
  // "quilted along the sashing, taking the pins out as I went"
  if (
    status === 'doing' &&
    way.form === 'ing' &&
    wentAlong(state, v) &&
    state.drafts.some((d) => d.sentence === v.sentence && isTreatment(d) && d.entry.state === 'done')
  )
    status = 'done';
  // "2-4 could be patched, darned or left": the list goes on with what is in question
  const before = state.drafts.at(-1);
  if (
    status === 'done' &&
    way.form === 'past' &&
    way.at === 0 &&
    clause.joint === ',' &&
    placed.kind !== 'specific' &&
    before?.sentence === v.sentence &&
    before.entry.kind === 'treatment' &&
    before.entry.state === 'considering'
  )
    status = 'considering';
  // "net laid over, or cut out and a new piece set in?"
  if (
    status === 'done' &&
    way.form === 'past' &&
    clause.asked &&
    state.clauses[v.index + 1]?.joint === 'or' &&
    !/ (?:i|we|'ve|have|has|had|was|were|is|'s)(?: \S+)? $/.test(wordsBetween(items, 0, way.at))
  )
    status = 'considering';
  // "2-3 gets lined and then darned": both are to be
  if (
    status === 'done' &&
    way.form === 'past' &&
    /^(,|and|&|then)$/.test(clause.joint) &&
    items.slice(0, way.at).every((x) => /^(and|then|also|after|that)$/.test(x.w)) &&
    placed.kind !== 'specific' &&
    before?.sentence === v.sentence &&
    before.clause === v.index - 1 &&
    before.entry.kind === 'treatment' &&
    before.entry.state === 'planned' &&
    IS_TO_BE.test(wordsBetween(state.clauses[before.clause]!.items))
  )
    status = 'planned';
  // "pressing of row 3 was completed at 11:20"
  if (
    status === 'doing' &&
    items[way.at + 1]?.w === 'of' &&
    state.drafts.some((d) => d.entry.kind === 'work' && d.entry.mark === 'stop' && d.sentence === v.sentence)
  )
    status = 'done';
  if (
    status === 'done' &&
    way.form === 'past' &&
    (goesOnPlanned(state, clause) || goesOnToDo(state, clause, items[way.at]!))
  )
    status = 'planned';
  if (status === 'done' && isHeadedToDo(state, clause)) status = 'planned';
  if (status === 'done' && way.form === 'noun' && (sharesVerb(state, clause) || isVerdict(state, clause)))
    status = 'planned';
  // "label going on the bottom corner": where it is to go
  if (way.action === 'label' && status === 'doing' && items[way.at]!.w === 'going' && !/ now /.test(sentence))
    status = 'planned';
  if (way.action === 'leave') status = leaveState(clause, sentence, status);
  if (way.form === 'noun' && status === 'done' && /\b(or|either)\b/.test(sentence) && clause.asked)
    status = 'considering';
  // "whole lot couched down", after the net was told of
  const couched =
    way.action === 'resew' &&
    stitch?.stitch === 'couching' &&
    placed.kind !== 'specific' &&
    !state.drafts.some((d) => d.entry.kind === 'treatment') &&
    state.memory.treatment?.action === 'overlay' &&
    /^(doing|planned)$/.test(state.memory.treatment.state) &&
    !items.some((x) => x.seam || x.finding);
  const action = couched ? 'overlay' : way.action!;
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
  // "darn or patch?", then "patch is off": given up, for there is none to take off
  if (
    way.rule === 'treatment.is-off' &&
    way.object === 'old-patch' &&
    state.memory.open.some((o) => o.action === 'patch' && !o.passed) &&
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
    state.memory.open.some(
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
    )
  )
    status = 'planned';
  // "doing the mending", "starting the cutting": a kind of work, with no place or thing named
  const verb = items[way.at]!;
  if (
    verb.task &&
    !verb.deed &&
    status !== 'dropped' &&
    !stitch &&
    verb.action?.form === 'ing' &&
    way.rule.startsWith('treatment.verb') &&
    placed.kind === 'none' &&
    // "the gingham that was torn | wants darning"
    !(state.carried.length && /^(wants|needs|gets|requires)$/.test(items[0]!.w)) &&
    !items.some(
      (x) =>
        x !== verb &&
        // "pinning the layers now"
        ((x.object && !x.task) ||
          x.w === 'layers' ||
          x.fabric ||
          x.finding ||
          x.seam ||
          x.material === 'fabric' ||
          // "cutting the binding strips"
          ((action === 'cut' || action === 'piece') && (x.measure === 'strip' || /\bstrips$/.test(x.w)))),
    ) &&
    !finishedTask(items, way.at) &&
    // "the hole in 3-3 needs darning": the hole stands before
    !/^(needs?|wants?|need|want|requires?)$/.test(items[way.at - 1]?.w ?? '') &&
    // "darning won", of two ways that stood open
    !(status === 'planned' && state.memory.open.some((o) => !o.passed && o.action === action)) &&
    !/\b(it|them)\b/.test(
      items
        .slice(way.at + 1, way.at + 3)
        .map((x) => x.w)
        .join(' '),
    ) &&
    !['soaking', 'drying', 'washing'].includes(verb.w)
  )
    return undefined;
  // "the old batting that can stay right where it is"
  const stays =
    action === 'leave' && placed.kind !== 'specific' && placed.kind !== 'general'
      ? items.slice(0, way.at + 1).find((x) => /^(batting|backing|binding|border)$/.test(x.object ?? ''))
          ?.object
      : undefined;
  if (stays) placed = { ...placed, kind: 'general', places: [stays] };
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
      const part = object === 'batting' && !specific.length ? outOfThose(state, items) : undefined;
      if (part) {
        places = part;
        how = 'carried';
      }
    } else if (
      placed.kind === 'specific' ||
      (placed.kind === 'general' && placed.places.some((p) => p !== 'top'))
    )
      places = placesTakenFrom(items, placed).filter((p) => p !== 'quilt' || placed.places.length === 1);
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
  } else if (placed.kind === 'specific' || placed.kind === 'general') {
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
    if (placed.kind === 'general' && action === 'baste') places = ['quilt'];
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
    (ALL_ROUND.test(wordsBetween(items)) || AND_SQUARED.test(sentence))
  ) {
    places = ['quilt'];
    how = 'unneeded';
  }
  // "4-5: hole, patched, maroon blanket": told of the place named first, the cloth is what was put in
  const headed = placed.kind === 'none' && state.topic?.sentence === v.sentence;
  if (places === undefined && how !== 'unneeded' && !(headed && laterThan(items, way.at))) {
    const cloth = mendedCloth(items, state);
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
  if (places === undefined && how !== 'unneeded') {
    const open = status === 'dropped' ? state.memory.open.filter((o) => o.action === action) : [];
    const carried =
      open.length && !(placed.kind === 'pronoun' && placed.places.length)
        ? givenUpAt(state, open)
        : (carriedPlaces(state, v, way, placed) ?? (couched ? state.memory.treatment!.places : undefined));
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

/** "no washing for this one", "no wash on this quilt": decided against, where "no zigzag" only tells how it was not done. */
const isRefused = (items: Item[], way: Way): boolean =>
  way.action === 'wash' &&
  / no (?:washing|wash) $/.test(wordsBetween(items, 0, way.at + 1)) &&
  /^ (?:it|this one|this quilt|(?:for|on) (?:it|this|this one|this quilt|that one))(?: then)? (?:$|[.,;!-] |not |with |because |since )/.test(
    wordsBetween(items, way.at + 1),
  );

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

/** "… as I went", "… on the way" */
function wentAlong({ clauses }: ReaderState, { index, items }: ClauseView): boolean {
  if (/ (?:on|along) the way $/.test(wordsBetween(items))) return true;
  const next = clauses[index + 1];
  return next?.joint === 'as' && /^ (?:i|we) (?:went|worked|did)\b/.test(wordsBetween(next.items));
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

/** Is the cloth named after the deed? */
const laterThan = (items: Item[], at: number): boolean => items.findIndex((x) => x.fabric) > at;

const spanOfItem = (x: Item): { from: number; to: number } => ({
  from: x.token.from,
  to: x.end ?? x.token.to,
});

/** "did the basting", "finished the layering": the whole of it is done, where no time is told with it. */
const finishedTask = (items: Item[], at: number): boolean =>
  /^(baste|layer|wash|bind|label|press)$/.test(items[at]!.action?.v ?? '') &&
  items[at - 1]?.w === 'the' &&
  /^(did|done|finished|completed)$/.test(items[at - 2]?.w ?? '') &&
  !items.some((x) => x.span || x.clock || x.duration);

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

/** "next I'll cut the border and put it on": "put", "cut" and "set" after what is still to be done are to be done as well. */
function goesOnToDo(state: ReaderState, clause: Clause, verb: Item): boolean {
  if (!/^(put|cut|set|let)\b/.test(verb.w)) return false;
  const at = clause.items.indexOf(verb);
  const inOne = at > 1 && /^(and|&|then|,)$/.test(clause.items[at - 1]!.w);
  const before = inOne
    ? clause.items.slice(0, at)
    : at === 0 && /^(,|and|&|then)$/.test(clause.joint)
      ? state.clauses[state.clauses.indexOf(clause) - 1]?.items
      : undefined;
  if (!before || !PLAN_BEFORE.test(wordsBetween(before))) return false;
  const last = state.drafts.at(-1);
  const told = state.clauses[last?.clause ?? -1];
  return inOne
    ? before.some((x) => x.action) &&
        !before.some((x) => x.action?.form === 'past' && !/^(put|cut|set|let)$/.test(x.w))
    : last?.entry.kind === 'treatment' &&
        last.entry.state === 'planned' &&
        told?.sentence === clause.sentence;
}
const PLAN_BEFORE = / (?:will|'ll|going to|gonna|to|must|should|tomorrow|next) /;

/** Where ties or stitches were just told to be broken. */
function brokenHere(state: ReaderState, sentence: number): string[] | undefined {
  const last = state.drafts.at(-1);
  return last?.entry.kind === 'condition' &&
    last.entry.finding === 'broken-stitching' &&
    last.sentence === sentence
    ? last.entry.places
    : undefined;
}

/** The binding or border that the sentence told of before: what strips are cut for. */
function stripsFor(state: ReaderState, sentence: number): string | undefined {
  const last = state.drafts.findLast((d) => d.entry.kind === 'condition' || d.entry.kind === 'treatment');
  if (!last || last.sentence < sentence - 1) return undefined;
  return state.clauses[last.clause]?.items.find((x) => x.part === 'binding' || x.part === 'border')?.part;
}

/** "Decided: tulle at 3-3." */
function isVerdict(state: ReaderState, clause: Clause): boolean {
  const colon = state.tokens.findIndex((t) => t.w === ':');
  const from = clause.items[0]!.token.from;
  return (
    colon > 0 &&
    colon < 4 &&
    /^(decided|decision|verdict|plan)$/.test(state.tokens[colon - 1]!.w) &&
    state.tokens[colon]!.to <= from &&
    !state.tokens.some((t) => /^[.;!?]$/.test(t.w) && t.to <= from)
  );
}

/** "going to put net on 2-2 and a patch on 2-4": no verb of its own, so that the plan before holds for it as well. */
function sharesVerb(state: ReaderState, clause: Clause): boolean {
  const last = state.drafts.at(-1);
  return (
    /^(,|and|&|\+)$/.test(clause.joint) &&
    last?.entry.kind === 'treatment' &&
    last.entry.state === 'planned' &&
    last.sentence === clause.sentence &&
    last.clause === state.clauses.indexOf(clause) - 1 &&
    !clause.items.some((x) =>
      /^(is|'s|was|are|has|have|had|'ve|got|put|now|did|done|went|laid|i|we)$/.test(x.w),
    )
  );
}

function leaveState(clause: Clause, sentence: string, status: TreatmentState): TreatmentState {
  if (status === 'dropped') return 'dropped';
  // "either I darn it or I cut it out and the stain on row two well I'm leaving that be": said of its own
  const own = ` ${clause.items.map((x) => x.w).join(' ')} `;
  if (
    !clause.asked &&
    clause.joint !== 'or' &&
    / (?:i|we) (?:'m|am|'re|are|'ve|have|'ll) (?:just )?(?:leaving|left|leave|(?:gonna|going to) (?:just )?(?:leave|let)) /.test(
      own,
    ) &&
    !looksUndecided(own) &&
    !/ (?:or|either|whether|if) /.test(own)
  )
    return 'done';
  if (clause.asked || looksUndecided(sentence)) return 'considering';
  return 'done';
}
