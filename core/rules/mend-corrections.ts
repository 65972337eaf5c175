import type { Item } from './item.ts';

type Sort =
  | 'place'
  | 'clock'
  | 'span'
  | 'quantity'
  | 'cost'
  | 'duration'
  | 'stitch'
  | 'finding'
  | 'action'
  | 'material'
  | 'task';

function sortsOf(item: Item): Sort[] {
  const sorts: Sort[] = [];
  if (item.place && !['place.it', 'place.them', 'place.both'].includes(item.place.rule)) sorts.push('place');
  if (item.clock) sorts.push('clock');
  if (item.span) sorts.push('span');
  if (item.quantity) sorts.push('quantity');
  if (item.cost) sorts.push('cost');
  if (item.duration) sorts.push('duration');
  if (item.stitch) sorts.push('stitch');
  if (item.finding) sorts.push('finding');
  if (item.action) sorts.push('action');
  if (item.material) sorts.push('material');
  if (item.task) sorts.push('task');
  return sorts;
}

const MARKERS: string[][] = [
  ['no', 'wait'],
  ['no', 'no'],
  ['no', 'sorry'],
  ['no', 'make', 'that'],
  ['no', 'hang', 'on'],
  ['no', 'hold', 'on'],
  ['no', 'scratch', 'that'],
  ['scratch', 'that'],
  ['strike', 'that'],
  ['no', 'i', 'mean'],
  ['i', 'mean'],
  ['i', 'meant'],
  ['no', 'it', 'was'],
  ['no', 'that', "'s"],
  ['no', 'i', 'tell', 'a', 'lie'],
  ['i', 'tell', 'a', 'lie'],
  ['make', 'that'],
  ['sorry'],
  ['or', 'rather'],
  ['rather'],
  ['correction'],
  ['no'],
  ['wait'],
  ['not'],
  ['nope'],
  ['no', 'not'],
  ['hang', 'on'],
  ['oops'],
  ['make', 'it'],
  ['actually'],
  ['i', 'should', 'say'],
  ['well'],
  ['pardon'],
  ['no', 'actually'],
  ['that', "'s", 'wrong'],
  ['no', 'tell', 'a', 'lie'],
  ['tell', 'a', 'lie'],
  ['wait', 'no'],
  ['hang', 'on', 'no'],
  ['sorry', 'no'],
  ['no', 'wait', 'no'],
];
MARKERS.sort((a, b) => b.length - a.length);

const LIGHT = new Set([
  'it',
  'was',
  "'s",
  'is',
  'that',
  'the',
  'at',
  'in',
  'on',
  ',',
  'a',
  'an',
  'make',
  'not',
  'of',
  'to',
  'i',
  'mean',
  'meant',
  'sorry',
  'wait',
  'no',
  'about',
  'by',
  'with',
  'more',
  'like',
  '-',
  '--',
  'for',
  'and',
  'actually',
  'just',
  '.',
  'from',
  'them',
  'were',
  'till',
  'said',
]);

/**
 * What is said last wins: "row two, no, row three block four", "at two no wait it was ten to two", "ninety no make that
 * sixty mil". The word corrected and the marker between go; the later word of the same sort stands in its place.
 * Every change is a removal of items, so the offsets of what is left stay true.
 */
export function mendCorrections(items: Item[]): Item[] {
  const out = [...items];
  for (let k = 1; k < out.length; k++) {
    const marker = MARKERS.find((m) => m.every((word, q) => out[k + q]?.w === word));
    if (!marker) continue;
    const weak =
      marker.length === 1 &&
      ['no', 'not', 'wait', 'well', 'rather', 'actually', 'sorry', 'nope', 'oops'].includes(marker[0]!);
    let m = k + marker.length;
    while (m < out.length && m < k + marker.length + 5 && LIGHT.has(out[m]!.w) && !sortsOf(out[m]!).length)
      m++;
    const next = out[m];
    if (!next) continue;
    const sorts = sortsOf(next);
    if (!sorts.length) continue;
    // "not 3-3, 3-2" names the wrong one first and is read as an amendment.
    if (marker[0] === 'not' && marker.length === 1) continue;
    let from = -1;
    let hit: Sort | undefined;
    const reach = weak ? 4 : 9;
    for (let b = k - 1; b >= Math.max(0, k - reach); b--) {
      const own = sortsOf(out[b]!);
      hit =
        own.find(
          (s) => sorts.includes(s) && s !== 'action' && s !== 'material' && !(s === 'finding' && weak),
        ) ?? own.find((s) => sorts.includes(s) && !weak);
      if (hit) {
        from = b;
        break;
      }
      if (/^[.;!?\n]$/.test(out[b]!.w) && weak) break;
    }
    if (from < 0 || !hit) {
      // "at two no ten to two": a bare number corrected by a clock
      const b = k - 1;
      const before = out[b];
      if (
        before &&
        (before.quantity || before.place || before.clock) &&
        (next.clock || next.span || next.duration || next.cost) &&
        !weak
      )
        from = b;
      else if (before?.clock && next.span) from = b;
      else continue;
    }
    // plain "no" directly before a finding or an action denies it: "backing sound, no holes"
    if (
      marker.length === 1 &&
      marker[0] === 'no' &&
      !sorts.some((s) => ['place', 'clock', 'span', 'quantity', 'cost', 'duration', 'stitch'].includes(s))
    )
      continue;
    if (marker.length === 1 && marker[0] === 'no' && next.stitch && !(out[k - 1]?.w === ',' && false)) {
      if (!(out[m - 1]?.w === ',' || out[k - 1]?.stitch)) continue;
    }
    // a list joined by a comma before: keep the whole list if the correction is not adjacent
    const earlier = out[from]!;
    if (hit === 'place' && earlier.place?.kind === 'part' && next.place?.kind !== 'part' && weak) continue;
    // "at two inches, no, two and an eighth": the unit stays
    const unit = earlier.quantity?.unit;
    if (hit === 'quantity' && unit && next.quantity && !next.quantity.unit)
      out[m] = { ...next, quantity: { ...next.quantity, unit } };
    out.splice(from, m - from);
    k = Math.max(0, from - 1);
  }
  return out;
}
