import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Span } from '../../../../core/hours/hours.ts';
import type { Log } from '../../../../core/log/log.ts';
import { openQuestion } from '../../../../core/log/open-question.ts';
import type { LoggedEntry } from '../../../../core/log/state.ts';
import { LIMITS } from '../../../../shared/limits.ts';
import type { Task } from '../../../../shared/vocabulary.ts';
import { dateWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { openMatters } from '../../days/state/open-matters.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { EntryLine } from '../../entries/view/entry-line.tsx';
import { openLog, openQuilt } from '../../link/state/open-quilt.ts';
import type { Latest, QuiltLink } from '../../link/state/quilt-link.ts';
import { heldKey, keyWords } from '../../settings/state/held-key.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';
import { singleKeys } from '../../settings/state/single-keys.ts';
import { pageAddress } from '../../shell/state/route.ts';
import { replyWords, startAnswering } from '../state/answering.ts';
import {
  ear,
  earTrouble,
  heldSeconds,
  pause,
  press,
  release,
  soundLevel,
  toggleEar,
  way,
} from '../state/listening.ts';
import { noteDraft } from '../state/note-draft.ts';
import './frame.css';
import { RecordAsks } from './record-asks.tsx';
import { Thimble } from './thimble.tsx';

const RECENT = 6;

/** The screen at the work: what was just heard, what it became, what is asked. */
export function FramePage(): JSX.Element {
  const link = openQuilt.value!;
  const log = openLog.value!;
  useEffect(startAnswering, []);
  return (
    <div class="frame-page">
      <h1 class="sr-only">Frame</h1>
      <section class={`frame ${asleep(link) ? 'asleep' : ear.value}`} aria-label="What was just heard">
        <FrameLine />
        <EarState link={link} log={log} />
        <Heard link={link} log={log} />
        <RecordAsks link={link} log={log} />
      </section>
      <NoteLine link={link} />
      <Recent log={log} latest={link.latest.value} />
    </div>
  );
}

/** Sound is kept here until its sentence, at most 25 s long, is on the disk; more than that waits for something. */
const BEHIND_S = 40;

/** The microphone is open and nothing is taken down: paused by her word, or on call and not called. */
const asleep = (link: QuiltLink): boolean =>
  pause.value !== null || (way.value === 'on-call' && ear.value === 'open' && !link.level.value.awake);

/** How a pause ends, in words for reading from across the room. */
function pauseWords(log: Log, callPhrase: string): string {
  const until = pause.value?.until;
  const ends = until ? `It ends by itself at ${localTime(until, log.quilt.zone).time}. ` : '';
  // No sound is taken in, so no word can end it; her hand does.
  if (ear.value === 'ready')
    return `${ends}Hold ${keyWords(heldKey.value)}, a pedal, or the thimble, and talk, to be heard at once.`;
  return `${ends}Say “${callPhrase}” or “listen again”, or touch the thimble, to be heard. Nothing said meanwhile is kept.`;
}

/** The stitches round the frame: sewn while it listens, only pricked out while it does not. */
function FrameLine(): JSX.Element {
  return (
    <svg class="frame-line" aria-hidden="true" width="100%" height="100%">
      <rect class="pricks" x="7" y="7" width="100%" height="100%" />
      <rect class="stitches" x="7" y="7" width="100%" height="100%" />
    </svg>
  );
}

function EarState(props: { link: QuiltLink; log: Log }): JSX.Element {
  const state = ear.value;
  const settings = machineSettings.value ?? UNTIL_KNOWN;
  const key = keyWords(heldKey.value);
  const open = state === 'open';
  const waits = asleep(props.link);
  const words = pause.value
    ? 'Not listening'
    : waits
      ? 'Waiting to be called'
      : open
        ? 'Listening'
        : state === 'opening'
          ? 'Opening the microphone'
          : 'Not listening';
  const how = pause.value
    ? pauseWords(props.log, settings.callPhrase)
    : way.value === 'held'
      ? open
        ? 'Let go when you have said it.'
        : `Hold ${key}, a pedal, or the thimble, and talk.`
      : way.value === 'on-call'
        ? open
          ? waits
            ? `Nothing is taken down until you say “${settings.callPhrase}”.`
            : `Say “${settings.dismissPhrase}” to stop.`
          : `Put the thimble on, then say “${settings.callPhrase}”.`
        : open
          ? `${key} or the thimble stops it.`
          : `Press ${key}, or the thimble, to begin.`;
  const recogniser = props.link.recogniser.value;
  return (
    <div class="ear">
      <button
        type="button"
        class="thimble-button"
        aria-pressed={open && !pause.value}
        aria-label={
          pause.value
            ? way.value === 'held'
              ? 'Not listening: hold to talk, or press to listen again'
              : 'Listen again'
            : open
              ? 'Stop listening'
              : way.value === 'held'
                ? 'Hold to talk, or press to begin'
                : 'Begin to listen'
        }
        onPointerDown={(event) => {
          if (way.value !== 'held' || event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          hold.start();
        }}
        onPointerUp={() => hold.end()}
        onPointerCancel={() => hold.end()}
        onContextMenu={(event) => event.preventDefault()}
        onClick={(event) => {
          // A pointer was dealt with above; this is Enter, a switch, or another way than held.
          if (way.value === 'held' && event.detail > 0) return;
          void toggleEar();
        }}
      >
        <Thimble worn={open && !pause.value} />
      </button>
      <div>
        <p class="ear-state" role="status">
          {words}
        </p>
        <p class="ear-how quiet">{how}</p>
      </div>
      <LevelMeter />
      <Running log={props.log} />
      {earTrouble.value ? (
        <p class="notice bad" role="alert">
          {earTrouble.value}
        </p>
      ) : null}
      {recogniser && recogniser.state !== 'ready' ? (
        <p class="notice">{recogniser.message || 'The recogniser is not ready yet. Typing works.'}</p>
      ) : null}
      {props.link.connection.value !== 'live' && heldSeconds.value >= 2 ? (
        <p class="notice">{heldSeconds.value} s of sound wait here and go up when the server is back.</p>
      ) : heldSeconds.value >= BEHIND_S ? (
        <p class="notice">{heldSeconds.value} s of sound are kept here until they have been heard.</p>
      ) : null}
    </div>
  );
}

/** A short touch latches the microphone open until the next one; a longer one is a hold. */
const hold = (() => {
  let since = 0;
  let latched = false;
  return {
    start() {
      since = 0;
      const latchedOpen = latched && ear.peek() === 'open' && !pause.peek();
      latched = false;
      if (latchedOpen) {
        release();
        return;
      }
      since = Date.now();
      void press();
    },
    end() {
      if (!since) return;
      const short = Date.now() - since < 350;
      since = 0;
      if (short) latched = true;
      else release();
    },
  };
})();

type LeftRunning = { date: string; span: Span };

/** Work that nobody stopped is asked about: one key takes the last sign of work as its end; or she says when it was. */
function AskLeftRunning(props: { log: Log; left: LeftRunning }): JSX.Element {
  const { log, left } = props;
  const { span } = left;
  const so = () =>
    void changeLog(
      {
        type: 'set-span',
        spanId: span.id,
        start: span.start,
        end: span.end,
        ...(span.task ? { task: span.task } : {}),
        entryIds: span.entryIds,
      },
      `Stopped ${span.end.slice(11)}`,
    );
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 's' || !singleKeys.peek() || event.ctrlKey || event.metaKey || event.altKey) return;
      if ((event.target as HTMLElement).closest('input, textarea, select, dialog')) return;
      event.preventDefault();
      so();
    };
    addEventListener('keydown', key);
    return () => removeEventListener('keydown', key);
  });
  return (
    <div class="running notice" role="status">
      <p>
        The {span.task ? tradeLabels(log.quilt.spelling).task(span.task) : 'work'} begun on{' '}
        {dateWords(left.date, 'short')} at {span.start.slice(11)} was not stopped. It is counted up to the
        last note of that day, {span.end.slice(11)}. When did you stop?
      </p>
      <p class="row">
        <button type="button" onClick={so}>
          Stopped then, {span.end.slice(11)} <kbd>S</kbd>
        </button>
        <a href={pageAddress(log.quilt.id, 'days', left.date)}>{dateWords(left.date, 'short')}</a>
        <span class="small">Or say it: “stopped at ten past nine last night”.</span>
      </p>
    </div>
  );
}

/** The task that runs, with its start. Counting the hours is fetched after the page is there. */
function Running(props: { log: Log }): JSX.Element | null {
  const { log } = props;
  const [running, setRunning] = useState<{ task?: Task; start: string } | null>(null);
  const [left, setLeft] = useState<LeftRunning | null>(null);
  const { idleMin } = machineSettings.value ?? UNTIL_KNOWN;
  useEffect(() => {
    let current = true;
    void import('../../days/state/hours-of-log.ts').then(({ hoursOf }) => {
      if (!current) return;
      const hours = hoursOf(log, idleMin);
      setRunning(hours.running ?? null);
      const problem = hours.problems.findLast((one) => one.kind === 'left-running');
      const span = hours.spans.find((one) => one.id === problem?.spanId);
      setLeft(problem && span ? { date: problem.date, span } : null);
    });
    return () => {
      current = false;
    };
  }, [log, idleMin]);
  if (left) return <AskLeftRunning log={log} left={left} />;
  if (!running) return null;
  const day = running.start.slice(0, 10);
  return (
    <p class="running">
      On the {running.task ? tradeLabels(log.quilt.spelling).task(running.task) : 'work'} since{' '}
      {running.start.slice(11)}
      {day === localTime(new Date(), log.quilt.zone).date ? '' : `, ${dateWords(day, 'short')}`}
    </p>
  );
}

const STEPS = 16;

/** The level as a row of stitches, each filled when the sound reaches it. */
function LevelMeter(): JSX.Element {
  const live = ear.value === 'open' || ear.value === 'ready';
  const peak = live ? soundLevel.value : 0;
  // -48 dB to 0 dB over the row.
  const reached =
    peak > 0 ? Math.max(0, Math.min(STEPS, Math.round(((20 * Math.log10(peak) + 48) / 48) * STEPS))) : 0;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a <meter> can't be drawn as stitches
    <svg
      class="level"
      viewBox={`0 0 ${STEPS * 14} 14`}
      role="meter"
      aria-label="Sound level"
      aria-valuemin={0}
      aria-valuemax={STEPS}
      aria-valuenow={reached}
    >
      {Array.from({ length: STEPS }, (_, i) => (
        <path
          key={`s${i}`}
          d={`M${i * 14 + 4} 7h6`}
          class={i < reached ? (i > STEPS - 3 ? 'on loud' : 'on') : 'rest'}
        />
      ))}
    </svg>
  );
}

function Heard(props: { link: QuiltLink; log: Log }): JSX.Element {
  const { link, log } = props;
  const partial = link.partial.value;
  const waiting = link.waiting.value;
  const latest = link.latest.value;
  if (partial) {
    return (
      <div class="heard" aria-live="off">
        <p class="heard-words partial">{partial} …</p>
      </div>
    );
  }
  if (waiting.length) {
    return (
      <div class="heard" aria-live="polite">
        <p class="heard-words">“{waiting.at(-1)!.text}”</p>
        <p class="notice">
          {link.connection.value === 'live'
            ? 'Being written down.'
            : `The server is away. ${waiting.length === 1 ? 'This note waits' : `${waiting.length} notes wait`} in this browser and ${waiting.length === 1 ? 'goes' : 'go'} up in order when it is back.${link.outboxLasting.value ? '' : ' Keep this window open: this browser keeps nothing once it is closed.'}`}
        </p>
      </div>
    );
  }
  if (!latest && openQuestion(log, new Date().toISOString())) return <div class="heard" />;
  if (!latest) return <WhereWeWere link={link} log={log} />;
  const { reading, answer } = latest;
  // The log is the truth: what later hands changed shows here too.
  const logged = latest.noteId ? log.note(latest.noteId) : undefined;
  const entries = logged?.entryIds.flatMap((id) => log.entry(id) ?? []) ?? [];
  const unsure = latest.confidence !== undefined && latest.confidence < 0.6;
  return (
    <div class="heard" aria-live="polite">
      <p class={`heard-words${latest.text.length > 140 ? ' long' : ''}`}>
        “{latest.text.length > 600 ? `${latest.text.slice(0, 600)}…` : latest.text}”
      </p>
      {unsure ? <p class="small quiet">Heard only faintly: look whether these are your words.</p> : null}
      {answer ? (
        <div class="answer">
          <p class="answer-words">{answer.text}</p>
          {answer.working.length ? (
            <details>
              <summary>How that comes about</summary>
              <ul>
                {answer.working.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </details>
          ) : null}
        </div>
      ) : null}
      {entries.length ? (
        <ul class="plain became">
          {entries.map((entry) => (
            <li key={entry.id}>
              <EntryLine
                entry={entry.entry}
                quilt={log.quilt}
                {...(entry.reason ? { reason: entry.reason } : {})}
                size={52}
              />
            </li>
          ))}
        </ul>
      ) : null}
      {reading?.ask && reading.ask.slot !== 'record' ? (
        <p class="asked">
          <span class="asked-sign" aria-hidden="true">
            ?
          </span>
          {reading.ask.question}
        </p>
      ) : reading && !answer ? (
        <p class="reply">
          {reading.act === 'aside' && !reading.answers
            ? 'Kept beside the work: not in the log.'
            : reading.ask?.slot === 'record'
              ? reading.reply
              : replyWords(latest)}
        </p>
      ) : null}
      {latest.noteId && (entries.length || (reading?.answers && reading.answers !== 'round')) ? (
        <div class="row no-print">
          <button type="button" onClick={() => void link.takeNote('scratch that')}>
            Scratch that
          </button>
        </div>
      ) : null}
      {link.trouble.value ? <Trouble link={link} /> : null}
    </div>
  );
}

/** Before anything is said: the last words of last time, and what stands open. */
function WhereWeWere(props: { link: QuiltLink; log: Log }): JSX.Element {
  const { link, log } = props;
  const last = log.notes.findLast(
    ({ note, reading }) => reading?.act !== 'aside' && note.text.length > 0,
  )?.note;
  const { count, toDo } = openMatters(log);
  return (
    <div class="heard">
      {last ? (
        <>
          <p class="opening-when">
            Where we were: {dateWords(localTime(last.at, log.quilt.zone).date)},{' '}
            {localTime(last.at, log.quilt.zone).time}
          </p>
          <p class={`heard-words${last.text.length > 140 ? ' long' : ''}`}>
            “{last.text.length > 300 ? `${last.text.slice(0, 300)}…` : last.text}”
          </p>
          <p class="reply">
            {count ? (
              <a href={pageAddress(link.quiltId, 'open')}>
                {count} {count === 1 ? 'matter stands' : 'matters stand'} open
              </a>
            ) : (
              'Nothing stands open'
            )}
            {toDo.length
              ? `, ${toDo.length} ${toDo.length === 1 ? 'thing' : 'things'} decided and to do`
              : ''}
            .
          </p>
        </>
      ) : (
        <>
          <p class="heard-words">Say or type what you see, do, buy or wonder about.</p>
          <p class="quiet opening-hint">
            “Row two, block one has a split seam.” “Re-sewed it by hand, twenty minutes.”{' '}
            <a href={pageAddress(link.quiltId, 'help')}>What can I say?</a>
          </p>
        </>
      )}
      {link.trouble.value ? <Trouble link={link} /> : null}
    </div>
  );
}

function Trouble(props: { link: QuiltLink }): JSX.Element {
  return (
    <p class="notice bad" role="alert">
      {props.link.trouble.value}{' '}
      <button
        type="button"
        class="slight"
        onClick={() => {
          props.link.trouble.value = null;
        }}
      >
        Put away
      </button>
    </p>
  );
}

function NoteLine(props: { link: QuiltLink }): JSX.Element {
  const { link } = props;
  const text = noteDraft.value;
  const setText = (words: string) => {
    noteDraft.value = words;
  };
  const box = useRef<HTMLTextAreaElement>(null);
  const tooLong = text.length > LIMITS.noteChars;
  const asked = link.latest.value?.reading?.ask;

  const write = () => {
    const words = text.trim();
    if (!words || tooLong) return;
    setText('');
    void link.takeNote(words);
    box.current?.focus();
  };

  useEffect(() => heldKeys(box), []);

  return (
    <form
      class="note-line no-print"
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <label for="note-text">{asked ? 'Your answer, or the next note' : 'A note'}</label>
      <div class="note-row">
        <textarea
          id="note-text"
          ref={box}
          rows={2}
          value={text}
          enterkeyhint="send"
          placeholder="Row three, block two: re-sewed the split seam by hand"
          aria-invalid={tooLong}
          aria-describedby={tooLong ? 'note-fault' : 'note-hint'}
          onInput={(event) => setText(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' && !event.shiftKey && !event.isComposing) {
              event.preventDefault();
              write();
            }
            if (event.key === 'Escape') event.currentTarget.blur();
          }}
        />
        <button type="submit" class="chief">
          Write it down
        </button>
      </div>
      {tooLong ? (
        <p id="note-fault" class="fault">
          A note holds {LIMITS.noteChars.toLocaleString()} characters; this one has{' '}
          {text.length.toLocaleString()}. Cut it in two.
        </p>
      ) : (
        <p id="note-hint" class="small quiet">
          <kbd>Enter</kbd> writes it down, <kbd>Shift</kbd> <kbd>Enter</kbd> begins a new line, <kbd>Esc</kbd>{' '}
          leaves the line
          {singleKeys.value ? (
            <>
              , <kbd>N</kbd> comes back to it
            </>
          ) : null}
          .
        </p>
      )}
    </form>
  );
}

/** The held key (or pedal) anywhere but in a field that needs it; N goes to the note line. */
function heldKeys(box: { current: HTMLTextAreaElement | null }): () => void {
  const takes = (event: KeyboardEvent): boolean => {
    const target = event.target as HTMLElement;
    const inField = target.closest('input, textarea, select, [contenteditable]') !== null;
    // Keys that type or press belong to the field or button that has the focus; a pedal's F13 to nobody.
    const typing = event.code === 'Space' || event.code === 'Enter' || event.key.length === 1;
    return !(
      typing &&
      (inField ||
        (target.closest('button, a, summary') !== null && event.key.length === 1 && event.code !== event.key))
    );
  };
  const down = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.code === heldKey.peek() && takes(event)) {
      event.preventDefault();
      if (event.repeat) return;
      if (way.peek() === 'held') void press();
      else void toggleEar();
      return;
    }
    if (
      singleKeys.peek() &&
      event.key.toLowerCase() === 'n' &&
      !(event.target as HTMLElement).closest('input, textarea, select')
    ) {
      event.preventDefault();
      box.current?.focus();
    }
  };
  const up = (event: KeyboardEvent) => {
    if (event.code === heldKey.peek() && way.peek() === 'held') release();
  };
  const away = () => {
    if (way.peek() === 'held') release();
  };
  addEventListener('keydown', down);
  addEventListener('keyup', up);
  addEventListener('blur', away);
  return () => {
    removeEventListener('keydown', down);
    removeEventListener('keyup', up);
    removeEventListener('blur', away);
  };
}

function Recent(props: { log: Log; latest: Latest | null }): JSX.Element | null {
  const { log, latest } = props;
  const shown: LoggedEntry[] = [];
  const { entries } = log;
  for (let i = entries.length - 1; i >= 0 && shown.length < RECENT; i--) {
    const entry = entries[i]!;
    if (latest?.noteId && entry.noteId === latest.noteId) continue;
    shown.push(entry);
  }
  if (!shown.length) return null;
  return (
    <section class="recent" aria-labelledby="recent-head">
      <h2 id="recent-head">Before that</h2>
      <ol class="plain">
        {shown.map((entry) => {
          const { date, time } = localTime(entry.at, log.quilt.zone);
          return (
            <li key={entry.id}>
              <a class="recent-time" href={pageAddress(log.quilt.id, 'days', date)}>
                <time dateTime={entry.at}>{time}</time>
              </a>
              <EntryLine entry={entry.entry} quilt={log.quilt} size={40} />
            </li>
          );
        })}
      </ol>
    </section>
  );
}
