import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';

/** "cutting 25 min, piecing 1:20": hours and minutes of a kind of work, where nothing starts or stops. */
export function hoursAndMinutes(items: Item[]): void {
  for (let k = 1; k < items.length; k++) {
    const figures = /^([0-5]):([0-5]\d)$/.exec(w(items, k));
    const named = items[/^[:,=-]$/.test(w(items, k - 1)) ? k - 2 : k - 1];
    if (!figures || !items[k]!.clock || !named?.task) continue;
    const item = items[k]!;
    const minutes = Number(figures[1]) * 60 + Number(figures[2]);
    item.duration = { next: item.clock!.next, minutes, rule: 'time.hours' };
    delete item.clock;
  }
}

/** "two hours of mending and one of cutting": hours as well; "50 min cutting, 35 piecing": minutes. */
export function hoursInList(items: Item[]): void {
  for (let k = items.findIndex((x) => x.duration) + 1; k > 0 && k < items.length - 1; k++) {
    const { quantity } = items[k]!;
    const minutes = quantity?.value;
    if (minutes === undefined || quantity!.unit || minutes < 5 || minutes > 59 || minutes % 5) continue;
    const named = items[k + 1]!;
    if (!named.task || named.material || !(items[k - 1]!.task || /^(,|and|&)$/.test(w(items, k - 1))))
      continue;
    items[k]!.duration = { next: quantity!.next, minutes, rule: 'time.minutes' };
    delete items[k]!.quantity;
  }
  const first = items.findIndex((x) => x.duration?.rule === 'time.hours');
  if (first < 0) return;
  for (let k = first + 2; k < items.length; k++) {
    const item = items[k]!;
    const value = item.quantity?.value;
    if (value === undefined || value > 9 || item.quantity!.unit || !/^(,|and|&|plus)$/.test(w(items, k - 1)))
      continue;
    const named = items.slice(k + 2, k + 4).some((x) => x.task);
    if (!named || !/^(of|on|at|for)$/.test(w(items, k + 1))) continue;
    item.duration = { next: item.quantity!.next, minutes: value * 60, rule: 'time.hours' };
    delete item.quantity;
  }
}
