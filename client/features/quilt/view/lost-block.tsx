import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import type { LoggedEntry } from '../../../../core/log/state.ts';
import { shapeWords } from '../../../../core/shape/shape-words.ts';
import type { Place } from '../../../../shared/entry.ts';
import type { Command } from '../../../../shared/wire.ts';
import { changeTogether } from '../../entries/state/change-log.ts';
import { placesOfForm } from '../../entries/state/entry-form.ts';
import { Field } from '../../shell/view/field.tsx';

/** What was said of a block that the quilt has not got now is kept; here it is asked which block is meant. */
export function LostBlock(props: {
  log: Log;
  place: Place;
  entries: LoggedEntry[];
  onMoved: (place: Place | null) => void;
}): JSX.Element {
  const { log, place, entries } = props;
  const [to, setTo] = useState('');
  const [fault, setFault] = useState('');
  const [busy, setBusy] = useState(false);
  const move = async () => {
    const read = placesOfForm(to, log.quilt);
    if (!Array.isArray(read)) return setFault(read.fault);
    if (!read.length) return setFault('Say which block it is, such as 3-2.');
    const instead = (places: readonly Place[]): Place[] => [
      ...new Set(places.flatMap((one) => (one === place ? read : one))),
    ];
    setFault('');
    setBusy(true);
    const said = `Moved from ${place} to ${read.join(', ')}`;
    const moves: Command[] = [];
    for (const { id, entry } of entries) {
      if (!('places' in entry) || !entry.places?.includes(place)) continue;
      moves.push({
        type: 'correct-entry',
        entryId: id,
        entry: { ...entry, places: instead(entry.places) },
        was: entry,
      });
    }
    for (const photo of log.photos) {
      if (!photo.places.includes(place)) continue;
      moves.push({ type: 'change-photo', photoId: photo.id, places: instead(photo.places) });
    }
    const done = await changeTogether(moves, said);
    setBusy(false);
    if (done) props.onMoved(read[0]!);
  };
  return (
    <form
      class="notice"
      onSubmit={(event) => {
        event.preventDefault();
        void move();
      }}
    >
      <p>
        This quilt has no block {place} now ({shapeWords(log.quilt)}). What was said of it is kept. Which
        block is it?
      </p>
      <Field id="lost-to" label="It is block" fault={fault || undefined} hint="Such as 3-2">
        {(a) => <input {...a} value={to} autocomplete="off" onInput={(e) => setTo(e.currentTarget.value)} />}
      </Field>
      <p class="row no-print">
        <button type="submit" disabled={busy}>
          Move it there
        </button>
      </p>
    </form>
  );
}
