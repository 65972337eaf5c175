import type { Item } from '../item.ts';

/** "column five row two" where there is no column five: no block of row two either. */
export function crossOutside(items: Item[]): void {
  const isLine = (x: Item | undefined, axis: RegExp): boolean =>
    x?.place !== undefined && axis.test(x.place.rule);
  items.forEach((item, k) => {
    const other = /^(,|in|of)$/.test(items[k + 1]?.w ?? '') ? items[k + 2] : items[k + 1];
    // "column seven, second block down"
    if (
      item.place?.outside &&
      !item.place.places.length &&
      other?.place?.how === 'implied' &&
      items[k + 1]?.w === ','
    )
      other.place = { ...other.place, places: [], outside: true };
    if (!other?.place || !item.place || Boolean(item.place.outside) === Boolean(other.place.outside)) return;
    const crossed =
      (isLine(item, ROW_LINE) && isLine(other, COLUMN_LINE)) ||
      (isLine(item, COLUMN_LINE) && isLine(other, ROW_LINE));
    if (!crossed) return;
    for (const x of [item, other]) x.place = { ...x.place!, places: [], outside: true };
  });
}

const ROW_LINE = /^place\.(row|ordinal-row)$/;

const COLUMN_LINE = /^place\.(column|ordinal-column)$/;
