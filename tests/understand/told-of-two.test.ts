import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

/** Each entry of a note in a few words. */
const told = (note: string): string[] =>
  readNote(note, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE }).reading.entries.map(
    ({ entry: e }) =>
      e.kind === 'treatment'
        ? `${e.action} ${e.object ?? ''} ${e.state} ${e.places?.join(' ') ?? ''}`
        : e.kind === 'condition'
          ? `${e.finding} ${e.places?.join(' ')}`
          : e.kind,
  );

describe('one sentence that tells two things of one', () => {
  it.each([
    [
      'the border on the left, which has frayed, is coming off now',
      ['fraying border-left', 'remove border doing border-left'],
    ],
    ['the wadding, which I took out, was lumpy', ['remove batting done batting', 'lumpy-batting batting']],
    ['3-3, which had a tear in it, has been darned', ['tear 3-3', 'darn  done 3-3']],
    [
      'the binding is off, and so is the backing',
      ['remove binding done binding', 'remove backing done backing'],
    ],
    [
      'the right border is off, as is the interfacing behind 1-3',
      ['remove border done border-right', 'remove interfacing done 1-3'],
    ],
    [
      'the old backing is off, and the wadding with it',
      ['remove backing done backing', 'remove batting done batting'],
    ],
  ])('%s', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });

  it.each([
    // what follows the "which" ends the sentence
    ['darned 3-3, which had a hole', ['darn  done 3-3', 'hole 3-3']],
    // how it was done, and of no other thing
    ['took the backing off with a seam ripper', ['remove backing done backing']],
    ['the backing is off and the wadding is lumpy', ['remove backing done backing', 'lumpy-batting batting']],
  ])('leaves %s', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });
});

describe('what is still to come', () => {
  it.each([
    ['washing it Friday', ['wash  planned quilt']],
    ['backing off Fri', ['remove backing planned backing']],
    ["I'm netting 3-3 when the tulle comes", ['overlay  planned 3-3']],
    ["darning 3-3 as soon as I've had my tea", ['darn  planned 3-3']],
    ['squaring it up is for Monday', ['square-up  planned quilt']],
    ['row two tied tomorrow with luck', ['tie  planned 2-1 2-2 2-3 2-4 2-5']],
  ])('%s', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });

  it.each([
    ['darned 3-3 on Monday', ['darn  done 3-3']],
    ['still pressing 3-3 this evening', ['press  doing 3-3']],
    ['took the binding off after lunch', ['remove binding done binding']],
  ])('%s: not so', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });
});
