import type { LengthUnit } from '../../../shared/vocabulary.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { Claims, Sentence } from '../read-amounts.ts';
import type { ReaderState } from '../reader-state.ts';
import { findMeasurements, type MeasureFound } from './find-measurements.ts';

/** Drafts of the lengths told in a note. A unit said once holds for the whole list, also over a full stop. */
export function readLengths(state: ReaderState, sentences: Sentence[], claims: Claims): void {
  const found: { m: MeasureFound; sentence: Sentence }[] = [];
  const note = sentences
    .filter((s) => s.items.some((x) => x.measure || /^(by|x|×|measured)$/.test(x.w)))
    .flatMap((s) => s.items)
    .map((x) => x.quantity?.unit)
    .find((u): u is LengthUnit => u === 'in' || u === 'cm' || u === 'mm');
  for (const sentence of sentences) {
    const own = findMeasurements(sentence.items, note);
    const before = found.at(-1)?.m;
    const first = sentence.items[0];
    // "... and the other way... ninety-three": the second diagonal stands by itself
    if (
      !own.length &&
      before?.of === 'diagonal' &&
      sentence.items.length <= 2 &&
      first?.quantity?.value !== undefined
    )
      own.push({ of: 'diagonal', value: first.quantity.value, items: [first], rule: 'measure.diagonal' });
    for (const m of own) found.push({ m, sentence });
  }
  let unit: LengthUnit | undefined = found.find(({ m }) => m.unit)?.m.unit ?? note;
  for (const { m, sentence } of found) {
    unit = m.unit ?? unit;
    const whole = m.of === 'width' || m.of === 'length' || m.of === 'diagonal';
    const part = sentence.items.find((x) => x.part && ['top', 'backing', 'batting'].includes(x.part));
    const places = whole ? [part?.part ?? 'quilt'] : m.of === 'border' ? (m.place ?? ['border']) : undefined;
    const draft = makeDraft(
      'measurement',
      { index: -1, sentence: sentence.number, items: sentence.items },
      {
        of: [m.of, m.rule, m.items],
        value: [m.value, m.rule, m.items],
        unit: [m.unit ?? unit, m.rule, m.items, m.unit ? 'said' : 'implied'],
        places: [places, m.rule, undefined, 'implied'],
      },
      'unneeded',
    );
    state.drafts.push(draft);
    for (const x of m.items) if (isOnlyFigure(x)) claims.drop.add(x);
  }
}

/** Words that say nothing but the length; "strips" and "border" are also what was cut or put on. */
const isOnlyFigure = (x: Item): boolean =>
  Boolean(x.quantity) ||
  (x.measure !== undefined &&
    !x.part &&
    !x.place &&
    !x.action &&
    !x.material &&
    !x.finding &&
    x.measure !== 'strip');
