import type { Action, RemovedObject } from '../../../shared/vocabulary.ts';
import type { Memory } from '../../conversation/memory.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { isTreatment } from './is-treatment.ts';

/** A way that stands open, or a plan. */
type Open = Pick<ReaderState['memory']['open'][number], 'action' | 'places' | 'object'>;

/** "no quilting along the sashing": the stitches that such work makes are named as it is. */
const OF_WAY: Partial<Record<Action, RemovedObject>> = { quilt: 'quilting', tie: 'ties' };

/** Does this word name such a treatment, by its verb or its stuff? */
export function namesWay(x: Item, { action, object }: Open): boolean {
  if (
    x.action?.v === action &&
    (!x.object || x.object === 'old-patch' || OF_WAY[action] === x.object) &&
    !x.part
  )
    return true;
  switch (action) {
    case 'overlay':
      return x.material === 'net' || x.w === 'overlay';
    case 'replace':
      return /^(new|fresh|replacements?)$/.test(x.w) || x.fabric !== undefined || x.material === 'fabric';
    case 'patch':
      return /^patch(es)?$/.test(x.w) || x.fabric !== undefined || x.material === 'fabric';
    case 'stabilize':
      return (
        /^(supports?|lining)$/.test(x.w) ||
        x.material === 'interfacing' ||
        x.material === 'fabric' ||
        x.fabric !== undefined
      );
    case 'wash':
      return /^(bath|tub|wash|water|soak)$/.test(x.w);
    case 'remove':
      return object !== undefined && x.object === object;
    default:
      return false;
  }
}

/** The way among those that stood open which these words name: one at a place of this note first, else the last. */
function openNamed(state: ReaderState, items: Item[], plans: Open[] = []): Open | undefined {
  const standing: Open[] = [...plans, ...state.memory.open];
  const named = standing.filter((o) => items.some((x) => namesWay(x, o)));
  if (named.length < 2) return named[0];
  const here = [
    ...state.drafts.flatMap((d) => (d.entry as { places?: string[] }).places ?? []),
    ...state.memory.focus,
  ];
  return named.findLast((o) => o.places.some((p) => here.includes(p))) ?? named.at(-1);
}

const verdict = (v: ClauseView, open: Open, state: 'dropped' | 'planned', rule: string): Draft =>
  makeDraft(
    'treatment',
    v,
    {
      action: [open.action, rule, v.items],
      state: [state, `state.${state}`, v.items],
      ...(open.object ? { object: [open.object, rule, undefined, 'implied'] } : {}),
      places: [[...open.places], 'place.of-open', undefined, 'implied'],
    },
    'carried',
  );

/** "the crepeline idea is off", "the fresh piece is off the table", "the support from behind is abandoned", "the net's off". */
const IS_OFF = new RegExp(
  [
    " (?:idea|plan|option|notion|scheme)(?: is|'s)? (?:off|out|scrapped|dropped|abandoned|gone|dead|no good|rejected|shelved)\\b",
    "(?: is| 's| was| were| are| been) (?:now )?(?:abandoned|given up|scrapped|off the table|out of the question|off the cards|forgotten|dropped|rejected|dismissed|discounted|ruled out|discarded|vetoed|shelved|not happening|n't happening|not needed|n't needed)\\b",
    "(?: is| 's| are) (?:off|out)(?: now| then| after all)? (?:$|, (?:it|the|i|she|too|not) )",
    // "the net's a no", "replacing it is a non starter"
    "(?: is| 's)(?: just| now)? (?:a (?:definite |firm |hard )?(?:no|no go|nogo|no no|non starter|nonstarter)|not on|n't on|no good)(?: now| then| after all)? (?:$|,|so |i )",
    // "replacing's too much", "a new piece would be overkill"
    "(?: is| 's| are|'d be| would be| feels| seems)(?: just| far| way| a bit| probably| really)* (?:too (?:much|fiddly|risky|drastic|fussy|heavy|harsh|far)(?: (?:work|trouble|bother))?|overkill|not worth (?:it|the \\w+)|n't worth (?:it|the \\w+)|more trouble than .*) (?:$|,|so )",
  ].join('|'),
);

const IS_OUT =
  /(?: is| 's| are|'s|'re) (?:all |both )?(?:off|out)\b(?! of the question| the (?:table|cards|menu))/;
const OF_THE_IDEA =
  /\b(?:idea|plan|option|notion|scheme|taking|removing|unpicking|pulling|cutting|n't|not)\b/;

/** "no silk", "so no support there", "forget the darning", "not the patch": what stands behind is given up. */
const GIVEN_UP = /^(no|not|forget|scrap|drop|skip|cancel|ditch|bin|nix)$/;

/** The words of a clause that are said to be given up. */
function givenUp(state: ReaderState, v: ClauseView, words: string): Item[] {
  const { items } = v;
  if (IS_OFF.test(words)) return items;
  // "the crepeline idea is off, and so is a new block"
  if (/^ (?:and )?(?:so|neither|nor)(?: is| 's| are) /.test(words)) {
    const last = state.drafts.at(-1);
    return last && isTreatment(last) && last.entry.state === 'dropped' && last.sentence === v.sentence
      ? items
      : [];
  }
  const k = items.findIndex((x) => GIVEN_UP.test(x.w));
  if (k < 0 || items.slice(0, k).some((x) => /^(do|did|n't|never|i)$/.test(x.w))) return [];
  const end = items.findIndex((x, m) => m > k && (x.token.kind === 'mark' || /^(on|in|for|at)$/.test(x.w)));
  return items.slice(k + 1, Math.min(end < 0 ? items.length : end, k + 6));
}

/** "will net both, forget the patches": where the way stood open among the places just told of, else where it last did. */
export function givenUpAt(state: ReaderState, open: { places: string[] }[]): string[] {
  const told = state.drafts.findLast(isTreatment)?.entry.places ?? [];
  const here = open.filter((o) => o.places.every((p) => told.includes(p))).flatMap((o) => o.places);
  return here.length ? here : [...open.at(-1)!.places];
}

/** One of the ways that stood open is given up. */
export function dropIdea(state: ReaderState, v: ClauseView, words: string): void {
  const plans = state.memory.plans ?? [];
  if (!state.memory.open.length && !plans.length) return;
  const open = openNamed(state, givenUp(state, v, words), plans);
  const made = open && state.drafts.findLast(isTreatment);
  // "the ties have to come out of row one", then "those ties are out": done as it was meant to be, and not given up
  if (open?.action === 'remove' && IS_OUT.test(words) && !OF_THE_IDEA.test(words)) {
    if (made?.entry.action === 'remove' && made.placed !== 'said' && !made.entry.places?.length)
      made.entry.places = [...open.places];
    return;
  }
  if (made && made.entry.action === open.action && made.clause === v.index && made.placed !== 'said') {
    made.entry.state = 'dropped';
    made.entry.places = [...open.places];
    chooseBehind(state, v, open);
    return;
  }
  if (!open || state.drafts.some((d) => isTreatment(d) && d.entry.action === open.action)) return;
  const same = state.memory.open.filter((o) => o.action === open.action);
  const places = same.length > 1 ? givenUpAt(state, same) : open.places;
  state.drafts.push(verdict(v, { ...open, places }, 'dropped', 'treatment.idea-dropped'));
  chooseBehind(state, v, open);
}

/** "replacing's too much, net then": the other way, named behind the comma. */
function chooseBehind(state: ReaderState, v: ClauseView, dropped: Open): void {
  const comma = v.items.findLastIndex((x) => x.w === ',');
  const behind = comma > 0 ? v.items.slice(comma + 1) : [];
  if (!behind.length || !behind.every((x) => CHOICE.test(x.w) || x.material || x.action)) return;
  const open = openNamed(state, behind);
  if (open && open.action !== dropped.action)
    state.drafts.push(verdict(v, open, 'planned', 'treatment.chosen'));
}

/** "I'll go with the second of those ways": one of the ways that stand open at the place last spoken of, by its order. */
function nthIdea(state: ReaderState, items: Item[]): Memory['open'][number] | undefined {
  const said = NTH_WAY.exec(` ${items.map((x) => x.w).join(' ')} `);
  const last = state.memory.open.findLast((o) => !o.passed);
  if (!said || !last) return undefined;
  const ways = state.memory.open.filter((o) => !o.passed && o.places.join() === last.places.join());
  const nth = said[1]!;
  if (ways.length < 2 || (/^(former|latter|other)$/.test(nth) && ways.length !== 2)) return undefined;
  return nth === 'last' || nth === 'latter' ? ways.at(-1) : ways[NTH[nth] ?? -1];
}
const NTH_WAY =
  / (?:(?:i|we) (?:'ll|will|'m going to) (?:go|do|try|choose|take)|go(?:ing|ne)?|went|settled|settling|plump(?:ing|ed)?|opt(?:ing|ed)?|it 's|it 'll be|decided on|i 've gone) (?:with |for |on )?(?:the )?(first|second|third|last|former|latter)(?: (?:of (?:those|them|the two|the three|these)|one|way|ways|idea|option|plan|choice))* (?:then |i think |[.!] )*$/;
const NTH: Record<string, number> = { first: 0, former: 0, second: 1, third: 2 };

/** "net.", "patch wins", "the darn, then": one of the ways that stood open, and no word besides. */
export function chooseIdea(state: ReaderState, v: ClauseView, placed?: string[]): void {
  const { items } = v;
  const nth = nthIdea(state, items);
  if (nth) {
    state.drafts.push(verdict(v, nth, 'planned', 'treatment.chosen'));
    return;
  }
  // "tulle and not the patch": what is not to be stands behind
  const against = items.findIndex((x) => /^(not|no|forget|instead of|rather than|instead|rather)$/.test(x.w));
  const told = against > 0 ? withoutMark(items.slice(0, against)) : items;
  const words = ` ${told.map((x) => x.w).join(' ')} `;
  const alone =
    state.drafts.every((d) => isTreatment(d) && d.entry.state === 'dropped') &&
    state.clauses.reduce((n, c) => n + c.items.length, 0) <= 8 + 6 * state.drafts.length;
  const headed = state.topic?.sentence === v.sentence && !state.clauses[v.index]!.asked;
  if (!alone && !headed && against < 1 && !CHOSEN.test(words)) return;
  if (
    !told.every(
      (x) =>
        CHOICE.test(x.w) ||
        x.material === 'net' ||
        x.material === 'interfacing' ||
        x.action ||
        x.place ||
        // "calico it is", "the gingham it is", where one way that stood open there takes cloth
        (x.material === 'fabric' && (!x.fabric || isTaken(told, x)) && takesCloth(state.memory.open) === 1),
    )
  )
    return;
  const open = openNamed(
    state,
    told.filter((x) => !x.place),
  );
  if (!open || state.drafts.some((d) => isTreatment(d) && d.entry.action === open.action)) return;
  if (placed?.length && !placed.every((p) => open.places.includes(p))) return;
  state.drafts.push(verdict(v, open, 'planned', 'treatment.chosen'));
}
/** "the gingham it is", "going with the gingham", and not "gingham: net it is", where the cloth tells which blocks. */
function isTaken(told: Item[], cloth: Item): boolean {
  const k = told.indexOf(cloth);
  return (
    /^ (?:it |wins |won |then |$)/.test(wordsBetween(told, k + 1, k + 2)) ||
    / (?:with|for|be|is|'s|on) (?:the )?$/.test(wordsBetween(told, Math.max(0, k - 2), k))
  );
}

const withoutMark = (items: Item[]): Item[] => (items.at(-1)?.w === ',' ? items.slice(0, -1) : items);

/** How many of the ways that stand open at the place last weighed take cloth. */
function takesCloth(open: Memory['open']): number {
  const last = open.findLast((o) => !o.passed)?.places.join();
  return open.filter(
    (o) => !o.passed && o.places.join() === last && /^(stabilize|patch|replace)$/.test(o.action),
  ).length;
}
const CHOSEN =
  / (?:it is|it 's|wins|won|then|the one|going (?:with|for)|go (?:with|for)|settled on|decided on|it 'll be|going to be) /;

const CHOICE =
  /^(the|a|an|just|only|simply|right|ok|okay|so|then|it|is|'s|be|wins|won|it'll|'ll|will|shall|yes|yeah|well|go|going|for|with|i|'ve|have|decided|definitely|settled|settling|chosen|chose|choosing|final|answer|my|new|fresh|and|--|-|now|patch|darn|support|replacement|piece|to|going to|gonna|on|upon|think|i think|reckon|'m|am|this|time|after|all|in|end|that|that's|one|bit|block|piece|square|the one|patching|darning|netting)$/;

/** "so that's off", "but I shan't now", "and I have decided against it": what was just told is not to be. */
const AGAINST = new RegExp(
  [
    "^ (?:so |and |but |then |now )*(?:that|it|this|which)(?: is|'s| 's| 's been| has been| was| got) (?:now )?(?:all )?(?:off|out|called off|cancelled|not happening|off the table|out of the question|scrapped|dropped|no go|abandoned)(?: now| then)? $",
    ' (?:decided|voted|come down|came down) against (?:it|that|the idea|doing (?:it|that|so))?',
    ' (?:thought better of|gone off|went off|given up on|gave up on|dropped|scrapped|abandoned|ditched|shelved) (?:it|that|the idea|the plan|the whole idea)\\b',
    // "but no not with that blue", "not now"
    '^ (?:but |well |so |oh )*(?:no (?:, )?)?not (?:now|any ?more|with|after|when|while)\\b(?! done| finished| sure)',
    // "not risking it", "won't chance it"
    " (?:not|n't)(?: going to| gonna| worth)? (?:risk|risking|chance|chancing)(?: it| that| this| the risk)? $",
    // "scrap that plan"
    ' (?:scrap|drop|forget|ditch|cancel|bin|abandon|shelve|never mind) (?:all )?(?:that|the|this|my) (?:whole |last )?(?:plan|idea|thought|notion)\\b',
    ' changed my mind (?:about (?:it|that) )?$',
    " (?:i|we)(?: now)?(?: 'm| am| 'll| will)?(?: just| simply| really)?(?: sha n't| wo n't| will not| shall not| 'm not| am not| 're not| is n't| ca n't)(?: be| do| bother| need to| going to)?(?: it| that| bothering| any more)?(?: now| after all| then| any more| anymore)? $",
  ].join('|'),
);

/** A plan or a thought told before in the same note, or in the last one, is called off by a clause that only points at it. */
export function callOff(state: ReaderState, v: ClauseView, words: string): void {
  if (!AGAINST.test(words)) return;
  const last = state.drafts.at(-1);
  if (last && isTreatment(last)) {
    if (last.sentence < v.sentence - 1 || /^(done|dropped)$/.test(last.entry.state)) return;
    last.entry.state = 'dropped';
    const { from, to } = {
      from: v.items[0]!.token.from,
      to: v.items.at(-1)!.end ?? v.items.at(-1)!.token.to,
    };
    last.origins['state'] = { rule: 'state.called-off', how: 'said', from, to };
    return;
  }
  const before = state.memory.last?.entries.findLast(({ entry }) => entry.kind === 'treatment')?.entry;
  if (state.drafts.length || before?.kind !== 'treatment' || !before.action) return;
  if (before.state !== 'planned' && before.state !== 'considering') return;
  state.drafts.push(
    verdict(
      v,
      {
        action: before.action,
        places: before.places ?? [],
        ...(before.object ? { object: before.object } : {}),
      },
      'dropped',
      'treatment.called-off',
    ),
  );
}
