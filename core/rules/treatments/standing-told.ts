import type { Action, RemovedObject, TreatmentState } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';

/** How a thing stands, told by itself behind a colon or a dash. */
const STANDINGS: [RegExp, TreatmentState][] = [
  [/^ (?:all |now |both )*(?:done|finished|complete|completed) $/, 'done'],
  [
    /^ (?:now |still )*(?:in hand|under way|underway|in progress|on the go|ongoing|half done|half way|begun|started) $/,
    'doing',
  ],
  [
    /^ (?:still )?(?:to go|to do|to come|to follow|to be done|next|later|tomorrow|tmrw|outstanding|pending|planned|not yet|not done(?: yet)?) $/,
    'planned',
  ],
  [/^ (?:yes|agreed|go ahead)(?: ,)?(?: (?:tomorrow|tmrw|next|later|today|next week))? $/, 'planned'],
  [
    /^ (?:dropped|no|out|scrapped|rejected|ruled out|called off|cancelled|not now|decided against) $/,
    'dropped',
  ],
  [/^ (?:maybe|perhaps|possibly|undecided|open|not sure|tbd|to be decided) $/, 'considering'],
];

/** "was the plan, now cancelled on account of that red" */
const CALLED_OFF =
  /^ (?:(?:was|had been) (?:the|my) (?:plan|idea|intention)|(?:now |all )*(?:cancelled|canceled|scrapped|dropped|abandoned|called off|off|shelved) (?:[,(]|now|because|on account|due to|with|since|after) )/;

const standingIn = (items: Item[]): TreatmentState | undefined => {
  if (CALLED_OFF.test(wordsBetween(items))) return 'dropped';
  if (items.length > 4) return undefined;
  const words = ` ${items.map((x) => x.w).join(' ')} `;
  return STANDINGS.find(([said]) => said.test(words))?.[1];
};

/**
 * "ties out: rows 1-3: done, row 4: in hand, row 5: to go", "patch: yes, tomorrow, replace: dropped": how the treatment just
 * named stands, or stands at the places just named. Tells whether the clause was that.
 */
export function standingTold(state: ReaderState, clause: Clause, v: ClauseView): boolean {
  if (/^(,|and|but|&)$/.test(clause.joint)) return placeAndStanding(state, clause, v);
  if (!/^(:|-)$/.test(clause.joint)) return false;
  const standing = standingIn(clause.items);
  const before = state.clauses[v.index - 1];
  if (!standing || before?.sentence !== clause.sentence) return false;
  const own = state.drafts.filter((d) => d.clause === v.index - 1 && isTreatment(d));
  if (own.length) {
    for (const d of own) setStanding(d, standing);
    return true;
  }
  const source =
    state.drafts.findLast((d) => d.sentence === clause.sentence && isTreatment(d)) ??
    // "row five: pressed. row six: not yet"
    state.drafts.findLast((d) => d.sentence === clause.sentence - 1 && isTreatment(d));
  const places = state.topic?.sentence === clause.sentence ? state.topic.places : undefined;
  if (source?.entry.kind !== 'treatment') return false;
  if (!places) {
    // its places were told in the clause between: "ties out: rows 1-3: done"
    if (before.items.every((x) => x.place || /^(,|and|&|\+|the)$/.test(x.w))) setStanding(source, standing);
    return true;
  }
  pushAt(state, clause, v, source.entry, places, before.items, standing);
  return true;

  function setStanding(d: (typeof state.drafts)[number], to: TreatmentState): void {
    if (d.entry.kind !== 'treatment') return;
    // "washed: yes" says it once more, "labelled: no" that it is still to come
    const told = d.entry.state === 'done';
    if (told && to === 'planned' && /^(yes|agreed)$/.test(clause.items[0]!.w)) return;
    d.entry.state = told && to === 'dropped' && clause.items[0]!.w === 'no' ? 'planned' : to;
    d.origins['state'] = {
      rule: 'treatment.standing-told',
      how: 'said',
      from: clause.items[0]!.token.from,
      to: clause.items.at(-1)!.end ?? clause.items.at(-1)!.token.to,
    };
  }
}

/** "rows 1 and 2 tied, row 3 half done", "2-3 patched and 2-4 in hand": what is under way elsewhere. */
function placeAndStanding(state: ReaderState, clause: Clause, v: ClauseView): boolean {
  const { items } = clause;
  const at = items.findIndex((x) => !x.place && !/^(,|and|&|the|with|is|are|'s|still)$/.test(x.w));
  const placed = items.slice(0, Math.max(0, at)).filter((x) => x.place?.kind === 'blocks');
  if (!placed.length || standingIn(items.slice(at)) !== 'doing') return false;
  const source = state.drafts.findLast((d) => d.sentence === clause.sentence && isTreatment(d));
  if (source?.entry.kind !== 'treatment' || source.entry.state !== 'done') return false;
  pushAt(
    state,
    clause,
    v,
    source.entry,
    placed.flatMap((x) => x.place!.places),
    placed,
    'doing',
  );
  return true;
}

/** The same treatment at other places, as it stands there. */
function pushAt(
  state: ReaderState,
  clause: Clause,
  v: ClauseView,
  { action, object }: { action?: Action | undefined; object?: RemovedObject | undefined },
  places: string[],
  placed: Item[],
  standing: TreatmentState,
): void {
  state.drafts.push(
    makeDraft(
      'treatment',
      v,
      {
        action: [action, 'treatment.standing-told', undefined, 'implied'],
        state: [standing, 'treatment.standing-told', clause.items],
        ...(object ? { object: [object, 'treatment.standing-told', undefined, 'implied'] } : {}),
        places: [places, 'place.said', placed],
      },
      'said',
    ),
  );
}

const TO_DO =
  /^(?:still |left |yet |jobs? )?(?:to do(?: next| tomorrow| now| still)?|todo|to come|to follow|to go|to be done|remaining|outstanding|next(?: time| up| jobs?| steps?| thing| task)?|coming up|sequence|order(?: of (?:work|play))?|running order|in (?:this|that) order|tomorrow|tmrw|(?:the |my )?plans?|planned|jobs left|left)$/;
/** The words of the heading without its place: "still to do on row one". */
const headOf = ({ items }: Clause): string =>
  items
    .slice(0, items.findIndex((x) => x.place) < 0 ? undefined : items.findIndex((x) => x.place))
    .map((x) => x.w)
    .join(' ')
    .replace(/ (?:on|in|for|at|with)(?: the)?$/, '');

/** "note to self: old binding off", "reminder, label off first": what one tells oneself is still to be done. */
const TO_ONESELF =
  /^(?:(?:and |so |ok |okay |right |a |my )*note (?:to|for) (?:self|me|myself)|(?:a )?reminder(?: (?:to|for) (?:self|me|myself))?|memo|memo to (?:self|me)|must remember|remember|(?:do )?n't forget|(?:another |next )?jobs?(?: for (?:\S+ ){0,2}\S+)?)$/;

/** "to do: ties out, whole quilt", "tomorrow: backing off": what is listed under such a heading is planned. */
export function isHeadedToDo(state: ReaderState, clause: Clause): boolean {
  const own = state.clauses.filter((c) => c.sentence === clause.sentence);
  if (own.length < 2 || own[0] === clause || own[0]!.items.length > 5) return false;
  const head = headOf(own[0]!);
  return own[1]!.joint === ':'
    ? TO_DO.test(head) || TO_ONESELF.test(head)
    : own[1]!.joint === ',' && TO_ONESELF.test(head);
}
