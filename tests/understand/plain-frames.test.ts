import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Action, TreatmentState } from '../../shared/vocabulary.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

/**
 * The plainest sentences there are, put together from what is done, how it is told and where: every verb in every frame.
 * Common ways of talking, no source.
 */

/** Base, past and -ing; words that are things elsewhere ("net", "pin", "line", "back", "dust") are among them. */
const VERBS: [Action, string, string, string][] = [
  ['replace', 'replace', 'replaced', 'replacing'],
  ['replace', 'swap out', 'swapped out', 'swapping out'],
  ['patch', 'patch', 'patched', 'patching'],
  ['darn', 'darn', 'darned', 'darning'],
  ['stabilize', 'support', 'supported', 'supporting'],
  ['stabilize', 'line', 'lined', 'lining'],
  ['stabilize', 'back', 'backed', 'backing'],
  ['stabilize', 'interface', 'interfaced', 'interfacing'],
  ['overlay', 'net', 'netted', 'netting'],
  ['resew', 'restitch', 'restitched', 'restitching'],
  ['resew', 'stitch up', 'stitched up', 'stitching up'],
  ['clean', 'vacuum', 'vacuumed', 'vacuuming'],
  ['clean', 'spot clean', 'spot cleaned', 'spot cleaning'],
  ['press', 'press', 'pressed', 'pressing'],
  ['press', 'iron', 'ironed', 'ironing'],
  ['tie', 'tie', 'tied', 'tying'],
  ['quilt', 'quilt', 'quilted', 'quilting'],
  ['baste', 'baste', 'basted', 'basting'],
  ['baste', 'pin', 'pinned', 'pinning'],
  ['photograph', 'photograph', 'photographed', 'photographing'],
];

const FRAMES: Record<TreatmentState, string[]> = {
  done: [
    'PAST HERE',
    'I PAST HERE',
    'HERE is PAST now',
    "I've PAST HERE",
    'finished ING HERE',
    'got HERE PAST',
    'managed to BASE HERE',
    'ended up ING HERE',
    'HERE: PAST',
  ],
  doing: [
    'ING HERE now',
    "I'm ING HERE",
    'busy ING HERE',
    'still ING HERE',
    'in the middle of ING HERE',
    'halfway through ING HERE',
    'currently ING HERE',
  ],
  planned: [
    'will BASE HERE',
    'need to BASE HERE',
    'HERE needs ING',
    'HERE needs to be PAST',
    "let's BASE HERE",
    'BASE HERE tomorrow',
    "I'd better BASE HERE",
    'have yet to BASE HERE',
    'HERE still needs ING',
    'must BASE HERE',
    'remember to BASE HERE',
  ],
  considering: [
    'maybe BASE HERE',
    'might BASE HERE',
    'thinking of ING HERE',
    'toying with ING HERE',
    'not sure whether to BASE HERE',
    'not sure about ING HERE',
    'HERE may need ING',
    'half a mind to BASE HERE',
    'could BASE HERE',
    'HERE could be PAST',
  ],
  dropped: [
    'decided against ING HERE',
    'changed my mind about ING HERE',
    "I won't BASE HERE after all",
    'given up on ING HERE',
    'decided not to BASE HERE',
  ],
};

const PLACES: [string, string[]][] = [
  ['3-4', ['3-4']],
  ['row five block two', ['5-2']],
  ['the second block in row four', ['4-2']],
  ['row six', ['6-1', '6-2', '6-3', '6-4', '6-5']],
  ['r2 b1 and r4 b5', ['2-1', '4-5']],
];

function misread(frame: string, state: string): string[] {
  return VERBS.flatMap(([action, base, past, ing]) =>
    PLACES.flatMap(([where, places]) => {
      const note = frame
        .replace('BASE', base)
        .replace('PAST', past)
        .replace('ING', ing)
        .replace('HERE', where);
      const { reading } = readNote(note, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE });
      const told = reading.entries.map(({ entry: e }) =>
        e.kind === 'treatment' ? `${e.action} ${e.state} ${e.places?.join(' ')}` : e.kind,
      );
      const wanted = [`${action} ${state} ${places.join(' ')}`];
      return told.join() === wanted.join() ? [] : [`${note}: ${told.join(', ')}`];
    }),
  );
}

describe('plain sentences of work', () => {
  for (const [state, frames] of Object.entries(FRAMES))
    it.each(frames)(`${state}: %s`, (frame) => {
      expect(misread(frame, state)).toEqual([]);
    });
});
