import type { Item } from '../../item.ts';
import { splitBlock } from '../grid.ts';
import { byLine } from './ends-of.ts';

/** "row four all but the ends", "the top row apart from the corners", "rows two and three bar the end blocks": both ends of each line. */
export function endsOfLines(
  items: Item[],
  k: number,
  base: string[],
): { places: string[]; next: number } | undefined {
  const said = `${items[k]!.w} ${items[k + 1]?.w ?? ''}`;
  const two = /^(?:ends?|corners?) (?:blocks|squares|ones)\b/.exec(said);
  const inOne = oneOfLine(items, k, base);
  if (inOne) return inOne;
  if (!two && !/^(?:the |both |two )*(?:ends|corners|corner (?:blocks|squares|ones)) /.test(said))
    return undefined;
  const at = base.map((p) => splitBlock(p)!);
  if (at.length < 3 || at.some((p) => !p)) return undefined;
  const isColumn = at.every((p) => p.block === at[0]!.block);
  return {
    places: (isColumn ? [base] : byLine(base, 'row')).flatMap((line) => [line[0]!, line.at(-1)!]),
    next: k + (two && !/ /.test(items[k]!.w) ? 2 : 1),
  };
}

/** "(rows one and two are tied,) bar the last one in two": of the row with that number. */
function oneOfLine(items: Item[], k: number, base: string[]): { places: string[]; next: number } | undefined {
  const end = /^(first|last)$/.exec(items[k]!.w)?.[1];
  if (!end) return undefined;
  let m = k + 1;
  if (/^(one|block|square)$/.test(items[m]?.w ?? '')) m++;
  if (!/^(in|of)$/.test(items[m]?.w ?? '')) return undefined;
  const number = items[m + 1]?.place ? undefined : items[m + 1]?.quantity;
  if (!number?.value || number.unit) return undefined;
  const line = base.filter((p) => splitBlock(p)?.row === number.value);
  return line.length > 1 && line.length < base.length
    ? { places: [end === 'first' ? line[0]! : line.at(-1)!], next: m + 2 }
    : undefined;
}
