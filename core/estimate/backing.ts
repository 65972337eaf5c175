import type { BackingAnswer, BackingOption } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { clothOf, widthsToCover } from './cloth.ts';
import { clothLength, clothLengthLine } from './cloth-length.ts';
import { type Exact, exact, roundUpTo } from './exact.ts';
import { isKnown, type QuiltSize, type UnknownSize } from './quilt-size.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

type Backing = NonNullable<EstimateSpec['backing']>;

const number = (value: Exact): number => Number(value.valueOf());

/** Widths of the panels as cut, edge to edge, and where their joins fall on the made-up back. */
const panelsAcross = (
  count: number,
  needed: Exact,
  usable: Exact,
  perJoin: Exact,
  offCentre: boolean,
): { widths: Exact[]; joinsAt: Exact[] } => {
  const total = needed.add(perJoin.mul(count - 1));
  let widths: Exact[];
  if (offCentre && count % 2 === 0) {
    // Full panels and one narrower: the join moves away from the fold in the middle.
    const full = usable;
    widths = [...Array<Exact>(count - 1).fill(full), total.sub(full.mul(count - 1))];
  } else {
    widths = Array<Exact>(count).fill(total.div(count));
  }
  const joinsAt: Exact[] = [];
  let edge = exact(0);
  widths.slice(0, -1).forEach((width, i) => {
    edge = edge.add(width).sub(i === 0 ? perJoin.div(2) : perJoin);
    joinsAt.push(edge);
  });
  return { widths, joinsAt };
};

/** Cloth for the back: panels along the length or across, the better of the two, both listed. */
export const estimateBacking = (
  backing: Backing,
  quilt: QuiltSize | UnknownSize,
  working: Working,
): BackingAnswer => {
  if (!isKnown(quilt)) {
    working.ask(quilt.question);
    return working.carried();
  }
  const overage = working.length(
    'overage',
    backing.overage,
    4,
    'each side; 2 to 5 by source, 4 suits hand work and a frame',
  );
  const seam = working.length(
    'seam',
    backing.seam,
    '1/2',
    'pressed open, selvedges removed; About quilting, as excerpted',
  );
  const cloth = clothOf(backing, working, {
    usableIn: 40,
    why: 'a 42 to 45 in cotton, selvedges off',
    fabric: 'backing',
  });
  const width = quilt.width.add(overage.mul(2));
  const length = quilt.length.add(overage.mul(2));
  working.line(
    `The back must measure ${working.show(quilt.width)} + 2 x ${working.show(overage)} = ${working.show(width)} by ${working.show(quilt.length)} + 2 x ${working.show(overage)} = ${working.show(length)}`,
  );
  const perJoin = seam.mul(2);
  if (perJoin.compare(cloth.usable) >= 0) {
    throw new SpecError(
      'backing.seam',
      `less than half the usable width ${number(cloth.usable)}`,
      String(number(seam)),
    );
  }
  const fields = { seam: 'backing.seam', usable: 'backing.usable' };
  const optionOf = (
    seams: 'vertical' | 'horizontal',
    covered: Exact,
    run: Exact,
  ): { option: BackingOption; bought: Exact } => {
    let panels = widthsToCover(covered, cloth.usable, perJoin, fields);
    const words = seams === 'vertical' ? 'along the length' : 'across';
    const reach = (n: number): Exact => cloth.usable.mul(n).sub(perJoin.mul(n - 1));
    working.line(
      `Panels ${words}: ${panels} x ${working.show(cloth.usable)} - ${panels - 1} x ${working.show(perJoin)} = ${working.show(reach(panels))}, at least ${working.show(covered)}${panels > 1 ? ` (${panels - 1} would give ${working.show(reach(panels - 1))})` : ''}`,
    );
    let across = panelsAcross(panels, covered, cloth.usable, perJoin, backing.offCentre ?? false);
    if (backing.offCentre && panels % 2 === 0) {
      const middle = covered.div(2);
      const near = across.joinsAt.some((at) => at.sub(middle).abs().compare(working.fromInches(4)) < 0);
      if (near) {
        panels += 1;
        across = panelsAcross(panels, covered, cloth.usable, perJoin, true);
        working.line(
          `A join within ${working.show(working.fromInches(4))} of the centre: one panel more, ${panels}`,
        );
      }
    }
    let panelLength = run;
    if (backing.repeat !== undefined && panels > 1) {
      panelLength = roundUpTo(run, exact(backing.repeat));
      working.line(
        `Matched to the repeat of ${backing.repeat}: panel length ${working.show(run)} goes up to ${working.show(panelLength)}`,
      );
    }
    working.line(
      `Cloth with panels ${words}: ${panels} x ${working.show(panelLength)} = ${working.show(panelLength.mul(panels))}`,
    );
    const bought = cloth.lengthToBuy(panelLength.mul(panels));
    working.line(clothLengthLine(bought, working.unit));
    const option: BackingOption = {
      seams,
      panels,
      joins: panels - 1,
      panelLength: number(panelLength),
      panelWidths: across.widths.map(number),
      joinsAt: across.joinsAt.map(number),
      ...clothLength(bought, working.unit),
    };
    return { option, bought };
  };
  const vertical = optionOf('vertical', width, length);
  const all = [vertical];
  if (backing.oneWay) working.line('The print has one way up: panels across are left out');
  else all.push(optionOf('horizontal', length, width));
  const best = all.reduce((least, other) => {
    const order = other.bought.compare(least.bought);
    return order < 0 || (order === 0 && other.option.panels < least.option.panels) ? other : least;
  });
  working.line(
    `Least cloth: ${best.option.seams === 'vertical' ? 'panels along the length' : 'panels across'}, ${best.option.panels === 1 ? 'one panel, no join' : `${best.option.panels} panels`}`,
  );
  return {
    ...best.option,
    width: number(width),
    length: number(length),
    options: all.map(({ option }) => option),
    fabric: cloth.fabric,
    ...working.carried(),
  };
};
