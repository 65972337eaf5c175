import type { Item } from '../item.ts';

/**
 * "patched 3-2, 20m", "r3 b1 ditto, 25m": minutes where the note tells of a deed or a block and of nothing that is sold by the metre. A quarter of
 * an hour is written so as often as fifteen metres, but never beside cloth that is bought or cut.
 */
export function metresAsMinutes(items: Item[], commerce: boolean): void {
  if (
    commerce ||
    !(
      items.length === 1 ||
      items.some(
        (x) =>
          x.action || x.stitch || x.task || x.span || x.clock || x.w === 'off' || x.place?.kind === 'blocks',
      )
    )
  )
    return;
  for (let k = 0; k < items.length; k++) {
    const { quantity, w } = items[k]!;
    if (quantity?.unit !== 'm' || !/^\d+ ?m$/.test(w) || quantity.value! < 5 || quantity.value! > 240)
      continue;
    const before = items[k - 1];
    const after = items[k + 1];
    const rest = after !== undefined && RESTING.test(after.w);
    if (
      (before &&
        !before.action &&
        !before.stitch &&
        // "mend 50m, admin 10m"
        !(before.task && !before.material && items.some((x) => x.duration)) &&
        !BEFORE_MINUTES.test(before.w) &&
        // "darn 2-2 15m", "patch 5-4 muslin 30m"
        !(
          quantity.value! >= 10 &&
          (before.place?.kind === 'blocks' || items[k - 2]?.place?.kind === 'blocks')
        )) ||
      (after &&
        !rest &&
        !AFTER_MINUTES.test(after.w) &&
        // "1h cutting, 20m piecing": hours of work stand beside it, or what nobody buys by the metre
        !(after.task && (!after.material || items.some((x) => x.duration))) &&
        // "40m unpick", "darn 2-2 15m grey thr"
        !(
          after.action?.form === 'base' &&
          !after.material &&
          (items.length === 2 || (items.some((x) => x.duration) && /^[,.;\n]?$/.test(items[k + 2]?.w ?? '')))
        ) &&
        // "3-4 darned by hand 15m 3-5 same 10m"
        !(after.place?.kind === 'blocks' && (before?.stitch || before?.action)) &&
        !(quantity.value! >= 10 && before?.place?.kind === 'blocks' && items[k - 2]?.action))
    )
      continue;
    if (rest && !items.some((x) => x.span || x.clock || x.task)) continue;
    const said = items.slice(items.slice(0, k).findLastIndex((x) => /^[.;\n]$/.test(x.w)) + 1, k);
    // "backing washed, 25m" took its time; "backing, 6m" is cloth
    const done = said.some(
      (x) => (x.action?.form === 'past' && !/^(cut|measure)$/.test(x.action.v)) || x.w === 'off',
    );
    // nobody lays twenty metres of net over one block
    const many = quantity.value! >= 10 && said.some((x) => x.place?.kind === 'blocks');
    if (
      !done &&
      !many &&
      said.some(
        (x) => x.part || /^(binding|backing|batting|net|thread|tie-thread)$/.test(x.material ?? '') || x.cost,
      )
    )
      continue;
    const item = items[k]!;
    item.duration = { next: quantity.next, minutes: quantity.value!, rule: 'time.minutes' };
    delete item.quantity;
  }
}

const BEFORE_MINUTES =
  /^([,;.:(=+-]|--|took|abt|about|approx|only|another|less|minus|same|again|same again|ditto|likewise|done|off|shut|closed|over|together|behind|on|down|again|too|by hand|by machine)$/;

const AFTER_MINUTES =
  /^([,;.!)\n(&+-]|in all|all told|total|tot|both|each|ea|for (both|all|the pair|two)|for|in|tog|together|off|break|less|and|so)$/;

const RESTING = /^(tea|supper|lunch|dinner|coffee|break|phone|rest|dog|door|call|nap|cuppa|smoko|off)$/;

/** "50 min cutting 35 piecing", "an hour of tying and 40 on the binding": the unit said before holds for the next kind of work. */
export function minutesOfNext(items: Item[]): void {
  const first = items.findIndex((x) => x.duration);
  if (first < 0) return;
  const taskAt = (k: number): boolean => {
    const at = /^(on|of|at)$/.test(items[k]?.w ?? '') ? k + 1 : k;
    return items[/^(the)$/.test(items[at]?.w ?? '') ? at + 1 : at]?.task !== undefined;
  };
  for (let k = first + 2; k < items.length; k++) {
    const item = items[k]!;
    const { quantity } = item;
    if (!quantity || quantity.unit || !quantity.value || quantity.value < 5 || quantity.value > 240) continue;
    // "resewed 2-3, fifteen minutes, and dabbed at the stain in 3-3 for ten", "12 min on 3-3, 8 on the other"
    if (isLengthOfNext(items, first, k)) {
      item.duration = { next: quantity.next, minutes: quantity.value, rule: 'time.minutes' };
      delete item.quantity;
      continue;
    }
    if (!taskAt(k + 1)) continue;
    const told = items.slice(Math.max(0, k - 6), k).findLastIndex((x) => x.duration);
    if (told < 0) continue;
    const at = Math.max(0, k - 6) + told;
    if (!taskAt(at + 1) || items.slice(at, k).some((x) => /^[.;!?\n]$/.test(x.w))) continue;
    item.duration = { next: quantity.next, minutes: quantity.value, rule: 'time.minutes' };
    delete item.quantity;
  }
}

/** Behind a length in minutes: a bare number for which the next thing was done. */
function isLengthOfNext(items: Item[], first: number, k: number): boolean {
  const { duration } = items[first]!;
  if (duration!.rule !== 'time.minutes' || k - first > 16) return false;
  const after = items[k + 1];
  const ends = !after || /^(?:[,.;!?\n]|and|but|then)$/.test(after.w);
  if (items[k - 1]!.w === 'for') return ends && items.slice(first, k).some((x) => x.action || x.place);
  return (
    /^(?:,|and|&)$/.test(items[k - 1]!.w) &&
    after?.w === 'on' &&
    items[first + 1]?.w === 'on' &&
    items.slice(k + 2, k + 4).some((x) => x.place || x.w === 'other')
  );
}
