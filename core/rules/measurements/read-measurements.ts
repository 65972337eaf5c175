import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { findMeasurements } from './find-measurements.ts';

/** Drafts of the lengths told in a clause. */
export function readMeasurements(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  used: Set<Item>,
): void {
  for (const m of findMeasurements(v.items.filter((x) => !used.has(x) || x.place))) {
    const whole = m.of === 'width' || m.of === 'length' || m.of === 'diagonal';
    const part = v.items.find((x) => x.part && ['top', 'backing', 'batting'].includes(x.part));
    const places = whole ? [part?.part ?? 'quilt'] : m.of === 'border' ? (m.place ?? ['border']) : undefined;
    state.drafts.push(
      makeDraft(
        'measurement',
        v,
        {
          of: [m.of, m.rule, m.items],
          value: [m.value, m.rule, m.items],
          unit: [m.unit, m.rule, m.items],
          places: [places, m.rule, undefined, 'implied'],
        },
        'unneeded',
      ),
    );
    m.items.forEach((x) => {
      if (x.quantity) used.add(x);
    });
  }
}
