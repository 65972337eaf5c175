import type { CuttingPlan } from '../../../shared/estimate-answer.ts';
import { type Exact, exact } from '../exact.ts';
import { SpecError } from '../spec-error.ts';
import { type Block, pieceBlock } from './block.ts';
import { planCutting } from './cutting-plan.ts';
import { fillScrap } from './fill-scrap.ts';
import { searchLayout } from './search-layout.ts';

export interface CutPiece {
  width: Exact;
  length: Exact;
  count: number;
  turnable: boolean;
  /** Index into the spec's own list. */
  piece: number;
  name?: string | undefined;
}
export interface Sheet {
  name: string;
  width: Exact;
  length: Exact;
}
export interface LaidOut {
  /** Length taken of the cloth, none where the scraps suffice. */
  length: Exact;
  /** Pieces cut from scraps and from the cloth. */
  plans: CuttingPlan[];
  fromScraps: number;
  pieceArea: Exact;
  scrapArea: Exact;
}

const MOST_PIECES = 5000;
/** Sizes with no coarser common measure are taken to the millionth: pieces up, cloth down. */
const FINEST = 1_000_000n;

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));

/** Least common denominator, so that every size is a whole number of one measure. */
const commonMeasure = (lengths: readonly Exact[]): bigint => {
  const common = lengths.reduce((all, { d }) => (all / gcd(all, d)) * d, 1n);
  return common > FINEST ? FINEST : common;
};

/** Sets the pieces out, on the scraps first and then on cloth of the given width. `field` names the spec's list. */
export const layOut = (
  pieces: readonly CutPiece[],
  usable: Exact,
  scraps: readonly Sheet[],
  field: string,
): LaidOut => {
  const count = pieces.reduce((sum, piece) => sum + piece.count, 0);
  if (count > MOST_PIECES)
    throw new SpecError(field, `at most ${MOST_PIECES} pieces in one cutting`, String(count));
  const measure = commonMeasure([usable, ...pieces.flatMap(({ width, length }) => [width, length])]);
  const whole = (length: Exact): number => Number(length.mul(measure.toString()).floor().valueOf());
  const wholeUp = (length: Exact): number => Number(length.mul(measure.toString()).ceil().valueOf());
  const back = (units: number): number => units / Number(measure);
  const width = whole(usable);
  let remaining: Block[] = [];
  pieces.forEach((piece, index) => {
    const fits = piece.width.compare(usable) <= 0 || (piece.turnable && piece.length.compare(usable) <= 0);
    const inScrap = scraps.some(
      (scrap) => piece.width.compare(scrap.width) <= 0 && piece.length.compare(scrap.length) <= 0,
    );
    if (!fits && !inScrap) {
      throw new SpecError(
        `${field}[${piece.piece}].width`,
        `no more than the usable width ${usable.valueOf()}${piece.turnable ? ' either way round' : ' with the grain kept'}`,
        `${piece.width.valueOf()}${piece.turnable ? ` x ${piece.length.valueOf()}` : ''} as cut`,
      );
    }
    for (let i = 0; i < piece.count; i++)
      remaining.push(pieceBlock(wholeUp(piece.width), wholeUp(piece.length), index, piece.turnable));
  });
  const plans: CuttingPlan[] = [];
  let fromScraps = 0;
  let scrapArea = exact(0);
  const bySize = [...scraps].sort((a, b) => a.width.mul(a.length).compare(b.width.mul(b.length)));
  for (const scrap of bySize) {
    if (remaining.length === 0) break;
    const scrapWidth = whole(scrap.width);
    const scrapLength = whole(scrap.length);
    const fill = fillScrap(remaining, scrapWidth, scrapLength);
    if (!fill) continue;
    const plan = drawn(scrap.name, fill, scrapWidth, scrapLength, pieces, back, scrap.width, scrap.length);
    plans.push(plan);
    fromScraps += plan.layout.length;
    scrapArea = scrapArea.add(scrap.width.mul(scrap.length));
    remaining = without(remaining, fill);
  }
  let length = exact(0);
  if (remaining.length > 0) {
    const stuck = remaining.find(
      (block) => block.width > width && !(block.turnable && block.length <= width),
    );
    if (stuck) {
      throw new SpecError(
        `${field}[${pieces[stuck.piece]!.piece}].width`,
        `no more than the usable width ${usable.valueOf()}, or scraps enough for all of them`,
        `${back(stuck.width)} as cut`,
      );
    }
    const layout = searchLayout(remaining, width);
    length = exact(layout.length).div(measure.toString());
    plans.push(drawn('cloth', layout, width, layout.length, pieces, back, usable, length));
  }
  const pieceArea = pieces.reduce(
    (sum, piece) => sum.add(piece.width.mul(piece.length).mul(piece.count)),
    exact(0),
  );
  return { length, plans, fromScraps, pieceArea, scrapArea };
};

const piecesOf = (block: Block): Block[] =>
  block.first && block.second ? [...piecesOf(block.first), ...piecesOf(block.second)] : [block];

/** What remains when as many of each kind as the fill holds are taken out. */
const without = (blocks: readonly Block[], fill: Block): Block[] => {
  const taken = new Map<number, number>();
  for (const { piece } of piecesOf(fill)) taken.set(piece, (taken.get(piece) ?? 0) + 1);
  return blocks.filter(({ piece }) => {
    const left = taken.get(piece) ?? 0;
    if (left > 0) taken.set(piece, left - 1);
    return left === 0;
  });
};

const drawn = (
  sheet: string,
  layout: Block,
  width: number,
  length: number,
  pieces: readonly CutPiece[],
  back: (units: number) => number,
  sheetWidth: Exact,
  sheetLength: Exact,
): CuttingPlan => {
  const plan = planCutting(layout, width, length);
  return {
    sheet,
    width: Number(sheetWidth.valueOf()),
    length: Number(sheetLength.valueOf()),
    layout: plan.placed.map(({ piece, ...spot }) => {
      const source = pieces[piece]!;
      return {
        x: back(spot.x),
        y: back(spot.y),
        width: back(spot.width),
        length: back(spot.length),
        piece: source.piece,
        turned: spot.turned,
        ...(source.name === undefined ? {} : { name: source.name }),
      };
    }),
    cuts: plan.cuts.map((cut, i) => ({
      number: i + 1,
      direction: cut.direction,
      x1: back(cut.x1),
      y1: back(cut.y1),
      x2: back(cut.x2),
      y2: back(cut.y2),
      measure: back(cut.measure),
      depth: cut.depth,
    })),
    waste: plan.waste.map((rest) => ({
      x: back(rest.x),
      y: back(rest.y),
      width: back(rest.width),
      length: back(rest.length),
    })),
  };
};
