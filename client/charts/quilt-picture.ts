import type { QuiltState } from '../../core/log/state.ts';
import type { Entry, Place } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Action, Finding } from '../../shared/vocabulary.ts';
import type { MeasuredSides } from './quilt-shape.ts';

/** How a place stands: what the seam round its block is drawn as. */
export const STANDINGS = ['untouched', 'found', 'undecided', 'planned', 'doing', 'done', 'left'] as const;
export type Standing = (typeof STANDINGS)[number];

/** The three pictures of one quilt. */
export const MOMENTS = ['found', 'now', 'planned'] as const;
export type Moment = (typeof MOMENTS)[number];

export type PlacePicture = {
  place: Place;
  standing: Standing;
  findings: Finding[];
  done: Action[];
  planned: Action[];
  undecided: Action[];
};

export type QuiltPicture = {
  /** Rows, blocks, shape and names of places. */
  grid: QuiltGrid;
  places: Map<Place, PlacePicture>;
  sides: MeasuredSides;
  /** Width of the border and of a block in the quilt's unit, where measured. */
  border?: number;
  block?: number;
  sashed: boolean;
};

const INCHES: Record<string, number> = { in: 1, ft: 12, yd: 36, cm: 1 / 2.54, mm: 1 / 25.4, m: 100 / 2.54 };

/** Treatments that answer damage; a place that had only these others done still shows what was found. */
const MENDING = new Set<Action>([
  'replace',
  'patch',
  'stabilize',
  'overlay',
  'resew',
  'darn',
  'clean',
  'wash',
  'remove',
  'square-up',
  'tie',
  'quilt',
  'bind',
]);

/**
 * What the drawing of the quilt shows at one of three moments: as found (conditions alone), as it is
 * now, as planned (what will stand when all that is decided is done).
 */
export function quiltPicture(
  state: QuiltState,
  moment: Moment,
  kinds: ReadonlySet<Entry['kind']> = new Set(['condition', 'treatment']),
): QuiltPicture {
  const places = new Map<Place, PlacePicture>();
  const at = (place: Place): PlacePicture => {
    let picture = places.get(place);
    if (!picture) {
      picture = { place, standing: 'untouched', findings: [], done: [], planned: [], undecided: [] };
      places.set(place, picture);
    }
    return picture;
  };
  const doing = new Set<Place>();
  const left = new Set<Place>();
  const sides: MeasuredSides = {};
  const measured: { border?: number; block?: number } = {};
  let sashed = false;
  let diagonals = 0;

  for (const { entry } of state.entries) {
    if ('places' in entry && entry.places?.includes('sashing')) sashed = true;
    if (entry.kind === 'condition' && kinds.has('condition')) {
      for (const place of entry.places ?? []) push(at(place).findings, entry.finding);
    }
    if (entry.kind === 'treatment' && entry.action && kinds.has('treatment') && moment !== 'found') {
      for (const place of entry.places ?? []) {
        const picture = at(place);
        const action = entry.action;
        // The last word on an action at a place is the one that counts.
        for (const list of [picture.done, picture.planned, picture.undecided]) drop(list, action);
        doing.delete(place);
        if (entry.state === 'done') {
          if (action === 'leave') left.add(place);
          push(picture.done, action);
        } else if (entry.state === 'doing') {
          doing.add(place);
          push(picture.planned, action);
        } else if (entry.state === 'planned') push(picture.planned, action);
        else if (entry.state === 'considering') push(picture.undecided, action);
        if (entry.state === 'done' || entry.state === 'planned') {
          // Choosing one way settles the matter for the place.
          if (MENDING.has(action) || action === 'leave') picture.undecided.length = 0;
        }
      }
    }
    if (entry.kind === 'measurement' && entry.value && entry.unit) {
      const value = (entry.value * INCHES[entry.unit]!) / (state.quilt.unit === 'cm' ? 1 / 2.54 : 1);
      if (entry.of === 'width') sides.width = value;
      if (entry.of === 'length') sides.length = value;
      if (entry.of === 'side-top') sides.top = value;
      if (entry.of === 'side-right') sides.right = value;
      if (entry.of === 'side-bottom') sides.bottom = value;
      if (entry.of === 'side-left') sides.left = value;
      if (entry.of === 'diagonal' && diagonals++ === 0) sides.diagonal = value;
      if (entry.of === 'border') measured.border = value;
      if (entry.of === 'block' && !measured.block) measured.block = value;
    }
  }

  for (const picture of places.values()) {
    const mended = picture.done.some((action) => MENDING.has(action));
    if (moment === 'planned') {
      picture.standing = picture.undecided.length
        ? 'undecided'
        : picture.planned.length
          ? 'planned'
          : left.has(picture.place) && !mended
            ? 'left'
            : picture.done.length
              ? 'done'
              : standingOfFindings(picture);
    } else {
      picture.standing = picture.undecided.length
        ? 'undecided'
        : doing.has(picture.place)
          ? 'doing'
          : picture.planned.length
            ? 'planned'
            : mended
              ? 'done'
              : left.has(picture.place)
                ? 'left'
                : picture.done.length && !picture.findings.length
                  ? 'done'
                  : standingOfFindings(picture);
    }
  }
  return { grid: state.quilt, places, sides, ...measured, sashed };
}

const standingOfFindings = (picture: PlacePicture): Standing =>
  picture.findings.some((finding) => finding !== 'sound') ? 'found' : 'untouched';

function push<T>(list: T[], item: T): void {
  if (!list.includes(item)) list.push(item);
}
function drop<T>(list: T[], item: T): void {
  const at = list.indexOf(item);
  if (at >= 0) list.splice(at, 1);
}
