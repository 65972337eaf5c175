import type { MaterialFact, RecordView } from '../record-view.ts';
import { eighths } from '../wording/figure-phrases.ts';

/** Tools and what is washed out again are no part of the quilt. */
export const staysIn = (fact: MaterialFact): boolean =>
  !(fact.material && ['pins', 'needle', 'detergent'].includes(fact.material));

/** Name and amount of each material, the same things added up; no price. */
export function materialRows(facts: readonly MaterialFact[], view: RecordView): string[][] {
  const by = new Map<string, { name: string; amounts: Map<string, number> }>();
  for (const fact of facts) {
    const kind = fact.material ? view.terms.material(fact.material) : 'material';
    const name = fact.name
      ? fact.name.toLowerCase().includes(kind) || !fact.material
        ? fact.name
        : `${fact.name} (${kind})`
      : kind;
    const key = name.toLowerCase();
    const row = by.get(key) ?? { name, amounts: new Map() };
    if (fact.quantity !== undefined) {
      const unit = fact.unit ?? 'piece';
      row.amounts.set(unit, (row.amounts.get(unit) ?? 0) + fact.quantity);
    }
    by.set(key, row);
  }
  return [...by.values()].map(({ name, amounts }) => [
    name.charAt(0).toUpperCase() + name.slice(1),
    [...amounts].map(([unit, sum]) => `${eighths(sum)} ${view.terms.unit(unit as never, sum)}`).join(', '),
  ]);
}
