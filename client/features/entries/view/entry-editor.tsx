import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import { sameEntry } from '../../../../core/log/same-entry.ts';
import type { LoggedEntry, LoggedNote } from '../../../../core/log/state.ts';
import type { Entry } from '../../../../shared/entry.ts';
import type { Quilt } from '../../../../shared/quilt.ts';
import { KINDS, type Kind, PARTS } from '../../../../shared/vocabulary.ts';
import { entryWords } from '../../../words/entry-words.ts';
import { onePlaceWords } from '../../../words/place-words.ts';
import { type TradeLabels, tradeLabels } from '../../../words/trade-labels.ts';
import { Field } from '../../shell/view/field.tsx';
import { changeFault, changeLog } from '../state/change-log.ts';
import {
  ENTRY_FIELDS,
  entryOfForm,
  type FormField,
  type FormValues,
  formValues,
} from '../state/entry-form.ts';

const KIND_WORDS: Record<Kind, string> = {
  condition: 'Something found',
  treatment: 'Something done or to do',
  material: 'Material',
  measurement: 'A measure',
  work: 'Time at work',
  decision: 'A matter of the whole job',
  remark: 'A remark',
};

/** What is being put right (`entry`), or put in anew for a note or by hand. */
export type Editing = { entry?: LoggedEntry; note?: LoggedNote; focus?: 'places' };

/** The form in which an entry is put right, moved, or put in by hand. */
export function EntryEditor(props: { editing: Editing; log: Log; onClose: () => void }): JSX.Element {
  const { editing, log } = props;
  const { quilt } = log;
  const [kind, setKind] = useState<Kind>(editing.entry?.entry.kind ?? 'remark');
  const [values, setValues] = useState<FormValues>(() =>
    editing.entry ? formValues(editing.entry.entry) : {},
  );
  const [faults, setFaults] = useState<Record<string, string>>({});
  // What the entry said when she last saw it here: another window may put the same entry right meanwhile.
  const [seen, setSeen] = useState(editing.entry?.entry);
  const now = editing.entry ? log.entry(editing.entry.id)?.entry : undefined;
  const gone = Boolean(editing.entry) && now === undefined;
  const changed = seen !== undefined && now !== undefined && !sameEntry(seen, now);
  const dialog = useRef<HTMLDialogElement>(null);
  const say = tradeLabels(quilt.spelling);

  useEffect(() => {
    const box = dialog.current!;
    if (!box.open) box.showModal();
    const first = editing.focus ? box.querySelector<HTMLElement>('[id="edit-places"]') : null;
    (first ?? box.querySelector<HTMLElement>('select, input'))?.focus();
  }, [editing]);

  /** `over`: what another window made of the entry, which she has seen and puts hers over. */
  const keep = async (over?: Entry) => {
    const read = entryOfForm(kind, values, quilt);
    if ('faults' in read) {
      setFaults(read.faults);
      dialog.current?.querySelector<HTMLElement>(`[id="edit-${Object.keys(read.faults)[0]}"]`)?.focus();
      return;
    }
    const done =
      editing.entry && !gone
        ? await changeLog(
            {
              type: 'correct-entry',
              entryId: editing.entry.id,
              entry: read.entry,
              ...(seen ? { was: over ?? seen } : {}),
            },
            'Put right',
          )
        : await changeLog(
            {
              type: 'add-entry',
              entry: read.entry,
              ...(editing.note ? { noteId: editing.note.note.id } : {}),
            },
            'Put in',
          );
    if (done) props.onClose();
    else
      setFaults({
        whole: `It was not taken. ${changeFault.peek() ?? ''} What you have put in is still here.`,
      });
  };

  return (
    <dialog ref={dialog} aria-labelledby="edit-head" onClose={props.onClose}>
      <form
        class="entry-editor"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          if (!changed) void keep();
        }}
      >
        <h2 id="edit-head">
          {editing.entry ? (editing.focus ? 'Where was it?' : 'Put it right') : 'Put in an entry'}
        </h2>
        {editing.note ? <p class="quiet">“{editing.note.note.text.slice(0, 400)}”</p> : null}
        <div class="fields">
          <Field id="edit-kind" label="What it is">
            {(a) => (
              <select
                {...a}
                value={kind}
                onChange={(event) => {
                  setKind(event.currentTarget.value as Kind);
                  setFaults({});
                }}
              >
                {KINDS.map((name) => (
                  <option key={name} value={name}>
                    {KIND_WORDS[name]}
                  </option>
                ))}
              </select>
            )}
          </Field>
          {ENTRY_FIELDS[kind].map((field) => (
            <OneField
              key={field.slot}
              field={field}
              value={values[field.slot] ?? ''}
              fault={faults[field.slot]}
              say={say}
              onChange={(value) => setValues({ ...values, [field.slot]: value })}
            />
          ))}
        </div>
        {gone ? (
          <p class="notice" role="alert">
            This entry was taken out in another window meanwhile. What you have put in is still here: keep it
            as an entry of its own, or leave it.
          </p>
        ) : null}
        {changed ? (
          <p class="notice" role="alert">
            Put right in another window meanwhile. It now says: {inWords(now, quilt)}. What you have put in is
            still here.
          </p>
        ) : null}
        {faults.whole && !changed ? (
          <p class="fault" role="alert">
            {faults.whole}
          </p>
        ) : null}
        <p class="row">
          {changed ? (
            <>
              <button type="button" class="chief" onClick={() => void keep(now)}>
                Put mine over it
              </button>
              <button
                type="button"
                onClick={() => {
                  setSeen(now);
                  setKind(now.kind);
                  setValues(formValues(now));
                  setFaults({});
                }}
              >
                Take what it says now
              </button>
            </>
          ) : (
            <button type="submit" class="chief">
              {gone ? 'Keep it as a new entry' : 'Keep it so'}
            </button>
          )}
          <button type="button" onClick={() => dialog.current?.close()}>
            Leave it
          </button>
        </p>
      </form>
      <datalist id="parts">
        {PARTS.map((part) => (
          <option key={part} value={part}>
            {onePlaceWords(part, quilt.spelling)}
          </option>
        ))}
      </datalist>
    </dialog>
  );
}

const inWords = (entry: Entry, quilt: Quilt): string => {
  const { what, where } = entryWords(entry, quilt);
  return where ? `${what}, ${where}` : what;
};

function OneField(props: {
  field: FormField;
  value: string;
  fault: string | undefined;
  say: TradeLabels;
  onChange: (value: string) => void;
}): JSX.Element {
  const { field, value, fault, say, onChange } = props;
  const id = `edit-${field.slot}`;
  if (field.as === 'tick') {
    return (
      <label class="tick">
        <input
          id={id}
          type="checkbox"
          checked={value === 'yes'}
          onChange={(event) => onChange(event.currentTarget.checked ? 'yes' : '')}
        />
        {field.name}
      </label>
    );
  }
  return (
    <Field
      id={id}
      label={field.name}
      fault={fault}
      {...(field.as === 'places'
        ? { hint: 'Blocks as 3-2 (3-* is row 3), or parts such as border-top' }
        : {})}
    >
      {(a) =>
        field.as === 'choice' ? (
          <select {...a} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
            {field.needed ? null : <option value="">not said</option>}
            {field.needed && !value ? <option value="">choose</option> : null}
            {field.options.map((option) => (
              <option key={option} value={option}>
                {optionWords(field.slot, option, say)}
              </option>
            ))}
          </select>
        ) : (
          <input
            {...a}
            value={value}
            {...(field.as === 'moment' ? { type: 'datetime-local' } : {})}
            {...(field.as === 'number' ? { inputMode: 'decimal' as const } : {})}
            {...(field.as === 'places' ? { list: 'parts', autocomplete: 'off' } : {})}
            onInput={(event) => onChange(event.currentTarget.value)}
          />
        )
      }
    </Field>
  );
}

function optionWords(slot: string, option: string, say: TradeLabels): string {
  const by: Record<string, (value: never) => string> = {
    finding: say.finding,
    action: say.toDo,
    state: say.state,
    object: say.object,
    stitch: say.stitch,
    material: say.material,
    use: say.use,
    of: say.measure,
    task: say.task,
    about: say.topic,
  };
  if (slot === 'unit') return say.unit(option as never, 2);
  if (slot === 'status') return option === 'open' ? 'open' : 'settled';
  return by[slot]?.(option as never) ?? option;
}
