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

/** More frames, at one place and one row. */
const MORE_FRAMES: Record<TreatmentState, string[]> = {
  done: [
    'got round to ING HERE',
    'was able to BASE HERE',
    'ended up having to BASE HERE',
    'spent the morning ING HERE',
    'ING HERE is done',
  ],
  doing: [
    'nearly done ING HERE',
    "I'm back ING HERE",
    'up to my elbows ING HERE',
    'in the midst of ING HERE',
  ],
  planned: [
    'settled on ING HERE',
    "we've agreed on ING HERE",
    'HERE is down for ING',
    'HERE could really do with ING',
    "don't let me forget to BASE HERE",
    "haven't PAST HERE yet",
    "HERE isn't PAST yet",
    'ING HERE can wait till tomorrow',
    'next job ING HERE',
    'planning on ING HERE',
  ],
  considering: [
    'leaning towards ING HERE',
    "jury's out on ING HERE",
    'not convinced about ING HERE',
    'what about ING HERE',
    'I may or may not BASE HERE',
    'ING HERE is one option',
    'need to make up my mind about ING HERE',
    'HERE may have to be PAST',
  ],
  dropped: [
    'talked myself out of ING HERE',
    'struck ING HERE off the list',
    'calling off ING HERE',
    "ING HERE isn't happening",
    'ING HERE is out of the question',
    "I shan't BASE HERE",
    'scrapped the plan to BASE HERE',
    'no longer ING HERE',
    'backed out of ING HERE',
  ],
};

/** Treatments told as things. */
const THINGS: [Action, string][] = [
  ['patch', 'patch'],
  ['darn', 'darn'],
  ['stabilize', 'lining'],
  ['press', 'press'],
];
const THING_FRAMES: Record<TreatmentState, string[]> = {
  done: ['gave HERE a THING', "I've given HERE a quick THING"],
  doing: ['busy giving HERE a THING', 'HERE is getting a THING right now'],
  planned: ['HERE calls for a THING', 'HERE must have a THING', "I'll give HERE a THING"],
  considering: ['HERE may need a THING', 'considering a THING for HERE', 'a THING is one option for HERE'],
  dropped: [
    "HERE won't get a THING now",
    'decided against the THING on HERE',
    'calling off the THING on HERE',
  ],
};

const read = (note: string, wanted: string): string[] => {
  const { reading } = readNote(note, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE });
  const told = reading.entries.map(({ entry: e }) =>
    e.kind === 'treatment' ? `${e.action} ${e.state} ${e.places?.join(' ')}` : e.kind,
  );
  return told.join() === wanted ? [] : [`${note}: ${told.join(', ')}`];
};

function misread(frame: string, state: string, where = PLACES): string[] {
  return VERBS.flatMap(([action, base, past, ing]) =>
    where.flatMap(([here, places]) => {
      const note = frame
        .replace('BASE', base)
        .replace('PAST', past)
        .replace('ING', ing)
        .replace('HERE', here);
      return read(note, `${action} ${state} ${places.join(' ')}`);
    }),
  );
}

describe('plain sentences of work', () => {
  for (const [state, frames] of Object.entries(FRAMES))
    it.each(frames)(`${state}: %s`, (frame) => {
      expect(misread(frame, state)).toEqual([]);
    });
  for (const [state, frames] of Object.entries(MORE_FRAMES))
    it.each(frames)(`${state}: %s`, (frame) => {
      expect(misread(frame, state, PLACES.slice(0, 1))).toEqual([]);
    });
  for (const [state, frames] of Object.entries(THING_FRAMES))
    it.each(frames)(`${state}: %s`, (frame) => {
      const notes = THINGS.flatMap(([action, thing]) =>
        read(frame.replace('THING', thing).replace('HERE', '3-4'), `${action} ${state} 3-4`),
      );
      expect(notes).toEqual([]);
    });
});
