import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { decimal, exact } from './exact.ts';

/**
 * The price of what was done instead of what was foreseen: the hours worked at the hourly rate, what was bought, and
 * nothing for what might have come. Undefined where nothing was worked, or the work is not charged by the hour.
 */
export const specAsWorked = ({ unit, price }: EstimateSpec): EstimateSpec | undefined => {
  if (price?.hourly === undefined || price.actual?.minutes === undefined) return undefined;
  const { contingency: _contingency, actual, ...rest } = price;
  return {
    ...(unit ? { unit } : {}),
    price: { ...rest, hours: decimal(exact(actual.minutes!).div(60), 6) },
  };
};
