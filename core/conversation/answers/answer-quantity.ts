import type { MaterialUnit, MaterialUse } from '../../../shared/vocabulary.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { readNumber } from '../../text/read-number.ts';
import { LENGTHS, POINTERS } from '../mend/items.ts';
import { put } from '../standing.ts';
import { type Answering, takeOver } from './answering.ts';

function numberAt(a: Answering, x: Item): number | undefined {
  if (x.quantity?.value !== undefined) return x.quantity.value;
  if (x.cost) return undefined;
  const read = readNumber(a.state.tokens, x.i);
  return read && (x.place || x.clock || x.span || x.token.kind === 'number' || read.inWords)
    ? read.value
    : undefined;
}

/** How much or how many: the number of a measurement or of goods, and what is wanted along with them. */
export function answerQuantity(a: Answering): boolean {
  const open =
    a.standing.find(
      ({ draft: { entry: e } }) =>
        (e.kind === 'measurement' && e.value === undefined) ||
        (e.kind === 'material' && e.quantity === undefined && e.unit !== undefined),
    ) ?? a.standing.find(({ draft: { entry: e } }) => e.kind === 'material' && e.quantity === undefined);
  if (!open) return false;
  const isNumber = (x: Item): boolean => numberAt(a, x) !== undefined;
  const told = open.draft.entry;
  // the length was asked for, and "60 by 72" tells both: width by length
  const both =
    told.kind === 'measurement' && told.of === 'length' && a.items.some((x) => /^(?:by|x)$/.test(x.w));
  const item = both ? a.items.findLast(isNumber) : (a.head.find(isNumber) ?? a.items.find(isNumber));
  if (!item) return false;
  // "6,5"
  const comma = /^ (?:(?:oh|er|um|so|about) )*(\d+) , (\d{1,2}) $/.exec(a.words);
  const value = comma ? Number(`${comma[1]}.${comma[2]}`) : numberAt(a, item)!;
  const unit = item.quantity?.unit;
  const e = open.draft.entry as { unit?: MaterialUnit };
  if (unit && e.unit && LENGTHS.has(unit) !== LENGTHS.has(e.unit)) return false;
  const before = a.items.slice(0, a.items.indexOf(item));
  if (
    a.cue === 'none' &&
    before.some(
      (x) => x.action || x.finding || (x.place?.places.length && !x.part && !POINTERS.has(x.place.rule)),
    )
  )
    return false;
  if (a.cue === 'none' && a.head.some((x) => x.finding || (x.action && x.action.form !== 'base' && !x.part)))
    return false;
  // "18 dollars", "no, 16": the number that was told is put right, and the one asked for still is not
  if (
    // "thread was 3.50 actually"
    (a.cue === 'strong' ||
      /^ (?:oh |, )*(?:no|nope|sorry) /.test(a.words) ||
      / was \d*\.\d\d /.test(a.words)) &&
    !unit &&
    open.draft.entry.kind === 'material' &&
    open.draft.entry.cost
  )
    return false;
  put(open.draft, open.draft.entry.kind === 'measurement' ? 'value' : 'quantity', value, 'answer.quantity', [
    item,
  ]);
  if (unit) put(open.draft, 'unit', unit, 'answer.quantity', [item]);
  for (const x of comma ? a.items : [item]) a.used.add(x);
  const cost = a.head.find((x) => x.cost);
  if (cost && open.draft.entry.kind === 'material') {
    put(
      open.draft,
      'cost',
      { amount: cost.cost!.amount, ...(cost.cost!.each ? { each: true } : {}) },
      'answer.quantity',
      [cost],
    );
    a.used.add(cost);
  }
  takeOver(a, [item]);
  if (open.draft.entry.kind === 'material') alsoWanted(a, open.draft.entry.use);
  return true;
}

/** "… and a spool of that cream thread while I'm at it": more of the list that the answer belongs to. */
function alsoWanted(a: Answering, use: MaterialUse): void {
  for (let k = a.head.length; k < a.items.length; k++) {
    const amount = a.items[k]!;
    if (!amount.quantity?.unit || amount.quantity.value === undefined || a.used.has(amount)) continue;
    let m = a.items.findIndex((x, n) => n > k && n < k + 6 && x.material !== undefined);
    while (m >= 0 && a.items[m + 1]?.material) m++;
    const stuff = m < 0 ? undefined : a.items[m]!;
    if (
      !stuff ||
      a.state.drafts.some((d) => d.entry.kind === 'material' && d.entry.material === stuff.material)
    )
      continue;
    const name = a.items
      .slice(k + 1, m + 1)
      .filter((x) => x.token.kind === 'word' && !/^(of|that|the|this|those|my|some|a)$/.test(x.w));
    const draft: Draft = {
      entry: { kind: 'material', material: stuff.material!, use, name: name.map((x) => x.w).join(' ') },
      origins: {},
      placed: 'unneeded',
      clause: 0,
      sentence: 0,
    };
    put(draft, 'quantity', amount.quantity.value, 'answer.quantity', [amount]);
    put(draft, 'unit', amount.quantity.unit, 'answer.quantity', [amount]);
    put(draft, 'material', stuff.material, 'answer.quantity', [stuff]);
    draft.origins['entry'] = {
      rule: 'answer.quantity',
      how: 'said',
      from: amount.token.from,
      to: stuff.end ?? stuff.token.to,
    };
    a.state.drafts.push(draft);
  }
}
