import type { Task } from '../../shared/vocabulary.ts';
import type { Claim } from './gather-claims.ts';
import { isRealMinute } from './is-real-minute.ts';
import type { Sign } from './signs-of-work.ts';
import type { Stretch } from './stretches.ts';
import { taskOfEntry } from './task-of-entry.ts';
import type { ZoneClock } from './zone-clock.ts';

/** A run of notes about one kind of work, as the times between them. */
export type Run = Pick<Claim, 'id' | 'task' | 'noteIds' | 'entryIds'> & { gaps: Stretch[] };

/**
 * Infers work from the notes themselves: the time between two notes no further apart than `idleMin`
 * was worked, at what the later one tells of (one says what one has just done), else at what the
 * earlier did. Nothing is inferred after a stop, nor before a start.
 */
export function inferRuns(signs: readonly Sign[], idleMin: number, clock: ZoneClock): Run[] {
  const runs: Run[] = [];
  let run: (Run & { task?: Task }) | undefined;
  let lastTask: Task | undefined;
  for (const [i, sign] of signs.entries()) {
    const before = signs[i - 1];
    const own = taskOfSign(sign);
    if (before && sign.at - before.at <= idleMin && !hasStop(before)) {
      const until = hasStart(sign) ? before.at : Math.min(sign.at, endSaid(sign, clock) ?? sign.at);
      const task = own ?? lastTask;
      // Notes that tell of no work done (plans, purchases, matters weighed) are none by themselves.
      if (until > before.at && task !== undefined) {
        if (!run || run.task !== task) {
          run = {
            id: `notes-${before.id}`,
            task,
            noteIds: before.noteId === undefined ? [] : [before.noteId],
            entryIds: [],
            gaps: [],
          };
          runs.push(run);
        }
        run.gaps.push([before.at, until]);
        if (sign.noteId !== undefined) run.noteIds.push(sign.noteId);
      }
    } else {
      run = undefined;
      lastTask = undefined;
    }
    lastTask = hasStop(sign) ? undefined : (own ?? lastTask);
  }
  return runs;
}

function taskOfSign(sign: Sign): Task | undefined {
  // The last thing told is the nearest to the moment.
  for (let i = sign.entries.length - 1; i >= 0; i--) {
    const { entry } = sign.entries[i]!;
    // A finding told beside a treatment is its reason, not a survey.
    if (entry.kind === 'condition' && sign.entries.some((other) => other.entry.kind === 'treatment'))
      continue;
    const task = taskOfEntry(entry);
    if (task !== undefined) return task;
  }
  return undefined;
}

const hasStop = (sign: Sign): boolean =>
  sign.entries.some(({ entry }) => entry.kind === 'work' && entry.mark === 'stop');
const hasStart = (sign: Sign): boolean =>
  sign.entries.some(({ entry }) => entry.kind === 'work' && entry.mark === 'start');

/** When work told of by this note ended, where it says so: the time after was not worked. */
function endSaid(sign: Sign, clock: ZoneClock): number | undefined {
  for (const { entry } of sign.entries) {
    if (entry.kind !== 'work') continue;
    const end = entry.end ?? (entry.mark === 'stop' ? entry.time : undefined);
    if (end !== undefined && isRealMinute(end)) return clock.minuteOf(end);
  }
  return undefined;
}
