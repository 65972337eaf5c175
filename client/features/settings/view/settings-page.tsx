import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import { shapeWords } from '../../../../core/shape/shape-words.ts';
import { LIMITS } from '../../../../shared/limits.ts';
import type { QuiltDetails } from '../../../../shared/quilt.ts';
import type { Settings } from '../../../../shared/settings.ts';
import { playTone } from '../../../audio/tones.ts';
import { localVoice } from '../../../audio/voice.ts';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { QuiltMap } from '../../../charts/quilt-map.tsx';
import { pageLocale } from '../../../words/figure-words.ts';
import { changeLog } from '../../entries/state/change-log.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { closeEar } from '../../frame/state/listening.ts';
import { api } from '../../link/state/api.ts';
import { openLog } from '../../link/state/open-quilt.ts';
import { PhonesSettings } from '../../pairing/view/phones-settings.tsx';
import { readPlaces } from '../../quilts/state/read-places.ts';
import { draftOfShape, readShape, type ShapeDraft, type ShapeFaults } from '../../quilts/state/read-shape.ts';
import { ShapeFields } from '../../quilts/view/shape-fields.tsx';
import { goTo } from '../../shell/state/route.ts';
import { Field } from '../../shell/view/field.tsx';
import { heldKey, keyWords, setHeldKey } from '../state/held-key.ts';
import { changeSettings, machineSettings, settingsFault, UNTIL_KNOWN } from '../state/machine-settings.ts';
import { setSingleKeys, singleKeys } from '../state/single-keys.ts';
import { BackupsSettings } from './backups-settings.tsx';
import './settings.css';

/** How this machine listens and answers, and what this quilt is. */
export function SettingsPage(): JSX.Element {
  const log = openLog.value!;
  return (
    <div class="settings-page">
      <header class="page-head">
        <h1>Settings</h1>
      </header>
      {settingsFault.value ? (
        <p class="notice bad" role="alert">
          {settingsFault.value}
        </p>
      ) : null}
      <MachineSettings />
      <PhonesSettings />
      <BackupsSettings quiltId={log.quilt.id} zone={log.quilt.zone} />
      <QuiltSettings key={log.quilt.id} log={log} />
      <ChangeBar />
    </div>
  );
}

const WAYS: { way: Settings['listening']; name: string; words: string }[] = [
  {
    way: 'held',
    name: 'Held to talk',
    words: 'It listens while a key, a pedal or the thimble is held down.',
  },
  {
    way: 'always',
    name: 'Always',
    words: 'Once begun it listens until you stop it. Talk that is no part of the work is kept beside.',
  },
  { way: 'on-call', name: 'On call', words: 'It waits for a phrase of yours, and stops at another.' },
];

function MachineSettings(): JSX.Element {
  const settings = machineSettings.value ?? UNTIL_KNOWN;
  const change = (changes: Partial<Settings>) => void changeSettings(changes);
  return (
    <section class="settings-group" aria-labelledby="listening-head">
      <h2 id="listening-head">Listening and answering</h2>
      <fieldset>
        <legend>How it listens</legend>
        <div class="ways-of-listening">
          {WAYS.map(({ way, name, words }) => (
            <label key={way} class="tick patch">
              <input
                type="radio"
                name="way"
                checked={settings.listening === way}
                onChange={() => {
                  closeEar();
                  change({ listening: way });
                }}
              />
              <span>
                <strong>{name}</strong>
                <span class="small quiet block">{words}</span>
              </span>
            </label>
          ))}
        </div>
      </fieldset>
      <div class="fields">
        <HeldKey />
        <Typed
          id="call"
          label="Phrase that begins (on call)"
          value={settings.callPhrase}
          onKeep={(callPhrase) => change({ callPhrase })}
        />
        <Typed
          id="dismiss"
          label="Phrase that stops (on call)"
          value={settings.dismissPhrase}
          onKeep={(dismissPhrase) => change({ dismissPhrase })}
        />
        <Field
          id="pause"
          label="Pause that ends a note"
          hint="In thousandths of a second; longer for slow speech"
        >
          {(a) => (
            <input
              {...a}
              type="number"
              min={300}
              max={3000}
              step={50}
              value={settings.endPauseMs}
              onChange={(event) => change({ endPauseMs: Number(event.currentTarget.value) })}
            />
          )}
        </Field>
        <Field
          id="idle"
          label="Minutes of silence that end inferred work"
          hint="Where nothing is said about start and stop"
        >
          {(a) => (
            <input
              {...a}
              type="number"
              min={5}
              max={240}
              value={settings.idleMin}
              onChange={(event) => change({ idleMin: Number(event.currentTarget.value) })}
            />
          )}
        </Field>
        <Field id="theme" label="Light or dark">
          {(a) => (
            <select
              {...a}
              value={settings.theme}
              onChange={(event) => change({ theme: event.currentTarget.value as Settings['theme'] })}
            >
              <option value="system">as this machine has it</option>
              <option value="light">light</option>
              <option value="dark">dark</option>
            </select>
          )}
        </Field>
        <Field
          id="keep"
          label="Sound that is kept"
          hint="Nothing goes that has not been written down; what is there already goes only from Recordings, after you have seen the list"
        >
          {(a) => (
            <select
              {...a}
              value={settings.keepAudio}
              onChange={(event) => change({ keepAudio: event.currentTarget.value as Settings['keepAudio'] })}
            >
              <option value="all">all of it</option>
              <option value="until-record">until the record is made</option>
              <option value="none">none, once it is written down</option>
            </select>
          )}
        </Field>
      </div>
      <label class="tick">
        <input
          type="checkbox"
          checked={settings.tones}
          onChange={(event) => change({ tones: event.currentTarget.checked })}
        />
        Short tones: begins, stops, noted, asks, trouble
      </label>
      <p class="row">
        {(['on', 'off', 'noted', 'ask', 'trouble'] as const).map((tone) => (
          <button key={tone} type="button" class="slight" onClick={() => playTone(tone)}>
            Hear “{{ on: 'begins', off: 'stops', noted: 'noted', ask: 'asks', trouble: 'trouble' }[tone]}”
          </button>
        ))}
      </p>
      <label class="tick">
        <input
          type="checkbox"
          checked={singleKeys.value}
          onChange={(event) => setSingleKeys(event.currentTarget.checked)}
        />
        Single letters are keys on the Frame (N for the note line, S where work was left running, U, O, L and
        Q while the record asks)
      </label>
      <Voice spoken={settings.spokenReplies} onChange={(spokenReplies) => change({ spokenReplies })} />
    </section>
  );
}

function Voice(props: { spoken: boolean; onChange: (on: boolean) => void }): JSX.Element {
  const [name, setName] = useState<string | null>(() => localVoice(pageLocale())?.name ?? null);
  useEffect(() => {
    if (typeof speechSynthesis === 'undefined') return;
    const look = () => setName(localVoice(pageLocale())?.name ?? null);
    speechSynthesis.addEventListener?.('voiceschanged', look);
    look();
    return () => speechSynthesis.removeEventListener?.('voiceschanged', look);
  }, []);
  return (
    <>
      <label class="tick">
        <input
          type="checkbox"
          checked={props.spoken}
          onChange={(event) => props.onChange(event.currentTarget.checked)}
        />
        Spoken answers
      </label>
      <p class="small quiet">
        {name
          ? `The voice is “${name}”, made on this machine.`
          : 'This browser has no voice made on this machine, so it answers by tones and large words. A voice that is made elsewhere is never used.'}
      </p>
    </>
  );
}

/** Waits for the next key and takes it as the one that is held to talk. */
function HeldKey(): JSX.Element {
  const [waiting, setWaiting] = useState(false);
  useEffect(() => {
    if (!waiting) return;
    const take = (event: KeyboardEvent) => {
      event.preventDefault();
      if (event.key !== 'Escape' && event.key !== 'Tab') setHeldKey(event.code || event.key);
      setWaiting(false);
    };
    addEventListener('keydown', take, { once: true, capture: true });
    return () => removeEventListener('keydown', take, { capture: true });
  }, [waiting]);
  return (
    <div class="field">
      <span class="label" id="held-label">
        Key or pedal to hold
      </span>
      <button type="button" aria-describedby="held-label" onClick={() => setWaiting(true)}>
        {waiting ? 'Press the key or pedal…' : keyWords(heldKey.value)}
      </button>
      <span class="hint">A foot pedal acts as a keyboard: press it here once</span>
    </div>
  );
}

/** A text that is kept when the field is left. */
function Typed(props: {
  id: string;
  label: string;
  value: string;
  hint?: string;
  onKeep: (value: string) => void;
}): JSX.Element {
  return (
    <Field id={props.id} label={props.label} {...(props.hint ? { hint: props.hint } : {})}>
      {(a) => (
        <input
          {...a}
          defaultValue={props.value}
          key={props.value}
          autocomplete="off"
          onChange={(event) => {
            const value = event.currentTarget.value.trim();
            if (value !== props.value) props.onKeep(value);
          }}
        />
      )}
    </Field>
  );
}

const TEXTS: { field: keyof QuiltDetails; label: string; hint?: string }[] = [
  { field: 'name', label: 'Name' },
  { field: 'number', label: 'Your own number for it' },
  { field: 'owner', label: 'Owner' },
  { field: 'mender', label: 'Who does the work', hint: 'Signs the papers' },
  { field: 'maker', label: 'Maker, as told' },
  { field: 'madeWhen', label: 'Made when' },
  { field: 'origin', label: 'Where from' },
  { field: 'inscriptions', label: 'Marks and inscriptions' },
  { field: 'construction', label: 'How it is made', hint: 'All in one, or field by field below' },
  { field: 'piecing', label: 'Piecing', hint: 'By hand or machine' },
  { field: 'fastening', label: 'Ties or quilting', hint: 'And how close' },
  { field: 'edgeFinish', label: 'How the edge is bound' },
  { field: 'fibres', label: 'Fibres', hint: 'Of the fabrics and the filling' },
  { field: 'earlierRepairs', label: 'Earlier repairs', hint: 'Also that there are none' },
  { field: 'examination', label: 'How it was examined', hint: 'Light, lying or hanging, with what' },
  { field: 'authority', label: 'Who may decide', hint: 'The owner alone, or others too' },
  { field: 'takenOut', label: 'Taken out', hint: 'Also that nothing was' },
  { field: 'aim', label: 'Aim of the work' },
  { field: 'currency', label: 'Currency', hint: 'Three letters' },
  { field: 'zone', label: 'Time zone of the work' },
];

function QuiltSettings(props: { log: Log }): JSX.Element {
  const { quilt } = props.log;
  const change = (changes: Partial<QuiltDetails>) =>
    void changeLog({ type: 'change-quilt', changes }, 'Quilt changed');
  return (
    <section class="settings-group" aria-labelledby="quilt-head">
      <h2 id="quilt-head">This quilt</h2>
      <div class="fields">
        {TEXTS.map(({ field, label, hint }) => (
          <Typed
            key={field}
            id={`quilt-${field}`}
            label={label}
            {...(hint ? { hint } : {})}
            value={String(quilt[field] ?? '')}
            onKeep={(value) => change({ [field]: field === 'currency' ? value.toUpperCase() : value })}
          />
        ))}
        <Field id="quilt-rows" label="Rows of blocks">
          {(a) => (
            <input
              {...a}
              type="number"
              min={1}
              max={LIMITS.rows}
              value={quilt.rows}
              onChange={(e) => change({ rows: Number(e.currentTarget.value) })}
            />
          )}
        </Field>
        <Field id="quilt-blocks" label="Blocks in a row">
          {(a) => (
            <input
              {...a}
              type="number"
              min={1}
              max={LIMITS.blocks}
              value={quilt.blocks}
              onChange={(e) => change({ blocks: Number(e.currentTarget.value) })}
            />
          )}
        </Field>
        <Field id="quilt-unit" label="Measured in">
          {(a) => (
            <select
              {...a}
              value={quilt.unit}
              onChange={(e) => change({ unit: e.currentTarget.value as 'in' | 'cm' })}
            >
              <option value="in">inches</option>
              <option value="cm">centimetres</option>
            </select>
          )}
        </Field>
        <Field id="quilt-spelling" label="Words and spelling">
          {(a) => (
            <select
              {...a}
              value={quilt.spelling}
              onChange={(e) => change({ spelling: e.currentTarget.value as 'british' | 'american' })}
            >
              <option value="british">British</option>
              <option value="american">American</option>
            </select>
          )}
        </Field>
      </div>
      <ShapeOfQuilt log={props.log} />
      <Fabrics log={props.log} onChange={(fabrics) => change({ fabrics })} />
      <Taught log={props.log} />
      <Discard log={props.log} />
      <RemoveForGood log={props.log} />
    </section>
  );
}

/** The shape of the top and the names of its places, kept together: one may lean on the other. */
function ShapeOfQuilt(props: { log: Log }): JSX.Element {
  const { quilt } = props.log;
  const stored = JSON.stringify([quilt.rows, quilt.blocks, quilt.shape, quilt.placeNames]);
  const [draft, setDraft] = useState<ShapeDraft>(() => draftOfShape(quilt));
  const [from, setFrom] = useState(stored);
  const [faults, setFaults] = useState<ShapeFaults>({});
  // Changed elsewhere, in another window or by the fields above: the form follows.
  if (from !== stored) {
    setFrom(stored);
    setDraft(draftOfShape(quilt));
    setFaults({});
  }
  const read = readShape(draft, quilt);
  const keep = () => {
    if ('faults' in read) return setFaults(read.faults);
    setFaults({});
    const { rows, blocks, shape = {}, placeNames = {} } = read.grid;
    void changeLog({ type: 'change-quilt', changes: { rows, blocks, shape, placeNames } }, 'Shape changed');
  };
  return (
    <fieldset>
      <legend>Shape and places</legend>
      <details open={Boolean(quilt.shape && Object.keys(quilt.shape).length) || Boolean(draft.names.length)}>
        <summary>The blocks are no plain grid, or have names of their own</summary>
        <form
          class="shape-of-quilt"
          onSubmit={(event) => {
            event.preventDefault();
            keep();
          }}
        >
          <div>
            <ShapeFields draft={draft} faults={faults} onChange={setDraft} />
            <p class="row">
              <button type="submit">Keep the shape and the names</button>
            </p>
          </div>
          <div class="shape-preview">
            <QuiltMap
              picture={{
                grid: 'grid' in read ? read.grid : quilt,
                places: new Map(),
                sides: {},
                sashed: false,
              }}
              moment="now"
              title={shapeWords('grid' in read ? read.grid : quilt)}
              palette={PAGE_PALETTE}
              id="shape"
            />
          </div>
        </form>
      </details>
    </fieldset>
  );
}

function Fabrics(props: { log: Log; onChange: (fabrics: Record<string, string[]>) => void }): JSX.Element {
  const { quilt } = props.log;
  const fabrics = quilt.fabrics ?? {};
  const [name, setName] = useState('');
  const [places, setPlaces] = useState('');
  const [fault, setFault] = useState('');
  return (
    <fieldset>
      <legend>Fabrics named</legend>
      {Object.entries(fabrics).length ? (
        <ul class="plain named">
          {Object.entries(fabrics).map(([fabric, at]) => (
            <li key={fabric}>
              <span>
                <strong>{fabric}</strong> <span class="quiet">{at.join(', ') || 'no block named yet'}</span>
              </span>
              <button
                type="button"
                class="slight"
                onClick={() =>
                  props.onChange(
                    Object.fromEntries(Object.entries(fabrics).filter(([other]) => other !== fabric)),
                  )
                }
              >
                Leave out<span class="sr-only"> {fabric}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p class="quiet">None yet.</p>
      )}
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          const read = readPlaces(places, quilt);
          if (!name.trim()) setFault('Give the fabric a name.');
          else if (!Array.isArray(read)) setFault(read.fault);
          else {
            setFault('');
            props.onChange({ ...fabrics, [name.trim().toLowerCase()]: read });
            setName('');
            setPlaces('');
          }
        }}
      >
        <Field id="fabric-name" label="Fabric" fault={fault || undefined}>
          {(a) => (
            <input {...a} value={name} maxLength={100} onInput={(e) => setName(e.currentTarget.value)} />
          )}
        </Field>
        <Field id="fabric-places" label="In the blocks" hint="1-2, 4-4; 3-* is all of row 3">
          {(a) => <input {...a} value={places} onInput={(e) => setPlaces(e.currentTarget.value)} />}
        </Field>
        <p class="row">
          <button type="submit">Name it</button>
        </p>
      </form>
    </fieldset>
  );
}

function Taught(props: { log: Log }): JSX.Element {
  const taught = Object.entries(props.log.quilt.taught ?? {});
  const [heard, setHeard] = useState('');
  const [means, setMeans] = useState('');
  return (
    <fieldset>
      <legend>Words of your own</legend>
      <p class="quiet">A word that it hears or reads wrongly, and what you mean by it.</p>
      {taught.length ? (
        <ul>
          {taught.map(([word, meaning]) => (
            <li key={word}>
              “{word}” means {meaning}
            </li>
          ))}
        </ul>
      ) : null}
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          if (!heard.trim() || !means.trim()) return;
          void changeLog(
            { type: 'teach-word', heard: heard.trim(), means: means.trim() },
            `“${heard.trim()}” is learnt`,
          ).then((done) => {
            if (!done) return;
            setHeard('');
            setMeans('');
          });
        }}
      >
        <Field id="taught-heard" label="When it hears">
          {(a) => (
            <input {...a} value={heard} maxLength={60} onInput={(e) => setHeard(e.currentTarget.value)} />
          )}
        </Field>
        <Field id="taught-means" label="I mean">
          {(a) => (
            <input {...a} value={means} maxLength={60} onInput={(e) => setMeans(e.currentTarget.value)} />
          )}
        </Field>
        <p class="row">
          <button type="submit">Teach it</button>
        </p>
      </form>
    </fieldset>
  );
}

/** Removes a quilt, or all there is of its owner, asked for twice; what stays elsewhere is said when it is done. */
function RemoveForGood(props: { log: Log }): JSX.Element {
  const { id, name, owner } = props.log.quilt;
  const [sure, setSure] = useState<'good' | 'owner'>();
  const [told, setTold] = useState<{ fault: boolean; words: string }>();
  const remove = (how: 'good' | 'owner'): void => {
    api<{ message: string }>(`/api/quilts/${encodeURIComponent(id)}?for=${how}`, { method: 'DELETE' }).then(
      ({ message }) => setTold({ fault: false, words: message }),
      (why: unknown) => setTold({ fault: true, words: why instanceof Error ? why.message : String(why) }),
    );
  };
  if (told && !told.fault) {
    return (
      <fieldset>
        <legend>Remove for good</legend>
        <p role="status">{told.words}</p>
        <p class="row">
          <button type="button" onClick={() => goTo('#/')}>
            To the quilts
          </button>
        </p>
      </fieldset>
    );
  }
  return (
    <fieldset>
      <legend>Remove for good</legend>
      <p class="quiet">
        Everything of it goes, also from the trash, and can not be put back from here. Where backups are kept,
        they stay for thirty days and then go too.
      </p>
      <p class="row">
        {sure ? (
          <>
            <button type="button" class="warn" onClick={() => remove(sure)}>
              {sure === 'good' ? `Yes, remove “${name}”` : `Yes, remove every quilt of ${owner}`}
            </button>
            <button type="button" onClick={() => setSure(undefined)}>
              Keep it
            </button>
          </>
        ) : (
          <>
            <button type="button" class="warn" onClick={() => setSure('good')}>
              Remove this quilt
            </button>
            {owner.trim() ? (
              <button type="button" class="warn" onClick={() => setSure('owner')}>
                Remove everything of {owner}
              </button>
            ) : null}
          </>
        )}
      </p>
      {told ? (
        <p class="fault" role="alert">
          {told.words}
        </p>
      ) : null}
    </fieldset>
  );
}

/** Moves the quilt to the trash folder, asked for twice. */
function Discard(props: { log: Log }): JSX.Element {
  const { quilt } = props.log;
  const [sure, setSure] = useState(false);
  const [fault, setFault] = useState('');
  return (
    <fieldset>
      <legend>Put this quilt away</legend>
      <p class="quiet">
        It goes to the trash folder of the data folder, with its sound and photographs, and can be put back
        from there by hand. Take its archive first, from the record’s page.
      </p>
      <p class="row">
        {sure ? (
          <>
            <button
              type="button"
              class="warn"
              onClick={() => {
                api(`/api/quilts/${encodeURIComponent(quilt.id)}`, { method: 'DELETE' }).then(
                  () => goTo('#/'),
                  (why: unknown) => setFault(why instanceof Error ? why.message : String(why)),
                );
              }}
            >
              Yes, move “{quilt.name}” to the trash
            </button>
            <button type="button" onClick={() => setSure(false)}>
              Keep it
            </button>
          </>
        ) : (
          <button type="button" class="warn" onClick={() => setSure(true)}>
            Move to the trash
          </button>
        )}
      </p>
      {fault ? (
        <p class="fault" role="alert">
          {fault}
        </p>
      ) : null}
    </fieldset>
  );
}
