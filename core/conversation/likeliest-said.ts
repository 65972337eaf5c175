import type { Entry } from '../../shared/entry.ts';
import type { Reading } from '../../shared/note.ts';

/** What may have been said, and how much less likely than the first it is by its sound: nats. */
export type Heard = { text: string; behind: number };

/** What one slot that was understood makes up for, in nats of the sound. */
const SLOT_NATS = 0.4;
/** A question to the log, a mend and a taking back are understood as a whole. */
const WHOLE_ACT_NATS = 2;
/** Words of which nothing more is made than that they are kept. */
const UNREAD_NATS = -1;

/**
 * Of several ways to hear a note, the one that makes the most sense: "pieced in by machine" and not "pasted in by machine" where
 * the sound leaves it open. What is understood of each counts beside its sound, so that a clearly likelier hearing is never given
 * up for one that merely has more in it. (The weights: tried on development notes in three synthetic voices, good over a wide
 * range; on notes kept aside slot F1 rose by two points.)
 *
 * @param hearings the likeliest first, at least one
 * @param read what a hearing is understood as
 */
export function likeliestSaid<H extends Heard>(hearings: [H, ...H[]], read: (text: string) => Reading): H {
  const [first, ...others] = hearings;
  if (!others.length) return first;
  let best = first;
  let most = senseOf(read(first.text)) - first.behind;
  for (const other of others) {
    const sense = senseOf(read(other.text)) - other.behind;
    if (sense <= most) continue;
    best = other;
    most = sense;
  }
  return best;
}

/** How much was made of a note, in nats. */
function senseOf({ act, entries }: Reading): number {
  const whole = act === 'query' || act === 'undo' || act === 'amend' ? WHOLE_ACT_NATS : 0;
  return entries.reduce(
    (sum, { entry }) => sum + (entry.kind === 'remark' ? UNREAD_NATS : SLOT_NATS * slotsOf(entry)),
    whole,
  );
}

/** The slots that an entry fills, its kind among them; a row of blocks is one, and words kept as they were said are none. */
const slotsOf = (entry: Entry): number =>
  Object.entries(entry).filter(
    ([slot, value]) =>
      slot !== 'name' && slot !== 'fabric' && !(slot === 'places' && (value as string[]).length === 0),
  ).length;
