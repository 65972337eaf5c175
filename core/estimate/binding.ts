import type { BindingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothOf, widthsToCover } from './cloth.ts';
import { clothLength, clothLengthLine } from './cloth-length.ts';
import { decimal, type Exact, exact } from './exact.ts';
import { isKnown, type QuiltSize, type UnknownSize } from './quilt-size.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

type Binding = NonNullable<EstimateSpec['binding']>;

const number = (value: Exact): number => Number(value.valueOf());

/** Where the joins of a long strip fall, from its start. */
const joinPositions = (count: number, usable: Exact, perJoin: Exact): number[] =>
  Array.from({ length: Math.max(0, count - 1) }, (_, i) =>
    decimal(
      usable
        .sub(perJoin)
        .mul(i + 1)
        .add(perJoin.div(2)),
    ),
  );

/** Square of cloth for a continuous bias strip: (side - 1/2 in)^2 = length x strip. */
const biasSide = (length: number, strip: number, halfInch: number): number =>
  Math.sqrt(length * strip) + halfInch;

/** Strips for the binding, their joins counted one by one, or the square of cloth for a bias binding. */
export const estimateBinding = (
  binding: Binding,
  quilt: QuiltSize | UnknownSize,
  working: Working,
): BindingAnswer => {
  const cut = working.choice('cut', binding.cut, 'straight', 'straight edges; bias is for curves');
  const strip = working.length('strip', binding.strip, '2 1/2', 'doubled binding; 2 to 2 1/2 by source');
  const seam = working.length('seam', binding.seam, '1/4', 'common practice, no source');
  const folded = strip.div(2);
  if (seam.compare(folded) >= 0) {
    throw new SpecError('binding.seam', `less than the folded strip ${number(folded)}`, String(number(seam)));
  }
  working.line(
    `Pressed in half: ${working.show(strip)} / 2 = ${working.show(folded)}; on the front shows about the seam's width, ${working.show(seam)}`,
  );
  const common = { cut, folded: number(folded), front: number(seam) };
  if (!isKnown(quilt)) {
    working.ask(`${quilt.question} Or what do its four sides measure?`);
    return { ...common, ...working.carried() };
  }
  const allowance = working.length(
    'allowance',
    binding.allowance,
    12,
    'corners and the last join; 10 to 24 by source',
  );
  const join = working.choice('join', binding.join, 'diagonal', 'the bulk of the join is spread');
  const cloth = clothOf(binding, working, {
    usableIn: 40,
    why: 'a 42 to 45 in cotton, selvedges off',
    fabric: 'binding',
  });
  const needed = quilt.perimeter.add(allowance);
  working.line(
    `Length needed: ${quilt.measured ? 'the four sides measured' : 'the way round'} ${working.show(quilt.perimeter)} + ${working.show(allowance)} = ${working.show(needed)}`,
  );
  const perJoin = join === 'diagonal' ? strip : seam.mul(2);
  working.line(
    join === 'diagonal'
      ? `A diagonal join takes the strip's width, ${working.show(perJoin)}`
      : `A straight join takes two seams, ${working.show(perJoin)}`,
  );
  if (strip.compare(cloth.usable) >= 0) {
    throw new SpecError(
      'binding.strip',
      `less than the usable width ${number(cloth.usable)}`,
      String(number(strip)),
    );
  }
  const stopBeforeCorner = number(seam);
  if (cut === 'bias') {
    const halfInch = number(working.fromInches('1/2'));
    const textbook = Math.sqrt(number(needed) * number(strip));
    let squares = 1;
    let perSquare = number(needed);
    let side = biasSide(perSquare, number(strip), halfInch);
    // A square wider than the cloth can't be cut: more, smaller squares, their strips joined like any other.
    while (Math.ceil(side - 1e-9) > number(cloth.usable)) {
      squares += 1;
      if (squares > 200)
        throw new SpecError(
          'binding.usable',
          'cloth wide enough for the bias square',
          String(number(cloth.usable)),
        );
      perSquare = (number(needed) + (squares - 1) * number(strip)) / squares;
      side = biasSide(perSquare, number(strip), halfInch);
    }
    const whole = Math.ceil(side - 1e-9);
    working.line(
      `Textbook square: the root of ${working.show(needed)} x ${working.show(strip)} = ${decimal(textbook)} ${working.unit}`,
    );
    working.line(
      `With the two half-inch seams of the continuous method: the root + ${halfInch} = ${decimal(biasSide(number(needed), number(strip), halfInch))} ${working.unit}`,
    );
    if (squares > 1)
      working.line(`Wider than the cloth: ${squares} squares of ${decimal(side)}, their strips joined`);
    working.line(`Cut the square up to a whole ${working.unit}: ${whole}`);
    const joined = squares * ((whole - halfInch) ** 2 / number(strip)) - (squares - 1) * number(strip);
    const across = Math.max(1, Math.floor(number(cloth.usable) / whole));
    const bought = cloth.lengthToBuy(exact(whole).mul(Math.ceil(squares / across)));
    working.line(clothLengthLine(bought, working.unit));
    return {
      ...common,
      side: whole,
      sideExact: decimal(side),
      textbook: decimal(textbook),
      squares,
      strips: squares,
      ...clothLength(bought, working.unit),
      joined: decimal(joined),
      needed: number(needed),
      stopBeforeCorner,
      fabric: cloth.fabric,
      ...working.carried(),
    };
  }
  const strips = widthsToCover(needed, cloth.usable, perJoin, {
    seam: join === 'diagonal' ? 'binding.strip' : 'binding.seam',
    usable: 'binding.usable',
  });
  const joined = cloth.usable.mul(strips).sub(perJoin.mul(strips - 1));
  working.line(
    `${strips} x ${working.show(cloth.usable)} - ${strips - 1} x ${working.show(perJoin)} = ${working.show(joined)}, at least ${working.show(needed)}`,
  );
  if (strips > 1) {
    working.line(
      `${strips - 1} would give ${working.show(cloth.usable.mul(strips - 1).sub(perJoin.mul(strips - 2)))}, too short`,
    );
  }
  working.line(`Cloth: ${strips} x ${working.show(strip)} = ${working.show(strip.mul(strips))}`);
  const bought = cloth.lengthToBuy(strip.mul(strips));
  working.line(clothLengthLine(bought, working.unit));
  const joinsAt = joinPositions(strips, cloth.usable, perJoin);
  return {
    ...common,
    strips,
    ...clothLength(bought, working.unit),
    joined: number(joined),
    needed: number(needed),
    joinsAt,
    corners: cornersOf(quilt, joinsAt, working),
    stopBeforeCorner,
    fabric: cloth.fabric,
    ...working.carried(),
  };
};

/** Where the four corners come on the strip when it starts in the middle of the bottom edge, clockwise. */
const cornersOf = (
  quilt: QuiltSize,
  joinsAt: number[],
  working: Working,
): { at: number; nearestJoin: number | null }[] => {
  const sides = [quilt.width.div(2), quilt.length, quilt.width, quilt.length];
  let at = exact(0);
  const corners = sides.map((side) => {
    at = at.add(side);
    const place = decimal(at);
    const nearest =
      joinsAt.length === 0
        ? null
        : joinsAt.reduce((best, join) => (Math.abs(join - place) < Math.abs(best - place) ? join : best));
    return { at: place, nearestJoin: nearest };
  });
  const close = number(working.fromInches(3));
  const clashes = corners.filter(
    ({ at: place, nearestJoin }) => nearestJoin !== null && Math.abs(nearestJoin - place) < close,
  );
  if (clashes.length > 0) {
    working.warn(
      `begun in the middle of the bottom edge, a join comes within ${close} ${working.unit} of ${clashes.length === 1 ? 'a corner' : `${clashes.length} corners`}; begin a hand's width further along`,
    );
  }
  return corners;
};
