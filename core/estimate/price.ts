import type {
  Estimated,
  PriceAnswer,
  PriceLine,
  PriceTotal,
  WorkAnswer,
} from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { currencyDigits } from './currency-digits.ts';
import { decimal, type Exact, exact, roundHalfUp } from './exact.ts';
import { SpecError } from './spec-error.ts';
import type { Working } from './working.ts';

type Price = NonNullable<EstimateSpec['price']>;

/** Share of the agreed total from which on a warning is given, while there is time to speak. Our own choice. */
const NEAR = 0.85;

/** ISO 4217's own code for "no currency". */
const NO_CURRENCY = 'XXX';

interface Bill {
  lines: PriceLine[];
  subtotal: number;
  tax: number;
  total: number;
}

/** Labour, charges, materials, contingency and tax, each line rounded once, half up; totals are the sums of the lines. */
export const estimatePrice = (price: Price, work: WorkAnswer | undefined, working: Working): PriceAnswer => {
  const currency = price.currency ?? NO_CURRENCY;
  if (price.currency === undefined) working.ask('In which currency? Two digits after the point until then.');
  const digits = price.currency === undefined ? 2 : currencyDigits(price.currency);
  if (digits === undefined)
    throw new SpecError(
      'price.currency',
      'an active currency of ISO 4217, such as GBP',
      `"${price.currency}"`,
    );
  const scale = 10 ** digits;
  /** Exact major units to whole minor units. */
  const minorOf = (amount: Exact): number => Number(roundHalfUp(amount.mul(scale)).valueOf());
  const printed = (minor: number): string => {
    const sign = minor < 0 ? '-' : '';
    const text = String(Math.abs(minor)).padStart(digits + 1, '0');
    return digits === 0 ? sign + text : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
  };
  const totalOf = (minor: number): PriceTotal => ({ amount: printed(minor), minor });
  working.line(`${currency}: ${digits} digits after the point (ISO 4217); each line rounded once, half up`);

  const hours = hoursOf(price, work, working);
  const contingency = working.choice('contingency', price.contingency, 0, 'none unless said');
  const tax = working.choice('tax', price.tax, 0, 'none unless said');
  const charges = price.charges ?? [];
  if (price.markup === undefined) working.assume('markup', '0', 'materials at cost');
  const lacksLabour =
    hours !== null &&
    hours.minutes.high.compare(0) > 0 &&
    price.hourly === undefined &&
    (price.charges ?? []).length === 0;
  if (lacksLabour) {
    working.ask('What is an hour of the work charged at? Without it the price has no labour in it.');
  }
  const materials = (price.materials ?? []).flatMap((material) => {
    if (material.amount !== undefined) return [{ ...material, amount: material.amount }];
    working.ask(`What does ${material.name} cost? It is left out until then.`);
    return [];
  });

  const billFor = (which: keyof Estimated, note: (text: string) => void): Bill => {
    const lines: PriceLine[] = [];
    const taxed = new Map<number, number>();
    const add = (
      name: string,
      kind: PriceLine['kind'],
      amount: Exact,
      rate: number | null,
      sum: string,
    ): void => {
      const minor = minorOf(amount);
      lines.push({ name, kind, amount: printed(minor), minor });
      if (rate !== null) taxed.set(rate, (taxed.get(rate) ?? 0) + minor);
      note(`${name}: ${sum} = ${printed(minor)}`);
    };
    if (hours && price.hourly !== undefined) {
      add(
        'labour',
        'labour',
        hours.minutes[which].div(60).mul(price.hourly),
        tax,
        `${decimal(hours.minutes[which], 2)} min / 60 x ${price.hourly}`,
      );
    }
    for (const charge of charges) {
      add(
        charge.name,
        'charge',
        exact(charge.rate).mul(charge.amount),
        charge.tax ?? tax,
        `${charge.amount} x ${charge.rate}`,
      );
    }
    for (const material of materials) {
      add(material.name, 'material', exact(material.amount), material.tax ?? tax, material.amount);
    }
    if (price.markup !== undefined && price.markup > 0) {
      const base = lines.filter(({ kind }) => kind === 'material').reduce((sum, { minor }) => sum + minor, 0);
      add(
        'mark-up on materials',
        'markup',
        exact(base).div(scale).mul(price.markup),
        tax,
        `${printed(base)} x ${price.markup}`,
      );
    }
    const before = lines.reduce((sum, { minor }) => sum + minor, 0);
    if (contingency > 0) {
      add(
        'contingency',
        'contingency',
        exact(before).div(scale).mul(contingency),
        tax,
        `${printed(before)} x ${contingency}`,
      );
    }
    const subtotal = lines.reduce((sum, { minor }) => sum + minor, 0);
    note(`Before tax, the sum of the lines: ${printed(subtotal)}`);
    const rates = [...taxed].filter(([rate]) => rate > 0).sort(([a], [b]) => b - a);
    for (const [rate, base] of rates) {
      add(
        rates.length > 1 ? `tax at ${decimal(rate * 100)} %` : 'tax',
        'tax',
        exact(base).div(scale).mul(rate),
        null,
        `${printed(base)} x ${rate}`,
      );
    }
    const total = lines.reduce((sum, { minor }) => sum + minor, 0);
    note(`Total, the sum of the printed lines: ${printed(total)}`);
    if (!Number.isSafeInteger(total))
      throw new SpecError('price', 'amounts that add up below nine thousand million million', String(total));
    return { lines, subtotal, tax: total - subtotal, total };
  };

  const bill = billFor('likely', (text) => working.line(text));
  const answer: PriceAnswer = {
    currency,
    digits,
    lines: bill.lines,
    subtotal: totalOf(bill.subtotal),
    tax: totalOf(bill.tax),
    total: totalOf(bill.total),
    ...(lacksLabour ? { lacksLabour } : {}),
    ...working.carried(),
  };
  if (hours) {
    const low = billFor('low', () => {});
    const high = billFor('high', () => {});
    answer.range = { low: totalOf(low.total), likely: totalOf(bill.total), high: totalOf(high.total) };
    if (price.hourly !== undefined) {
      const labour = (b: Bill): PriceTotal =>
        totalOf(b.lines.find(({ kind }) => kind === 'labour')?.minor ?? 0);
      answer.labour = { low: labour(low), likely: labour(bill), high: labour(high) };
    }
    working.line(`Range, from the range of the hours: ${printed(low.total)} to ${printed(high.total)}`);
  }
  if (price.deposit !== undefined) {
    const deposit = minorOf(exact(bill.total).div(scale).mul(price.deposit));
    answer.deposit = totalOf(deposit);
    working.line(`Deposit: ${printed(bill.total)} x ${price.deposit} = ${printed(deposit)}`);
  }
  if (price.paid !== undefined) {
    const paid = price.paid.reduce((sum, { amount }) => sum + minorOf(exact(amount)), 0);
    answer.paid = totalOf(paid);
    answer.due = totalOf(bill.total - paid);
    working.line(
      `Paid ${printed(paid)}; still due ${printed(bill.total)} - ${printed(paid)} = ${printed(bill.total - paid)}`,
    );
  }
  if (price.actual !== undefined) answer.comparison = compareActual(price, bill, minorOf, totalOf, working);
  if (price.agreed !== undefined) {
    const agreed = minorOf(exact(price.agreed));
    answer.agreed = totalOf(agreed);
    const spent = answer.comparison?.at(-1)?.actual.minor ?? 0;
    if (spent > agreed * NEAR && spent <= agreed)
      working.warn(
        `${printed(spent)} of the agreed ${printed(agreed)} is spent in labour and materials; speak with the owner before it is passed`,
      );
    else if (spent > agreed)
      working.warn(
        `labour and materials have come to ${printed(spent)}, more than the agreed ${printed(agreed)}; speak with the owner`,
      );
    if (bill.total > agreed)
      working.warn(
        `the likely total ${printed(bill.total)} passes the agreed ${printed(agreed)}; speak with the owner first`,
      );
    else if (answer.range && answer.range.high.minor > agreed)
      working.warn(
        `the total may pass the agreed ${printed(agreed)}: the high estimate is ${answer.range.high.amount}`,
      );
  }
  working.line('Not tax or legal advice');
  return { ...answer, ...working.carried() };
};

/** The minutes to charge: from the hours given, else the whole of the planned work. */
const hoursOf = (
  price: Price,
  work: WorkAnswer | undefined,
  working: Working,
): { minutes: Record<keyof Estimated, Exact> } | null => {
  if (price.hours !== undefined) {
    const given =
      typeof price.hours === 'number'
        ? { low: price.hours, likely: price.hours, high: price.hours }
        : price.hours;
    if (given.low > given.likely || given.likely > given.high) {
      throw new SpecError('price.hours', 'low <= likely <= high', JSON.stringify(price.hours));
    }
    return {
      minutes: {
        low: exact(given.low).mul(60),
        likely: exact(given.likely).mul(60),
        high: exact(given.high).mul(60),
      },
    };
  }
  if (work) {
    const { low, likely, high } = work.total;
    if (high === 0 && work.question !== undefined) return null;
    return { minutes: { low: exact(low), likely: exact(likely), high: exact(high) } };
  }
  if (price.hourly !== undefined) working.ask('How many hours? Give the planned work, or the hours.');
  return null;
};

const compareActual = (
  price: Price,
  bill: Bill,
  minorOf: (amount: Exact) => number,
  totalOf: (minor: number) => PriceTotal,
  working: Working,
): NonNullable<PriceAnswer['comparison']> => {
  const actual = price.actual!;
  const spent = new Map<string, number>();
  if (actual.minutes !== undefined && price.hourly !== undefined) {
    spent.set('labour', minorOf(exact(actual.minutes).div(60).mul(price.hourly)));
  }
  for (const { name, amount } of actual.materials ?? [])
    spent.set(name, (spent.get(name) ?? 0) + minorOf(exact(amount)));
  const quoted = new Map<string, number>();
  for (const { name, minor, kind } of bill.lines) {
    if (kind === 'labour' || kind === 'material') quoted.set(name, (quoted.get(name) ?? 0) + minor);
  }
  const names = [...new Set([...quoted.keys(), ...spent.keys()])];
  const rows = names.map((name) => ({ name, quoted: quoted.get(name) ?? 0, actual: spent.get(name) ?? 0 }));
  rows.push({
    name: 'labour and materials',
    quoted: rows.reduce((sum, row) => sum + row.quoted, 0),
    actual: rows.reduce((sum, row) => sum + row.actual, 0),
  });
  for (const row of rows) {
    if (row.actual > row.quoted)
      working.warn(
        `${row.name}: ${totalOf(row.actual).amount} so far, ${totalOf(row.quoted).amount} in the quote`,
      );
  }
  return rows.map((row) => ({
    name: row.name,
    quoted: totalOf(row.quoted),
    actual: totalOf(row.actual),
    over: totalOf(row.actual - row.quoted),
  }));
};
