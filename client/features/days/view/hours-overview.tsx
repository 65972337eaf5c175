import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { billedMinutes } from '../../../../core/hours/billed-minutes.ts';
import type { HoursProblem, Overlap, Span } from '../../../../core/hours/hours.ts';
import { ZoneClock } from '../../../../core/hours/zone-clock.ts';
import type { Log } from '../../../../core/log/log.ts';
import type { Task } from '../../../../shared/vocabulary.ts';
import { type DayBar, HOW_WORDS, HoursTimeline } from '../../../charts/hours-timeline.tsx';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { dyeOf, fillOf, TaskPatterns } from '../../../charts/task-pattern.tsx';
import { dateWords, spanWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { onePlaceWords } from '../../../words/place-words.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { pageAddress } from '../../shell/state/route.ts';
import { useWidth } from '../../shell/state/use-width.ts';
import { LateDetails } from '../../shell/view/late-details.tsx';
import { TableWrap } from '../../shell/view/table-wrap.tsx';
import { datesOf } from '../state/day-page.ts';
import { hoursOf } from '../state/hours-of-log.ts';
import { overlapWords } from '../state/overlap-words.ts';
import './days.css';
import { SpanEditor } from './span-editor.tsx';

const SHOWN_DAYS = 21;
const STEP_MIN = 5;

/** The hours at a glance: how many, of what, when; each stretch can be moved, cut and joined. */
export function HoursOverview(props: { log: Log }): JSX.Element {
  const { log } = props;
  const idleMin = (machineSettings.value ?? UNTIL_KNOWN).idleMin;
  const hours = hoursOf(log, idleMin);
  const say = tradeLabels(log.quilt.spelling);
  const [box, width] = useWidth<HTMLDivElement>(900);
  const [picked, setPicked] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  /** Why a drag went no further. */
  const [held, setHeld] = useState('');
  const [draft, setDraft] = useState<{ spanId: string; from: number; to: number } | null>(null);
  const dates = hours.byDay.map((day) => day.date);
  const shown = all ? dates : dates.slice(-SHOWN_DAYS);
  const quietDays = datesOf(log).filter((date) => !dates.includes(date));
  const span = hours.spans.find((one) => one.id === picked);
  const editor = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (picked) editor.current?.scrollIntoView({ block: 'nearest' });
  }, [picked]);
  const most = Math.max(1, ...hours.byTask.map((one) => one.minutes));

  const notBilled = log.quilt.notBilled ?? [];
  const billed = billedMinutes(hours, notBilled);
  const charge = (task: Task, isCharged: boolean) =>
    changeLog(
      {
        type: 'change-quilt',
        changes: { notBilled: isCharged ? notBilled.filter((one) => one !== task) : [...notBilled, task] },
      },
      isCharged ? `${say.task(task)}: charged` : `${say.task(task)}: not charged`,
    );

  const setSpan = (one: Span, start: string, end: string, words: string) =>
    changeLog(
      {
        type: 'set-span',
        spanId: one.id,
        start,
        end,
        ...(one.task ? { task: one.task } : {}),
        entryIds: one.entryIds,
      },
      words,
    );

  const nudge = (event: KeyboardEvent, one: Span) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      setPicked(one.id);
      return;
    }
    if (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight') return;
    event.preventDefault();
    const by = (event.key === 'ArrowLeft' ? -1 : 1) * STEP_MIN;
    const clock = new ZoneClock(log.quilt.zone);
    const start = event.shiftKey ? one.start : clock.localOf(one.startMin + by);
    const end = clock.localOf(one.endMin + by);
    if (start >= end) return;
    void setSpan(
      one,
      start,
      end,
      event.shiftKey ? `Now ends at ${end.slice(11)}` : `Moved to ${start.slice(11)}`,
    );
  };

  /** Near an end of the bar the pointer moves that end, elsewhere the whole; never past midnight. */
  const drag = (event: PointerEvent, bar: DayBar, minutesAPixel: number) => {
    if (event.button !== 0) return;
    setHeld('');
    if (bar.span.parts.length !== 1 || !bar.first || !bar.last) {
      const refuse = (next: PointerEvent) => {
        if (Math.abs(next.clientX - event.clientX) < 8) return;
        setHeld(
          bar.first && bar.last
            ? 'A stretch with a gap in it is not dragged. Touch it, and give its times.'
            : 'A stretch over midnight is not dragged. Touch it, and give its day and times.',
        );
        done();
      };
      const done = () => {
        removeEventListener('pointermove', refuse);
        removeEventListener('pointerup', done);
        removeEventListener('pointercancel', done);
      };
      addEventListener('pointermove', refuse);
      addEventListener('pointerup', done);
      addEventListener('pointercancel', done);
      return;
    }
    const bars = event.currentTarget as SVGGElement;
    const rect = bars.getBoundingClientRect();
    const grip = Math.min(14, rect.width / 4);
    const which =
      event.clientX - rect.left < grip ? 'from' : rect.right - event.clientX < grip ? 'to' : 'both';
    const x0 = event.clientX;
    let now = { spanId: bar.span.id, from: bar.from, to: bar.to };
    const move = (next: PointerEvent) => {
      const by = Math.round(((next.clientX - x0) * minutesAPixel) / STEP_MIN) * STEP_MIN;
      const from = which === 'to' ? bar.from : bar.from + by;
      const to = which === 'from' ? bar.to : bar.to + by;
      if (from < 0 || to > 1439) {
        setHeld(
          'Held at midnight: a stretch is dragged within its day. To move it to another day, touch it and give the day.',
        );
        return;
      }
      if (to - from < STEP_MIN) return;
      setHeld('');
      now = { spanId: bar.span.id, from, to };
      setDraft(now);
    };
    const up = () => {
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', up);
      removeEventListener('pointercancel', up);
      setDraft(null);
      if (now.from === bar.from && now.to === bar.to) return;
      const at = (minute: number) =>
        `${bar.date}T${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      void setSpan(
        bar.span,
        at(now.from),
        at(now.to),
        `Now ${at(now.from).slice(11)} to ${at(now.to).slice(11)}`,
      );
    };
    addEventListener('pointermove', move);
    addEventListener('pointerup', up);
    addEventListener('pointercancel', up);
  };

  return (
    <div class="days-page">
      <header class="page-head">
        <h1>Days and hours</h1>
        <button type="button" class="no-print" onClick={() => window.print()}>
          Print
        </button>
      </header>
      {hours.spans.length === 0 ? (
        <p>
          No hours yet. Say “starting on the mending” and “stopping now”, or “from nine to quarter to one with
          half an hour off”. Where nothing is said, hours are inferred from the notes themselves, and marked
          so.
        </p>
      ) : (
        <>
          <section class="sums" aria-label="Hours in all">
            <p class="grand">
              {spanWords(hours.totalMin)}
              <span>
                worked on {hours.byDay.length} {hours.byDay.length === 1 ? 'day' : 'days'}
                {hours.inferredMin ? `; ${spanWords(hours.inferredMin)} of it inferred from the notes` : ''}
                {billed < hours.totalMin ? `; ${spanWords(billed)} of it charged` : ''}
              </span>
            </p>
            <ul class="plain by-task">
              {hours.byTask.map((one) => (
                <li key={one.task ?? 'none'}>
                  <span class="task-name">{one.task ? say.task(one.task) : 'no task said'}</span>
                  <svg class="task-bar" viewBox="0 0 200 22" preserveAspectRatio="none" aria-hidden="true">
                    <TaskPatterns id={`sum-${one.task ?? 'none'}`} palette={PAGE_PALETTE} />
                    <rect
                      x="1"
                      y="1"
                      width={Math.max(3, (one.minutes / most) * 197)}
                      height="20"
                      fill={fillOf(`sum-${one.task ?? 'none'}`, one.task)}
                      stroke={dyeOf(one.task, PAGE_PALETTE)}
                      stroke-width="1.5"
                      vector-effect="non-scaling-stroke"
                    />
                  </svg>
                  <FigureWithNotes
                    log={log}
                    figure={`${spanWords(one.minutes)}${one.task && notBilled.includes(one.task) ? ', not charged' : ''}`}
                    of={one.task ? say.task(one.task) : 'no task said'}
                    noteIds={one.noteIds}
                  />
                </li>
              ))}
            </ul>
            <LateDetails summary="Which hours are charged">
              {() => (
                <fieldset class="no-print">
                  <legend>Charged to the owner</legend>
                  {hours.byTask.flatMap(({ task }) =>
                    task ? (
                      <label class="tick" key={task}>
                        <input
                          type="checkbox"
                          checked={!notBilled.includes(task)}
                          onChange={(event) => charge(task, event.currentTarget.checked)}
                        />
                        {say.task(task)}
                      </label>
                    ) : (
                      []
                    ),
                  )}
                </fieldset>
              )}
            </LateDetails>
          </section>
          <Problems log={log} problems={hours.problems} onPick={setPicked} />
          <Overlaps log={log} overlaps={hours.overlaps} />
          <section aria-labelledby="timeline-head">
            <h2 id="timeline-head">When</h2>
            <p class="small quiet no-print">
              A dashed edge is inferred. Drag a stretch or an end of it, or with the keyboard <kbd>←</kbd>{' '}
              <kbd>→</kbd> move it by {STEP_MIN} minutes, <kbd>Shift</kbd> with them moves its end,{' '}
              <kbd>Enter</kbd> opens it.
            </p>
            <div ref={box} class="timeline-box">
              <HoursTimeline
                hours={hours}
                zone={log.quilt.zone}
                width={width}
                dates={shown}
                title={`Hours worked on ${log.quilt.name}, by day`}
                spelling={log.quilt.spelling}
                palette={PAGE_PALETTE}
                picked={picked}
                onPick={(one) => setPicked(one.id)}
                onBarKey={nudge}
                onBarPointer={drag}
                draft={draft}
                dayAddress={(date) => pageAddress(log.quilt.id, 'days', date)}
              />
            </div>
            <p class="drag-held no-print" role="status">
              {held}
            </p>
            {dates.length > shown.length ? (
              <button type="button" class="no-print" onClick={() => setAll(true)}>
                Show the {dates.length - shown.length} days before
              </button>
            ) : null}
            <div ref={editor}>
              {span ? (
                <SpanEditor
                  key={span.id}
                  log={log}
                  hours={hours}
                  span={span}
                  onClose={() => setPicked(null)}
                />
              ) : null}
            </div>
          </section>
          <LateDetails summary="The same as a table">
            {() => <HoursTable log={log} spans={hours.spans} />}
          </LateDetails>
          <LateDetails summary="By week and by place">
            {() => (
              <div class="two-tables">
                <table>
                  <caption class="sr-only">Hours by week</caption>
                  <thead>
                    <tr>
                      <th>Week from</th>
                      <th class="figure">Hours</th>
                    </tr>
                  </thead>
                  <tbody>
                    {hours.byWeek.map((week) => (
                      <tr key={week.monday}>
                        <td>{dateWords(week.monday, 'short')}</td>
                        <td class="figure">
                          <FigureWithNotes
                            log={log}
                            figure={spanWords(week.minutes)}
                            of={`week from ${dateWords(week.monday, 'short')}`}
                            noteIds={week.noteIds}
                          />
                        </td>
                      </tr>
                    ))}
                  </tbody>
                </table>
                <table>
                  <caption class="sr-only">Hours by place</caption>
                  <thead>
                    <tr>
                      <th>Place</th>
                      <th class="figure">Hours</th>
                    </tr>
                  </thead>
                  <tbody>
                    {hours.byPlace.map((one) => (
                      <tr key={one.place ?? 'none'}>
                        <td>
                          {one.place ? (
                            <a href={pageAddress(log.quilt.id, 'quilt', one.place)}>
                              {onePlaceWords(one.place, log.quilt.spelling, log.quilt)}
                            </a>
                          ) : (
                            'tied to no place'
                          )}
                        </td>
                        <td class="figure">
                          <FigureWithNotes
                            log={log}
                            figure={spanWords(one.minutes)}
                            of={
                              one.place
                                ? onePlaceWords(one.place, log.quilt.spelling, log.quilt)
                                : 'tied to no place'
                            }
                            noteIds={one.noteIds}
                          />
                        </td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </div>
            )}
          </LateDetails>
        </>
      )}
      {quietDays.length ? (
        <section>
          <h2>Days with notes and no hours</h2>
          <ul class="plain row">
            {quietDays.map((date) => (
              <li key={date}>
                <a class="tab" href={pageAddress(log.quilt.id, 'days', date)}>
                  {dateWords(date, 'short')}
                </a>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <ChangeBar />
    </div>
  );
}

function Problems(props: {
  log: Log;
  problems: HoursProblem[];
  onPick: (spanId: string) => void;
}): JSX.Element | null {
  const { log, problems } = props;
  if (!problems.length) return null;
  return (
    <section aria-labelledby="look-head">
      <h2 id="look-head">Look at these</h2>
      <ul class="plain problems">
        {problems.map((problem) => (
          <li key={problem.message} class="notice">
            {problem.message}{' '}
            <a href={pageAddress(log.quilt.id, 'days', problem.date)}>{dateWords(problem.date, 'short')}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

const MOST_BEHIND = 40;

/** A figure that opens to the notes it stands on, the last of them first, each with its day. */
function FigureWithNotes(props: {
  log: Log;
  figure: string;
  of: string;
  noteIds: readonly string[];
}): JSX.Element {
  const { log, figure, noteIds } = props;
  const [open, setOpen] = useState(false);
  const ids = [...new Set(noteIds)];
  if (!ids.length) return <span class="task-sum">{figure}</span>;
  return (
    <>
      <button
        type="button"
        class="slight figure-opens"
        aria-expanded={open}
        aria-label={`${figure}, ${props.of}: the notes behind it`}
        onClick={() => setOpen(!open)}
      >
        {figure}
      </button>
      {open ? (
        <ol class="plain behind-figure">
          {ids
            .slice(-MOST_BEHIND)
            .reverse()
            .map((id) => {
              const note = log.note(id)?.note;
              if (!note) return null;
              const { date, time } = localTime(note.at, log.quilt.zone);
              return (
                <li key={id} class="small">
                  <a href={pageAddress(log.quilt.id, 'days', date)}>
                    {dateWords(date, 'short')} {time}
                  </a>{' '}
                  “{note.text.slice(0, 160)}”
                </li>
              );
            })}
          {ids.length > MOST_BEHIND ? (
            <li class="small quiet">and {ids.length - MOST_BEHIND} before</li>
          ) : null}
        </ol>
      ) : null}
    </>
  );
}

/** Time that was told for two tasks, and which of them has it. */
function Overlaps(props: { log: Log; overlaps: Overlap[] }): JSX.Element | null {
  const { log, overlaps } = props;
  if (!overlaps.length) return null;
  const words = overlapWords(tradeLabels(log.quilt.spelling));
  return (
    <LateDetails summary={`Told twice, counted once (${overlaps.length})`}>
      {() => (
        <ul class="plain problems">
          {overlaps.map((one) => (
            <li key={`${one.spanId}${one.by}`}>
              {words(one)}{' '}
              <a href={pageAddress(log.quilt.id, 'days', one.start.slice(0, 10))}>
                {dateWords(one.start.slice(0, 10), 'short')}
              </a>
            </li>
          ))}
        </ul>
      )}
    </LateDetails>
  );
}

/** The timeline's own data, row by row. */
function HoursTable(props: { log: Log; spans: Span[] }): JSX.Element {
  const say = tradeLabels(props.log.quilt.spelling);
  return (
    <TableWrap name="Every stretch of work">
      <table class="hours-table">
        <thead>
          <tr>
            <th>Day</th>
            <th>Task</th>
            <th>From</th>
            <th>To</th>
            <th class="figure">Worked</th>
            <th>How it is known</th>
            <th class="figure">Notes</th>
          </tr>
        </thead>
        <tbody>
          {props.spans.map((span) => (
            <tr key={span.id}>
              <td>
                <a href={pageAddress(props.log.quilt.id, 'days', span.start.slice(0, 10))}>
                  {dateWords(span.start.slice(0, 10), 'short')}
                </a>
              </td>
              <td>{span.task ? say.task(span.task) : 'not said'}</td>
              <td>{span.start.slice(11)}</td>
              <td>{span.running ? 'running' : span.end.slice(11)}</td>
              <td class="figure">{spanWords(span.minutes)}</td>
              <td>
                {HOW_WORDS[span.how]}
                {span.breakMin ? `, ${spanWords(span.breakMin)} off` : ''}
              </td>
              <td class="figure">{span.noteIds.length}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th colSpan={4}>In all</th>
            <td class="figure">{spanWords(props.spans.reduce((sum, span) => sum + span.minutes, 0))}</td>
            <td colSpan={2} />
          </tr>
        </tfoot>
      </table>
    </TableWrap>
  );
}
