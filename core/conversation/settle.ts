import type { Entry } from '../../shared/entry.ts';
import type { Draft } from '../rules/draft.ts';
import type { Item } from '../rules/item.ts';
import { joinAmounts } from '../rules/materials/join-amounts.ts';
import { joinWants } from '../rules/materials/join-wants.ts';
import { splitBlock, unique } from '../rules/places/grid.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { tellStuffsApart } from '../rules/treatments/other-stuff.ts';
import { giveStitchOfBoth } from '../rules/treatments/stitch-of-both.ts';
import { wordsBetween } from '../rules/words-between.ts';
import { doubtPlaces, nameDeeds, openAmounts } from './doubts.ts';
import { withoutKnown } from './known-already.ts';
import { oneMoreLike } from './one-more.ts';

/** Two drafts that say the same of different places are one entry with all of them. */
function sameButPlaces(a: Entry, b: Entry): boolean {
  if (a.kind === 'condition' ? b.kind !== a.kind || a.finding !== b.finding : a.kind !== 'treatment')
    return false;
  // "the twill is tender, so's the sashing": the cloth is told of the one alone
  if (
    a.kind === 'condition' &&
    b.kind === 'condition' &&
    (a.fabric === undefined) !== (b.fabric === undefined) &&
    [a, b].some((x) => x.places?.length && !x.places.some((p) => splitBlock(p)))
  )
    return false;
  // "the plaid is sound and so is the flannel": each cloth with its own
  if (a.kind === 'condition' && b.kind === 'condition' && a.fabric && b.fabric && a.fabric !== b.fabric)
    return false;
  if (a.kind === 'treatment' && (b.kind !== a.kind || a.action !== b.action || a.state !== b.state))
    return false;
  const strip = (e: Entry): string => {
    const { places: _places, fabric: _fabric, ...rest } = e as Record<string, unknown>;
    return JSON.stringify(Object.entries(rest).sort());
  };
  return strip(a) === strip(b);
}

/** The drafts of a note in their final form: doubles merged, the implied task of work filled in, order as said. */
export function settle(state: ReaderState, _items: Item[]): Draft[] {
  const out: Draft[] = [];
  withoutKnown(state);
  joinAmounts(state);
  joinWants(state);
  oneMoreLike(state);
  matterNotWay(state);
  leftAfterAll(state);
  givenUpAfterAll(state);
  doubtPlaces(state);
  nameDeeds(state);
  openAmounts(state);
  tellStuffsApart(state);
  giveStitchOfBoth(state);
  for (const draft of state.drafts) {
    // "patch it with the muslin or the lawn": two ways of one deed
    // "2-4 is torn and there's another gone somewhere": found twice, the second nobody knows where
    const apart =
      draft.origins['action']?.rule === 'treatment.other-stuff' ||
      (draft.origins['finding']?.rule === 'condition.one-more' && draft.placed === 'none');
    const twin = apart
      ? undefined
      : out.find((d) => sameButPlaces(d.entry, draft.entry) && sameCleaning(state, d, draft));
    if (twin && 'places' in draft.entry && 'places' in twin.entry) {
      const fresh = draft.entry.places ?? [];
      const own = twin.entry.places ?? [];
      // "darned 2-2. 3-3 has a hole, so I darned it as well": what was found in between is where it was done
      const foundThere =
        !fresh.some((p) => own.includes(p)) &&
        state.drafts.some(
          ({ entry: e, placed, sentence, clause }) =>
            e.kind === 'condition' &&
            placed === 'said' &&
            sentence === draft.sentence &&
            clause <= draft.clause &&
            fresh.every((p) => e.places?.includes(p)),
        );
      if (
        !fresh.length ||
        !own.length ||
        (draft.placed === 'carried' && !foundThere && !isHeadedThere(state, draft, fresh))
      ) {
        if (fresh.length && !own.length) twin.entry.places = fresh;
        continue;
      }
      twin.entry.places = unique([...own, ...fresh]);
      continue;
    }
    if (
      out.some(
        (d) =>
          d.entry.kind === draft.entry.kind &&
          draft.entry.kind !== 'material' &&
          draft.entry.kind !== 'measurement' &&
          JSON.stringify(d.entry) === JSON.stringify(draft.entry),
      )
    )
      continue;
    out.push(draft);
  }
  joinWork(out, state);
  return lengthOfBoth(out.filter((d) => !doneSince(out, d)));
}

/**
 * "Replacing 3-4. Cut it out, pieced a new one in, 40 min": begun, and done by the end of the same note. "New piece it is. Cut out and
 * pieced in calico": chosen, and done at once.
 */
const doneSince = (drafts: Draft[], { entry: e, clause }: Draft): boolean =>
  e.kind === 'treatment' &&
  (e.state === 'doing' || e.state === 'planned') &&
  Boolean(e.places?.length) &&
  drafts.some(
    (d) =>
      d.entry.kind === 'treatment' &&
      d.entry.state === 'done' &&
      d.entry.action === e.action &&
      d.clause > clause &&
      d.entry.places?.join(' ') === e.places!.join(' '),
  );

/** "front vacuumed, border spot cleaned, 50 min all told": one length of two cleanings is time at work. */
function lengthOfBoth(drafts: Draft[]): Draft[] {
  const timed = drafts.filter(
    ({ entry: e }) => e.kind === 'treatment' && e.action === 'clean' && e.minutes !== undefined,
  );
  const [first, second] = timed;
  const at = first?.origins['minutes']?.from;
  if (timed.length !== 2 || at === undefined || at !== second!.origins['minutes']?.from) return drafts;
  const told = first!.entry.kind === 'treatment' ? first!.entry.minutes : undefined;
  for (const d of timed) {
    const { minutes: _both, ...rest } = d.entry as typeof d.entry & { minutes?: number };
    d.entry = rest as Entry;
  }
  const work: Draft = {
    ...first!,
    entry: { kind: 'work', task: 'cleaning', minutes: told! },
    origins: { entry: first!.origins['minutes']!, minutes: first!.origins['minutes']! },
    placed: 'unneeded',
  };
  return [...drafts, work];
}

/** "vacuumed the front and spot cleaned the border": the going over of the whole and the work at one spot are two treatments. */
function sameCleaning(state: ReaderState, a: Draft, b: Draft): boolean {
  if (a.entry.kind !== 'treatment' || a.entry.action !== 'clean') return true;
  const cleaned = ({ origins }: Draft): string => {
    const at = origins['action'];
    return at
      ? state.tokens
          .filter((t) => t.from >= at.from && t.to <= at.to)
          .map((t) => t.w)
          .join(' ')
      : '';
  };
  const [first, second] = [cleaned(a), cleaned(b)];
  return !((AT_SPOT.test(first) && ALL_OVER.test(second)) || (ALL_OVER.test(first) && AT_SPOT.test(second)));
}
const AT_SPOT = /\b(?:spot|dab|spong|blot)/;
const ALL_OVER = /\b(?:vac|hoover|brush|dust|swe)/;

/** "2-1: patch. 2-2: patch.": told under a place of its own. */
const isHeadedThere = ({ clauses }: ReaderState, draft: Draft, places: string[]): boolean => {
  const head = clauses[draft.clause - 1];
  return (
    /^(:|-|--)$/.test(clauses[draft.clause]?.joint ?? '') &&
    head?.sentence === draft.sentence &&
    head.items.some((x) => x.place && places.every((p) => x.place!.places.includes(p)))
  );
};

/** "2-2 I'll patch, no, actually I'm leaving it": what is said last of a place wins. */
function leftAfterAll(state: ReaderState): void {
  const left = state.drafts.findLast(({ entry: e }) => e.kind === 'treatment' && e.action === 'leave');
  if (left?.entry.kind !== 'treatment' || left.entry.state !== 'done' || !left.entry.places?.length) return;
  const where = left.entry.places.join(' ');
  state.drafts = state.drafts.filter((d) => {
    const e = d.entry;
    if (e.kind !== 'treatment' || d === left || d.clause >= left.clause) return true;
    if (!/^(planned|considering)$/.test(e.state) || e.places?.join(' ') !== where) return true;
    const between = state.clauses
      .slice(d.clause, left.clause + 1)
      .map((clause) => `${clause.joint} ${clause.items.map((x) => x.w).join(' ')}`)
      .join(' ');
    return !SECOND_THOUGHT.test(between);
  });
}

/** "I'd been meaning to wash it but I won't wash it now": a plan given up in the note that tells of it stands only as given up. */
function givenUpAfterAll(state: ReaderState): void {
  const off = state.drafts.filter(({ entry: e }) => e.kind === 'treatment' && e.state === 'dropped');
  if (!off.length) return;
  state.drafts = state.drafts.filter(
    ({ entry: e, clause }) =>
      e.kind !== 'treatment' ||
      e.state !== 'planned' ||
      !off.some(
        (d) =>
          d.entry.kind === 'treatment' &&
          d.clause >= clause &&
          d.entry.action === e.action &&
          d.entry.object === e.object &&
          d.entry.places?.join(' ') === e.places?.join(' '),
      ),
  );
}

const SECOND_THOUGHT =
  /\b(?:no|wait|hang on|hold on|actually|scratch that|on second thoughts?|changed my mind)\b/;

/** A start and a stop of one note are one stretch; work without a task takes the one that the note implies, or the running one. */
function joinWork(drafts: Draft[], state: ReaderState): void {
  const work = drafts.filter((d) => d.entry.kind === 'work');
  const start = work.find((d) => d.entry.kind === 'work' && d.entry.mark === 'start' && d.entry.time);
  const stop = work.find((d) => d.entry.kind === 'work' && d.entry.mark === 'stop' && d.entry.time);
  if (
    start &&
    stop &&
    start.entry.kind === 'work' &&
    stop.entry.kind === 'work' &&
    start.entry.time! < stop.entry.time! &&
    (start.entry.task === stop.entry.task || !start.entry.task || !stop.entry.task)
  ) {
    const task = start.entry.task ?? stop.entry.task;
    start.entry = {
      kind: 'work',
      ...(task ? { task } : {}),
      start: start.entry.time!,
      end: stop.entry.time!,
    };
    drafts.splice(drafts.indexOf(stop), 1);
  }
  for (const d of drafts) {
    if (d.entry.kind !== 'work' || d.entry.task) continue;
    const implied = impliedTask(drafts, d, state);
    if (implied) {
      d.entry = { kind: 'work', task: implied, ...withoutKind(d.entry) };
      d.origins['task'] = { ...d.origins['entry']!, rule: 'work.implied-task', how: 'implied' };
    }
  }
}

const withoutKind = (e: Entry): Record<string, unknown> => {
  const { kind: _kind, ...rest } = e;
  return rest;
};

import { TASK_OF_ACTION } from '../../shared/task-of-action.ts';
import type { Task } from '../../shared/vocabulary.ts';

function impliedTask(drafts: Draft[], d: Draft, state: ReaderState): Task | undefined {
  const e = d.entry;
  if (e.kind !== 'work') return undefined;
  if (e.mark === 'stop' && state.memory.running) return state.memory.running;
  const treatments = drafts.filter(
    (x) => x.entry.kind === 'treatment' && (x.entry.state === 'done' || x.entry.state === 'doing'),
  );
  const near = treatments.filter((x) => x.sentence === d.sentence);
  // "trimmed it on Monday, and last night I bound it, eight till ten": what was told just before the time
  const told = d.origins['start'] ?? d.origins['time'];
  const before = told
    ? near.findLast(
        ({ entry: e, origins }) =>
          (origins['action'] ?? origins['entry'])!.from < told.from &&
          // tacking down what is then couched is no work of its own, nor are the pins that come out on the way
          !(
            e.kind === 'treatment' &&
            (e.action === 'baste' || (e.action === 'remove' && e.object === 'pins')) &&
            near.length > 1
          ),
      )
    : undefined;
  const pool = before
    ? [before]
    : near.length
      ? near
      : (deedBehind(treatments, d, state.tokens) ?? lastBefore(treatments, d));
  const tasks = unique(
    pool
      .map((x) =>
        x.entry.kind === 'treatment' && x.entry.action ? TASK_OF_ACTION[x.entry.action] : undefined,
      )
      .filter((t): t is Task => t !== undefined),
  );
  if (tasks.length) return tasks[0];
  // "stopped for tea", then "back on it since five to": after a break the task that ran goes on
  return state.memory.running ?? (goesOn(state, d) ? state.memory.ran : undefined);
}

/** "back at it since quarter past", "and then another stretch, half past three till quarter to five" */
function goesOn({ tokens }: ReaderState, { origins }: Draft): boolean {
  if (origins['mark']?.rule === 'work.back-at') return true;
  const at = origins['time'] ?? origins['start'] ?? origins['minutes'];
  if (!at) return false;
  const before = tokens.filter((t) => t.to <= at.from).slice(-9);
  return GOES_ON.test(wordsBetween(before));
}
const GOES_ON =
  / (?:back (?:at|to|on|into) (?:it|that|work)|at it again|(?:going|started|starting|began|off|on|it) again|another (?:stretch|session|go|spell|stint|bit|round|sitting)|a (?:second|third|further|last) (?:stretch|session|go|spell|stint|bit|sitting)|resumed|carried on|carrying on|picked (?:it|things) (?:back )?up|kept on) (?:[^.;!?]* )?$/;

/** "picked out the old stitching. 1340 to 1500, requilted that edge": a stretch at the head of its sentence is of the deed behind it. */
function deedBehind(treatments: Draft[], d: Draft, tokens: ReaderState['tokens']): Draft[] | undefined {
  const from = d.origins['start']?.from;
  const to = d.origins['end']?.to;
  if (from === undefined || to === undefined) return undefined;
  const lead = tokens.findLast((t) => t.to <= from);
  if (lead && !/^[.;!?\n]$/.test(lead.w)) return undefined;
  const stop = tokens.find((t) => t.from >= to && /^[.;!?\n]$/.test(t.w))?.from ?? Number.POSITIVE_INFINITY;
  const own = treatments.filter(({ origins }) => {
    const at = (origins['action'] ?? origins['entry'])!.from;
    return at >= to && at < stop;
  });
  return own.length ? [own[0]!] : undefined;
}

/** The deeds of the sentence that was told last before the time, where there is one: "layered it. quilted in the ditch. stopped at ten". */
function lastBefore(treatments: Draft[], { sentence }: Draft): Draft[] {
  const last = treatments.findLast((x) => x.sentence < sentence)?.sentence;
  return last === undefined ? treatments : treatments.filter((x) => x.sentence === last);
}

/** "batting: keep or replace?" is a matter to decide, and no treatment of a place beside it. */
function matterNotWay(state: ReaderState): void {
  const open = state.drafts.flatMap(({ entry: e }) =>
    e.kind === 'decision' && e.status === 'open' ? [e.about as string] : [],
  );
  // "I was thinking of quilting it by hand but it gets tied": the matter is settled, and nothing stays open beside it
  if (
    state.drafts.some(
      ({ entry: e }) =>
        e.kind === 'decision' && e.status === 'settled' && /^(tying|quilting|washing)$/.test(e.about),
    )
  )
    state.drafts = state.drafts.filter(
      ({ entry: e }) =>
        !(
          e.kind === 'treatment' &&
          e.state === 'considering' &&
          /^(tie|quilt|wash)$/.test(e.action ?? '') &&
          (e.places ?? []).every((p) => p === 'quilt')
        ),
    );
  if (!open.length) return;
  state.drafts = state.drafts.filter(
    ({ entry: e }) =>
      !(
        e.kind === 'treatment' &&
        e.state === 'considering' &&
        (e.action === 'replace' || e.action === 'leave') &&
        (e.places ?? []).every((p) => p === 'quilt' || open.includes(p))
      ),
  );
}
