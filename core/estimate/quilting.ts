import type { ClothLength, Worked } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothLength } from './cloth-length.ts';
import { decimal, exact } from './exact.ts';
import type { QuiltSize, UnknownSize } from './quilt-size.ts';
import { stitchRatioOf } from './stitch-ratios.ts';
import type { Working } from './working.ts';

/** Length of the quilting lines: area over spacing for lines, twice that for a grid; and its thread. */
export const estimateQuilting = (
  quilting: NonNullable<EstimateSpec['quilting']>,
  quilt: QuiltSize | UnknownSize,
  maxSpacing: number | undefined,
  working: Working,
): Worked & { runningLength?: number; thread?: ClothLength } => {
  const width = quilting.width === undefined ? quilt.width : exact(quilting.width);
  const length = quilting.length === undefined ? quilt.length : exact(quilting.length);
  if (!width || !length) {
    working.ask('How wide and how long is the part to be quilted?');
    return working.carried();
  }
  const { spacing } = quilting;
  if (spacing === undefined) {
    working.ask('How far apart are the lines of quilting?');
    return working.carried();
  }
  const pattern = working.choice('pattern', quilting.pattern, 'grid', 'lines both ways');
  const ways = pattern === 'lines' ? 1 : 2;
  const running = width.mul(length).div(spacing).mul(ways);
  working.line(
    `Lines ${spacing} apart${ways === 2 ? ', both ways' : ''}: ${working.show(width)} x ${working.show(length)} / ${spacing}${ways === 2 ? ' x 2' : ''} = ${working.show(running)}`,
  );
  const limit = quilting.maxSpacing ?? maxSpacing;
  if (limit === undefined)
    working.ask("What does the batting's wrapper say about the largest spacing of ties or quilting?");
  else if (spacing > limit)
    working.warn(`lines ${spacing} ${working.unit} apart; the batting allows ${limit} ${working.unit}`);
  const ratio = working.choice(
    'ratio',
    quilting.ratio,
    stitchRatioOf('running')!.ratio,
    'running stitch through three layers, our own arithmetic',
  );
  const waste = working.choice(
    'waste',
    quilting.waste,
    0.15,
    'thread maker, 10 to 20 % by edition, as excerpted',
  );
  const thread = running.mul(exact(ratio)).mul(exact(1).add(waste));
  working.line(`Thread: ${working.show(running)} x ${ratio} x (1 + ${waste}) = ${working.show(thread)}`);
  return { runningLength: decimal(running), thread: clothLength(thread, working.unit), ...working.carried() };
};
