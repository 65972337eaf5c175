import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CURRENCIES, currencyDigits } from '../../core/estimate/currency-digits.ts';
import { estimate } from '../../core/estimate/estimate.ts';
import { readSpec } from '../../core/estimate/read-spec.ts';
import { specAsWorked } from '../../core/estimate/spec-as-worked.ts';

const price = (spec: object) => estimate(readSpec({ price: spec })).price!;

describe('currencies', () => {
  // The internationalisation library of the runtime, which takes its digits from ISO 4217 but for these, where it
  // follows what cash is used instead; ISO 4217 lists two digits for them and three for IQD (from memory).
  const byUse =
    'AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER RSD TZS UZS GYD CRC MNT'.split(' ');
  test.each(CURRENCIES.filter((code) => !byUse.includes(code)))(
    '%s has the digits of ISO 4217',
    (currency) => {
      const { maximumFractionDigits } = new Intl.NumberFormat('en', {
        style: 'currency',
        currency,
      }).resolvedOptions();
      expect(currencyDigits(currency)).toBe(maximumFractionDigits);
    },
  );
  test.each(byUse)('%s has two digits, or three', (currency) => {
    expect(currencyDigits(currency)).toBe(currency === 'IQD' ? 3 : 2);
  });
  test('others are unknown', () => {
    expect(currencyDigits('ABC')).toBeUndefined();
  });
});

describe('lines and totals', () => {
  test('each line is rounded once, half up, and the total is their sum', () => {
    const answer = price({
      currency: 'GBP',
      hourly: '24.00',
      hours: 10.07,
      materials: [{ name: 'calico', amount: '31.50' }],
      contingency: 0.1,
      tax: 0.2,
    });
    expect(answer.lines.map(({ amount }) => amount)).toEqual(['241.68', '31.50', '27.32', '60.10']);
    expect(answer.total).toEqual({ amount: '360.60', minor: 36060 });
  });
  test('half a penny goes up', () => {
    expect(
      price({ currency: 'GBP', charges: [{ name: 'patch', rate: '0.125', amount: 1 }] }).total.minor,
    ).toBe(13);
    expect(
      price({ currency: 'GBP', charges: [{ name: 'patch', rate: '1.005', amount: 1 }] }).total.minor,
    ).toBe(101);
  });
  test('none and three digits', () => {
    expect(price({ currency: 'JPY', hourly: '2500', hours: 1.5 }).total.amount).toBe('3750');
    expect(price({ currency: 'KWD', hourly: '7.125', hours: 1.5 }).total.amount).toBe('10.688');
  });
  test('by the piece and by length, mark-up, tax by line, deposit and paid', () => {
    const answer = price({
      currency: 'EUR',
      charges: [
        { name: 'patches', rate: '4.50', amount: 12, per: 'piece' },
        { name: 'binding', rate: '0.30', amount: 284, per: 'length' },
      ],
      materials: [{ name: 'net', amount: '10.00', tax: 0.1 }],
      markup: 0.15,
      tax: 0.2,
      deposit: 0.3,
      paid: [{ amount: '50' }],
    });
    expect(answer.lines.map(({ name, amount }) => `${name} ${amount}`)).toEqual([
      'patches 54.00',
      'binding 85.20',
      'net 10.00',
      'mark-up on materials 1.50',
      'tax at 20 % 28.14',
      'tax at 10 % 1.00',
    ]);
    expect(answer.total.amount).toBe('179.84');
    expect(answer.deposit!.amount).toBe('53.95');
    expect(answer.due!.amount).toBe('129.84');
  });
  test('warns before the agreed figure is passed', () => {
    const answer = price({
      currency: 'GBP',
      hourly: '20',
      hours: { low: 8, likely: 10, high: 14 },
      agreed: '220',
      actual: { minutes: 660 },
    });
    expect(answer.range).toMatchObject({ low: { amount: '160.00' }, high: { amount: '280.00' } });
    expect(answer.warnings).toEqual([
      'labour: 220.00 so far, 200.00 in the quote',
      'labour and materials: 220.00 so far, 200.00 in the quote',
      '220.00 of the agreed 220.00 is spent in labour and materials; speak with the owner before it is passed',
      'the total may pass the agreed 220.00: the high estimate is 280.00',
    ]);
    expect(answer.agreed).toMatchObject({ minor: 22_000 });
  });
  test('of what was done: the hours worked, what was bought, nothing for what might have come', () => {
    const spec = {
      price: {
        currency: 'GBP',
        hourly: '24',
        hours: 40,
        contingency: 0.1,
        tax: 0.2,
        materials: [{ name: 'calico', amount: '31.50' }],
        actual: { minutes: 1492 },
      },
    };
    // 24 h 52 at 24.00 is 596.80; with 31.50 of calico 628.30; a fifth of it 125.66.
    expect(estimate(specAsWorked(spec)!).price!).toMatchObject({
      subtotal: { amount: '628.30' },
      tax: { amount: '125.66' },
      total: { amount: '753.96' },
    });
    expect(specAsWorked({ price: { charges: [], actual: { minutes: 60 } } })).toBeUndefined();
  });
  test('is exact in whole minor units, whatever the amounts', () => {
    const cents = fc.integer({ min: 0, max: 99_999_999 });
    const hundredths = fc.integer({ min: 0, max: 100 });
    fc.assert(
      fc.property(fc.array(cents, { maxLength: 8 }), hundredths, hundredths, (amounts, contingency, tax) => {
        const answer = price({
          currency: 'USD',
          materials: amounts.map((minor, i) => ({
            name: `m${i}`,
            amount: `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')}`,
          })),
          contingency: contingency / 100,
          tax: tax / 100,
        });
        // The same in whole numbers throughout.
        const sum = amounts.reduce((all, minor) => all + minor, 0);
        const halfUp = (base: number, share: number) =>
          Number((BigInt(base) * BigInt(share) * 2n + 100n) / 200n);
        const extra = halfUp(sum, contingency);
        const taxed = halfUp(sum + extra, tax);
        expect(answer.total.minor).toBe(sum + extra + taxed);
        expect(answer.lines.reduce((all, { minor }) => all + minor, 0)).toBe(answer.total.minor);
      }),
    );
  });
});
