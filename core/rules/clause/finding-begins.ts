import type { Item } from '../item.ts';
import { pointsElsewhere, tellsPlace } from '../tells-place.ts';

/** Damage as a thing: "a tear", "moth holes", "tide mark"; "torn" and "faded" belong to the subject before them. */
const THING =
  /(?:^| )(?:tears?|rips?|slits?|gash(?:es)?|splits?|holes?|stains?|marks?|spots?|specks?|blotch(?:es)?|watermarks?|scorch|rings?|moth|mould|mold|mildew|rust|foxing|patch(?:es)?|loss(?:es)?|repairs?|mends?|darns?|puckers?|lumps?|gaps?|bleed|bleeding|fraying|wear|pulls?|snags?)$/;
/** What may stand before it: its number, its size, its colour, what made it. */
const BEFORE =
  /^(?:a|an|some|one|two|three|four|five|six|several|few|couple|of|more|another|also|wee|small|smallish|tiny|little|big|biggish|large|huge|long|short|nasty|bad|slight|faint|deep|round|old|new|brown|yellow|yellowish|black|dark|rusty|rust|red|tea|coffee|ink|oil|oily|grease|greasy|water|wine|blood|scorch|tide|moth|mouse|burn|iron|pin|clean|thin|open|odd|three-cornered|l-shaped)$/;
const LEADS =
  /^(?:in|on|at|along|across|round|around|near|by|down|over|through|all|right|under|beside|inside|from|to|the|of|both|every|each|that|this|its)$/;

/**
 * "faded in every block | moth holes in 1-1", "ties gone rows three and four | hole 2-2 | oil stain lower right corner": damage as a thing, with
 * a place of its own behind it, where what was found before has its own already.
 */
export function findingBegins(items: Item[], k: number, current: Item[]): boolean {
  const thing = findingAt(items, k);
  if (thing === undefined) return false;
  const found = current.findLastIndex((x) => x.finding !== undefined || x.fail);
  if (found < 0) return false;
  const before = current.at(-1)!;
  // "wee | hole": it began before
  if (!before.place && (BEFORE.test(before.w) || /y$/.test(before.finding ? before.w : ''))) return false;
  // "2-2 hole 2-3 | tear": the place is of what follows
  const first = current.findIndex((x) => x.place || x.fabric);
  if (first < 0) return false;
  if (before.place && first < found && !led(current)) return false;
  // "2-3 a tear and hole in the corner"
  if (found === current.length - 1 && first > found) return false;
  // "2-2 torn | hole in the corner of it" and "the backing has rust | spots in 2-3" go on with the same
  return first > found || saysPlace(items, thing);
}

/** "holes", "a tide mark", and not "torn" or "gone to lumps". */
export const isDamageAsThing = (x: Item): boolean =>
  x.finding !== undefined && THING.test(x.w) && !/^(?:gone|going|full|all|in) /.test(x.w);

/** The index of the damage that begins at `k` with no more than what belongs to it. */
function findingAt(items: Item[], k: number): number | undefined {
  let at = k;
  while (
    at < k + 5 &&
    items[at] &&
    !THING.test(items[at]!.w) &&
    (BEFORE.test(items[at]!.w) ||
      items[at]!.quantity ||
      (items[at]!.finding && at === k && /y$/.test(items[at]!.w)))
  )
    at++;
  const thing = items[at];
  if (!thing?.finding || thing.action || !THING.test(thing.w)) return undefined;
  return saysPlace(items, at) ? at : undefined;
}

/** Does it say behind it where: "hole 2-2", "moth holes right across the top border"? */
function saysPlace(items: Item[], at: number): boolean {
  let m = at + 1;
  while (LEADS.test(items[m]?.w ?? '') && m < at + 5) m++;
  const where = items[m];
  return (
    where !== undefined &&
    (tellsPlace(where) || (m > at + 1 && (pointsElsewhere(where) || where.fabric !== undefined)))
  );
}

/** Is the last place of these words led by a preposition? */
function led(current: Item[]): boolean {
  let m = current.length - 1;
  while (m > 0 && (current[m]!.place || /^(?:and|&|,|\+|the|both|all|every)$/.test(current[m]!.w))) m--;
  return /^(?:in|on|at|along|across|round|around|near|by|down|over|through|of|from|to|between|under)$/.test(
    current[m]!.w,
  );
}
