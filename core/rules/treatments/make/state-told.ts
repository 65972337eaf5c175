import type { TreatmentState } from '../../../../shared/vocabulary.ts';
import type { Clause } from '../../clause/clause.ts';
import { REMOVE_VERBS } from '../../clause/removal-at.ts';
import type { ClauseView } from '../../clause-view.ts';
import type { Item } from '../../item.ts';
import { looksUndecided, stateOf } from '../../mood.ts';
import type { ClausePlaces } from '../../places/places-of-clause.ts';
import type { ReaderState } from '../../reader-state.ts';
import { tellsPlace } from '../../tells-place.ts';
import { isAwaited } from '../../to-come.ts';
import { wordsBetween } from '../../words-between.ts';
import { isTreatment } from '../is-treatment.ts';
import { isHeadedToDo } from '../standing-told.ts';
import type { Way } from '../way.ts';
import type { Making } from './making.ts';

/**
 * "I shall unpick that patch this afternoon, after which the block will be either darned or replaced": meant outright, where the doubt is
 * of what another clause tells.
 */
function isMeant(state: ReaderState, clause: Clause, v: ClauseView, way: Way, placed: ClausePlaces): boolean {
  if (standsApart(state, clause, v, way) || turnsElsewhere(state, clause, v, way, placed)) return true;
  if (way.form !== 'base' || clause.asked || clause.joint === 'or') return false;
  // "stabilise first, then either darn or overlay": the doubt is of what comes after
  const after = state.clauses[v.index + 1];
  if (
    after?.joint === 'then' &&
    after.sentence === v.sentence &&
    (/^(either|maybe|perhaps|possibly|whether)$/.test(after.items[0]!.w) ||
      / or (?:maybe|perhaps) not /.test(wordsBetween(after.items))) &&
    !looksUndecided(wordsBetween(clause.items))
  )
    return true;
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

const OWN_PLAN =
  / (?:wants?|needs?|gets?|getting|will|'ll|shall|must|(?:has|have) to|going to|gonna|is to|are to|definitely|certainly) (?:\S+ ){0,8}$/;

/**
 * "might net 2-4 but 2-3 definitely gets a patch": decided in words of its own, for a place of its own, where the doubt of the
 * sentence is of another place.
 */
function standsApart(state: ReaderState, clause: Clause, v: ClauseView, way: Way): boolean {
  const { items } = clause;
  const own = wordsBetween(items);
  if (clause.asked || clause.joint === 'or' || looksUndecided(own) || / (?:or|either) /.test(own))
    return false;
  if (!OWN_PLAN.test(wordsBetween(items, 0, way.at + 1).replace(/\S+ $/, ''))) return false;
  const mine = items.find((x) => tellsPlace(x));
  if (!mine) return false;
  if (state.clauses[v.index + 1]?.joint === 'or') return false;
  const doubting = state.clauses.filter(
    (c) => c !== clause && c.sentence === v.sentence && looksUndecided(wordsBetween(c.items)),
  );
  return (
    doubting.length > 0 &&
    doubting.every(
      (c) =>
        c.joint !== 'or' &&
        c.items.some((x) => tellsPlace(x) && !x.place?.places.some((p) => mine.place?.places.includes(p))),
    )
  );
}

/**
 * "the top right one needs darning, and the other I'd maybe patch, but I've not made up my mind": the talk turns to another place before
 * any doubt is told, so that the doubt is of that one.
 */
function turnsElsewhere(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  way: Way,
  placed: ClausePlaces,
): boolean {
  const { items } = clause;
  const own = wordsBetween(items);
  if (clause.asked || clause.joint === 'or' || !placed.places.length) return false;
  if (looksUndecided(own) || / (?:or|either) /.test(own)) return false;
  if (!OWN_PLAN.test(wordsBetween(items, 0, way.at + 1).replace(/\S+ $/, ''))) return false;
  if (
    state.clauses
      .slice(0, v.index)
      .some((c) => c.sentence === v.sentence && looksUndecided(wordsBetween(c.items)))
  )
    return false;
  const next = state.clauses[v.index + 1];
  return (
    next !== undefined &&
    next.sentence <= v.sentence + 1 &&
    next.joint !== 'or' &&
    next.items.some((x) => tellsPlace(x) && x.place && !x.place.places.some((p) => placed.places.includes(p)))
  );
}

/** "when the tulle comes", "once it's bound", "as soon as I've had my tea": what is waited for, and not yet so. */
export const waitsFor = (clause: Clause): boolean =>
  /^(when|once|as|until|till|after|if)$/.test(clause.joint) && isAwaited(wordsBetween(clause.items));

/** "3-3 needs a darn and 3-4 a patch sewn on": what the verb of the clause before is to give this place too. */
function isGivenToo(state: ReaderState, { items, joint }: Clause, v: ClauseView): boolean {
  if (!/^(and|,|&|\+)$/.test(joint)) return false;
  const before = state.drafts.at(-1);
  if (!before || before.clause !== v.index - 1 || before.sentence !== v.sentence) return false;
  if (!isTreatment(before) || before.entry.state !== 'planned') return false;
  const thing = items.findIndex((x) => !x.place && !x.fabric && !/^(and|&|the|ones|blocks)$/.test(x.w));
  return (
    thing > 0 &&
    (/^(a|an|some|new)$/.test(items[thing]!.w) || items[thing]!.material !== undefined) &&
    state.clauses[v.index - 1]!.items.some((x) => /^(needs?|wants?|gets?|getting)$/.test(x.w)) &&
    !items.some((x) => /^(i|we|has|have|'s|'ve|is|are|now|already|needs?|wants?)$/.test(x.w))
  );
}

/** "gets lined", "to be taken off", "needs netting over": said of what it is done to, and not of who does it. */
const IS_TO_BE =
  / (?:gets?|getting|be|needs?|wants?) (?:\S+ ){0,2}\S+(?:ed|en|t|ing|put|off|over|behind|out) /;

/** Whether the deed is done, doing, to be done, in question or given up; undefined where none is told at all. */
export function stateTold({ state, clause, v, way, sentence, placed }: Making): TreatmentState | undefined {
  const { items } = clause;
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
  if (mood === 'done' && isGivenToo(state, clause, v)) mood = 'planned';
  if (mood === 'considering' && isMeant(state, clause, v, way, placed)) mood = 'planned';
  let status = mood as TreatmentState;
  if (
    way.rule === 'treatment.nothing' &&
    clause.joint !== 'or' &&
    !/ or /.test(sentence) &&
    status !== 'considering'
  )
    return undefined;
  // "at it from seven till nine, picking the ties out": the stretch is over, while what is spread out dries on
  if (
    status === 'doing' &&
    way.action !== 'dry' &&
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
  if (status === 'done' && way.action !== 'leave' && isForLater(state, clause, v)) status = 'planned';
  if (status === 'done' && way.form === 'noun' && (sharesVerb(state, clause) || isVerdict(state, clause)))
    status = 'planned';
  // "label going on the bottom corner": where it is to go
  if (way.action === 'label' && status === 'doing' && items[way.at]!.w === 'going' && !/ now /.test(sentence))
    status = 'planned';
  if (way.action === 'leave') status = leaveState(clause, sentence, status);
  if (way.form === 'noun' && status === 'done' && /\b(or|either)\b/.test(sentence) && clause.asked)
    status = 'considering';
  return status;
}

/** "no washing for this one", "no wash on this quilt": decided against, where "no zigzag" only tells how it was not done. */
const isRefused = (items: Item[], way: Way): boolean =>
  way.action === 'wash' &&
  / no (?:washing|wash) $/.test(wordsBetween(items, 0, way.at + 1)) &&
  /^ (?:it|this one|this quilt|(?:for|on) (?:it|this|this one|this quilt|that one))(?: then)? (?:$|[.,;!-] |not |with |because |since )/.test(
    wordsBetween(items, way.at + 1),
  );

/** "… as I went", "… on the way" */
function wentAlong({ clauses }: ReaderState, { index, items }: ClauseView): boolean {
  if (/ (?:on|along) the way $/.test(wordsBetween(items))) return true;
  const next = clauses[index + 1];
  return next?.joint === 'as' && /^ (?:i|we) (?:went|worked|did)\b/.test(wordsBetween(next.items));
}

const DAY =
  '(?:tomorrow|tonight|later|monday|tuesday|wednesday|thursday|friday|saturday|sunday|next (?:week|time)|the weekend|another day|the morning)';
/** "tomorrow's job", "that's for tomorrow", "a job for Monday", "not yet" */
const FOR_LATER = new RegExp(
  `^ (?:(?:that|it|this|which|but|and|is|'s|a|one|job|something|,) )*(?:${DAY} 's (?:job|work|task)|${DAY}'s (?:job|work|task)|for ${DAY}|next job|the next job|next on the list|still to (?:do|come)|not yet) $`,
);
const HAS_VERB =
  /^(i|we|'ve|have|has|had|got|put|went|gone|is|'s|are|was|were|did|done|made|laid|now|today|yesterday|already)$/;
const ON_A_DAY = new RegExp(` (?:on|at|for) ${DAY} $`);

/** "net on 3-2 - tomorrow's job", "net over 3-2 on Monday": a deed without a verb, and the day that is given to it. */
function isForLater(state: ReaderState, clause: Clause, v: ClauseView): boolean {
  if (
    clause.items.some((x) => HAS_VERB.test(x.w)) ||
    clause.items.some((x) => x.duration || x.span || x.clock)
  )
    return false;
  if (ON_A_DAY.test(wordsBetween(clause.items)) && !clause.items.some((x) => x.action?.form === 'past'))
    return true;
  const next = state.clauses[v.index + 1];
  return next !== undefined && next.sentence <= v.sentence + 1 && FOR_LATER.test(wordsBetween(next.items));
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
    ? before.items.some((x) => x.action?.form === 'past' || REMOVE_VERBS[x.w]?.form === 'past')
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
