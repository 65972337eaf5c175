import type { TiesAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothLength } from './cloth-length.ts';
import { decimal, type Exact, exact, largest } from './exact.ts';
import { isKnown, type QuiltSize, type UnknownSize } from './quilt-size.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

type Ties = NonNullable<EstimateSpec['ties']>;

const MOST_TIES = 100_000;
const number = (value: Exact): number => Number(value.valueOf());

/** Count, places and yarn of the ties; warns where they stand farther apart than the batting allows. */
export const estimateTies = (
  ties: Ties,
  quilt: QuiltSize | UnknownSize,
  grid: { rows?: number | undefined; blocks?: number | undefined },
  maxSpacing: number | undefined,
  working: Working,
): TiesAnswer => {
  const every = working.choice('every', ties.every, 'block', 'one tie in each block');
  const tail = working.length('tail', ties.tail, 3, 'left long and trimmed; 2 to 3 by source');
  const stitch = working.length('stitch', ties.stitch, '1/2', '1/4 in taken twice; 1/8 to 1/4 in by source');
  const knot = working.length('knot', ties.knot, 1, 'our own arithmetic: two tails + 1 to 1 1/2 in a tie');
  const perTie = tail.mul(2).add(stitch).add(knot);
  if (perTie.compare(0) <= 0)
    throw new SpecError('ties.tail', 'tail, stitch and knot that take some yarn', '0');
  working.line(
    `A tie takes 2 x ${working.show(tail)} + ${working.show(stitch)} + ${working.show(knot)} = ${working.show(perTie)}`,
  );
  const skeinUnit = working.unit === 'in' ? 'yd' : 'm';
  let rows: number;
  let columns: number;
  if (every === 'block') {
    const given = { rows: ties.rows ?? grid.rows, blocks: ties.blocks ?? grid.blocks };
    if (given.rows === undefined || given.blocks === undefined) {
      working.ask('How many rows of blocks has the quilt, and how many blocks in a row?');
      return { perTie: number(perTie), ...working.carried() };
    }
    rows = given.rows;
    columns = given.blocks;
    working.line(`One in each block: ${rows} rows x ${columns} blocks = ${rows * columns}`);
  } else {
    if (!isKnown(quilt)) {
      working.ask(quilt.question);
      return { perTie: number(perTie), ...working.carried() };
    }
    columns = Number(quilt.width.div(every).ceil().valueOf());
    rows = Number(quilt.length.div(every).ceil().valueOf());
    working.line(
      `Across: ${working.show(quilt.width)} / ${every}, up: ${columns}; down: ${working.show(quilt.length)} / ${every}, up: ${rows}; ${columns} x ${rows} = ${columns * rows}`,
    );
    working.line(
      'Each tie holds the middle of its own field of the grid, so that the edge is half a field away',
    );
  }
  const count = rows * columns;
  if (count > MOST_TIES)
    throw new SpecError(
      'ties.every',
      `a spacing that gives at most ${MOST_TIES} ties`,
      `${every}, which gives ${count}`,
    );
  const yarn = perTie.mul(count);
  working.line(`Yarn: ${count} x ${working.show(perTie)} = ${working.show(yarn)}`);
  const inSkeins = working.unit === 'in' ? yarn.div(36) : yarn.div(100);
  const skein =
    ties.skein === undefined
      ? working.unit === 'in'
        ? exact(800).div('2.54').div(36)
        : exact(8)
      : exact(ties.skein);
  if (ties.skein === undefined)
    working.assume('skein', `${decimal(skein, 2)} ${skeinUnit}`, 'six-strand floss, 8 m; from memory');
  const skeins = Number(inSkeins.div(skein).ceil().valueOf());
  working.line(
    `Skeins: ${decimal(inSkeins)} ${skeinUnit} / ${decimal(skein, 2)} ${skeinUnit}, up: ${skeins}`,
  );
  const spacing = isKnown(quilt) ? { across: quilt.width.div(columns), down: quilt.length.div(rows) } : null;
  if (spacing) {
    working.line(
      `They stand ${working.show(spacing.across)} apart across and ${working.show(spacing.down)} down`,
    );
    const widest = largest(spacing.across, spacing.down);
    if (maxSpacing !== undefined) {
      if (widest.compare(maxSpacing) > 0) {
        working.warn(
          `ties ${working.show(widest)} apart; the batting allows ${maxSpacing} ${working.unit}. Tie more closely or choose another batting`,
        );
      } else working.line(`Within the batting's limit of ${maxSpacing} ${working.unit}`);
    }
  } else {
    working.ask(`${isKnown(quilt) ? '' : quilt.question} The spacing of the ties follows from it.`);
  }
  if (maxSpacing === undefined)
    working.ask("What does the batting's wrapper say about the largest spacing of ties or quilting?");
  return {
    count,
    yarn: number(yarn),
    yarnLength: clothLength(yarn, working.unit),
    perTie: number(perTie),
    skeins,
    rows,
    columns,
    ...(spacing
      ? {
          spacing: { across: number(spacing.across), down: number(spacing.down) },
          positions: positionsOf(rows, columns, spacing),
        }
      : {}),
    ...working.carried(),
  };
};

const positionsOf = (
  rows: number,
  columns: number,
  spacing: { across: Exact; down: Exact },
): { x: number; y: number }[] => {
  const middle = (i: number, step: Exact): number => decimal(number(step) * (i + 0.5));
  return Array.from({ length: rows * columns }, (_, i) => ({
    x: middle(i % columns, spacing.across),
    y: middle(Math.floor(i / columns), spacing.down),
  }));
};
