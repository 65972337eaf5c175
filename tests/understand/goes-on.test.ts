import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

/** The treatments that the last note gave, one line each. Common ways of talking, no source. */
const told = (notes: string[]): string[] =>
  say(notes).entries.flatMap(({ entry: e }) =>
    e.kind === 'treatment' ? [`${e.action ?? '?'} ${e.state} ${e.places?.join(' ')}`] : [],
  );

describe('what was just done goes on at the next place', () => {
  it.each([
    ['2-4 done too', 'darn done 2-4'],
    ['did 2-4 as well', 'darn done 2-4'],
    ["that's 2-4 finished as well", 'darn done 2-4'],
    ['doing 2-4 now', 'darn doing 2-4'],
    ['on 2-4 now', 'darn doing 2-4'],
    ['2-4 will have to wait till tomorrow', 'darn planned 2-4'],
  ])('%s', (note, wanted) => {
    expect(told(['darned 2-3', note])).toEqual([wanted]);
  });

  it('finishes what is in hand at a place', () => {
    expect(told(['tied row one', 'now on row three', 'row three done'])).toEqual([
      'tie done 3-1 3-2 3-3 3-4 3-5',
    ]);
  });

  it('asks what was done, where nothing says that it was the same', () => {
    expect(told(['darned 2-3', 'seen to 2-4'])).toEqual(['? done 2-4']);
  });
});

describe('one of the ways that stood open is chosen', () => {
  it.each([
    ["it's the patch", 'patch planned 2-3'],
    ['the patch then', 'patch planned 2-3'],
    ["it's going to be the net", 'overlay planned 2-3'],
  ])('%s', (note, wanted) => {
    expect(told(['2-3: net or patch? not sure', note])).toEqual([wanted]);
  });
});

describe('the rest, and one of two by where it lies', () => {
  it('is all that was not told of', () => {
    expect(told(['pressed rows one to six', 'the rest tomorrow'])).toEqual([
      'press planned 7-1 7-2 7-3 7-4 7-5',
    ]);
  });
  it.each([
    ['lower one next', 'darn planned 4-3'],
    ['top one tomorrow', 'darn planned 2-3'],
  ])('%s', (note, wanted) => {
    const before = note.startsWith('lower') ? 'darned the upper one' : 'darned the lower one';
    expect(told(['2-3 and 4-3 are torn', before, note])).toEqual([wanted]);
  });
});

describe('what was meant instead', () => {
  it.each([['I mean row four'], ['i mean row four not row three'], ['sorry row four']])('%s', (note) => {
    expect(told(['pressed row three', note])).toEqual(['press done 4-1 4-2 4-3 4-4 4-5']);
  });
  it('is planned where it is still to do', () => {
    expect(told(['darned 2-3', '2-4 still to do'])).toEqual(['darn planned 2-4']);
  });
});

describe('rows told by their numbers alone', () => {
  it.each([
    ['2 and 3 as well now', 'press done 2-1 2-2 2-3 2-4 2-5 3-1 3-2 3-3 3-4 3-5'],
    ['and two', 'press done 2-1 2-2 2-3 2-4 2-5'],
    ['two tomorrow', 'press planned 2-1 2-2 2-3 2-4 2-5'],
  ])('%s', (note, wanted) => {
    expect(told(['pressed row one', note])).toEqual([wanted]);
  });
  it.each([['2 hours', 'took 2', '2-4 next']])('%s is none', (note) => {
    expect(told(['pressed row one', note]).join()).not.toContain('2-1 2-2');
  });
});
