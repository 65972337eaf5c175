import type { Action, Stitch } from '../../../shared/vocabulary.ts';
import { readCount } from '../../text/read-number.ts';
import { tokenise } from '../../text/tokenise.ts';
import { goesOnTo } from '../clause/goes-on-to.ts';
import type { ClauseView } from '../clause-view.ts';
import { type Draft, makeDraft } from '../draft.ts';
import { blockAt, columnOf, countUp, rowOf, splitBlock, unique } from '../places/grid.ts';
import type { ClausePlaces } from '../places/places-of-clause.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from './is-treatment.ts';

/** Deeds that go from row to row. */
export const RUNS = new Set<Action>(['tie', 'quilt', 'baste', 'clean', 'press', 'darn', 'remove']);
const REACHED =
  / (?:(?:got|been|went|gone|reached|managed|made it|done|did|stopped) (?:it )?(?:only |just )?(?:as far as|to|up to|through to|down to|at)|(?:only|just) (?:as far as|up to|to)|reached) /;
const IN_HAND =
  / (?:(?:i|we) (?:'m|am|'re|are) (?:now )?(?:on|onto|on to|at|up to|into)|now (?:on|onto|on to)|moved on to|moving on to|on to|onto) /;

/** "doing 2-4 now", "on 2-4 now": what was just done is in hand at the next place, whatever it is. */
const NOW_AT =
  /^ (?:(?:and|so|right|ok|okay|i|'m|am|just) )*(?:doing|on|at|busy with|busy on) (?:the )?.{1,30} now (?:[.!] )*$/;

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
  const now = NOW_AT.test(words) && !(/ one /.test(words) && placed.places.length > 1);
  const inHand = now || IN_HAND.test(words) || goesOnTo(v.items, 0);
  if (!inHand && !REACHED.test(words)) return undefined;
  if (v.items.some((x) => x.finding || x.material || x.clock || x.span || x.quantity?.unit)) return undefined;
  const last = state.drafts.findLast(isTreatment)?.entry;
  const source =
    last ??
    (state.memory.lastKind === 'treatment' && /^(done|doing)$/.test(state.memory.treatment?.state ?? '')
      ? state.memory.treatment
      : undefined);
  const action = task ?? source?.action;
  if (!action || !(now || RUNS.has(action)) || (source?.action && source.action !== action)) return undefined;
  if (inHand) countedBefore(state, placed.places);
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
        ...(inHand && last?.stitch
          ? { stitch: [last.stitch, 'treatment.so-far', undefined, 'implied'] }
          : {}),
        places: [places, 'place.said', placed.items],
      },
      'said',
    )
  );
}

/** "two rows tied, I'm on the third": so many rows, and the next one is in hand, so that they are the first. */
function countedBefore({ grid, drafts, clauses }: ReaderState, reached: string[]): void {
  const told = drafts.findLast(isTreatment);
  const at = splitBlock(reached[0]!)!;
  if (!told || told.placed === 'said' || told.entry.state !== 'done') return;
  const words = clauses[told.clause]?.items.map((x) => x.w) ?? [];
  const noun = words.findIndex((w) => /^(rows?|columns?|cols?)$/.test(w));
  const inRows = /^rows?$/.test(words[noun] ?? '');
  const before = (inRows ? at.row : at.block) - 1;
  if (noun < 0 || readCount(tokenise(words[noun - 1] ?? ''), 0)?.value !== before) return;
  told.entry.places = countUp(1, before).flatMap((k) => (inRows ? rowOf(grid, k) : columnOf(grid, k)));
  told.placed = 'carried';
}

const ALONG =
  /^(,|along|down|across|on|in|with|from|the|at|just|only|first|round|around|right|now|been|so|far|so far|and|&|both|all|blocks?|ones?|done|finished)$/;

/** "began tying at two, along the top row": the work begun and, in a clause of nothing else, where. */
export function begunAlong(
  state: ReaderState,
  v: ClauseView,
  placed: ClausePlaces,
  task: Action | undefined,
  stitch: Stitch | undefined,
): Draft | undefined {
  if (!task || placed.kind !== 'specific' || !placed.places.every((p) => splitBlock(p))) return undefined;
  // "quilting 2 to 3.30, rows 1 and 2", "tying 7-8.50. row 5 all but 5-3": where, behind the stretch or in a sentence of its own
  const time = state.drafts.find(
    ({ entry: e, sentence }) =>
      e.kind === 'work' &&
      (e.mark === 'start' || (e.start && e.end)) &&
      (sentence === v.sentence || sentence === v.sentence - 1),
  );
  if (!time || state.drafts.some(isTreatment)) return undefined;
  const own = time.entry.kind === 'work' && /^(?:tying|quilting)$/.test(time.entry.task ?? '');
  if (time.sentence !== v.sentence && !own) return undefined;
  if (!v.items.every((x) => x.place || x.stitch || x.fabric || ALONG.test(x.w))) return undefined;
  const words = ` ${v.items.map((x) => x.w).join(' ')} `;
  const done =
    (time.entry.kind === 'work' && time.entry.end !== undefined) ||
    / (?:done|finished) /.test(words) ||
    // "rows 1 and 2 so far": its "so" may stand outside the clause
    state.tokens.some((t, k) => t.w === 'far' && state.tokens[k - 1]?.w === 'so');
  return makeDraft(
    'treatment',
    v,
    {
      action: [task, 'treatment.begun-along', undefined, 'implied'],
      state: [done ? 'done' : 'doing', 'treatment.begun-along', v.items],
      places: [placed.places, 'place.said', placed.items],
      ...(stitch ? { stitch: [stitch, `stitch.${stitch}`, undefined] } : {}),
    },
    'said',
  );
}

/** The blocks of a row up to the one reached; the rows after those told, up to the one reached. */
export function upTo(
  { grid }: Pick<ReaderState, 'grid'>,
  reached: string[],
  told: string[],
): string[] | undefined {
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
