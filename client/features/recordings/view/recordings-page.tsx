import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import type { Job } from '../../../../shared/wire.ts';
import { dateWords } from '../../../words/figure-words.ts';
import { instantInZone, localTime } from '../../../words/local-time.ts';
import { openLog, openQuilt } from '../../link/state/open-quilt.ts';
import type { QuiltLink } from '../../link/state/quilt-link.ts';
import { pageAddress } from '../../shell/state/route.ts';
import {
  cancelSending,
  changeJob,
  loadJobs,
  type Sending,
  sending,
  sendOne,
  sendRecordings,
} from '../state/recording-queue.ts';
import { SoundToDelete } from './sound-to-delete.tsx';
import './recordings.css';

const STATE_WORDS: Record<Job['state'], string> = {
  waiting: 'Waits its turn',
  working: 'Being heard',
  paused: 'Paused',
  done: 'Heard',
  cancelled: 'Broken off; the notes so far are kept',
  failed: 'Could not be heard',
};

/** Narrated work recorded elsewhere: dropped or chosen, heard at its true time, note by note. */
export function RecordingsPage(): JSX.Element {
  const link = openQuilt.value!;
  const log = openLog.value!;
  const [over, setOver] = useState(false);
  useEffect(() => {
    void loadJobs(link);
  }, [link]);
  const jobs = [...link.jobs.value.values()].filter((job) => job.quiltId === link.quiltId);
  return (
    <div class="recordings-page">
      <header class="page-head">
        <h1>Recordings</h1>
        <p>
          What you told a recorder or a telephone while you worked. Each thing said becomes a note at the
          moment it was said, and stays playable. What you say here meanwhile is heard first.
        </p>
      </header>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the chooser inside is the first */}
      <div
        class={`drop${over ? ' over' : ''}`}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          void sendRecordings(link, [...(event.dataTransfer?.files ?? [])]);
        }}
      >
        <label for="recording-file">Drop recordings here, or choose them</label>
        <input
          id="recording-file"
          type="file"
          multiple
          accept="audio/*,.wav,.flac,.mp3,.ogg,.oga,.opus,.m4a,.webm"
          onChange={(event) => {
            void sendRecordings(link, [...(event.currentTarget.files ?? [])]);
            event.currentTarget.value = '';
          }}
        />
        <p class="small quiet">
          WAV, FLAC, MP3, Ogg, M4A or WebM, of any length up to 2 GB. They go no further than this machine.
        </p>
      </div>
      {link.trouble.value ? (
        <p class="notice bad" role="alert">
          {link.trouble.value}
        </p>
      ) : null}
      {sending.value.length || jobs.length ? (
        <ul class="plain jobs" aria-label="On their way and being heard">
          {sending.value.map((one) => (
            <SendingLine key={one.id} link={link} log={log} one={one} />
          ))}
          {jobs.reverse().map((job) => (
            <JobLine key={job.id} link={link} job={job} />
          ))}
        </ul>
      ) : null}
      {log.recordings.length ? (
        <section aria-labelledby="kept-head">
          <h2 id="kept-head">In the log</h2>
          <ul class="plain jobs">
            {log.recordings.map((recording) => {
              const { date, time } = localTime(recording.startAt, log.quilt.zone);
              const notes = log.notes.filter(({ note }) => note.audio?.recordingId === recording.id).length;
              return (
                <li key={recording.id} class="job">
                  <div>
                    <p class="job-name">{recording.name}</p>
                    <p>
                      <a href={pageAddress(log.quilt.id, 'days', date)}>{dateWords(date, 'short')}</a>, {time}
                      ; {lengthOf(recording.durationS)}; {notes} {notes === 1 ? 'note' : 'notes'}
                    </p>
                  </div>
                  {log.removedAudio.includes(recording.file) ? (
                    <span class="quiet">sound not kept</span>
                  ) : (
                    // biome-ignore lint/a11y/useMediaCaption: its words stand as notes on the day's page
                    <audio
                      controls
                      preload="none"
                      src={`/api/quilts/${encodeURIComponent(log.quilt.id)}/audio/${encodeURIComponent(recording.file)}`}
                    />
                  )}
                </li>
              );
            })}
          </ul>
        </section>
      ) : null}
      <SoundToDelete quiltId={log.quilt.id} />
    </div>
  );
}

const lengthOf = (seconds: number): string => {
  const whole = Math.round(seconds);
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours ? `${hours} h ${minutes} min` : minutes ? `${minutes} min ${whole % 60} s` : `${whole} s`;
};

function SendingLine(props: { link: QuiltLink; log: Log; one: Sending }): JSX.Element {
  const { link, log, one } = props;
  const [start, setStart] = useState(() => {
    const { date, time } = localTime(new Date(one.file.lastModified), log.quilt.zone);
    return `${date}T${time}`;
  });
  return (
    <li class="job">
      <div>
        <p class="job-name">{one.name}</p>
        {one.fault ? (
          <p class={one.asksStart ? '' : 'fault'} role="alert">
            {one.fault}
          </p>
        ) : (
          <>
            <progress value={one.sent} max={Math.max(1, one.bytes)} aria-label={`${one.name}, sent`} />
            <p class="small quiet">
              Going over, {Math.round((100 * one.sent) / Math.max(1, one.bytes))} % of{' '}
              {(one.bytes / 1_048_576).toFixed(1)} MB
            </p>
          </>
        )}
        {one.asksStart ? (
          <form
            class="row"
            onSubmit={(event) => {
              event.preventDefault();
              void sendOne(link, one, instantOfLocal(start, log.quilt.zone));
            }}
          >
            <label for={`start-${one.id}`}>It begins at</label>
            <input
              id={`start-${one.id}`}
              class="start-at"
              type="datetime-local"
              required
              value={start}
              onInput={(event) => setStart(event.currentTarget.value)}
            />
            <button type="submit" class="chief">
              Send it so
            </button>
          </form>
        ) : null}
      </div>
      <div class="row">
        {one.fault && !one.asksStart ? (
          <button type="button" onClick={() => void sendOne(link, one)}>
            Try again
          </button>
        ) : null}
        <button type="button" class="warn" onClick={() => cancelSending(one.id)}>
          {one.fault ? 'Put away' : 'Break off'}
          <span class="sr-only"> {one.name}</span>
        </button>
      </div>
    </li>
  );
}

/** A moment on the zone's clock as an instant; the offset is the one that the zone has then. */
function instantOfLocal(local: string, zone: string): string {
  const asUtc = new Date(`${local}:00Z`);
  const offset = instantInZone(asUtc, zone).slice(19);
  return `${local}:00${offset}`;
}

function JobLine(props: { link: QuiltLink; job: Job }): JSX.Element {
  const { link, job } = props;
  const open = job.state === 'waiting' || job.state === 'working' || job.state === 'paused';
  const [began] = useState(() => ({ at: Date.now(), doneS: job.doneS }));
  const speed = (job.doneS - began.doneS) / Math.max(1, (Date.now() - began.at) / 1000);
  const left =
    job.totalS !== null && job.state === 'working' && speed > 0.5 ? (job.totalS - job.doneS) / speed : null;
  return (
    <li class={`job ${job.state}`} data-job={job.id}>
      <div>
        <p class="job-name">{job.name}</p>
        <p role="status">
          {STATE_WORDS[job.state]}
          {job.notes ? `, ${job.notes} ${job.notes === 1 ? 'note' : 'notes'}` : ''}
          {job.totalS !== null && open ? `, ${lengthOf(job.doneS)} of ${lengthOf(job.totalS)}` : ''}
          {left !== null && left > 3 ? `, about ${lengthOf(left)} to go` : ''}
          {job.message ? `. ${job.message}` : ''}
        </p>
        {open ? (
          <progress
            aria-label={`${job.name}, heard`}
            {...(job.totalS === null ? {} : { value: job.doneS, max: Math.max(1, job.totalS) })}
          />
        ) : null}
      </div>
      {open ? (
        <div class="row">
          <button
            type="button"
            onClick={() => void changeJob(link, job.id, job.state === 'paused' ? 'resume' : 'pause')}
          >
            {job.state === 'paused' ? 'Carry on' : 'Pause'}
            <span class="sr-only"> {job.name}</span>
          </button>
          <button type="button" class="warn" onClick={() => void changeJob(link, job.id, 'cancel')}>
            Break off<span class="sr-only"> {job.name}</span>
          </button>
        </div>
      ) : null}
    </li>
  );
}
