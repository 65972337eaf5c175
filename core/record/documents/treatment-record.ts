import type { Block, Passage, Section } from '../document-model.ts';
import { hoursTimelineSvg } from '../figures/hours-timeline-svg.ts';
import { paragraph, passage } from '../passage.ts';
import { INTERVENTIONS, type RecordView, type TreatmentFact } from '../record-view.ts';
import { datePhrase, durationFigure, durationPhrase } from '../wording/figure-phrases.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import { placesPhrase } from '../wording/places-phrase.ts';
import { sentence } from '../wording/sentence.ts';
import {
  becausePhrase,
  deed,
  findingsAt,
  groupTreatments,
  toDoPhrase,
  wasDonePhrase,
} from '../wording/treatment-phrase.ts';
import { beforeWork, mapPassage, some } from './condition-record.ts';
import { findingSentence, groupFindings } from './findings-passages.ts';
import { identification } from './identification.ts';
import { materialRows, staysIn } from './material-rows.ts';
import type { Paper } from './paper.ts';
import { photographPassages } from './photograph-passages.ts';
import { factsOf, groupId } from './proposal.ts';
import { findAddenda, isRoutine, proposedTreatments } from './proposed-treatments.ts';

/** Every action with who did it, what was added and taken away, where the plan was left, and the end state. */
export function treatmentRecord({ view, hours }: Paper): Section[] {
  return [
    { id: 'identification', title: 'Identification', passages: [identification(view)] },
    { id: 'summary', title: 'What was done', passages: summary(view) },
    {
      id: 'final-map',
      title: 'Where it was done',
      passages: [mapPassage(view, 'now', 'The quilt after treatment')],
    },
    { id: 'not-done', title: 'Decisions not to act', passages: notDone(view) },
    { id: 'departures', title: 'Departures from the proposal', passages: departures(view) },
    { id: 'new-findings', title: 'Found during the work', passages: newFindings(view) },
    { id: 'materials-added', title: 'Materials added', passages: some(materialsAdded(view)) },
    { id: 'materials-removed', title: 'Taken out', passages: takenOut(view) },
    { id: 'hours', title: 'Hours', passages: hours ? hoursPassages(view, hours) : [] },
    { id: 'log', title: 'Log of the work', passages: dailyLog(view) },
    { id: 'images', title: 'Photographs', passages: photographPassages(view, ['before', 'during', 'after']) },
    { id: 'final-state', title: 'State at the end', passages: [finalState(view)] },
    { id: 'keeping', title: 'Keeping this record', passages: [keeping()] },
  ].filter((section) => section.passages.length > 0);
}

function summary(view: RecordView): Passage[] {
  const done = view.treatments.filter(
    (fact) => fact.state === 'done' && INTERVENTIONS.has(fact.action) && fact.object !== 'pins',
  );
  if (!done.length) {
    return [
      passage(
        'nothing-done',
        'nothing',
        [],
        [paragraph('No treatment had been recorded when this was written.')],
      ),
    ];
  }
  return groupTreatments(done, findingsAt(view.findings), false).map((group) => {
    const reasons = [...new Set(group.from.flatMap((fact) => fact.reason ?? []))];
    const why = reasons.length === 1 ? `, ${becausePhrase(reasons[0]!)}` : '';
    return passage(groupId('done', group), factsOf(group, reasons), group.from, [
      paragraph(sentence(`${wasDonePhrase(group, view)}${why}`)),
    ]);
  });
}

function notDone(view: RecordView): Passage[] {
  const found = findingsAt(view.findings);
  const left = groupTreatments(
    view.treatments.filter(
      (fact) => fact.action === 'leave' && fact.state !== 'dropped' && fact.state !== 'considering',
    ),
    found,
    true,
  ).map((group) =>
    passage(groupId('left', group), factsOf(group), group.from, [
      paragraph(
        sentence(
          `left as found: ${placesPhrase(group.places, view.grid) || 'places not noted'}${group.reason ? `, ${becausePhrase(group.reason)}` : '; no reason noted'}`,
        ),
      ),
    ]),
  );
  const dropped = groupTreatments(
    view.treatments.filter((fact) => fact.state === 'dropped'),
    found,
    true,
  ).map((group) =>
    passage(groupId('dropped', group), factsOf(group), group.from, [
      paragraph(
        sentence(
          `decided against: to ${toDoPhrase(group, view)}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`,
        ),
      ),
    ]),
  );
  return [...left, ...dropped];
}

function departures(view: RecordView): Passage[] {
  const out: Passage[] = [];
  const doneAt = new Set<string>();
  for (const fact of view.treatments) {
    if (fact.state === 'done')
      for (const place of fact.places.length ? fact.places : ['quilt']) doneAt.add(`${fact.action} ${place}`);
  }
  const found = findingsAt(view.findings);
  const undone = proposedTreatments(view)
    .filter((fact) => fact.state === 'planned' && fact.action !== 'leave')
    .flatMap((fact) => {
      const whole = doneAt.has(`${fact.action} quilt`);
      const places = (fact.places.length ? fact.places : ['quilt']).filter(
        (place) => !whole && !doneAt.has(`${fact.action} ${place}`) && !doneElsewhere(fact, place, doneAt),
      );
      return places.length ? [{ ...fact, places }] : [];
    });
  for (const group of groupTreatments(undone, found, false)) {
    out.push(
      passage(groupId('not-done', group), factsOf(group), group.from, [
        paragraph(sentence(`proposed and not done by the end of this log: to ${toDoPhrase(group, view)}`)),
      ]),
    );
  }
  findAddenda(view).forEach((addendum, i) => {
    const items = groupTreatments(addendum.added, found, true).map((group) =>
      sentence(`to ${toDoPhrase(group, view)}${group.reason ? `, ${becausePhrase(group.reason)}` : ''}`),
    );
    if (!items.length) return;
    const status = addendum.agreed
      ? `agreed ${addendum.agreed.how === 'word' ? 'by word' : 'in writing'} on ${datePhrase(addendum.agreed.date, view.spelling)}`
      : 'not yet agreed again with the owner';
    out.push(
      passage(`departure-${i + 1}`, [items, status], addendum.added, [
        paragraph(`Added to the proposal (${status}):`),
        { type: 'list', items },
      ]),
    );
  });
  return out;
}

/** "Tie the quilt" is met by ties in its rows: whole-piece work that was logged in parts. */
function doneElsewhere(fact: TreatmentFact, place: string, doneAt: ReadonlySet<string>): boolean {
  if (place !== 'quilt') return false;
  for (const key of doneAt) if (key.startsWith(`${fact.action} `)) return true;
  return false;
}

function newFindings(view: RecordView): Passage[] {
  const before = new Set(beforeWork(view));
  return groupFindings(view.findings.filter((fact) => !before.has(fact)))
    .filter((group) => group.finding !== 'sound')
    .map((group) => {
      const dates = [...new Set(group.from.map((fact) => datePhrase(fact.date, view.spelling)))];
      return passage(
        `new-finding.${group.finding}`,
        [group.finding, [...group.places].sort(), group.fabrics, dates],
        group.from,
        [
          paragraph(
            `${findingSentence(group, view).replace(/\.$/, '')}, noted on ${dates.length > 3 ? `${dates.length} days between ${dates[0]} and ${dates.at(-1)}` : listPhrase(dates, view.spelling)}.`,
          ),
        ],
      );
    });
}

function materialsAdded(view: RecordView): Passage | undefined {
  const used = view.materials.filter((fact) => fact.use === 'used' && staysIn(fact));
  const rows = materialRows(used, view).map(([name, amount]) => [name!, amount || 'not noted']);
  if (!rows.length) return undefined;
  return passage('materials-added', rows, used, [
    {
      type: 'table',
      columns: [
        { title: 'Material', share: 0.62 },
        { title: 'Amount noted', share: 0.38 },
      ],
      rows,
    },
  ]);
}

function takenOut(view: RecordView): Passage[] {
  const removed = view.treatments.filter(
    (fact) => fact.state === 'done' && fact.action === 'remove' && fact.object !== 'pins',
  );
  const told = view.quilt.takenOut;
  if (!removed.length && told)
    return [passage('removed-told', told, [], [paragraph(sentence(told.replaceAll('\n', ' ')))])];
  return groupTreatments(removed, new Map(), false).map((group) => {
    const dates = [...new Set(group.from.map((fact) => fact.date))];
    return passage(groupId('removed', group), factsOf(group, dates), group.from, [
      paragraph(
        sentence(
          `${deed(group, view).what}, on ${listPhrase(
            dates.map((date) => datePhrase(date, view.spelling)),
            view.spelling,
          )}`,
        ),
      ),
    ]);
  });
}

/** A table by task, and the days as a drawing. */
export function hoursPassages(view: RecordView, hours: NonNullable<Paper['hours']>): Passage[] {
  if (hours.totalMin <= 0) return [];
  const rows = [...hours.byTask]
    .filter((one) => one.minutes > 0)
    .sort((a, b) => b.minutes - a.minutes)
    .map((one) => {
      const name = one.task ? view.terms.task(one.task) : 'other, not named';
      return [name.charAt(0).toUpperCase() + name.slice(1), durationFigure(one.minutes)];
    });
  const days = hours.byDay.filter((day) => day.minutes > 0).length;
  const figure = hoursTimelineSvg(view, hours, `${view.quilt.name}: hours worked`);
  const table: Block = {
    type: 'table',
    columns: [
      { title: 'Work', share: 0.6 },
      { title: 'Time', share: 0.4, align: 'right' },
    ],
    rows: [...rows, ['Total', durationFigure(hours.totalMin)]],
    sum: true,
  };
  return [
    passage(
      'hours-total',
      [hours.totalMin, days],
      [],
      [
        paragraph(
          sentence(`${durationPhrase(hours.totalMin)} of work on ${days} ${days === 1 ? 'day' : 'days'}`),
        ),
      ],
    ),
    passage('hours-by-task', rows, [], [table]),
    passage(
      'timeline',
      figure.svg,
      [],
      [
        {
          type: 'figure',
          svg: figure.svg,
          width: figure.width,
          height: figure.height,
          alt: figure.alt,
          caption: 'Days down, hours across; a dashed bar has a length but no clock time',
        },
      ],
    ),
  ];
}

/** One passage a day: time, place, what was done, by whom. */
function dailyLog(view: RecordView): Passage[] {
  const by = view.quilt.mender || 'the mender';
  const days = new Map<string, TreatmentFact[]>();
  for (const fact of view.treatments) {
    if (fact.state === 'considering' || fact.state === 'planned') continue;
    const day = days.get(fact.date);
    if (day) day.push(fact);
    else days.set(fact.date, [fact]);
  }
  return [...days]
    .sort((a, b) => a[0].localeCompare(b[0]))
    .map(([date, facts]) => {
      const rows = facts.map((fact) => [
        fact.time,
        capital(fact.places.length ? placesPhrase(fact.places, view.grid) : 'not noted'),
        logLine(fact, view),
        by,
      ]);
      return passage(`log.${date}`, rows, facts, [
        paragraph(datePhrase(date, view.spelling, true)),
        {
          type: 'table',
          columns: [
            { title: 'Noted', share: 0.09 },
            { title: 'Place', share: 0.33 },
            { title: 'What was done', share: 0.4 },
            { title: 'By', share: 0.18 },
          ],
          rows,
        },
      ]);
    });
}

function logLine(fact: TreatmentFact, view: RecordView): string {
  const { terms } = view;
  const lead = {
    done: '',
    doing: 'In hand: ',
    dropped: 'Decided against: ',
    planned: 'Planned: ',
    considering: 'Weighed: ',
  }[fact.state];
  const what =
    fact.action === 'remove' && fact.object
      ? `${terms.object(fact.object, fact.places.length > 1).replace(/^the /, '')} ${fact.state === 'done' ? terms.did('remove') : terms.plan('remove')}`
      : fact.state === 'done'
        ? terms.did(fact.action)
        : fact.state === 'doing'
          ? terms.doing(fact.action)
          : terms.plan(fact.action);
  const details = [
    fact.stitch ? terms.stitch(fact.stitch) : '',
    fact.fabric ? `with ${fact.fabric}` : '',
    fact.minutes ? durationPhrase(fact.minutes) : '',
  ].filter(Boolean);
  const reason = fact.reason ? `. ${sentence(becausePhrase(fact.reason))}` : '';
  return `${lead}${lead ? what : capital(what)}${details.length ? `, ${details.join(', ')}` : ''}${reason}`;
}

function finalState(view: RecordView): Passage {
  const open = view.treatments.filter(
    (fact) => (fact.state === 'planned' || fact.state === 'doing') && !isRoutine(fact),
  );
  const doneAt = new Set(
    view.treatments
      .filter((fact) => fact.state === 'done')
      .flatMap((fact) =>
        (fact.places.length ? fact.places : ['quilt']).map((place) => `${fact.action} ${place}`),
      ),
  );
  const actionsDone = new Set(
    view.treatments.filter((fact) => fact.state === 'done').map((fact) => fact.action),
  );
  const left = open.filter((fact) =>
    fact.places.length
      ? fact.places.some(
          (place) =>
            !doneAt.has(`${fact.action} ${place}`) &&
            !doneAt.has(`${fact.action} quilt`) &&
            !(place === 'quilt' && actionsDone.has(fact.action)),
        )
      : !actionsDone.has(fact.action),
  );
  const bound = view.treatments.findLast((fact) => fact.state === 'done' && INTERVENTIONS.has(fact.action));
  const said = [
    bound
      ? sentence(`the last treatment was noted on ${datePhrase(bound.date, view.spelling)}`)
      : 'No treatment is noted.',
    left.length
      ? sentence(
          `still to do when this was written: ${listPhrase(
            groupTreatments(left, new Map(), false).map((group) => toDoPhrase(group, view, 4)),
            view.spelling,
          )}`,
        )
      : bound
        ? 'Nothing that was planned is open.'
        : '',
  ].filter(Boolean);
  return passage('final-state', said, left, [paragraph(said.join(' '))]);
}

/** AIC Commentary 28 (two copies, lasting media; electronic alone is not enough), as excerpted. */
function keeping(): Passage {
  const text =
    'Two copies of this record are kept, one by the owner and one by the mender. Print both on lasting paper: a file alone is not enough, because the means of reading it may be gone before the quilt is.';
  return passage('keeping', text, [], [paragraph(text)]);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
