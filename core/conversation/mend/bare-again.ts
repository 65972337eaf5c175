import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { blockAt, isWholeRow, rowOf, splitBlock, unique } from '../../rules/places/grid.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { latestClock, wallMinutes, wallTime } from '../../rules/times/local-time.ts';
import { resolve } from '../../rules/work/slots.ts';
import { countsOf } from '../../text/number-words.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { LENGTHS, POINTERS } from './items.ts';

/**
 * A value and nothing else, which only one thing of the last note can have: "4-5", "3-3 and 3-4", "one to five", "till half eleven",
 * "metres". Each gives what stands afterwards.
 */
export function bareAgain(state: ReaderState, standing: Standing[], items: Item[]): Draft[] | undefined {
  const plain = items.filter((x) => !SMALL.test(x.w));
  const changed =
    blocksAgain(standing, plain) ||
    linesAgain(state, standing, plain) ||
    runAgain(state, standing, items) ||
    unitAgain(standing, plain);
  return changed ? standing.map((s) => s.draft) : undefined;
}

const SMALL =
  /^(?:no|nope|oh|ah|um|uh|er|sorry|wait|actually|well|and|&|,|\.|!|i|mean|meant|it|was|that|is|'s|they|were|rather|really|then|in fact|come|to think|of|should|be|have|been|make|should be|blocks?|only|just)$/;

/** "3-3 and 3-4", where two blocks were told once: as many in their stead. */
function blocksAgain(standing: Standing[], plain: Item[]): boolean {
  if (!plain.length || plain.some((x) => x.place?.rule !== 'place.pair' || x.place.places.length !== 1))
    return false;
  const good = unique(plain.flatMap((x) => x.place!.places));
  const blocksOf = (s: Standing): string[] => placesOf(s.was).filter((p) => splitBlock(p));
  const held = standing.filter((s) => blocksOf(s).length > 0);
  const like = held.filter((s) => blocksOf(s).length === good.length);
  const groups = new Set(like.map((s) => blocksOf(s).join()));
  // one block of several told one by one is for the rule that finds the likest
  if (
    groups.size !== 1 ||
    // "brushed both sides, then spot cleaned 4-4": one of two deeds alike has a block
    (!(held.length === 1 && alikeElsewhere(standing, held[0]!)) &&
      good.length === 1 &&
      held.length === like.length &&
      like.every((s) => placesOf(s.was).length === 1))
  )
    return false;
  if (like.some((s) => good.every((p) => placesOf(s.was).includes(p)))) return false;
  for (const s of like) {
    const now = placesOf(s.was);
    put(s.draft, 'places', [...now.filter((p) => !splitBlock(p)), ...good], 'amend.blocks-again', plain);
  }
  return true;
}

const alikeElsewhere = (standing: Standing[], { was }: Standing): boolean =>
  was.kind === 'treatment' &&
  standing.filter((s) => s.was.kind === 'treatment' && s.was.action === was.action).length > 1;

/** "last three rows", after the last two: the one list of whole rows, told anew. */
function linesAgain(state: ReaderState, standing: Standing[], plain: Item[]): boolean {
  const [x] = plain;
  if (plain.length !== 1 || !x?.place || !/row|column/.test(x.place.rule) || x.place.how !== 'said')
    return false;
  const good = x.place.places;
  const lines = standing.filter(({ was }) => {
    const now = placesOf(was);
    const rows = unique(now.map((p) => splitBlock(p)?.row ?? 0));
    return (
      rows.length > 1 &&
      now.some((p) => good.includes(p)) &&
      now.length !== good.length &&
      rows.every((r) =>
        isWholeRow(
          state.grid,
          now.filter((p) => splitBlock(p)?.row === r),
        ),
      )
    );
  });
  if (new Set(lines.map(({ was }) => placesOf(was).join())).size !== 1) return false;
  for (const s of lines) put(s.draft, 'places', good, 'amend.lines-again', plain);
  return true;
}

const COUNT: Record<string, number> = countsOf(1, 12);
const RUN =
  /^ (?:(?:no|oh|sorry|it was|that was|rows?|actually|well|um|er|,) )*(\w+) (?:to|through|thru) (\w+)(?: (?:that is|actually|i mean|i meant|sorry|only|rather|[.!]))* $/;

/** "one to five", after rows one to four. */
function runAgain(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  const run = RUN.exec(` ${items.map((x) => x.w).join(' ')} `);
  const [from, to] = [run?.[1], run?.[2]].map((w) => (w === undefined ? undefined : (COUNT[w] ?? Number(w))));
  if (!from || !to || to <= from) return false;
  // it could be hours
  if (standing.some(({ was }) => was.kind === 'work')) return false;
  const { grid } = state;
  const placed = standing.filter(({ was }) => placesOf(was).some((p) => splitBlock(p)));
  if (new Set(placed.map(({ was }) => placesOf(was).join())).size !== 1) return false;
  const now = placesOf(placed[0]!.was);
  const rows = unique(now.map((p) => splitBlock(p)?.row ?? 0));
  const whole = rows.every((r) =>
    isWholeRow(
      grid,
      now.filter((p) => splitBlock(p)?.row === r),
    ),
  );
  const fresh =
    rows.length > 1 && whole && rows.includes(from)
      ? to <= grid.rows && Array.from({ length: to - from + 1 }, (_, k) => rowOf(grid, from + k)).flat()
      : rows.length === 1 && !whole && now.length > 1
        ? Array.from({ length: to - from + 1 }, (_, k) => blockAt(grid, rows[0]!, from + k))
        : undefined;
  if (!fresh || !fresh.length || fresh.some((p) => p === undefined)) return false;
  for (const s of placed) put(s.draft, 'places', fresh, 'amend.run-again', items);
  return true;
}

/** "metres", "yards I mean": of the one length that was told in another unit. */
function unitAgain(standing: Standing[], plain: Item[]): boolean {
  const [x] = plain;
  if (plain.length !== 1 || !x || x.w.length < 3 || !Object.hasOwn(UNIT_WORDS, x.w)) return false;
  const unit = UNIT_WORDS[x.w]!;
  const told = standing.filter(
    ({ was }) =>
      (was.kind === 'material' || was.kind === 'measurement') &&
      (was.kind === 'measurement' ? was.value !== undefined : was.unit !== undefined) &&
      (was.unit === undefined || LENGTHS.has(was.unit)),
  );
  const units = new Set(told.map(({ was }) => ('unit' in was ? was.unit : undefined)));
  if (!LENGTHS.has(unit) || !told.length || units.size !== 1 || units.has(unit)) return false;
  for (const s of told) put(s.draft, 'unit', unit, 'amend.unit-again', [x]);
  return true;
}

/** "half nine to half ten", after a stretch from nine to half ten: told again, where the two cannot both be. */
export function stretchAgain(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  if (items.length > 8) return false;
  const plain = items.filter((x) => !SMALL.test(x.w) && !/^(?:from|between|say|about)$/.test(x.w));
  const span = plain.length === 1 ? plain[0]!.span : undefined;
  const works = standing.filter(({ was }) => was.kind === 'work' && was.start && was.end);
  const [s] = works;
  if (!span || works.length !== 1 || s?.was.kind !== 'work' || s.was.minutes !== undefined) return false;
  const [from, to] = [wallMinutes(s.was.start!), wallMinutes(s.was.end!)];
  const day = { start: Math.floor(from / 1440) * 1440 };
  const now = wallMinutes(state.local);
  const { startAt, endAt } = resolve(span.start, span.end, now, day.start + 1440 <= now ? day : undefined);
  if (startAt >= to || endAt <= from || (startAt === from && endAt === to)) return false;
  put(s.draft, 'start', wallTime(startAt), 'amend.stretch-again', plain);
  put(s.draft, 'end', wallTime(endAt), 'amend.stretch-again', plain);
  return true;
}

const LATER_END =
  /^(?:till|til|until|to|up to|finished at|finished|stopped at|stopped|ended at|it ended at|done at)$/;
const EARLIER_START = /^(?:from|since|started at|started|began at|began|start|starting|starting at)$/;

/** "till half eleven", "started at ten past nine", after a stretch from nine till eleven. */
export function oneEndAgain(state: ReaderState, standing: Standing[], items: Item[]): boolean {
  const plain = items.filter((x) => !SMALL.test(x.w) && !/^(?:at|about|not|on|though)$/.test(x.w));
  const clock = plain.find((x) => x.clock);
  const word = plain.find((x) => x !== clock)?.w ?? '';
  if (!clock || plain.length > 2 || plain.some((x) => POINTERS.has(x.place?.rule ?? ''))) return false;
  const stretches = standing.filter(({ was }) => was.kind === 'work' && was.start && was.end);
  const [s] = stretches;
  if (stretches.length !== 1 || s?.was.kind !== 'work') return false;
  const { start, end, minutes } = s.was;
  const slot = LATER_END.test(word) ? 'end' : EARLIER_START.test(word) ? 'start' : undefined;
  if (!slot || minutes !== undefined) return false;
  const old = wallMinutes(slot === 'end' ? end! : start!);
  const said = clock.clock!.minute % 720;
  // the half of the day that was told first holds
  const near = [-720, 0, 720, 1440].map((by) => Math.floor(old / 1440) * 1440 + said + by);
  const at = clock.clock!.fixed
    ? latestClock(clock.clock!, wallMinutes(state.local))
    : near.reduce((a, b) => (Math.abs(b - old) < Math.abs(a - old) ? b : a));
  // two hours on it is another time
  if (Math.abs(at - old) > 100) return false;
  if (slot === 'end' ? at <= wallMinutes(start!) : at >= wallMinutes(end!)) return false;
  put(s.draft, slot, wallTime(at), 'amend.one-end', [clock]);
  return true;
}
