import type { BattingAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { BATTING_PACKAGES_IN } from './batting-packages.ts';
import { clothLength, clothLengthLine } from './cloth-length.ts';
import { type Exact, exact, written } from './exact.ts';
import { isKnown, type QuiltSize, type UnknownSize } from './quilt-size.ts';
import type { Working } from './working.ts';

type Batting = NonNullable<EstimateSpec['batting']>;

const number = (value: Exact): number => Number(value.valueOf());

/** The size of batting needed and the smallest package that holds it, either way round. */
export const estimateBatting = (
  batting: Batting,
  quilt: QuiltSize | UnknownSize,
  working: Working,
): BattingAnswer => {
  const spacing = batting.maxSpacing === undefined ? {} : { maxSpacing: batting.maxSpacing };
  if (!isKnown(quilt)) {
    working.ask(quilt.question);
    return { ...spacing, ...working.carried() };
  }
  const overage = working.length('overage', batting.overage, 4, 'each side; 2 to 6 by source');
  let width = quilt.width.add(overage.mul(2));
  let length = quilt.length.add(overage.mul(2));
  working.line(
    `Needed: ${working.show(quilt.width)} + 2 x ${working.show(overage)} = ${working.show(width)} by ${working.show(quilt.length)} + 2 x ${working.show(overage)} = ${working.show(length)}`,
  );
  if (batting.shrinkage === undefined)
    working.assume(
      'shrinkage',
      '0',
      'not washed before use unless said; cotton shrinks 3 to 5 % afterwards, makers as excerpted',
    );
  else {
    width = width.div(exact(1).sub(batting.shrinkage.width ?? 0));
    length = length.div(exact(1).sub(batting.shrinkage.length ?? 0));
    working.line(`Before washing: ${working.show(width)} by ${working.show(length)}`);
  }
  const packages: { name: string; width: Exact; length: Exact }[] =
    batting.packages?.map(({ name, width: w, length: l }) => ({ name, width: exact(w), length: exact(l) })) ??
    BATTING_PACKAGES_IN.map(({ name, width: w, length: l }) => ({
      name,
      width: working.fromInches(w),
      length: working.fromInches(l),
    }));
  if (batting.packages === undefined) {
    working.assume(
      'packages',
      packages.map((p) => `${p.name} ${written(p.width)} x ${written(p.length)}`).join(', '),
      'usual sizes, as excerpted; sources disagree, so write in your own',
    );
  }
  const holds = (w: Exact, l: Exact): boolean => w.compare(width) >= 0 && l.compare(length) >= 0;
  const fitting = packages.filter((p) => holds(p.width, p.length) || holds(p.length, p.width));
  const area = (p: { width: Exact; length: Exact }): Exact => p.width.mul(p.length);
  const best =
    fitting.length > 0 ? fitting.reduce((least, p) => (area(p).compare(area(least)) < 0 ? p : least)) : null;
  let roll = {};
  if (batting.roll !== undefined) {
    const rollWidth = exact(batting.roll);
    const lengths = [
      [width, length],
      [length, width],
    ]
      .filter(([across]) => across!.compare(rollWidth) <= 0)
      .map(([, along]) => along!);
    if (lengths.length > 0) {
      const along = lengths.reduce((least, l) => (l.compare(least) < 0 ? l : least));
      working.line(`From the roll of ${working.show(rollWidth)}: ${clothLengthLine(along, working.unit)}`);
      roll = { roll: clothLength(along, working.unit) };
    } else
      working.line(
        `From the roll of ${working.show(rollWidth)}: too narrow either way; widths must be joined`,
      );
  }
  const reason = best
    ? undefined
    : `no package holds ${working.show(width)} by ${working.show(length)}, either way round${packages.length > 0 ? `; the largest is ${written(packages.reduce((most, p) => (area(p).compare(area(most)) > 0 ? p : most)).width)} x ${written(packages.reduce((most, p) => (area(p).compare(area(most)) > 0 ? p : most)).length)}` : ': none was given'}`;
  working.line(
    best
      ? `Smallest package by area that holds it, either way round: ${best.name}, ${written(best.width)} x ${written(best.length)}`
      : reason!,
  );
  return {
    width: number(width),
    length: number(length),
    package: best ? { name: best.name, width: number(best.width), length: number(best.length) } : null,
    ...(reason === undefined ? {} : { reason }),
    ...spacing,
    ...roll,
    ...working.carried(),
  };
};
