import type { Action, Material, MaterialUnit } from '../../../shared/vocabulary.ts';
import type { ReaderState } from '../reader-state.ts';
import { measuredIn } from './measured-in.ts';

/**
 * "patched 3-2 with the indigo, used a quarter yard", "tied row one with red pearl cotton, two skeins gone": an amount told
 * of no named thing is how much was used of what the work was done with, and no entry of its own.
 */
export function joinAmounts(state: ReaderState): void {
  for (const amount of state.drafts) {
    const e = amount.entry;
    if (e.kind !== 'material' || e.quantity === undefined || e.cost) continue;
    // "tulle over the sashing, three quarters of a yard of it left"
    if (e.use !== 'used') {
      const own =
        e.material || e.name
          ? undefined
          : state.drafts.findLast(
              ({ entry: x }) => x.kind === 'material' && x.use === 'used' && measuredIn(x.material, e.unit),
            );
      if (own?.entry.kind === 'material')
        amount.entry = {
          ...e,
          material: own.entry.material,
          ...(own.entry.name ? { name: own.entry.name } : {}),
        };
      continue;
    }
    if (!e.name && e.material && e.unit !== 'fat-quarter' && amount.origins['material']?.how !== 'implied')
      continue;
    const noun = e.name === 'it' ? undefined : e.name?.split(' ').at(-1);
    const whole = state.drafts.findLast(
      (d) =>
        d !== amount &&
        d.entry.kind === 'material' &&
        d.entry.use === 'used' &&
        d.entry.quantity === undefined &&
        // "net over 1-2, 20 cm of the net being used"
        (noun
          ? d.entry.material === e.material &&
            (d.entry.name?.split(' ').at(-1) === noun ||
              // "net on, couched. Tulle, 20 cm", "patched, pink feed sack. Used one fat quarter"
              (GENERIC.test(d.entry.name ?? '') !== GENERIC.test(e.name ?? '') &&
                d.sentence === amount.sentence - 1))
          : Boolean(d.entry.name)) &&
        measuredIn(d.entry.material, e.unit),
    );
    if (whole?.entry.kind === 'material') {
      const name = e.name && GENERIC.test(whole.entry.name ?? '') ? e.name : undefined;
      whole.entry = {
        ...whole.entry,
        quantity: e.quantity,
        ...(e.unit ? { unit: e.unit } : {}),
        ...(name ? { name } : {}),
      };
      for (const slot of ['quantity', 'unit'])
        if (amount.origins[slot]) whole.origins[slot] = amount.origins[slot];
      state.drafts = state.drafts.filter((d) => d !== amount);
      continue;
    }
    if (noun) continue;
    const made = e.material ? undefined : madeOf(state, e.unit);
    if (made) {
      amount.entry = { ...e, material: made };
      continue;
    }
    const cloth = measuredIn('fabric', e.unit)
      ? clothBefore(state, amount.origins['entry']!.from)
      : undefined;
    if (cloth) amount.entry = { ...e, material: 'fabric', name: cloth };
  }
}

/** "Bound. 5 m used": what the work just told is done with. */
const MADE_WITH: Partial<Record<Action, Material>> = {
  bind: 'binding',
  overlay: 'net',
  tie: 'tie-thread',
  quilt: 'thread',
};
function madeOf(state: ReaderState, unit: MaterialUnit | undefined): Material | undefined {
  const deed = state.drafts.findLast(({ entry: e }) => e.kind === 'treatment')?.entry;
  const material = deed?.kind === 'treatment' && deed.action ? MADE_WITH[deed.action] : undefined;
  return measuredIn(material, unit) ? material : undefined;
}

/** Names that tell no more than what kind of goods it is. */
const GENERIC = /^(net|netting|fabric|cloth|material|fat quarters?|thread)$/;

/** The cloth last named before the amount: "cut squares out of the calico; used half a yard of it". */
const clothBefore = (state: ReaderState, at: number): string | undefined =>
  state.clauses
    .flatMap((c) => c.items)
    .findLast((x) => x.token.from < at && (x.fabric || (x.material === 'fabric' && !x.part)))?.w;
