import type { Place } from '../../../shared/entry.ts';
import { ACTIONS, type Action, FINDINGS, type Finding } from '../../../shared/vocabulary.ts';
import { type LaidTop, lengthOfRow } from '../../shape/lay-out-blocks.ts';
import { nameOfPlace } from '../../shape/name-of-place.ts';
import { shapeOf } from '../../shape/shape-of.ts';
import { shapeWords } from '../../shape/shape-words.ts';
import type { RecordView } from '../record-view.ts';
import { INTERVENTIONS } from '../record-view.ts';
import { blockAt } from '../wording/places-phrase.ts';
import { ACTION_DRAWINGS, type Drawing, FINDING_DRAWINGS } from './mark-drawings.ts';
import { at, escapeMarkup, INK, SANS, svgText } from './svg-text.ts';

/** As found (findings), as proposed (treatments planned), as it is now (treatments done, places left). */
export type MapMoment = 'found' | 'proposed' | 'now';

export type Figure = { svg: string; width: number; height: number; alt: string };

type Mark = { key: Finding | Action; drawing: Drawing; ink: string; label: string };
type Box = { x: number; y: number; w: number; h: number };

const WIDTH = 640;
const MARGIN = 26;

/**
 * The quilt as its grid with border and edges. Each place holds a small drawing per finding or
 * treatment; the legend beside it names them, so that the map can be read in black and white.
 */
export function quiltMapSvg(view: RecordView, moment: MapMoment, title: string): Figure {
  const marks = marksByPlace(view, moment);
  const { grid } = view;
  const { rows, blocks } = grid;
  const { laid } = shapeOf(grid);
  const legendWidth = 170;
  const areaWidth = WIDTH - legendWidth - MARGIN - 16;
  const ratio = proportion(view);
  const maxHeight = 560;
  const scale = Math.min(areaWidth, (maxHeight - MARGIN) / ratio);
  const w = scale;
  const h = scale * ratio;
  const edge = Math.max(4, Math.min(12, w * 0.02));
  const border = Math.max(14, Math.min(34, w * 0.07));
  const inner: Box = { x: MARGIN + border, y: MARGIN + border, w: w - 2 * border, h: h - 2 * border };
  const cellW = inner.w / blocks;
  const cellH = inner.h / rows;
  const parts: string[] = [];

  parts.push(
    `<rect x="${MARGIN}" y="${MARGIN}" width="${at(w)}" height="${at(h)}" fill="${INK.ground}" stroke="${INK.rule}" stroke-width="1.4"/>`,
    `<rect x="${at(MARGIN + edge)}" y="${at(MARGIN + edge)}" width="${at(w - 2 * edge)}" height="${at(h - 2 * edge)}" fill="${INK.cloth}" stroke="${INK.rule}" stroke-width="0.7" stroke-dasharray="5 3"/>`,
  );
  const numbered = Math.min(cellW, cellH) >= 13;
  // Where the rows are not alike no column is numbered above: each block carries its own number.
  const inColumns =
    grid.shape?.outline !== 'hexagon' && laid.blocks.every(({ row }) => lengthOfRow(grid, row) === blocks);
  for (let block = 1; inColumns && block <= blocks; block++) {
    if (numbered || block % 5 === 0) {
      parts.push(
        svgText(String(block), inner.x + cellW * (block - 0.5), MARGIN - 6, 10, {
          anchor: 'middle',
          ink: INK.soft,
        }),
      );
    }
  }
  for (let row = 1; row <= rows; row++) {
    const y = inner.y + inner.h * middleOfRow(laid, row, rows) + 3.5;
    if (numbered || row % 5 === 0)
      parts.push(svgText(String(row), MARGIN - 7, y, 10, { anchor: 'end', ink: INK.soft }));
  }
  const shown = new Map<string, Mark>();
  for (const { place, block, outline } of laid.blocks) {
    const points = outline.map(([u, v]): [number, number] => [inner.x + u * inner.w, inner.y + v * inner.h]);
    const box = roomIn(points);
    const found = marks.get(place) ?? [];
    const name = nameOfPlace(grid, place);
    parts.push(
      `<path d="M${points.map(([x, y]) => `${at(x)} ${at(y)}`).join('L')}Z" fill="${found.length ? wash(moment) : INK.cloth}" stroke="${INK.rule}" stroke-width="0.8"/>`,
      drawMarks(found, inset(box), shown),
    );
    if (!inColumns && Math.min(box.w, box.h) >= 24)
      parts.push(svgText(String(block), box.x + 3, box.y + 9, 7.5, { ink: INK.soft }));
    if (name && box.h >= 34 && name.length * 4 < box.w)
      parts.push(
        svgText(name, box.x + box.w / 2, box.y + box.h - 4, 7.5, { anchor: 'middle', ink: INK.soft }),
      );
  }
  const strip: Record<string, Box> = {
    'border-top': { x: inner.x, y: MARGIN + edge, w: inner.w, h: border - edge },
    'border-bottom': { x: inner.x, y: inner.y + inner.h, w: inner.w, h: border - edge },
    'border-left': { x: MARGIN + edge, y: inner.y, w: border - edge, h: inner.h },
    'border-right': { x: inner.x + inner.w, y: inner.y, w: border - edge, h: inner.h },
    'corner-top-left': { x: MARGIN + edge, y: MARGIN + edge, w: border - edge, h: border - edge },
    'corner-top-right': { x: inner.x + inner.w, y: MARGIN + edge, w: border - edge, h: border - edge },
    'corner-bottom-right': { x: inner.x + inner.w, y: inner.y + inner.h, w: border - edge, h: border - edge },
    'corner-bottom-left': { x: MARGIN + edge, y: inner.y + inner.h, w: border - edge, h: border - edge },
  };
  // The border strips stand for the edge beside them too: both are too narrow to be drawn apart.
  for (const side of ['top', 'right', 'bottom', 'left']) {
    const merged = [...(marks.get(`border-${side}`) ?? [])];
    for (const mark of marks.get(`edge-${side}`) ?? []) {
      if (!merged.some((other) => other.key === mark.key)) merged.push(mark);
    }
    const box = strip[`border-${side}`]!;
    if (merged.length) parts.push(stripWash(box, moment), drawMarks(merged, inset(box), shown));
  }
  for (const corner of ['top-left', 'top-right', 'bottom-right', 'bottom-left']) {
    const found = marks.get(`corner-${corner}`) ?? [];
    const box = strip[`corner-${corner}`]!;
    if (found.length) parts.push(stripWash(box, moment), drawMarks(found, inset(box), shown));
  }

  const whole = WHOLE_PARTS.flatMap((part) => {
    const found = marks.get(part) ?? [];
    for (const mark of found) shown.set(mark.key, mark);
    return found.length ? [{ label: wholeLabel(part, view), found }] : [];
  });
  const legend = drawLegend([...shown.values()], whole, MARGIN + w + 22, MARGIN + 2, moment);
  const height = Math.ceil(Math.max(MARGIN + h + 10, legend.bottom + 10));
  const alt = mapInWords(view, moment, marks);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="${SANS}">` +
    `<title>${escapeMarkup(title)}</title><desc>${escapeMarkup(alt)}</desc>` +
    `<rect width="${WIDTH}" height="${height}" fill="${INK.ground}"/>${parts.join('')}${legend.svg}</svg>`;
  return { svg, width: WIDTH, height, alt };
}

/** The upright rectangle in a block that marks can stand in: of a hexagon the part between its two upright sides. */
function roomIn(points: readonly [number, number][]): Box {
  const [a, , c] =
    points.length === 6 ? [points[0]!, points[1]!, points[3]!] : [points[0]!, points[1]!, points[2]!];
  return { x: a[0], y: a[1], w: c[0] - a[0], h: c[1] - a[1] };
}

/** How far down the top the middle of a row lies, by a block that is not larger than its place. */
function middleOfRow(laid: LaidTop, row: number, rows: number): number {
  const own = laid.blocks.find((block) => block.row === row && block.down === 1);
  if (!own) return (row - 0.5) / rows;
  const downs = own.outline.map(([, v]) => v);
  return (Math.min(...downs) + Math.max(...downs)) / 2;
}

/** Steps that leave nothing to be seen on a map of the finished quilt. */
const PASSING: ReadonlySet<Action> = new Set(['remove', 'dry', 'press', 'baste', 'layer', 'trim', 'piece']);

const WHOLE_PARTS = ['quilt', 'top', 'border', 'edge', 'binding', 'backing', 'batting', 'sashing'] as const;

function wholeLabel(part: (typeof WHOLE_PARTS)[number], view: RecordView): string {
  if (part === 'batting') return view.spelling === 'british' ? 'Wadding' : 'Batting';
  const names = {
    quilt: 'Whole quilt',
    top: 'Top',
    border: 'Border',
    edge: 'Edge',
    binding: 'Binding',
    backing: 'Backing',
    sashing: 'Sashing',
  };
  return names[part];
}

const wash = (moment: MapMoment): string =>
  moment === 'found' ? INK.foundWash : moment === 'proposed' ? INK.planWash : INK.workWash;

const stripWash = (box: Box, moment: MapMoment): string =>
  `<rect x="${at(box.x)}" y="${at(box.y)}" width="${at(box.w)}" height="${at(box.h)}" fill="${wash(moment)}" stroke="${INK.rule}" stroke-width="0.5"/>`;

const inset = (box: Box): Box => {
  const by = Math.min(box.w, box.h) * 0.08;
  return { x: box.x + by, y: box.y + by, w: box.w - 2 * by, h: box.h - 2 * by };
};

function marksByPlace(view: RecordView, moment: MapMoment): Map<Place, Mark[]> {
  const by = new Map<Place, Mark[]>();
  const put = (places: readonly Place[], mark: Mark): void => {
    for (const place of places) {
      const list = by.get(place) ?? [];
      if (!list.some((other) => other.key === mark.key)) by.set(place, [...list, mark]);
    }
  };
  if (moment === 'found') {
    for (const { finding, places } of view.findings) {
      if (finding === 'sound') continue;
      put(places, {
        key: finding,
        drawing: FINDING_DRAWINGS[finding],
        ink: INK.found,
        label: view.terms.findingLabel(finding),
      });
    }
  } else {
    for (const { action, state, places } of view.treatments) {
      const wanted =
        moment === 'now' ? state === 'done' : state === 'planned' || (state === 'done' && action === 'leave');
      if (!wanted || !(INTERVENTIONS.has(action) || action === 'leave')) continue;
      // What is over once it is done would only cover what remains.
      if (moment === 'now' && PASSING.has(action)) continue;
      put(places, {
        key: action,
        drawing: ACTION_DRAWINGS[action],
        ink: moment === 'now' ? INK.work : INK.plan,
        label: moment === 'now' ? view.terms.actionLabel(action) : view.terms.plan(action),
      });
    }
  }
  const order = [...FINDINGS, ...ACTIONS] as string[];
  for (const list of by.values()) list.sort((a, b) => order.indexOf(a.key) - order.indexOf(b.key));
  return by;
}

function drawing(mark: Mark, x: number, y: number, size: number): string {
  const d = mark.drawing;
  const round = 'stroke-linecap="round" stroke-linejoin="round"';
  return (
    `<g transform="translate(${at(x)} ${at(y)}) scale(${Math.round((size / 24) * 10000) / 10000})">` +
    (d.solid ? `<path d="${d.solid}" fill="${mark.ink}"/>` : '') +
    (d.line ? `<path d="${d.line}" fill="none" stroke="${mark.ink}" stroke-width="2" ${round}/>` : '') +
    (d.fine ? `<path d="${d.fine}" fill="none" stroke="${mark.ink}" stroke-width="1.4" ${round}/>` : '') +
    '</g>'
  );
}

/** As many marks as the box has room for; a number says how many more there are. */
function drawMarks(marks: readonly Mark[], box: Box, shown: Map<string, Mark>): string {
  if (marks.length === 0) return '';
  for (const mark of marks) shown.set(mark.key, mark);
  const short = Math.min(box.w, box.h);
  // Too small for a drawing that can be told apart: a dot says that there is something.
  if (short < 8) {
    return `<circle cx="${at(box.x + box.w / 2)}" cy="${at(box.y + box.h / 2)}" r="${at(short * 0.3)}" fill="${marks[0]!.ink}"/>`;
  }
  let best = { size: 0, across: 1, slots: 1 };
  const sizedFor = (count: number): { size: number; across: number; slots: number } => {
    let top = { size: 0, across: 1, slots: count };
    for (let across = 1; across <= count; across++) {
      const down = Math.ceil(count / across);
      const size = Math.min(box.w / across, box.h / down) * 0.86;
      if (size > top.size) top = { size, across, slots: count };
    }
    return top;
  };
  best = sizedFor(marks.length);
  let visible = marks.length;
  while (best.size < 10 && visible > 1) {
    visible--;
    best = sizedFor(visible + 1);
  }
  const size = Math.min(best.size, 30);
  const more = marks.length - visible;
  const slots = visible + (more ? 1 : 0);
  const across = Math.min(best.across, slots);
  const down = Math.ceil(slots / across);
  const stepX = size * 1.12;
  const x0 = box.x + (box.w - across * stepX + size * 0.12) / 2;
  const y0 = box.y + (box.h - down * stepX + size * 0.12) / 2;
  const out: string[] = [];
  for (let i = 0; i < visible; i++) {
    out.push(drawing(marks[i]!, x0 + (i % across) * stepX, y0 + Math.floor(i / across) * stepX, size));
  }
  if (more) {
    out.push(
      svgText(
        `+${more}`,
        x0 + (visible % across) * stepX + size / 2,
        y0 + Math.floor(visible / across) * stepX + size * 0.7,
        size * 0.6,
        {
          anchor: 'middle',
          bold: true,
        },
      ),
    );
  }
  return out.join('');
}

function drawLegend(
  marks: readonly Mark[],
  whole: readonly { label: string; found: readonly Mark[] }[],
  x: number,
  y: number,
  moment: MapMoment,
): { svg: string; bottom: number } {
  const out: string[] = [];
  let down = y;
  const order = [...FINDINGS, ...ACTIONS] as string[];
  const sorted = [...marks].sort((a, b) => order.indexOf(a.key) - order.indexOf(b.key));
  if (sorted.length) {
    const head = { found: 'Found', proposed: 'Proposed', now: 'Done' }[moment];
    out.push(svgText(head, x, down + 9, 11, { bold: true }));
    down += 18;
  } else {
    const none = { found: 'No damage noted', proposed: 'Nothing proposed yet', now: 'Nothing done yet' }[
      moment
    ];
    out.push(svgText(none, x, down + 9, 11, { ink: INK.soft }));
    down += 18;
  }
  for (const mark of sorted) {
    out.push(drawing(mark, x, down, 15), svgText(mark.label, x + 22, down + 11.5, 10.5));
    down += 20;
  }
  for (const { label, found } of whole) {
    down += 4;
    out.push(svgText(label, x, down + 9, 10.5, { bold: true }));
    down += 14;
    found.forEach((mark, i) => {
      out.push(drawing(mark, x + (i % 7) * 20, down + Math.floor(i / 7) * 20, 15));
    });
    down += Math.ceil(found.length / 7) * 20;
  }
  return { svg: out.join(''), bottom: down };
}

/** Height over width: as measured, or the grid's own shape. */
function proportion(view: RecordView): number {
  const of = (name: string): number | undefined => {
    const found = view.measurements.findLast(
      (one) => one.of === name && (one.places.length === 0 || one.places.includes('quilt')),
    );
    return found && found.value > 0
      ? found.value * { in: 1, ft: 12, yd: 36, m: 39.37, cm: 0.3937, mm: 0.03937 }[found.unit]
      : undefined;
  };
  const width = of('width') ?? of('side-top') ?? of('side-bottom');
  const length = of('length') ?? of('side-left') ?? of('side-right');
  const ratio = width && length ? length / width : 1 / shapeOf(view.grid).laid.ratio;
  return Math.max(0.2, Math.min(4, ratio));
}

/** The map for someone who cannot see it: one sentence a mark. */
function mapInWords(view: RecordView, moment: MapMoment, marks: ReadonlyMap<Place, readonly Mark[]>): string {
  const byMark = new Map<string, { label: string; places: Place[] }>();
  for (const [place, list] of marks) {
    for (const mark of list) {
      const entry = byMark.get(mark.key) ?? { label: mark.label, places: [] };
      entry.places.push(place);
      byMark.set(mark.key, entry);
    }
  }
  const head = { found: 'as found', proposed: 'as proposed', now: 'after treatment' }[moment];
  const grid = `Map of the quilt ${head}, ${shapeWords(view.grid)}.`;
  const tell = [...byMark.values()].map(({ label, places }) => {
    const blocks = places.filter((place) => blockAt(place)).length;
    const parts = places.length - blocks;
    return `${label}: ${[blocks ? `${blocks} ${blocks === 1 ? 'block' : 'blocks'}` : '', parts ? `${parts} other ${parts === 1 ? 'place' : 'places'}` : ''].filter(Boolean).join(', ')}`;
  });
  return tell.length ? `${grid} ${tell.join('; ')}.` : `${grid} No marks.`;
}
