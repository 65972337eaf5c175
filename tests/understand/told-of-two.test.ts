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

describe('a doubt about one block says nothing of another', () => {
  it.each([
    [
      '3-3 needs a darn but 3-4 could go either way, patch or leave',
      ['darn  planned 3-3', 'patch  considering 3-4', 'leave  considering 3-4'],
    ],
    [
      "I'll net 3-3 and I don't know yet about 3-4, darn or patch",
      ['overlay  planned 3-3', 'darn  considering 3-4', 'patch  considering 3-4'],
    ],
    ['will darn 3-3 tomorrow, 3-4 maybe too', ['darn  planned 3-3', 'darn  considering 3-4']],
    [
      "I'm going to line 3-3 with muslin and then maybe a patch on top",
      ['stabilize  planned 3-3', 'patch  considering 3-3'],
    ],
  ])('%s', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });

  it.each([
    // of both
    ['might darn 3-3 and 3-4', ['darn  considering 3-3 3-4']],
    ["I'll patch 3-3 or darn it, can't decide", ['patch  considering 3-3', 'darn  considering 3-3']],
  ])('%s: of both', (note, entries) => {
    expect(told(note)).toEqual(entries);
  });
});
