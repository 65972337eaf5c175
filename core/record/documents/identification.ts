import type { QuiltGrid } from '../../../shared/quilt.ts';
import { shapeOf } from '../../shape/shape-of.ts';
import { shapeWords } from '../../shape/shape-words.ts';
import type { Passage } from '../document-model.ts';
import { paragraph, passage } from '../passage.ts';
import type { MeasurementFact, RecordView } from '../record-view.ts';
import { countPhrase, datePhrase, eighths, lengthPhrase } from '../wording/figure-phrases.ts';
import { INCHES_PER } from '../wording/inches-per.ts';
import { listPhrase } from '../wording/list-phrase.ts';
import { sentence } from '../wording/sentence.ts';

/** The last measurement of each kind taken of the quilt as a whole (or of no named place). */
export function wholeMeasure(view: RecordView, of: MeasurementFact['of']): MeasurementFact | undefined {
  return view.measurements.findLast(
    (one) => one.of === of && (one.places.length === 0 || one.places.includes('quilt')),
  );
}

/** The front of every file: what the piece is. Rows without a value are left out; the checklist asks for them. */
export function identification(view: RecordView): Passage {
  const { quilt, grid } = view;
  const rows: [string, string][] = [['Quilt', quilt.name]];
  const add = (name: string, value: string | undefined): void => {
    if (value) rows.push([name, value.replaceAll('\n', ' ')]);
  };
  add('Number', quilt.number);
  add('Owner', quilt.owner);
  add('Who may decide', quilt.authority);
  add('Maker, as told', quilt.maker);
  add('Origin, as told', quilt.origin);
  add('Made', quilt.madeWhen);
  add('Marks and inscriptions', quilt.inscriptions);
  add('Size', sizePhrase(view));
  add('Layout', layoutPhrase(grid));
  add('Parts', partsPhrase(view));
  return passage('identification', rows, [], [{ type: 'terms', rows }]);
}

export function layoutPhrase(grid: QuiltGrid): string {
  const { rows, blocks } = grid;
  const total = shapeOf(grid).blocks.length;
  if (total === 1) return 'one block';
  if (grid.shape)
    return `${total} ${grid.shape.outline === 'hexagon' ? 'hexagons' : 'blocks'}: ${shapeWords(grid)}`;
  return `${total} blocks: ${rows === 1 ? 'one row' : `${countPhrase(rows)} rows`} of ${countPhrase(blocks)}`;
}

/** "62½ × 84 in", or nothing where it was not measured. */
export function sizePhrase(view: RecordView): string | undefined {
  const { unit } = view.quilt;
  const side = (...names: MeasurementFact['of'][]): number | undefined => {
    const found = names.flatMap((name) => wholeMeasure(view, name) ?? []);
    if (!found.length) return undefined;
    const inches = found.map((one) => one.value * INCHES_PER[one.unit]);
    return inches.reduce((sum, one) => sum + one, 0) / inches.length;
  };
  const width = side('width') ?? side('side-top', 'side-bottom');
  const length = side('length') ?? side('side-left', 'side-right');
  if (width === undefined && length === undefined) return undefined;
  const say = (inches: number | undefined): string =>
    inches === undefined
      ? 'not measured'
      : unit === 'in'
        ? eighths(Math.round(inches * 8) / 8)
        : String(Math.round(inches * 25.4) / 10);
  return width !== undefined && length !== undefined
    ? `${say(width)} × ${say(length)} ${unit} (width × length)`
    : `${width === undefined ? 'length' : 'width'} ${say(width ?? length)} ${unit}`;
}

function partsPhrase(view: RecordView): string | undefined {
  const told = new Set<string>();
  for (const fact of [...view.findings, ...view.treatments, ...view.measurements]) {
    for (const place of fact.places) {
      if (/^\d/.test(place) || place === 'quilt') continue;
      told.add(
        place.replace(/^(border|edge|corner)-.*/, (_, family) => (family === 'border' ? 'border' : '')),
      );
    }
  }
  told.delete('');
  told.delete('edge');
  const names = ['top', 'border', 'sashing', 'batting', 'backing', 'binding']
    .filter((part) => told.has(part))
    .map((part) => (part === 'batting' ? view.terms.material('batting') : part));
  return names.length ? listPhrase(names, view.spelling) : undefined;
}

const DIMENSIONS = [
  'side-top',
  'side-right',
  'side-bottom',
  'side-left',
  'width',
  'length',
  'diagonal',
  'block',
  'border',
  'seam',
  'tie-spacing',
] as const;

/** The measurements of the whole as a table, and what the sides and diagonals say about squareness. */
export function dimensions(view: RecordView): Passage | undefined {
  const used: MeasurementFact[] = [];
  const rows: string[][] = [];
  for (const of of DIMENSIONS) {
    // Both diagonals count; of everything else the last measurement stands.
    const all = view.measurements.filter(
      (one) => one.of === of && (one.places.length === 0 || one.places.includes('quilt') || of === 'border'),
    );
    const shown = of === 'diagonal' ? all.slice(-2) : all.slice(-1);
    shown.forEach((one, i) => {
      used.push(one);
      rows.push([
        `${view.terms.measure(of)}${shown.length > 1 ? ` ${i + 1}` : ''}`,
        lengthPhrase(one.value, one.unit, view.quilt.unit),
        datePhrase(one.date, view.spelling),
      ]);
    });
  }
  if (!rows.length) return undefined;
  const square = squareness(view);
  return passage('dimensions', { rows, square }, used, [
    {
      type: 'table',
      columns: [
        { title: 'Measurement', share: 0.42 },
        { title: 'As measured', share: 0.24, align: 'right' },
        { title: 'Taken', share: 0.34 },
      ],
      rows,
    },
    ...(square ? [paragraph(square)] : []),
  ]);
}

function squareness(view: RecordView): string {
  const inches = (of: MeasurementFact['of']): number | undefined => {
    const one = wholeMeasure(view, of);
    return one && one.value * INCHES_PER[one.unit];
  };
  const say = (difference: number): string =>
    lengthPhrase(Math.round(difference * 8) / 8, 'in', view.quilt.unit);
  const told: string[] = [];
  const pair = (a: MeasurementFact['of'], b: MeasurementFact['of'], names: string): void => {
    const x = inches(a);
    const y = inches(b);
    if (x === undefined || y === undefined) return;
    const difference = Math.abs(x - y);
    told.push(difference < 1 / 16 ? `${names} agree` : `${names} differ by ${say(difference)}`);
  };
  pair('side-top', 'side-bottom', 'the top and bottom sides');
  pair('side-left', 'side-right', 'the left and right sides');
  const diagonals = view.measurements
    .filter((one) => one.of === 'diagonal' && (one.places.length === 0 || one.places.includes('quilt')))
    .slice(-2)
    .map((one) => one.value * INCHES_PER[one.unit]);
  if (diagonals.length === 2) {
    const difference = Math.abs(diagonals[0]! - diagonals[1]!);
    told.push(difference < 1 / 8 ? 'the diagonals agree' : `the diagonals differ by ${say(difference)}`);
  }
  return sentence(listPhrase(told, view.spelling));
}
