import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { shapeWords } from '../../../../core/shape/shape-words.ts';
import { LIMITS } from '../../../../shared/limits.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { QuiltMap } from '../../../charts/quilt-map.tsx';
import { api, Refusal } from '../../link/state/api.ts';
import { goTo, pageAddress } from '../../shell/state/route.ts';
import { Field } from '../../shell/view/field.tsx';
import { readPlaces } from '../state/read-places.ts';
import { draftOfShape, readShape, type ShapeDraft, type ShapeFaults } from '../state/read-shape.ts';
import { ShapeFields } from './shape-fields.tsx';
import './quilts.css';

type Draft = {
  name: string;
  owner: string;
  rows: string;
  blocks: string;
  unit: 'in' | 'cm';
  zone: string;
  currency: string;
  spelling: 'british' | 'american';
};

const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
const american = (): boolean => typeof navigator !== 'undefined' && navigator.language === 'en-US';

/** The form for a new quilt. What is wrong with a field is said beside it. */
export function MakeQuiltPage(): JSX.Element {
  const [draft, setDraft] = useState<Draft>(() => ({
    name: '',
    owner: '',
    rows: '',
    blocks: '',
    unit: 'in',
    zone: ownZone(),
    currency: american() ? 'USD' : 'GBP',
    spelling: american() ? 'american' : 'british',
  }));
  const [fabrics, setFabrics] = useState<{ id: number; name: string; places: string }[]>([]);
  const [faults, setFaults] = useState<Record<string, string>>({});
  const [busy, setBusy] = useState(false);
  const set = (changes: Partial<Draft>) => setDraft({ ...draft, ...changes });
  const rows = Number(draft.rows);
  const blocks = Number(draft.blocks);
  const [shaped, setShaped] = useState(false);
  const [shape, setShape] = useState<ShapeDraft>(() => draftOfShape({ rows: 1, blocks: 1 }));
  const [shapeFaults, setShapeFaults] = useState<ShapeFaults>({});
  const plainKnown = isCount(rows, LIMITS.rows) && isCount(blocks, LIMITS.blocks);
  const read =
    shaped && (plainKnown || shape.rowLengths.trim()) ? readShape(shape, { rows, blocks }) : undefined;
  const readGrid = read && 'grid' in read ? read.grid : undefined;
  const grid: QuiltGrid | undefined = readGrid ?? (plainKnown ? { rows, blocks } : undefined);

  const make = async () => {
    const found: Record<string, string> = {};
    if (!draft.name.trim()) found.name = 'Give the quilt a name, such as the pattern or whose it is.';
    const sized = shaped && readGrid && isCount(readGrid.rows, LIMITS.rows) && shape.rowLengths.trim();
    if (!sized && !isCount(rows, LIMITS.rows)) found.rows = `A whole number from 1 to ${LIMITS.rows}.`;
    if (!sized && !isCount(blocks, LIMITS.blocks))
      found.blocks = `A whole number from 1 to ${LIMITS.blocks}.`;
    if (!/^[A-Za-z]{3}$/.test(draft.currency)) found.currency = 'Three letters, such as GBP, USD or EUR.';
    const named: Record<string, string[]> = {};
    fabrics.forEach((fabric) => {
      if (!fabric.name.trim() && !fabric.places.trim()) return;
      if (!fabric.name.trim()) {
        found[`fabric-${fabric.id}`] = 'Give the fabric a name, such as brown gingham.';
        return;
      }
      const places = grid ? readPlaces(fabric.places, grid) : [];
      if (Array.isArray(places)) named[fabric.name.trim().toLowerCase()] = places;
      else found[`fabric-${fabric.id}`] = places.fault;
    });
    const unshaped = read && 'faults' in read ? read.faults : {};
    setShapeFaults(unshaped);
    if (unshaped.rowLengths) found['row-lengths'] = unshaped.rowLengths;
    if (unshaped.wide || unshaped.shape) found.wide = unshaped.wide ?? unshaped.shape!;
    for (const [name, fault] of Object.entries(unshaped)) if (name.startsWith('name-')) found[name] = fault!;
    setFaults(found);
    const first = Object.keys(found)[0];
    if (first) {
      document.getElementById(first)?.focus();
      return;
    }
    setBusy(true);
    try {
      const made = await api<{ id?: string; quilt?: { id: string } }>('/api/quilts', {
        json: {
          ...draft,
          name: draft.name.trim(),
          currency: draft.currency.toUpperCase(),
          ...(readGrid ?? { rows, blocks }),
          ...(Object.keys(named).length ? { fabrics: named } : {}),
        },
      });
      goTo(pageAddress(made.id ?? made.quilt!.id, 'frame'));
    } catch (why) {
      setFaults(
        why instanceof Refusal && Object.keys(why.fields).length
          ? why.fields
          : { whole: why instanceof Error ? why.message : String(why) },
      );
    } finally {
      setBusy(false);
    }
  };

  return (
    <form
      class="make-quilt"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void make();
      }}
    >
      <header class="page-head">
        <h1>Make a quilt</h1>
        <a href="#/">Back to the quilts</a>
        <p>Only the name and the grid are needed now. All of it can be changed later.</p>
      </header>
      <div class="make-grid">
        <div class="fields">
          <Field
            id="name"
            label="Name of the quilt"
            fault={faults.name}
            hint="How you speak of it: the pattern, or whose it was"
          >
            {(a) => (
              <input
                {...a}
                value={draft.name}
                maxLength={200}
                autocomplete="off"
                onInput={(e) => set({ name: e.currentTarget.value })}
              />
            )}
          </Field>
          <Field id="owner" label="Owner" fault={faults.owner} hint="May stay empty">
            {(a) => (
              <input
                {...a}
                value={draft.owner}
                maxLength={200}
                autocomplete="off"
                onInput={(e) => set({ owner: e.currentTarget.value })}
              />
            )}
          </Field>
          <Field id="rows" label="Rows of blocks" fault={faults.rows} hint="Counted from the top">
            {(a) => (
              <input
                {...a}
                inputMode="numeric"
                value={draft.rows}
                onInput={(e) => set({ rows: e.currentTarget.value })}
              />
            )}
          </Field>
          <Field id="blocks" label="Blocks in a row" fault={faults.blocks} hint="Counted from the left">
            {(a) => (
              <input
                {...a}
                inputMode="numeric"
                value={draft.blocks}
                onInput={(e) => set({ blocks: e.currentTarget.value })}
              />
            )}
          </Field>
          <Field id="unit" label="Measured in" fault={faults.unit}>
            {(a) => (
              <select
                {...a}
                value={draft.unit}
                onChange={(e) => set({ unit: e.currentTarget.value as 'in' | 'cm' })}
              >
                <option value="in">inches</option>
                <option value="cm">centimetres</option>
              </select>
            )}
          </Field>
          <Field id="spelling" label="Words and spelling" fault={faults.spelling}>
            {(a) => (
              <select
                {...a}
                value={draft.spelling}
                onChange={(e) => set({ spelling: e.currentTarget.value as Draft['spelling'] })}
              >
                <option value="british">British</option>
                <option value="american">American</option>
              </select>
            )}
          </Field>
          <Field id="currency" label="Currency" fault={faults.currency} hint="Three letters">
            {(a) => (
              <input
                {...a}
                value={draft.currency}
                maxLength={3}
                autocomplete="off"
                onInput={(e) => set({ currency: e.currentTarget.value })}
              />
            )}
          </Field>
          <Field id="zone" label="Time zone of the work" fault={faults.zone} hint="Taken from this browser">
            {(a) => <ZoneInput {...a} value={draft.zone} onChange={(zone) => set({ zone })} />}
          </Field>
        </div>
        <div class="make-preview">
          {grid ? (
            <QuiltMap
              picture={{ grid, places: new Map(), sides: {}, sashed: false }}
              moment="now"
              title={shapeWords(grid)}
              palette={PAGE_PALETTE}
            />
          ) : (
            <p class="quiet small">The grid shows here once you have given rows and blocks.</p>
          )}
          {grid ? (
            <p class="quiet small">Row 1 is at the top, block 1 at the left: row 2, block 1 is 2-1.</p>
          ) : null}
        </div>
      </div>
      <details
        class="shape-details"
        open={shaped}
        onToggle={(event) => setShaped((event.currentTarget as HTMLDetailsElement).open)}
      >
        <summary>The blocks are no plain grid, or have names of their own</summary>
        <p class="quiet">
          Rows of different lengths, a block over two places, a large centre, hexagons in rows: say it here,
          and the drawing above and all that you say afterwards go by it.
        </p>
        <ShapeFields draft={shape} faults={shapeFaults} onChange={setShape} />
      </details>
      <fieldset>
        <legend>Fabrics you can tell apart</legend>
        <p class="quiet">
          Name them and you can say “all the gingham ones”. They can be named later too. Blocks as 1-2, 4-4;
          3-* is all of row 3.
        </p>
        {fabrics.map((fabric) => (
          <div class="fabric-row" key={fabric.id}>
            <Field id={`fabric-${fabric.id}`} label="Fabric" fault={faults[`fabric-${fabric.id}`]}>
              {(a) => (
                <input
                  {...a}
                  value={fabric.name}
                  maxLength={100}
                  onInput={(e) =>
                    setFabrics(
                      fabrics.map((f) => (f.id === fabric.id ? { ...f, name: e.currentTarget.value } : f)),
                    )
                  }
                />
              )}
            </Field>
            <Field id={`places-${fabric.id}`} label="In the blocks">
              {(a) => (
                <input
                  {...a}
                  value={fabric.places}
                  onInput={(e) =>
                    setFabrics(
                      fabrics.map((f) => (f.id === fabric.id ? { ...f, places: e.currentTarget.value } : f)),
                    )
                  }
                />
              )}
            </Field>
            <button type="button" onClick={() => setFabrics(fabrics.filter((f) => f.id !== fabric.id))}>
              Leave out<span class="sr-only"> {fabric.name || 'this fabric'}</span>
            </button>
          </div>
        ))}
        <p class="row">
          <button
            type="button"
            onClick={() =>
              setFabrics([...fabrics, { id: (fabrics.at(-1)?.id ?? 0) + 1, name: '', places: '' }])
            }
          >
            Add a fabric
          </button>
        </p>
      </fieldset>
      {faults.whole || faults.body ? (
        <p class="notice bad" role="alert">
          {faults.whole ?? faults.body}
        </p>
      ) : null}
      <p class="row">
        <button type="submit" class="chief" disabled={busy}>
          Make it
        </button>
        <a class="tab" href="#/">
          Leave it
        </a>
      </p>
    </form>
  );
}

function ZoneInput(props: { value: string; onChange: (zone: string) => void; id: string }): JSX.Element {
  const { value, onChange, ...rest } = props;
  const zones = Intl.supportedValuesOf('timeZone');
  return (
    <>
      <input
        {...rest}
        list="zones"
        value={value}
        autocomplete="off"
        onInput={(e) => onChange(e.currentTarget.value)}
      />
      <datalist id="zones">
        {zones.map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
    </>
  );
}

const isCount = (n: number, most: number): boolean => Number.isInteger(n) && n >= 1 && n <= most;
