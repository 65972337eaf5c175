import type { Action } from '../../../shared/vocabulary.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { blockAt, rowOf, splitBlock, unique } from '../places/grid.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from './is-treatment.ts';

/** Deeds that go from row to row. */
const RUNS = new Set<Action>(['tie', 'quilt', 'baste', 'clean', 'press', 'darn', 'remove']);
const REACHED =
  / (?:(?:got|been|went|gone|reached|managed|made it|done|did|stopped) (?:it )?(?:only |just )?(?:as far as|to|up to|through to|down to|at)|(?:only|just) (?:as far as|up to|to)|reached) /;
const IN_HAND =
  / (?:(?:i|we) (?:'m|am|'re|are) (?:now )?(?:on|onto|on to|at|up to|into)|now (?:on|onto|on to)|moved on to|moving on to|on to|onto) /;

/**
 * Where work that goes from row to row has got to: "row four I only got as far as block two" is done up to there, "I'm on
 * row five now" is in hand. Only where such work is spoken of.
 */
export function soFar(
  state: ReaderState,
  v: ClauseView,
  words: string,
  placed: ClausePlaces,
  task: Action | undefined,
): Draft | undefined {
  if (placed.kind !== 'specific' || !placed.places.every((p) => splitBlock(p))) return undefined;
  const inHand = IN_HAND.test(words);
  if (!inHand && !REACHED.test(words)) return undefined;
  if (v.items.some((x) => x.finding || x.material || x.clock || x.span || x.quantity?.unit)) return undefined;
  const last = state.drafts.findLast(isTreatment)?.entry;
  const source =
    last ??
    (state.memory.lastKind === 'treatment' && /^(done|doing)$/.test(state.memory.treatment?.state ?? '')
      ? state.memory.treatment
      : undefined);
  const action = task ?? source?.action;
  if (!action || !RUNS.has(action) || (source?.action && source.action !== action)) return undefined;
  const places = inHand ? placed.places : upTo(state, placed.places, source?.places ?? []);
  return (
    places &&
    makeDraft(
      'treatment',
      v,
      {
        action: [action, 'treatment.so-far', undefined, 'implied'],
        state: [inHand ? 'doing' : 'done', 'treatment.so-far', v.items],
        ...(source?.object ? { object: [source.object, 'treatment.so-far', undefined, 'implied'] } : {}),
        places: [places, 'place.said', placed.items],
      },
      'said',
    )
  );
}

/** The blocks of a row up to the one reached; the rows after those told, up to the one reached. */
function upTo(state: ReaderState, reached: string[], told: string[]): string[] | undefined {
  const { grid } = state;
  const at = splitBlock(reached.at(-1)!)!;
  if (reached.length === 1)
    return Array.from({ length: at.block }, (_, k) => blockAt(grid, at.row, k + 1)).filter(
      (p) => p !== undefined,
    );
  const rows = unique(reached.map((p) => splitBlock(p)!.row));
  if (rows.length !== 1 || reached.length < rowOf(grid, at.row).length) return reached;
  const done = Math.max(0, ...told.map((p) => splitBlock(p)?.row ?? 0));
  if (done >= at.row) return undefined;
  return Array.from({ length: at.row - done }, (_, k) => rowOf(grid, done + k + 1)).flat();
}
