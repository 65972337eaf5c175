import type { Item } from '../../rules/item.ts';
import { placesOf, put, type Standing } from '../standing.ts';

const OTHER_WAY_ROUND =
  /^ (?:(?:no|oh|sorry|wait|actually|it 's|they 're|(?:those|these|they)(?: two)? (?:are|were)|should be|i (?:mixed|muddled)|(?:i (?:'ve |have )?)?(?:had|got) (?:those|them|that|these|it)(?: two)?|,) )*(?:the )?(?:(?:other|wrong) way (?:a?round|about)|vice versa|backwards|back to front|(?:those|them|these)(?: two)? (?:up|round)|mixed up|muddled(?: up)?|swap (?:those|them)(?: (?:two|round|over|around))*)(?: (?:sorry|i mean|that|actually|[.!]))* $/;

/** "other way round", after two blocks told each with something of its own: each has what the other was said to have. */
export function swapRound(standing: Standing[], items: Item[], words: string): boolean {
  const told = toldRound(standing, items, words);
  if (!told && !OTHER_WAY_ROUND.test(words)) return false;
  const lasted = told ? items.filter((x) => x.duration) : [];
  if (lasted.length > 1) return false;
  // a width and a length
  const width = standing.find(({ was }) => was.kind === 'measurement' && was.of === 'width');
  const length = standing.find(({ was }) => was.kind === 'measurement' && was.of === 'length');
  if (width?.was.kind === 'measurement' && length?.was.kind === 'measurement') {
    const [across, down] = [width.was.value, length.was.value];
    put(width.draft, 'value', down, 'amend.swapped', []);
    put(length.draft, 'value', across, 'amend.swapped', []);
    return true;
  }
  if (swapFigures(standing)) return true;
  const placed = standing.filter(({ was }) => was.kind === 'condition' || was.kind === 'treatment');
  const [a, b] = placed;
  if (placed.length !== 2 || !a || !b) return false;
  const [here, there] = [placesOf(a.was), placesOf(b.was)];
  if (!here.length || !there.length || here.join() === there.join()) return false;
  put(a.draft, 'places', [...there], 'amend.swapped', []);
  put(b.draft, 'places', [...here], 'amend.swapped', []);
  // "and it was 45 minutes"
  const timed = [a, b].filter(({ was }) => was.kind === 'treatment' && was.minutes !== undefined);
  if (lasted[0] && timed.length === 1)
    put(timed[0]!.draft, 'minutes', lasted[0].duration!.minutes, 'amend.duration', lasted);
  return true;
}

/** "needles were £2 and thread 3.50", "an hour cutting and forty minutes piecing", then "other way round": each has the other's figure. */
function swapFigures(standing: Standing[]): boolean {
  if (standing.length !== 2) return false;
  const [a, b] = standing as [Standing, Standing];
  const trade = (slot: 'cost' | 'quantity' | 'minutes'): boolean => {
    const [x, y] = [a, b].map(({ was }) => (was as Record<string, unknown>)[slot]);
    if (x === undefined || y === undefined || JSON.stringify(x) === JSON.stringify(y)) return false;
    put(a.draft, slot, structuredClone(y), 'amend.swapped', []);
    put(b.draft, slot, structuredClone(x), 'amend.swapped', []);
    return true;
  };
  if (a.was.kind === 'material' && b.was.kind === 'material')
    return a.was.cost && b.was.cost ? trade('cost') : a.was.unit === b.was.unit && trade('quantity');
  return a.was.kind === 'work' && b.was.kind === 'work' && trade('minutes');
}

const ROUND_AND_TOLD =
  /^ (?:(?:no|oh|ah|sorry|wait|actually|hang on|i had it|i 've got it|that 's|that was|got that|i had that|i got that|,|\.) )*(?:the )?(?:(?:other|wrong) way (?:a?round|about)|back to front|backwards|vice versa|mixed up|muddled(?: up)?)(?: (?:sorry|i mean|that))* (?:[:,.;-]|--|it 's|it was|it is) /;

/** "wrong way round: it's 2-4 that's couched and 2-2 that's only pinned": the two blocks named again, and nothing beside them. */
function toldRound(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 34 || !ROUND_AND_TOLD.test(words)) return false;
  const placed = standing.filter(
    ({ was }) => (was.kind === 'condition' || was.kind === 'treatment') && placesOf(was).length > 0,
  );
  const named = items.flatMap((x) => (x.place?.kind === 'blocks' ? x.place.places : []));
  const held = placed.flatMap(({ was }) => placesOf(was));
  return placed.length === 2 && named.length > 0 && named.every((p) => held.includes(p));
}
