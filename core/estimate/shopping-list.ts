import type { EstimateAnswer, ShoppingAnswer, ShoppingLine } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { decimal, type Exact, exact, roundUpTo } from './exact.ts';
import type { Working } from './working.ts';

/** Parts whose answer is a length of cloth. */
const CLOTH_PARTS = [
  'backing',
  'binding',
  'border',
  'sashing',
  'patches',
  'interfacing',
  'overlay',
  'label',
] as const;

interface Need {
  name: string;
  part: string;
  amount: Exact;
  unit: string;
  /** Least that the shop sells. */
  step: Exact;
}

/** What all parts need, joined by the name it is bought under, less what is on hand, in what shops sell. */
export const listShopping = (
  shopping: NonNullable<EstimateSpec['shopping']>,
  answer: EstimateAnswer,
  spec: EstimateSpec,
  working: Working,
): ShoppingAnswer => {
  const lengthUnit = working.unit === 'in' ? 'yd' : 'm';
  const step = working.unit === 'in' ? exact('1/8') : exact('1/10');
  const needs: Need[] = [];
  for (const part of CLOTH_PARTS) {
    const cloth = answer[part];
    if (!cloth || cloth.exactFraction === undefined || cloth.exact === 0) continue;
    needs.push({
      name: cloth.fabric ?? part,
      part,
      amount: exact(cloth.exactFraction),
      unit: lengthUnit,
      step,
    });
  }
  const pieces = (name: string, part: string, count: number, unit: string): void => {
    needs.push({ name, part, amount: exact(count), unit, step: exact(1) });
  };
  if (answer.batting?.package) pieces(`batting, ${answer.batting.package.name}`, 'batting', 1, 'pack');
  if (answer.ties?.skeins !== undefined)
    pieces(spec.ties?.thread ?? 'tie thread', 'ties', answer.ties.skeins, 'skein');
  if (answer.thread?.spools !== undefined) pieces('thread', 'thread', answer.thread.spools, 'spool');
  else if (answer.thread)
    needs.push({
      name: 'thread',
      part: 'thread',
      amount: exact(answer.thread.exactFraction),
      unit: lengthUnit,
      step: exact(1),
    });
  if (answer.quilting?.thread)
    needs.push({
      name: 'quilting thread',
      part: 'quilting',
      amount: exact(answer.quilting.thread.exactFraction),
      unit: lengthUnit,
      step: exact(1),
    });

  const joined = new Map<string, { needs: Need[]; amount: Exact }>();
  for (const need of needs) {
    const key = `${need.name}\n${need.unit}`;
    const found = joined.get(key);
    joined.set(key, {
      needs: [...(found?.needs ?? []), need],
      amount: (found?.amount ?? exact(0)).add(need.amount),
    });
  }
  const stock = new Map<string, Exact>();
  for (const { name, amount } of shopping.onHand ?? [])
    stock.set(name, (stock.get(name) ?? exact(0)).add(amount));
  const lines: ShoppingLine[] = [...joined.values()].map(({ needs: parts, amount }) => {
    const { name, unit, step: least } = parts[0]!;
    const onHand = stock.get(name) ?? exact(0);
    const missing = amount.sub(onHand);
    const buy = missing.compare(0) > 0 ? roundUpTo(missing, least) : exact(0);
    const leftOver = onHand.add(buy).sub(amount);
    working.line(
      `${name}: ${parts.map((need) => `${need.part} ${decimal(need.amount)}`).join(' + ')} = ${decimal(amount)} ${unit}, on hand ${decimal(onHand)}, buy ${decimal(buy)}, left over ${decimal(leftOver)}`,
    );
    return {
      name,
      for: parts.map(({ part }) => part),
      needed: decimal(amount),
      onHand: decimal(onHand),
      buy: decimal(buy),
      unit,
      leftOver: decimal(leftOver),
    };
  });
  working.line(
    'Parts of one cloth are added up before rounding, once; a length in several cuts must still be long enough for the longest',
  );
  return { lines, ...working.carried() };
};
