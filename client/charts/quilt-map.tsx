// biome-ignore-all lint/a11y/noAriaHiddenOnFocusable: a <g> takes no focus unless it is given a tabindex
// biome-ignore-all lint/a11y/useAriaPropsSupportedByRole: the role stands beside, and is there when the props are
// biome-ignore-all lint/a11y/noStaticElementInteractions: the role stands beside, and is there when the handlers are
import type { JSX } from 'preact';
import { type LaidBlock, lengthOfRow } from '../../core/shape/lay-out-blocks.ts';
import { nameOfPlace } from '../../core/shape/name-of-place.ts';
import { shapeOf } from '../../core/shape/shape-of.ts';
import type { Place } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { onePlaceWords } from '../words/place-words.ts';
import { type TradeLabels, tradeLabels } from '../words/trade-labels.ts';
import { BlockSeam } from './block-seam.tsx';
import { DamageMark } from './damage-mark.tsx';
import { type Palette, PRINT_PALETTE } from './palette.ts';
import type { Moment, PlacePicture, QuiltPicture } from './quilt-picture.ts';
import { type Point, placeIn, quiltCorners } from './quilt-shape.ts';
import { StitchMark } from './stitch-mark.tsx';

const WIDTH = 1000;
const STANDING_WORDS = {
  untouched: '',
  found: 'found damaged',
  undecided: 'undecided',
  planned: 'planned',
  doing: 'in hand',
  done: 'done',
  left: 'left as found',
} as const;

type Strip = { place: Place; corners: Point[]; label: string };

export type QuiltMapProps = {
  picture: QuiltPicture;
  moment: Moment;
  title: string;
  spelling?: 'british' | 'american';
  palette?: Palette;
  /** The place shown as picked. */
  picked?: Place | null;
  /** The place that the Tab key reaches; arrow keys move it. Absent: the drawing is a still picture. */
  current?: Place;
  onPick?: (place: Place) => void;
  onKey?: (event: KeyboardEvent, place: Place) => void;
  /** Prefix of ids, so that two drawings can stand on one page. */
  id?: string;
};

/**
 * The quilt as its real grid with edge, border, sashing and corners, drawn to its measured shape
 * where it was measured. One SVG, alike in the page, in Node and on paper.
 */
export function QuiltMap(props: QuiltMapProps): JSX.Element {
  const { picture, moment, palette = PRINT_PALETTE, picked, current, onPick, onKey, id = 'quilt' } = props;
  const say = tradeLabels(props.spelling ?? 'british');
  const { grid } = picture;
  const { rows, blocks } = grid;
  const { laid } = shapeOf(grid);
  const measured = quiltCorners(picture.sides, laid.ratio);
  const span = {
    x: Math.max(...measured.map((p) => p.x)) - Math.min(0, ...measured.map((p) => p.x)),
    y: Math.max(...measured.map((p) => p.y)) - Math.min(0, ...measured.map((p) => p.y)),
  };
  const scale = WIDTH / span.x;
  const shiftX = -Math.min(0, ...measured.map((p) => p.x)) * scale;
  const shiftY = -Math.min(0, ...measured.map((p) => p.y)) * scale;
  const corners = measured.map((p) => ({ x: p.x * scale + shiftX, y: p.y * scale + shiftY })) as [
    Point,
    Point,
    Point,
    Point,
  ];
  const height = span.y * scale;
  const average = Math.min(WIDTH / blocks, height / rows);
  // The binding is drawn a little wider than true, so that it can be seen and touched.
  const binding = Math.max(12, Math.min(22, average * 0.14));
  const border = picture.border ? picture.border * scale : Math.max(30, Math.min(64, average * 0.34));
  const edgeU = binding / WIDTH;
  const edgeV = binding / height;
  const borderU = edgeU + border / WIDTH;
  const borderV = edgeV + border / height;
  const at = (u: number, v: number) => placeIn(corners, u, v);
  const quad = (u0: number, v0: number, u1: number, v1: number): Point[] => [
    at(u0, v0),
    at(u1, v0),
    at(u1, v1),
    at(u0, v1),
  ];

  const strips: Strip[] = [];
  const side = (place: Place, points: Point[]) =>
    strips.push({ place, corners: points, label: onePlaceWords(place, props.spelling) });
  side('edge-top', [at(0, 0), at(1, 0), at(1 - edgeU, edgeV), at(edgeU, edgeV)]);
  side('edge-right', [at(1, 0), at(1, 1), at(1 - edgeU, 1 - edgeV), at(1 - edgeU, edgeV)]);
  side('edge-bottom', [at(1, 1), at(0, 1), at(edgeU, 1 - edgeV), at(1 - edgeU, 1 - edgeV)]);
  side('edge-left', [at(0, 1), at(0, 0), at(edgeU, edgeV), at(edgeU, 1 - edgeV)]);
  side('border-top', quad(borderU, edgeV, 1 - borderU, borderV));
  side('border-right', quad(1 - borderU, borderV, 1 - edgeU, 1 - borderV));
  side('border-bottom', quad(borderU, 1 - borderV, 1 - borderU, 1 - edgeV));
  side('border-left', quad(edgeU, borderV, borderU, 1 - borderV));
  side('corner-top-left', quad(edgeU, edgeV, borderU, borderV));
  side('corner-top-right', quad(1 - borderU, edgeV, 1 - edgeU, borderV));
  side('corner-bottom-right', quad(1 - borderU, 1 - borderV, 1 - edgeU, 1 - edgeV));
  side('corner-bottom-left', quad(edgeU, 1 - borderV, borderU, 1 - edgeV));

  const stepU = (1 - 2 * borderU) / blocks;
  const stepV = (1 - 2 * borderV) / rows;
  const gapU = picture.sashed ? stepU * 0.07 : 0;
  const gapV = picture.sashed ? stepV * 0.07 : 0;
  const live = Boolean(onPick);
  /** The corners of a block on the drawing, with half of the sashing taken off each side. */
  const cornersOf = ({ outline, box }: LaidBlock): Point[] => {
    const middle = { u: (box.left + box.right) / 2, v: middleOf(outline) };
    return outline.map(([u, v]) =>
      at(
        borderU + u * (1 - 2 * borderU) + (Math.sign(round6(middle.u - u)) * gapU) / 2,
        borderV + v * (1 - 2 * borderV) + (Math.sign(round6(middle.v - v)) * gapV) / 2,
      ),
    );
  };
  // Where the rows are not alike no column is numbered above: each block carries its own number.
  const inColumns =
    grid.shape?.outline !== 'hexagon' && laid.blocks.every(({ row }) => lengthOfRow(grid, row) === blocks);

  const pictureOf = (place: Place): PlacePicture =>
    picture.places.get(place) ?? inherited(picture, place) ?? EMPTY;

  const cell = (
    place: Place,
    points: Point[],
    label: string,
    kind: 'block' | 'strip',
    more: { across?: number; down?: number; words?: string; number?: number } = {},
  ) => {
    const shown = pictureOf(place);
    // The stitches round a larger block are no longer than those of its neighbours.
    const size = Math.min(shorterSide(points), average);
    const chosen = picked === place;
    return (
      <g
        key={place}
        role={live ? 'gridcell' : undefined}
        tabindex={live ? (current === place ? 0 : -1) : undefined}
        aria-selected={live ? chosen : undefined}
        aria-colspan={live && (more.across ?? 1) > 1 ? more.across : undefined}
        aria-rowspan={live && (more.down ?? 1) > 1 ? more.down : undefined}
        aria-label={live ? `${label}${spoken(shown, say, moment)}` : undefined}
        data-place={place}
        class={live ? 'quilt-place' : undefined}
        onClick={onPick ? () => onPick(place) : undefined}
        onKeyDown={onKey ? (event) => onKey(event, place) : undefined}
      >
        <path
          d={path(points)}
          fill={ground(shown, palette, kind)}
          stroke={palette.thread}
          stroke-width={kind === 'block' ? 2 : 1.5}
        />
        {kind === 'strip' && place.startsWith('edge') ? (
          <EdgeStitches points={points} palette={palette} />
        ) : null}
        <BlockSeam standing={shown.standing} corners={points} size={size} palette={palette} />
        <Marks shown={shown} moment={moment} points={points} palette={palette} most={average * 0.5} />
        {kind === 'block' ? <BlockWords points={points} palette={palette} {...more} /> : null}
        {live || chosen ? (
          <path
            class="quilt-ring"
            d={path(points)}
            fill="none"
            stroke={chosen ? palette.ink : 'none'}
            stroke-width={chosen ? 9 : 7}
            stroke-linejoin="round"
          />
        ) : null}
      </g>
    );
  };

  return (
    <svg
      viewBox={`-34 -34 ${WIDTH + 48} ${Math.round(height) + 48}`}
      xmlns="http://www.w3.org/2000/svg"
      role={live ? 'grid' : 'img'}
      aria-label={props.title}
      aria-rowcount={live ? rows : undefined}
      aria-colcount={live ? blocks : undefined}
      class="quilt-map"
      font-family="'Atkinson Next', Verdana, sans-serif"
      font-size="20"
      id={id}
    >
      {live ? null : <title>{props.title}</title>}
      <g aria-hidden="true" fill={palette.muted} text-anchor="middle">
        {Array.from({ length: inColumns ? blocks : 0 }, (_, i) => {
          const p = at(borderU + stepU * (i + 0.5), 0);
          return average > 26 || (i + 1) % 5 === 0 ? (
            <text key={`c${i}`} x={r(p.x)} y={r(p.y - 12)}>
              {i + 1}
            </text>
          ) : null;
        })}
        {Array.from({ length: rows }, (_, i) => {
          const p = at(0, borderV + middleOfRow(grid, i + 1) * (1 - 2 * borderV));
          return average > 26 || (i + 1) % 5 === 0 ? (
            <text key={`r${i}`} x={r(p.x - 18)} y={r(p.y + 7)}>
              {i + 1}
            </text>
          ) : null;
        })}
      </g>
      <g role={live ? 'row' : undefined} aria-label={live ? 'Edge, border and corners' : undefined}>
        {strips.map((strip) => cell(strip.place, strip.corners, strip.label, 'strip'))}
      </g>
      {picture.sashed ? (
        <path
          d={path(quad(borderU, borderV, 1 - borderU, 1 - borderV))}
          fill={palette.indigoWash}
          stroke="none"
        />
      ) : null}
      {Array.from({ length: rows }, (_, row) => (
        <g key={row} role={live ? 'row' : undefined} aria-label={live ? `Row ${row + 1}` : undefined}>
          {laid.blocks
            .filter((block) => block.row === row + 1)
            .map((block) => {
              const { place, across, down } = block;
              const name = nameOfPlace(grid, place);
              const words = `row ${block.row}, block ${block.block}`;
              return cell(place, cornersOf(block), name ? `${name}, ${words}` : words, 'block', {
                across,
                down,
                ...(name ? { words: name } : {}),
                ...(inColumns ? {} : { number: block.block }),
              });
            })}
        </g>
      ))}
    </svg>
  );
}

const middleOf = (outline: LaidBlock['outline']): number =>
  (Math.min(...outline.map(([, v]) => v)) + Math.max(...outline.map(([, v]) => v))) / 2;
const round6 = (n: number): number => Math.round(n * 1e6) / 1e6;

/** How far down the top the middle of a row lies, by a block that is not larger than its place. */
function middleOfRow(grid: QuiltGrid, row: number): number {
  const own = shapeOf(grid).laid.blocks.find((block) => block.row === row && block.down === 1);
  return own ? middleOf(own.outline) : (row - 0.5) / grid.rows;
}

/** The name of a place along the foot of its block, and its number where no column carries it; where there is room. */
function BlockWords(props: {
  points: Point[];
  palette: Palette;
  words?: string;
  number?: number;
}): JSX.Element | null {
  const { points, palette, words, number } = props;
  const box = roomIn(points);
  const size = Math.min(24, box.h * 0.18);
  const fits = words !== undefined && size >= 11 && words.length * size * 0.56 < box.w * 0.9;
  const numbered = number !== undefined && box.h > 34;
  if (!fits && !numbered) return null;
  return (
    <g
      aria-hidden="true"
      fill={palette.ink}
      font-size={r(Math.max(size, 11))}
      stroke={palette.paper}
      stroke-width={5}
      stroke-linejoin="round"
      paint-order="stroke"
    >
      {fits ? (
        <text x={r(box.x + box.w / 2)} y={r(box.y + box.h - size * 0.9)} text-anchor="middle">
          {words}
        </text>
      ) : null}
      {numbered ? (
        <text x={r(box.x + box.w * 0.12)} y={r(box.y + Math.max(size, 11) * 1.6)}>
          {number}
        </text>
      ) : null}
    </g>
  );
}

/** The upright rectangle in a block that marks can stand in: of a hexagon the part between its two upright sides. */
function roomIn(points: readonly Point[]): { x: number; y: number; w: number; h: number } {
  const [a, b, c, d] =
    points.length === 6
      ? ([points[0]!, points[2]!, points[3]!, points[5]!] as const)
      : ([points[0]!, points[1]!, points[2]!, points[3]!] as const);
  const x = Math.max(a.x, d.x);
  const y = Math.max(a.y, b.y);
  return { x, y, w: Math.min(b.x, c.x) - x, h: Math.min(c.y, d.y) - y };
}

const EMPTY: PlacePicture = {
  place: '',
  standing: 'untouched',
  findings: [],
  done: [],
  planned: [],
  undecided: [],
};

/** A side of the border or edge shows what is said of the whole border, edge or binding. */
function inherited(picture: QuiltPicture, place: Place): PlacePicture | undefined {
  if (place.startsWith('border-')) return picture.places.get('border');
  if (place.startsWith('edge-')) return picture.places.get('edge') ?? picture.places.get('binding');
  return undefined;
}

function ground(shown: PlacePicture, palette: Palette, kind: 'block' | 'strip'): string {
  if (shown.standing === 'found' || shown.standing === 'undecided') return palette.madderWash;
  if (shown.standing === 'planned') return palette.weldWash;
  if (shown.standing === 'done' || shown.standing === 'doing') return palette.indigoWash;
  return kind === 'block' ? palette.paper : palette.ground;
}

function EdgeStitches(props: { points: Point[]; palette: Palette }): JSX.Element {
  const [a, b, c, d] = props.points as [Point, Point, Point, Point];
  return (
    <path
      d={`M${r((a.x + d.x) / 2)} ${r((a.y + d.y) / 2)}L${r((b.x + c.x) / 2)} ${r((b.y + c.y) / 2)}`}
      stroke={props.palette.thread}
      stroke-width="2.5"
      stroke-dasharray="11 9"
      stroke-linecap="round"
    />
  );
}

/** Up to four marks in a block; where there are more, three and a count. */
function Marks(props: {
  shown: PlacePicture;
  moment: Moment;
  points: Point[];
  palette: Palette;
  /** The largest that a mark gets, so that a larger block shouts no louder. */
  most: number;
}): JSX.Element | null {
  const { shown, moment, points, palette } = props;
  const settled = shown.standing === 'done';
  const marks: { key: string; draw: (x: number, y: number, size: number) => JSX.Element }[] = [];
  if (moment !== 'planned') {
    // Damage that has been mended is no longer in the cloth; the block's story still tells it.
    if (moment === 'found' || !settled) {
      for (const finding of shown.findings) {
        marks.push({
          key: finding,
          draw: (x, y, size) => (
            <DamageMark
              finding={finding}
              x={x}
              y={y}
              size={size}
              ink={finding === 'sound' ? palette.moss : palette.madder}
            />
          ),
        });
      }
    }
  }
  for (const action of moment === 'planned' ? [...shown.planned, ...shown.done] : shown.done) {
    marks.push({
      key: action,
      draw: (x, y, size) => <StitchMark action={action} x={x} y={y} size={size} ink={palette.indigo} />,
    });
  }
  if (moment === 'planned') {
    for (const action of shown.undecided) {
      marks.push({
        key: `${action}?`,
        draw: (x, y, size) => <StitchMark action={action} x={x} y={y} size={size} ink={palette.weld} />,
      });
    }
  }
  if (!marks.length) return null;
  const box = roomIn(points);
  const upright = box.h > box.w * 1.6;
  const flat = box.w > box.h * 1.6;
  const shorter = Math.min(box.w, box.h);
  if (shorter < 8) return null;
  const room = flat || upright ? Math.floor(Math.max(box.w, box.h) / shorter) : shorter < 55 ? 1 : 4;
  const shownMarks = marks.length <= room ? marks : marks.slice(0, Math.max(1, room - 1));
  const more = marks.length - shownMarks.length;
  const slots = shownMarks.length + (more && room > 1 ? 1 : 0);
  const across = flat ? slots : upright ? 1 : slots > 1 ? 2 : 1;
  const down = flat ? 1 : upright ? slots : Math.ceil(slots / across);
  const size =
    flat || upright
      ? shorter * 0.66
      : Math.min(
          (box.w * 0.74) / Math.max(across, 1.35),
          (box.h * 0.74) / Math.max(down, 1.35),
          Math.max(props.most, 14),
        );
  const x0 = box.x + (box.w - across * size * 1.08) / 2;
  const y0 = box.y + (box.h - down * size * 1.08) / 2;
  const slot = (i: number) => ({
    x: x0 + (i % across) * size * 1.08,
    y: y0 + Math.floor(i / across) * size * 1.08,
  });
  return (
    <g aria-hidden="true">
      {shownMarks.map((mark, i) => {
        const p = slot(i);
        return <g key={mark.key}>{mark.draw(r(p.x), r(p.y), r(size))}</g>;
      })}
      {more && room > 1 ? (
        <text
          x={r(slot(shownMarks.length).x + size / 2)}
          y={r(slot(shownMarks.length).y + size * 0.68)}
          text-anchor="middle"
          font-size={r(size * 0.6)}
          font-weight="700"
          fill={palette.ink}
        >
          +{more}
        </text>
      ) : null}
    </g>
  );
}

function spoken(shown: PlacePicture, say: TradeLabels, moment: Moment): string {
  const parts = [
    shown.findings.length ? `found: ${shown.findings.map(say.finding).join(', ')}` : '',
    shown.done.length && moment !== 'found' ? `done: ${shown.done.map(say.did).join(', ')}` : '',
    shown.planned.length ? `planned: ${shown.planned.map(say.toDo).join(', ')}` : '',
    shown.undecided.length ? `undecided: ${shown.undecided.map(say.toDo).join(' or ')}` : '',
  ].filter(Boolean);
  if (!parts.length) return ': nothing noted';
  const standing = STANDING_WORDS[shown.standing];
  return `${standing ? `, ${standing}` : ''}. ${parts.join('; ')}`;
}

const shorterSide = (points: readonly Point[]): number =>
  Math.min(
    ...points.map((p, i) => {
      const next = points[(i + 1) % points.length]!;
      return Math.hypot(next.x - p.x, next.y - p.y);
    }),
  );
const path = (points: readonly Point[]): string => `M${points.map((p) => `${r(p.x)} ${r(p.y)}`).join('L')}Z`;
const r = (n: number): number => Math.round(n * 10) / 10;
