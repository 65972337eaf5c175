import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

/** What was understood, one line an entry: `tear 2-3`, `clean done 2-3`. Common ways of talking, no source. */
const told = (note: string): string[] =>
  say(note).entries.flatMap(({ entry: e }) =>
    e.kind === 'condition'
      ? [`${e.finding} ${e.places?.join(' ')}`]
      : e.kind === 'treatment'
        ? [`${e.action} ${e.state} ${e.places?.join(' ')}`]
        : [],
  );

describe('things found, named in one list, lie where the last of them does', () => {
  it.each([
    ["there's a tear and a stain on 2-3", ['tear 2-3', 'stain 2-3']],
    ['found a tear, a stain and a hole in 2-3', ['tear 2-3', 'stain 2-3', 'hole 2-3']],
    ["there's holes and stains all over the backing", ['hole backing', 'stain backing']],
    ["there's a tear in 2-2 and a stain on 2-3", ['tear 2-2', 'stain 2-3']],
  ])('%s', (note, wanted) => {
    expect(told(note)).toEqual(wanted);
  });

  it('asks where the first is, where the other is told of a place of its own', () => {
    expect(told('a tear, and 2-3 has a stain')).toEqual(['tear ', 'stain 2-3']);
  });
});

describe('two verbs share what they are said of', () => {
  it.each([
    ['cleaned and pressed 2-3', ['clean done 2-3', 'press done 2-3']],
    ['cleaning and pressing 2-3 next', ['clean planned 2-3', 'press planned 2-3']],
    ['the backing needs washing and pressing', ['wash planned backing', 'press planned backing']],
    ['2-3 needs cutting out and replacing', ['replace planned 2-3']],
    ['cleaned 2-2 and pressed 2-3', ['clean done 2-2', 'press done 2-3']],
    ['2-3 needs patching, 2-4 darning', ['patch planned 2-3', 'darn planned 2-4']],
  ])('%s', (note, wanted) => {
    expect(told(note)).toEqual(wanted);
  });
});

describe('of all but what is named behind it', () => {
  it.each([
    ["everything's sound apart from 2-3", 'sound', '2-3'],
    ["they're all faded bar 2-3", 'fading', '2-3'],
  ])('%s', (note, finding, but) => {
    const [entry] = told(note);
    expect(entry?.split(' ')[0]).toBe(finding);
    expect(entry?.split(' ')).not.toContain(but);
    expect(entry?.split(' ').length).toBeGreaterThan(9);
  });
});

describe('a deed told by its noun', () => {
  it.each([
    ["I've done the patch on 2-3", ['patch done 2-3']],
    ['just doing the patch on 2-3', ['patch doing 2-3']],
    ['took a photograph of 2-3', ['photograph done 2-3']],
    ['I ought to take a photograph of the back', ['photograph planned backing']],
    ['vacuumed the back through a net screen', ['clean done backing']],
    ['ties are in on row two', ['tie done 2-1 2-2 2-3 2-4 2-5']],
    ['ties are going in on 2-3', ['tie doing 2-3']],
    ['layered it & pin basted', ['layer done quilt', 'baste done quilt']],
    ['no washing for this one', ['wash dropped quilt']],
    ["found a hole I'd missed in 4-2", ['hole 4-2']],
    ['ties in row two are loose', ['broken-stitching 2-1 2-2 2-3 2-4 2-5']],
    ['quilting a cable in the border', ['quilt doing border']],
    ['cutting the binding strips', ['cut doing binding']],
    ['trimmed the batting flush with the top', ['trim done batting']],
  ])('%s', (note, wanted) => {
    expect(told(note)).toEqual(wanted);
  });

  it('takes a block for no day to finish by', () => {
    expect(say("I've done the patch on 2-3").entries.map(({ entry }) => entry.kind)).toEqual(['treatment']);
  });
});

describe('a thing that was off is no break in the work', () => {
  it('keeps the stretch', () => {
    const [work] = say('took backing off 13:30–14:20').entries.flatMap(({ entry: e }) =>
      e.kind === 'work' ? [`${e.task} ${e.start?.slice(11)} ${e.end?.slice(11)}`] : [],
    );
    expect(work).toBe('taking-apart 13:30 14:20');
  });
});

describe('a cloth that is told after the deed was put in', () => {
  it.each([
    ["patched 2-3, it's the red spot", 1],
    ["2-3 is torn, it's the red spot", 0],
  ])('%s', (note, cloths) => {
    expect(say(note).entries.filter(({ entry: e }) => e.kind === 'material')).toHaveLength(cloths);
  });
});
