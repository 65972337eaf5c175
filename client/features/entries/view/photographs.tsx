import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import type { Photo } from '../../../../shared/event.ts';
import { STAGES } from '../../../../shared/limits.ts';
import { instantInZone } from '../../../words/local-time.ts';
import { api } from '../../link/state/api.ts';
import { Field } from '../../shell/view/field.tsx';
import { changeLog } from '../state/change-log.ts';
import { placesOfForm } from '../state/entry-form.ts';
import { preparePhoto } from '../state/prepare-photo.ts';
import './photographs.css';

const STAGE_WORDS = { before: 'before', during: 'during the work', after: 'after' } as const;

/** The photographs of a place (or of all places), and the way to add more: choose, drop or paste. */
export function Photographs(props: { log: Log; place: string | null }): JSX.Element {
  const { log, place } = props;
  const [stage, setStage] = useState<Photo['stage']>('during');
  const [fault, setFault] = useState('');
  const [busy, setBusy] = useState(0);
  const [over, setOver] = useState(false);
  const photos = log.photos.filter((photo) => place === null || photo.places.includes(place));

  const take = async (files: Iterable<File>) => {
    setFault('');
    for (const file of files) {
      setBusy((n) => n + 1);
      try {
        const { full, small } = await preparePhoto(file);
        const body = new FormData();
        body.append('stage', stage);
        body.append('places', JSON.stringify(place ? [place] : []));
        if (file.lastModified)
          body.append('takenAt', instantInZone(new Date(file.lastModified), log.quilt.zone));
        body.append('file', full, file.name);
        body.append('thumbnail', small, 'small.jpg');
        await api(`/api/quilts/${encodeURIComponent(log.quilt.id)}/photos`, { body });
      } catch (why) {
        setFault(`${file.name}: ${why instanceof Error ? why.message : String(why)}`);
      } finally {
        setBusy((n) => n - 1);
      }
    }
  };

  // A paste goes to whatever has the focus, which is seldom this part of the page.
  useEffect(() => {
    const paste = (event: ClipboardEvent) => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length) void take(files);
    };
    addEventListener('paste', paste);
    return () => removeEventListener('paste', paste);
  });

  return (
    <section
      class={`photographs${over ? ' over' : ''}`}
      aria-label="Photographs"
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        void take(event.dataTransfer?.files ?? []);
      }}
    >
      <h3>Photographs</h3>
      {photos.length ? (
        <ul class="plain photo-list">
          {photos.map((photo) => (
            <li key={photo.id}>
              <a href={photoAddress(log.quilt.id, photo.file)} target="_blank" rel="noreferrer">
                <img
                  src={photoAddress(log.quilt.id, photo.thumbnail ?? photo.file)}
                  alt={
                    photo.caption || `${STAGE_WORDS[photo.stage]}, ${photo.places.join(', ') || 'the quilt'}`
                  }
                  loading="lazy"
                />
              </a>
              <span class="small">{photo.caption || STAGE_WORDS[photo.stage]}</span>
              <ChangePhoto key={photo.id} log={log} photo={photo} />
            </li>
          ))}
        </ul>
      ) : (
        <p class="small quiet">None yet. Drop or paste one here, or choose it.</p>
      )}
      <div class="row no-print">
        <label class="photo-stage">
          <span class="sr-only">Taken</span>
          <select value={stage} onChange={(event) => setStage(event.currentTarget.value as Photo['stage'])}>
            {STAGES.map((name) => (
              <option key={name} value={name}>
                {STAGE_WORDS[name]}
              </option>
            ))}
          </select>
        </label>
        <input
          type="file"
          accept="image/*"
          multiple
          aria-label="Choose photographs"
          onChange={(event) => {
            void take([...(event.currentTarget.files ?? [])]);
            event.currentTarget.value = '';
          }}
        />
      </div>
      {busy ? <p role="status">Putting {busy} away…</p> : null}
      {fault ? (
        <p class="fault" role="alert">
          {fault}
        </p>
      ) : null}
    </section>
  );
}

/** Caption, stage and places of a photograph; or it is taken out. */
function ChangePhoto(props: { log: Log; photo: Photo }): JSX.Element {
  const { log, photo } = props;
  const [caption, setCaption] = useState(photo.caption);
  const [stage, setStage] = useState(photo.stage);
  const [places, setPlaces] = useState(photo.places.join(', '));
  const [fault, setFault] = useState('');
  const box = useRef<HTMLDetailsElement>(null);
  const keep = async () => {
    const read = placesOfForm(places, log.quilt);
    if (!Array.isArray(read)) {
      setFault(read.fault);
      return;
    }
    setFault('');
    const done = await changeLog(
      { type: 'change-photo', photoId: photo.id, caption: caption.trim(), stage, places: read },
      'Photograph changed',
    );
    if (done && box.current) box.current.open = false;
  };
  return (
    <details class="change-photo no-print" ref={box}>
      <summary>Change</summary>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        <Field id={`caption-${photo.id}`} label="Caption">
          {(a) => (
            <input
              {...a}
              value={caption}
              maxLength={500}
              autocomplete="off"
              onInput={(event) => setCaption(event.currentTarget.value)}
            />
          )}
        </Field>
        <Field id={`stage-${photo.id}`} label="Stage">
          {(a) => (
            <select
              {...a}
              value={stage}
              onChange={(event) => setStage(event.currentTarget.value as Photo['stage'])}
            >
              {STAGES.map((name) => (
                <option key={name} value={name}>
                  {STAGE_WORDS[name]}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field
          id={`of-${photo.id}`}
          label="Blocks and parts"
          fault={fault}
          hint="As 1-2, backing; empty for the whole quilt"
        >
          {(a) => (
            <input
              {...a}
              value={places}
              autocomplete="off"
              onInput={(event) => setPlaces(event.currentTarget.value)}
            />
          )}
        </Field>
        <p class="row">
          <button type="submit" class="chief">
            Keep it
          </button>
          <button
            type="button"
            class="slight"
            onClick={() =>
              void changeLog({ type: 'remove-photo', photoId: photo.id }, 'Photograph taken out')
            }
          >
            Take out
          </button>
        </p>
      </form>
    </details>
  );
}

export const photoAddress = (quiltId: string, file: string): string =>
  `/api/quilts/${encodeURIComponent(quiltId)}/photos/${file.split('/').map(encodeURIComponent).join('/')}`;
