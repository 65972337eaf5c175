import type { JSX } from 'preact';
import { Field } from '../../shell/view/field.tsx';
import type { ShapeDraft, ShapeFaults } from '../state/read-shape.ts';

/** The fields for a top that is no plain grid, and for the names of its places. */
export function ShapeFields(props: {
  draft: ShapeDraft;
  faults: ShapeFaults;
  onChange: (draft: ShapeDraft) => void;
}): JSX.Element {
  const { draft, faults, onChange } = props;
  const set = (changes: Partial<ShapeDraft>) => onChange({ ...draft, ...changes });
  const setName = (id: number, changes: { name?: string; places?: string }) =>
    set({ names: draft.names.map((one) => (one.id === id ? { ...one, ...changes } : one)) });
  return (
    <>
      <div class="fields">
        <Field
          id="row-lengths"
          label="Blocks in each row, from the top"
          fault={faults.rowLengths}
          hint="Such as 5, 4, 5, 4, 5; empty where all rows have the same"
        >
          {(a) => (
            <input
              {...a}
              value={draft.rowLengths}
              autocomplete="off"
              onInput={(e) => set({ rowLengths: e.currentTarget.value })}
            />
          )}
        </Field>
        <Field
          id="short-rows"
          label="A row with fewer blocks"
          hint="Hexagons lie in the notches by themselves"
        >
          {(a) => (
            <select
              {...a}
              value={draft.shortRows}
              onChange={(e) => set({ shortRows: e.currentTarget.value as ShapeDraft['shortRows'] })}
            >
              <option value="stretched">fills the width with wider blocks</option>
              <option value="left">lies to the left</option>
              <option value="centred">lies in the middle</option>
              <option value="right">lies to the right</option>
            </select>
          )}
        </Field>
        <Field id="outline" label="The blocks are">
          {(a) => (
            <select
              {...a}
              value={draft.outline}
              onChange={(e) => set({ outline: e.currentTarget.value as ShapeDraft['outline'] })}
            >
              <option value="square">squares or rectangles</option>
              <option value="hexagon">hexagons in rows</option>
            </select>
          )}
        </Field>
        <Field
          id="wide"
          label="Blocks that take more than one place"
          fault={faults.wide ?? faults.shape}
          hint="A centre over nine places: 2-2 to 4-4; more of them after a semicolon"
        >
          {(a) => (
            <input
              {...a}
              value={draft.wide}
              autocomplete="off"
              onInput={(e) => set({ wide: e.currentTarget.value })}
            />
          )}
        </Field>
      </div>
      <fieldset>
        <legend>Names for places</legend>
        <p class="quiet">
          Name a block as you call it, and “the medallion is torn” says where. A name may be for several
          blocks.
        </p>
        {draft.names.map((one) => (
          <div class="fabric-row" key={one.id}>
            <Field id={`name-${one.id}`} label="Called" fault={faults[`name-${one.id}`]}>
              {(a) => (
                <input
                  {...a}
                  value={one.name}
                  maxLength={60}
                  autocomplete="off"
                  onInput={(e) => setName(one.id, { name: e.currentTarget.value })}
                />
              )}
            </Field>
            <Field id={`name-places-${one.id}`} label="Block or blocks">
              {(a) => (
                <input
                  {...a}
                  value={one.places}
                  autocomplete="off"
                  onInput={(e) => setName(one.id, { places: e.currentTarget.value })}
                />
              )}
            </Field>
            <button
              type="button"
              onClick={() => set({ names: draft.names.filter((other) => other.id !== one.id) })}
            >
              Leave out<span class="sr-only"> {one.name || 'this name'}</span>
            </button>
          </div>
        ))}
        <p class="row">
          <button
            type="button"
            onClick={() =>
              set({
                names: [...draft.names, { id: (draft.names.at(-1)?.id ?? 0) + 1, name: '', places: '' }],
              })
            }
          >
            Add a name
          </button>
        </p>
      </fieldset>
    </>
  );
}
