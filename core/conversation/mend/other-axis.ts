import type { Item } from '../../rules/item.ts';
import { blocksOfLine } from '../../rules/places/grid.ts';
import { wholeLines } from '../../rules/places/line-spoken.ts';
import type { ReaderState } from '../../rules/reader-state.ts';
import { placesOf, put, type Standing } from '../standing.ts';

const LINE = '(rows?|columns?|cols?)';
/** "column, I mean", "sorry, that's rows", "columns, not rows", "I said row, I meant column". */
const OTHER_AXIS = new RegExp(
  `^ (?:(?:no|nope|oh|ah|sorry|wait|well|actually|i mean|i meant|i said ${LINE}|make that|that 's|that was|it 's|it was|that should be|should be|should have been|the|a|not (?:a |the )?${LINE}|,|-|\\.) )*${LINE}(?: (?:i mean|i meant|i should (?:say|have said)|sorry|not (?:a |the )?${LINE}|rather|actually|that is|that should be|it should be|of course|,|[.!]))* ?$`,
);

/** "row two is faded", then "column, I mean": the line of that number the other way. */
export function otherAxis(state: ReaderState, standing: Standing[], items: Item[], words: string): boolean {
  const said = items.length <= 12 ? OTHER_AXIS.exec(words) : null;
  const line = said?.[3];
  if (!line) return false;
  const axis = line.startsWith('row') ? 'row' : 'column';
  const placed = standing.filter(({ was }) => placesOf(was).length > 0);
  const lines = placed.map(({ was }) => wholeLines(state.grid, placesOf(was)));
  if (!placed.length || lines.some((l) => !l || l.axis === axis)) return false;
  const moved = lines.map((l) => l!.lines.flatMap((n) => blocksOfLine(state.grid, axis, n)));
  if (moved.some((places) => !places.length)) return false;
  placed.forEach((s, k) => {
    put(s.draft, 'places', moved[k]!, 'amend.other-axis', items);
  });
  return true;
}
