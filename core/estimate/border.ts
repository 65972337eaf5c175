import type { BorderAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothOf, widthsToCover } from './cloth.ts';
import { clothLength, clothLengthLine } from './cloth-length.ts';
import { type Exact, exact } from './exact.ts';
import { isKnown, type QuiltSize, type UnknownSize } from './quilt-size.ts';
import { SpecError } from './spec-error.ts';
import { stripsForLengths } from './strips-for-lengths.ts';
import type { Working } from './working.ts';

type Border = NonNullable<EstimateSpec['border']>;

const number = (value: Exact): number => Number(value.valueOf());

/** Strips for a border with butted or mitred corners, or with cornerstones, joined where a side is longer than the cloth is wide. */
export const estimateBorder = (
  border: Border,
  quilt: QuiltSize | UnknownSize,
  working: Working,
): BorderAnswer => {
  const corner = working.choice('corner', border.corner, 'butted', 'the least cloth and no mitre to sew');
  const seam = working.length('seam', border.seam, '1/4', 'common practice, no source');
  if (border.width === undefined) {
    working.ask('How wide is the border, finished?');
    return { corner, ...working.carried() };
  }
  const width = exact(border.width);
  const strip = width.add(seam.mul(2));
  working.line(
    `Strips are cut at ${working.show(width)} + 2 x ${working.show(seam)} = ${working.show(strip)}`,
  );
  const common = { corner, strip: number(strip) };
  if (!isKnown(quilt)) {
    working.ask(quilt.question);
    return { ...common, ...working.carried() };
  }
  const cloth = clothOf(border, working, {
    usableIn: 40,
    why: 'a 42 to 45 in cotton, selvedges off',
    fabric: 'border',
  });
  if (strip.compare(cloth.usable) > 0) {
    throw new SpecError(
      'border.width',
      `with two seams no wider than the usable width ${number(cloth.usable)}`,
      String(border.width),
    );
  }
  const both = width.mul(2);
  let sides: Exact;
  let ends: Exact;
  if (corner === 'mitred') {
    const extra = working.length(
      'extra',
      border.extra,
      2,
      'beyond length + 2 x border, to trim the mitre; common practice, no source',
    );
    sides = quilt.length.add(both).add(extra);
    ends = quilt.width.add(both).add(extra);
    working.line(
      `Mitred, each side: length + 2 x border + ${working.show(extra)}: two of ${working.show(sides)}, two of ${working.show(ends)}`,
    );
  } else {
    sides = quilt.length;
    ends = corner === 'butted' ? quilt.width.add(both) : quilt.width;
    working.line(
      corner === 'butted'
        ? `Butted: two sides of the quilt's length, ${working.show(sides)}, then two of ${working.show(quilt.width)} + 2 x ${working.show(width)} = ${working.show(ends)}`
        : `Cornerstones: two sides of ${working.show(sides)}, two of ${working.show(ends)}, four squares of ${working.show(strip)}`,
    );
  }
  if (corner !== 'mitred' && border.extra !== undefined) {
    throw new SpecError('border.extra', 'corner "mitred" beside it', `corner "${corner}"`);
  }
  const lengths = [sides, sides, ends, ends];
  const stones = corner === 'cornerstones' ? [strip, strip, strip, strip] : [];
  const perJoin = border.repeat === undefined ? seam.mul(2) : seam.mul(2).add(border.repeat);
  if (border.repeat !== undefined)
    working.line(
      `To match the print a join may lose up to one repeat more, ${border.repeat} ${working.unit}: reckoned in full, so that it suffices`,
    );
  const fields = { seam: 'border.seam', usable: 'border.usable' };
  const strips = stripsForLengths([...lengths, ...stones], cloth.usable, perJoin, fields);
  const eachAlone = lengths.reduce(
    (sum, length) => sum + widthsToCover(length, cloth.usable, perJoin, fields),
    0,
  );
  const endToEnd = widthsToCover(
    lengths.reduce((sum, length) => sum.add(length), exact(0)),
    cloth.usable,
    perJoin,
    fields,
  );
  working.line(
    `A join takes ${working.show(perJoin)}; with the fewest joins in each side, and what is left of one strip used for another, ${strips} strips of ${working.show(cloth.usable)}`,
  );
  working.line(
    `For comparison: each side from strips of its own ${eachAlone}; all sides cut from one long joined strip ${endToEnd}`,
  );
  working.line(`Cloth: ${strips} x ${working.show(strip)} = ${working.show(strip.mul(strips))}`);
  const bought = cloth.lengthToBuy(strip.mul(strips));
  working.line(clothLengthLine(bought, working.unit));
  const units =
    border.unit === undefined
      ? undefined
      : (['side', 'end'] as const).map((side) => {
          const length = side === 'side' ? quilt.length : quilt.width;
          const count = Number(length.div(border.unit!).floor().valueOf());
          const leftOver = length.sub(exact(border.unit!).mul(count));
          working.line(
            `Pieced of units ${border.unit} long, each ${side}: ${count} units${leftOver.equals(0) ? '' : `, ${working.show(leftOver)} over: ease it in or set a spacer`}`,
          );
          return { side, count, leftOver: number(leftOver) };
        });
  return {
    ...common,
    lengths: [
      { side: 'side', length: number(sides), count: 2 },
      { side: 'end', length: number(ends), count: 2 },
    ],
    strips,
    ...clothLength(bought, working.unit),
    stripsEachAlone: eachAlone,
    stripsEndToEnd: endToEnd,
    finished: { width: number(quilt.width.add(both)), length: number(quilt.length.add(both)) },
    ...(corner === 'cornerstones' ? { cornerstones: { count: 4, side: number(strip) } } : {}),
    ...(units ? { units } : {}),
    fabric: cloth.fabric,
    ...working.carried(),
  };
};
