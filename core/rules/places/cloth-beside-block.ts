import type { Item } from '../item.ts';

/** Where among the items a cloth is spoken of, and the blocks where it lies. */
export type ClothSpokenOf = { at: number; places: string[] };

/** "the velvet and 3-3 are torn", "3-3 and the velvet", "the velvet's torn and so is 3-3": in one list with a block it is its own blocks. */
export function clothBesideBlock(items: Item[], { at, places }: ClothSpokenOf): void {
  const item = items[at]!;
  const isBlock = (x: Item | undefined): boolean =>
    x?.place !== undefined && x.place.kind !== 'part' && x.place.places.length > 0;
  let first = at;
  while (first > 0 && /^(the|all|of|both|whole)$/.test(items[first - 1]!.w)) first--;
  let behind = at + 1;
  while (/^(one|ones|block|blocks)$/.test(items[behind]?.w ?? '')) behind++;
  // "the velvet 's torn and so is"
  const so = items.findIndex(
    (x, k) =>
      k > at && k < at + 7 && x.w === 'so' && /^(is|are|'s|has|have|'ve)$/.test(items[k + 1]?.w ?? ''),
  );
  if (
    so > 0 &&
    items.slice(at + 1, so).some((x) => x.finding) &&
    !items.slice(at + 1, so).some((x) => x.place || /^[.;]$/.test(x.w))
  )
    behind = so + 2;
  else if (/^(and|&|\+)$/.test(items[behind]?.w ?? ''))
    do behind++;
    while (/^(the|all|of|whole|all of|entire)$/.test(items[behind]?.w ?? ''));
  else behind = -1;
  const isSo = behind > at + 2;
  const cue = (k: number): string => items[k]?.w ?? '';
  const end = /^(one|ones|block|blocks|pieces?)$/.test(cue(at + 1)) ? at + 2 : at + 1;
  // "all bunched up in the bottom row and the velvets are faded"
  const said = items.slice(Math.max(0, first - 8), first).some((x) => x.finding);
  const joined =
    (behind > 0 && isBlock(items[behind]) && (isSo || GO_TOGETHER.test(cue(behind + 1)))) ||
    (/^(and|&|\+)$/.test(cue(first - 1)) &&
      isBlock(items[first - 2]) &&
      items[first - 2]!.place!.rule !== 'place.it' &&
      GO_TOGETHER.test(cue(end)) &&
      !(said && /^(are|were|have)$/.test(cue(end)))) ||
    // "2-2 is torn and so's the velvet"
    (/^(is|are|'s)$/.test(cue(first - 1)) &&
      cue(first - 2) === 'so' &&
      said &&
      items.slice(Math.max(0, first - 8), first).some(isBlock) &&
      GO_TOGETHER.test(cue(end)));
  if (joined) item.place = { next: item.j, places, how: 'said', rule: 'place.cloth', kind: 'blocks' };
}

/** What may follow the second of two that are told together: "3-3 is frayed, that's the twill, and the one beside it has a hole" are not. */
const GO_TOGETHER =
  /^(|[.,;:!]|\n|and|are|were|have|need|want|get|both|all|too|as|with|in|now|today|tomorrow|tonight|by|then|done|for|still|only)$/;
