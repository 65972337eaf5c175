import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Hours, Span } from '../../../../core/hours/hours.ts';
import type { Log } from '../../../../core/log/log.ts';
import { TASKS, type Task } from '../../../../shared/vocabulary.ts';
import { HOW_WORDS } from '../../../charts/hours-timeline.tsx';
import { spanWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { changeLog, changeTogether } from '../../entries/state/change-log.ts';
import { Field } from '../../shell/view/field.tsx';

/** One stretch of work: what it stands on, and its times to change, cut in two, join or take out. */
export function SpanEditor(props: { log: Log; hours: Hours; span: Span; onClose: () => void }): JSX.Element {
  const { log, hours, span, onClose } = props;
  const say = tradeLabels(log.quilt.spelling);
  const [task, setTask] = useState<Task | ''>(span.task ?? '');
  const [start, setStart] = useState(span.start);
  const [end, setEnd] = useState(span.end);
  const [minutes, setMinutes] = useState(span.breakMin ? String(span.minutes) : '');
  const [fault, setFault] = useState('');
  // Moved in another window, or by dragging: a form she has not written in follows, one that she has is asked about.
  const [seen, setSeen] = useState(span);
  const follow = () => {
    setSeen(span);
    setTask(span.task ?? '');
    setStart(span.start);
    setEnd(span.end);
    setMinutes(span.breakMin ? String(span.minutes) : '');
  };
  const moved = seen.start !== span.start || seen.end !== span.end || seen.task !== span.task;
  const untouched = start === seen.start && end === seen.end && task === (seen.task ?? '');
  if (moved && untouched) follow();
  const later = hours.spans.find(
    (one) => one.startMin >= span.endMin && one.start.slice(0, 10) === span.end.slice(0, 10),
  );
  const base = (from: string, to: string) => ({
    type: 'set-span' as const,
    start: from.slice(0, 16),
    end: to.slice(0, 16),
    ...(task ? { task } : {}),
  });

  const keep = async () => {
    if (!(start < end)) {
      setFault('It ends before it starts. Give a later end, or an earlier start.');
      return;
    }
    const worked = minutes.trim() ? Number(minutes) : undefined;
    const length = (Date.parse(`${end}Z`) - Date.parse(`${start}Z`)) / 60_000;
    if (worked !== undefined && !(worked > 0 && worked <= length)) {
      setFault(
        `Between those times lie ${spanWords(length)}: the minutes worked can't be more, nor nothing.`,
      );
      return;
    }
    setFault('');
    const done = await changeLog(
      {
        ...base(start, end),
        spanId: span.id,
        entryIds: span.entryIds,
        ...(worked === undefined ? {} : { minutes: worked }),
      },
      'Stretch changed',
    );
    if (done) onClose();
  };
  const cut = async () => {
    const middle = new Date((Date.parse(`${start}:00Z`) + Date.parse(`${end}:00Z`)) / 2)
      .toISOString()
      .slice(0, 16);
    const cuts = [{ ...base(start, middle), spanId: span.id, entryIds: span.entryIds }, base(middle, end)];
    if (await changeTogether(cuts, 'Cut in two')) onClose();
  };
  const join = async () => {
    if (!later) return;
    const entryIds = [...span.entryIds, ...later.entryIds];
    const joined = await changeTogether(
      [
        { ...base(span.start, later.end), spanId: span.id, entryIds },
        { type: 'remove-span', spanId: later.id },
      ],
      'Joined',
    );
    if (joined) onClose();
  };

  return (
    <form
      class="patch span-editor no-print"
      aria-label="This stretch"
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <h3>
        {span.task ? say.task(span.task) : 'No task said'}, {span.start.slice(11)} to{' '}
        {span.running ? 'now' : span.end.slice(11)}: {spanWords(span.minutes)}, {HOW_WORDS[span.how]}
      </h3>
      {moved && !untouched ? (
        <p class="notice" role="alert">
          Changed elsewhere meanwhile: it is now {span.start.slice(11)} to {span.end.slice(11)}. What you have
          put in is still here, and keeping it puts it over that.{' '}
          <button type="button" class="slight" onClick={follow}>
            Take what it is now
          </button>
        </p>
      ) : null}
      <div class="fields">
        <Field id="span-task" label="Task">
          {(a) => (
            <select {...a} value={task} onChange={(event) => setTask(event.currentTarget.value as Task | '')}>
              <option value="">not said</option>
              {TASKS.map((name) => (
                <option key={name} value={name}>
                  {say.task(name)}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field id="span-start" label="From" fault={fault || undefined}>
          {(a) => (
            <input
              {...a}
              type="datetime-local"
              value={start}
              onInput={(event) => setStart(event.currentTarget.value)}
            />
          )}
        </Field>
        <Field id="span-end" label="To">
          {(a) => (
            <input
              {...a}
              type="datetime-local"
              value={end}
              onInput={(event) => setEnd(event.currentTarget.value)}
            />
          )}
        </Field>
        <Field id="span-minutes" label="Minutes worked" hint="Only where a break is to come off">
          {(a) => (
            <input
              {...a}
              inputMode="numeric"
              value={minutes}
              onInput={(event) => setMinutes(event.currentTarget.value)}
            />
          )}
        </Field>
      </div>
      <p class="row">
        <button type="submit" class="chief">
          Keep it so
        </button>
        <button type="button" onClick={() => void cut()}>
          Cut in two
        </button>
        {later ? (
          <button type="button" onClick={() => void join()}>
            Join with the next
          </button>
        ) : null}
        <button
          type="button"
          class="warn"
          onClick={() =>
            void changeLog({ type: 'remove-span', spanId: span.id }, 'Stretch taken out').then(
              (done) => done && onClose(),
            )
          }
        >
          Take out
        </button>
        <button type="button" class="slight" onClick={onClose}>
          Put back
        </button>
      </p>
      <details>
        <summary>The notes it stands on ({span.noteIds.length})</summary>
        <ol class="plain">
          {span.noteIds.map((noteId) => {
            const note = log.note(noteId)?.note;
            return note ? (
              <li key={noteId}>
                {localTime(note.at, log.quilt.zone).time} “{note.text.slice(0, 240)}”
              </li>
            ) : null;
          })}
        </ol>
      </details>
    </form>
  );
}
