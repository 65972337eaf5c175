import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import type { LoggedEntry, LoggedNote } from '../../../../core/log/state.ts';
import type { Entry } from '../../../../shared/entry.ts';
import { HOW_WORDS, HoursTimeline } from '../../../charts/hours-timeline.tsx';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { dateWords, spanWords } from '../../../words/figure-words.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { changeFault, changeLog, changeTogether, undoLastChange } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { type Editing, EntryEditor } from '../../entries/view/entry-editor.tsx';
import { EntryLine } from '../../entries/view/entry-line.tsx';
import { PlayButton } from '../../entries/view/play-button.tsx';
import { Provenance } from '../../entries/view/provenance.tsx';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { pageAddress } from '../../shell/state/route.ts';
import { useWidth } from '../../shell/state/use-width.ts';
import { asksAbout, DAY_HEADINGS, type DayLine, datesOf, dayPage } from '../state/day-page.ts';
import { hoursOf } from '../state/hours-of-log.ts';
import { overlapWords } from '../state/overlap-words.ts';
import { joinEntries, splitEntry } from '../state/split-and-join.ts';
import './days.css';

const HEADING_WORDS = {
  found: 'Found',
  done: 'Done',
  bought: 'Bought and used',
  measured: 'Measured',
  decided: 'Decided',
  open: 'Left open',
  passing: 'Said in passing',
} as const;

/** One day as a page of a workbook, to be gone over by keyboard alone. */
export function DayPageView(props: { log: Log; date: string }): JSX.Element {
  const { log, date } = props;
  const page = useMemo(() => dayPage(log, date), [log, date]);
  const hours = hoursOf(log, (machineSettings.value ?? UNTIL_KNOWN).idleMin);
  const [editing, setEditing] = useState<Editing | null>(null);
  const [box, width] = useWidth<HTMLDivElement>(900);
  const list = useRef<HTMLDivElement>(null);
  const dates = useMemo(() => datesOf(log), [log]);
  const before = dates.filter((one) => one < date).at(-1);
  const after = dates.find((one) => one > date);
  const day = hours.byDay.find((one) => one.date === date);
  const spans = hours.spans.filter(
    (span) => span.start.slice(0, 10) === date || span.end.slice(0, 10) === date,
  );
  const closed = log.confirmedDays.includes(date);
  const say = tradeLabels(log.quilt.spelling);

  const step = (by: number) => {
    const lines = [...(list.current?.querySelectorAll<HTMLElement>('[data-entry]') ?? [])];
    const at = lines.findIndex(
      (line) => line === document.activeElement || line.contains(document.activeElement),
    );
    lines[Math.max(0, Math.min(lines.length - 1, at < 0 ? 0 : at + by))]?.focus();
  };
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      if (event.ctrlKey || event.metaKey || event.altKey || target.closest('input, textarea, select, dialog'))
        return;
      if (event.key === 'j' || event.key === 'ArrowDown') step(1);
      else if (event.key === 'k' || event.key === 'ArrowUp') step(-1);
      else if (event.key === 'u') void undoLastChange();
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  }, []);

  const right = (entry: LoggedEntry) =>
    changeLog(
      { type: 'confirm-entries', entryIds: [entry.id] },
      `Right: ${entryWords(entry.entry, log.quilt).what}`,
    );
  const allGood = async () => {
    const rest = page.unconfirmed.map((entry) => entry.id);
    await changeTogether(
      [
        ...(rest.length ? [{ type: 'confirm-entries' as const, entryIds: rest }] : []),
        { type: 'confirm-day', date },
      ],
      `${dateWords(date, 'short')} gone over`,
    );
  };

  const split = ({ entry, note }: DayLine) => {
    const parts = splitEntry(entry.entry);
    if (!parts) {
      changeFault.value = 'An entry is split by its places, and this one has no more than one.';
      return;
    }
    const [first, ...others] = parts as [Entry, ...Entry[]];
    void changeTogether(
      [
        { type: 'correct-entry', entryId: entry.id, entry: first, was: entry.entry },
        ...others.map((one) => ({
          type: 'add-entry' as const,
          entry: one,
          ...(note ? { noteId: note.note.id } : {}),
        })),
      ],
      `Split in ${parts.length}`,
    );
  };
  const join = ({ entry }: DayLine) => {
    const lines = DAY_HEADINGS.flatMap((heading) => page.lines[heading]);
    const next = lines[lines.findIndex((line) => line.entry.id === entry.id) + 1]?.entry;
    const joined = next && joinEntries(entry.entry, next.entry);
    if (!joined) {
      changeFault.value =
        'Entries are joined where they say the same of different places; this one and the next do not.';
      return;
    }
    void changeTogether(
      [
        { type: 'correct-entry', entryId: entry.id, entry: joined, was: entry.entry },
        { type: 'remove-entry', entryId: next.id },
      ],
      'Joined with the next',
    );
  };

  const act = (event: KeyboardEvent, line: DayLine) => {
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
    const { entry, note } = line;
    switch (event.key.toLowerCase()) {
      case 'enter':
      case 'y':
        void right(entry).then(() => step(1));
        break;
      case 'e':
        setEditing({ entry, ...(note ? { note } : {}) });
        break;
      case 'm':
        setEditing({ entry, ...(note ? { note } : {}), focus: 'places' });
        break;
      case 'x':
      case 'delete':
        step(1);
        void changeLog({ type: 'remove-entry', entryId: entry.id }, 'Taken out');
        break;
      case 's':
        split(line);
        break;
      case 'n':
        join(line);
        break;
      case 'a':
        if (note && entry.entry.kind === 'remark')
          void changeLog({ type: 'refile-note', noteId: note.note.id, as: 'aside' }, 'Put with the talk');
        break;
      case 'w':
        toggleDetails(event.currentTarget as HTMLElement);
        break;
      case 'p':
        (event.currentTarget as HTMLElement).querySelector<HTMLElement>('.play')?.click();
        break;
      default:
        return;
    }
    event.preventDefault();
  };

  return (
    <div class="day-page">
      <header class="page-head">
        <h1>{dateWords(date)}</h1>
        <nav class="row no-print" aria-label="Other days">
          {before ? (
            <a class="tab" href={pageAddress(log.quilt.id, 'days', before)}>
              {dateWords(before, 'short')}
            </a>
          ) : null}
          <a class="tab" href={pageAddress(log.quilt.id, 'days')}>
            All days
          </a>
          {after ? (
            <a class="tab" href={pageAddress(log.quilt.id, 'days', after)}>
              {dateWords(after, 'short')}
            </a>
          ) : null}
        </nav>
        <p class="day-sum">
          {day ? <strong>{spanWords(day.minutes)}</strong> : 'No hours'}
          {day ? ` of ${day.byTask.map((one) => (one.task ? say.task(one.task) : 'work')).join(', ')}` : ''}
          {day?.inferredMin ? ` (${spanWords(day.inferredMin)} inferred)` : ''}; {page.entryCount}{' '}
          {page.entryCount === 1 ? 'entry' : 'entries'}, {page.unconfirmed.length} not gone over
          {closed ? '. This day is gone over and closed.' : ''}
        </p>
      </header>

      <div ref={box}>
        {spans.length ? (
          <HoursTimeline
            hours={{ spans, byDay: hours.byDay.filter((one) => one.date === date) }}
            zone={log.quilt.zone}
            width={width}
            dates={[date]}
            title={`Hours of ${dateWords(date)}: ${spans.map((span) => `${span.task ? say.task(span.task) : 'work'} ${span.start.slice(11)} to ${span.end.slice(11)}, ${HOW_WORDS[span.how]}`).join('; ')}`}
            spelling={log.quilt.spelling}
            palette={PAGE_PALETTE}
            id="day-timeline"
          />
        ) : null}
      </div>

      {hours.problems
        .filter((problem) => problem.date === date)
        .map((problem) => (
          <p class="notice" key={problem.message}>
            {problem.message}
          </p>
        ))}

      {hours.overlaps
        .filter((one) => one.start.slice(0, 10) === date)
        .map((one) => (
          <p class="notice" key={`${one.spanId}${one.by}`}>
            {overlapWords(say)(one)}
          </p>
        ))}

      {page.entryCount ? (
        <p class="row no-print day-keys">
          <button
            type="button"
            class="chief"
            onClick={() => void allGood()}
            disabled={closed && !page.unconfirmed.length}
          >
            All good
          </button>
          <span class="small quiet">
            <kbd>↓</kbd> <kbd>↑</kbd> from entry to entry; there <kbd>Enter</kbd> right, <kbd>E</kbd> put
            right, <kbd>M</kbd> move, <kbd>S</kbd> split by block, <kbd>N</kbd> join with the next,{' '}
            <kbd>X</kbd> take out, <kbd>A</kbd> only talk, <kbd>W</kbd> which words, <kbd>P</kbd> play,{' '}
            <kbd>U</kbd> take the last change back.
          </span>
        </p>
      ) : null}

      {page.asked.length ? (
        <section class="asked-day" aria-labelledby="asked-head">
          <h2 id="asked-head">Still asked</h2>
          <ul class="plain">
            {page.asked.map(({ note, time, question }) => (
              <li key={note.note.id} class="notice">
                <strong>{question}</strong> ({time} “{note.note.text.slice(0, 160)}”)
              </li>
            ))}
          </ul>
        </section>
      ) : null}

      <div ref={list}>
        {DAY_HEADINGS.filter((heading) => page.lines[heading].length).map((heading) => (
          <section class="day-section" key={heading} aria-labelledby={`head-${heading}`}>
            <h2 id={`head-${heading}`}>{HEADING_WORDS[heading]}</h2>
            <ol class="plain">
              {page.lines[heading].map((line) => (
                <Line
                  key={line.entry.id}
                  log={log}
                  line={line}
                  onKey={(event) => act(event, line)}
                  onSplit={() => split(line)}
                  onRight={() => void right(line.entry)}
                  onEdit={(focus) =>
                    setEditing({
                      entry: line.entry,
                      ...(line.note ? { note: line.note } : {}),
                      ...(focus ? { focus } : {}),
                    })
                  }
                />
              ))}
            </ol>
          </section>
        ))}
      </div>

      {page.told.length ? (
        <section class="day-section" aria-labelledby="told-head">
          <h2 id="told-head">Told for the record</h2>
          <ul class="plain">
            {page.told.map(({ note, time }) => (
              <li key={note.note.id} class="aside-line">
                <span class="line-time">{time}</span>
                <span>
                  {note.reading?.reply.split('. ')[0]}
                  <span class="small quiet block">“{note.note.text}”</span>
                </span>
                {note.note.audio ? (
                  <PlayButton quiltId={log.quilt.id} audio={note.note.audio} removed={log.removedAudio} />
                ) : null}
              </li>
            ))}
          </ul>
        </section>
      ) : null}

      {page.asides.length ? (
        <section class="day-section" aria-labelledby="aside-head">
          <h2 id="aside-head">Talk beside the work</h2>
          <ul class="plain">
            {page.asides.map(({ note, time }) => (
              <li key={note.note.id} class="aside-line">
                <span class="line-time">{time}</span>
                <span>“{note.note.text}”</span>
                <Refile log={log} note={note} as="work" />
              </li>
            ))}
          </ul>
        </section>
      ) : null}

      {page.entryCount + page.asides.length + page.told.length === 0 ? (
        <p class="quiet">Nothing was said on this day.</p>
      ) : null}
      <p class="row no-print">
        <button type="button" onClick={() => setEditing({})}>
          Put in an entry by hand
        </button>
        <button type="button" onClick={() => window.print()}>
          Print this day
        </button>
      </p>
      {editing ? <EntryEditor editing={editing} log={log} onClose={() => setEditing(null)} /> : null}
      <ChangeBar />
    </div>
  );
}

const toggleDetails = (line: HTMLElement) => {
  const details = line.querySelector('details');
  if (details) details.open = !details.open;
};

function Line(props: {
  log: Log;
  line: DayLine;
  onKey: (event: KeyboardEvent) => void;
  onSplit: () => void;
  onRight: () => void;
  onEdit: (focus?: 'places') => void;
}): JSX.Element {
  const { log, line } = props;
  const { entry, note, time, unsure } = line;
  const { what, where } = entryWords(entry.entry, log.quilt);
  const isRemark = entry.entry.kind === 'remark';
  return (
    <li
      class={`line${entry.confirmed ? ' confirmed' : ''}${unsure ? ' unsure' : ''}`}
      data-entry={entry.id}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the line takes the keys that are said above the list
      tabIndex={0}
      onKeyDown={props.onKey}
      aria-label={`${time}, ${what}${where ? `, ${where}` : ''}${entry.confirmed ? ', gone over' : ''}`}
    >
      <span class="line-time">{time}</span>
      <div class="line-body">
        {isRemark ? (
          <p class="remark">“{note?.note.text ?? ''}”</p>
        ) : (
          <EntryLine
            entry={entry.entry}
            quilt={log.quilt}
            {...(entry.reason ? { reason: entry.reason } : {})}
          />
        )}
        {unsure ? (
          <p class="small unsure-words">
            Look at this one first:{' '}
            {note?.reading?.ask && asksAbout(note) ? note.reading.ask.question : 'it was heard only faintly.'}
          </p>
        ) : null}
        {note ? (
          <details>
            <summary>Which words</summary>
            <Provenance logged={entry} note={note} />
          </details>
        ) : null}
      </div>
      <div class="line-acts no-print">
        {entry.confirmed ? (
          <span class="knot">
            <svg width="22" height="22" viewBox="0 0 24 24" aria-hidden="true">
              <path
                d="M4 13l5 5L20 6"
                fill="none"
                stroke="currentColor"
                stroke-width="3"
                stroke-dasharray="5 2.5"
              />
            </svg>
            gone over
          </span>
        ) : (
          <button type="button" tabIndex={-1} onClick={props.onRight}>
            Right
          </button>
        )}
        {note?.note.audio ? (
          <PlayButton quiltId={log.quilt.id} audio={note.note.audio} removed={log.removedAudio} />
        ) : null}
        <button type="button" class="slight" tabIndex={-1} onClick={() => props.onEdit()}>
          Put right
        </button>
        {'places' in entry.entry || entry.entry.kind === 'treatment' || entry.entry.kind === 'condition' ? (
          <button type="button" class="slight" tabIndex={-1} onClick={() => props.onEdit('places')}>
            Move
          </button>
        ) : null}
        {'places' in entry.entry && (entry.entry.places?.length ?? 0) > 1 ? (
          <button type="button" class="slight" tabIndex={-1} onClick={props.onSplit}>
            Split
          </button>
        ) : null}
        <button
          type="button"
          class="slight"
          tabIndex={-1}
          onClick={() => void changeLog({ type: 'remove-entry', entryId: entry.id }, 'Taken out')}
        >
          Take out
        </button>
        {note && isRemark ? <Refile log={log} note={note} as="aside" /> : null}
      </div>
    </li>
  );
}

function Refile(props: { log: Log; note: LoggedNote; as: 'aside' | 'work' }): JSX.Element {
  return (
    <button
      type="button"
      class="slight no-print"
      onClick={() =>
        void changeLog(
          { type: 'refile-note', noteId: props.note.note.id, as: props.as },
          props.as === 'work' ? 'Put with the work' : 'Put with the talk',
        )
      }
    >
      {props.as === 'work' ? 'This was work' : 'Only talk'}
    </button>
  );
}
