import type { ClothLength } from '../../shared/estimate-answer.ts';
import type { LengthUnit } from '../../shared/estimate-spec.ts';
import { decimal, type Exact, exact, roundUpTo, written } from './exact.ts';

const EIGHTH = exact('1/8');
const TENTH = exact('1/10');

/**
 * Cloth to buy for a length in `unit`: yards up to the next eighth, or metres up to the next tenth. An
 * exact eighth stays as it is; anything over it goes up, so that what is bought suffices.
 */
export const clothLength = (length: Exact, unit: LengthUnit): ClothLength => {
  if (unit === 'in') {
    const yards = length.div(36);
    return {
      yards: Number(roundUpTo(yards, EIGHTH).valueOf()),
      exact: decimal(yards),
      exactFraction: yards.toFraction(),
    };
  }
  const metres = length.div(100);
  return {
    metres: Number(roundUpTo(metres, TENTH).valueOf()),
    exact: decimal(metres),
    exactFraction: metres.toFraction(),
  };
};

/** The last line of a part's working: from the length in hand to what the shop is asked for. */
export const clothLengthLine = (length: Exact, unit: LengthUnit): string => {
  const cloth = clothLength(length, unit);
  return 'yards' in cloth
    ? `${written(length)} in / 36 = ${cloth.exact} yd, up to the next eighth: ${written(exact(cloth.yards))} yd`
    : `${written(length)} cm / 100 = ${cloth.exact} m, up to the next tenth: ${cloth.metres} m`;
};
