import { COUNT_WORDS } from '../../text/number-words.ts';
import type { Draft } from '../draft.ts';
import { cornerBlocks, splitBlock } from '../places/grid.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';

/** "three of its corner blocks", "two of the four corners", "three corner blocks", "three of its blocks": how many, and whether of the corners. */
const SOME_OF =
  / (?:(two|three|four|five|six|[2-6]) )(?:of (?:its|the|their|these|those) (?:two |three |four |five |six |[2-7] )?)?(?:(corners?)(?: (?:blocks|squares|ones))?|blocks|squares|ones) /;

/**
 * "The madder stripe is sound in three of its corner blocks; the bottom left one has moth": how many of a group were found so, and right
 * behind it the only one that was not. The others are those that were meant.
 */
export function allButNamed(state: ReaderState): void {
  const { drafts, clauses, grid, fabrics } = state;
  for (let n = 1; n < drafts.length; n++) {
    const whole = drafts[n - 1]!;
    const other = drafts[n]!;
    const e = whole.entry;
    const a = other.entry;
    if (e.kind !== 'condition' || a.kind !== 'condition' || a.finding === e.finding) continue;
    if (other.sentence > whole.sentence + 1 || !a.places?.every((p) => splitBlock(p))) continue;
    const told = SOME_OF.exec(wordsBetween(clauses[whole.clause]?.items ?? []));
    if (!told) continue;
    const cloth = (e.fabric && fabrics.blocks[e.fabric]) || undefined;
    const corners = told[2] ? cornerBlocks(grid) : undefined;
    const group = corners && cloth ? corners.filter((p) => cloth.includes(p)) : (corners ?? cloth);
    const count = COUNT_WORDS.indexOf(told[1]!) > 0 ? COUNT_WORDS.indexOf(told[1]!) : Number(told[1]);
    const left = group?.filter((p) => !a.places!.includes(p)) ?? [];
    if (left.length !== count || left.length + a.places.length !== group!.length) continue;
    // the whole group, as blocks or as the quilt's corners, is what the words gave so far; other places were told by themselves
    const meant = e.places ?? [];
    if (
      meant.length &&
      (meant.length < group!.length || !meant.every((p) => group!.includes(p) || /^corner-/.test(p)))
    )
      continue;
    takePlaces(whole, left);
    if (e.fabric && !a.fabric && cloth) a.fabric = e.fabric;
  }
}

function takePlaces(to: Draft, places: string[]): void {
  if (to.entry.kind !== 'condition') return;
  to.entry.places = places;
  to.placed = 'said';
  to.origins['places'] = { ...to.origins['entry']!, rule: 'place.all-but-named', how: 'implied' };
}
