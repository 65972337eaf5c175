import { type Exact, exact } from './exact.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

/** The fields by which a spec says how a cloth comes. */
export interface ClothSpec {
  usable?: number | undefined;
  fabricWidth?: number | undefined;
  selvedge?: number | undefined;
  shrinkage?: { width?: number | undefined; length?: number | undefined } | undefined;
  straighten?: number | undefined;
  fabric?: string | undefined;
}

export interface Cloth {
  /** Width to cut from: selvedges off, shrunk. */
  usable: Exact;
  /** Length to buy for a length needed at the table. */
  lengthToBuy(needed: Exact): Exact;
  fabric: string;
}

/**
 * The width and the length that a cloth really gives. Shrinkage and the squaring of the cut end are
 * nothing unless given: the usable width is taken as measured on the cloth as it will be cut.
 */
export const clothOf = (
  spec: ClothSpec,
  working: Working,
  usual: { usableIn: number; why: string; fabric: string },
): Cloth => {
  const selvedge = exact(spec.selvedge ?? 0);
  let usable: Exact;
  if (spec.usable !== undefined) {
    usable = exact(spec.usable);
    if (spec.fabricWidth !== undefined && spec.usable > spec.fabricWidth) {
      throw new SpecError(
        `${working.part}.usable`,
        `no more than fabricWidth ${spec.fabricWidth}`,
        String(spec.usable),
      );
    }
  } else if (spec.fabricWidth !== undefined) {
    const each =
      spec.selvedge === undefined
        ? working.length('selvedge', undefined, '1/2', 'common practice, no source')
        : selvedge;
    usable = exact(spec.fabricWidth).sub(each.mul(2));
    if (usable.compare(0) <= 0) {
      throw new SpecError(
        `${working.part}.selvedge`,
        `less than half of fabricWidth ${spec.fabricWidth}`,
        String(spec.selvedge),
      );
    }
    working.line(
      `Usable width: ${spec.fabricWidth} - 2 x ${working.show(each)} selvedge = ${working.show(usable)}`,
    );
  } else {
    usable = working.length('usable', undefined, usual.usableIn, usual.why);
  }
  const shrinkWidth = exact(spec.shrinkage?.width ?? 0);
  const shrinkLength = exact(spec.shrinkage?.length ?? 0);
  if (shrinkWidth.compare(0) > 0) {
    const before = usable;
    usable = usable.mul(exact(1).sub(shrinkWidth));
    working.line(
      `Washed first, width: ${working.show(before)} x (1 - ${shrinkWidth.valueOf()}) = ${working.show(usable)}`,
    );
  }
  const straighten = exact(spec.straighten ?? 0);
  if (spec.shrinkage === undefined) working.assume('shrinkage', '0', 'not washed before cutting unless said');
  if (spec.straighten === undefined)
    working.assume('straighten', '0', 'the cut end is taken as square unless said');
  return {
    usable,
    fabric: spec.fabric ?? usual.fabric,
    lengthToBuy(needed) {
      let length = needed;
      if (straighten.compare(0) > 0) {
        length = length.add(straighten);
        working.line(
          `Squaring the cut end: ${working.show(needed)} + ${working.show(straighten)} = ${working.show(length)}`,
        );
      }
      if (shrinkLength.compare(0) > 0) {
        const before = length;
        length = length.div(exact(1).sub(shrinkLength));
        working.line(
          `Before washing: ${working.show(before)} / (1 - ${shrinkLength.valueOf()}) = ${working.show(length)}`,
        );
      }
      return length;
    },
  };
};

/**
 * The least number of widths that, sewn side by side, cover `needed`; each join takes `perJoin`.
 * n x width - (n - 1) x perJoin >= needed.
 */
export const widthsToCover = (
  needed: Exact,
  width: Exact,
  perJoin: Exact,
  field: { seam: string; usable: string },
): number => {
  if (width.compare(needed) >= 0) return 1;
  const gain = width.sub(perJoin);
  if (gain.compare(0) <= 0) {
    throw new SpecError(
      field.seam,
      `joins that take less than the usable width ${width.valueOf()}`,
      `${perJoin.valueOf()} a join`,
    );
  }
  const count = Number(needed.sub(perJoin).div(gain).ceil().valueOf());
  if (count > 2000) {
    throw new SpecError(
      field.usable,
      `cloth wide enough to reach ${needed.valueOf()} in 2000 pieces or fewer`,
      String(width.valueOf()),
    );
  }
  return count;
};
