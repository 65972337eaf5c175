import Fraction from 'fraction.js';

/** A length, area or share as an exact fraction; 0.1 is one tenth, not the nearest float. */
export type Exact = Fraction;

export const exact = (value: number | string | Fraction): Fraction => new Fraction(value);

/** The least multiple of `step` that is not less than `value`. */
export const roundUpTo = (value: Fraction, step: Fraction): Fraction => value.div(step).ceil().mul(step);

/** Half away from zero, to a whole number; for money and printed minutes. */
export const roundHalfUp = (value: Fraction): Fraction => value.add(1, 2).floor();

export const largest = (...values: Fraction[]): Fraction =>
  values.reduce((most, value) => (value.compare(most) > 0 ? value : most));

export const smallest = (...values: Fraction[]): Fraction =>
  values.reduce((least, value) => (value.compare(least) < 0 ? value : least));

/** To at most `places` decimals, for an answer's figure beside the exact fraction. */
export const decimal = (value: Fraction | number, places = 3): number => {
  const factor = 10 ** places;
  return Math.round(Number(value.valueOf()) * factor) / factor;
};

/** As a person writes it: 5 3/4 for eighths and the like, decimals for anything finer. */
export const written = (value: Fraction): string => {
  const denominator = Number(value.d);
  if (denominator === 1) return String(Number(value.valueOf()));
  if (denominator <= 16 && (denominator & (denominator - 1)) === 0) return value.toFraction(true);
  return String(decimal(value));
};
