import { describe, expect, it } from 'vitest';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { readLast } from './bench-quilt.ts';

/** A centre of nine places and a star over two, in a grid of five by five. */
const MEDALLION: QuiltGrid = {
  rows: 5,
  blocks: 5,
  shape: { wide: { '2-2': { across: 3, down: 3 }, '1-1': { across: 2, down: 1 } } },
  placeNames: {
    medallion: ['2-2'],
    'star block': ['1-1'],
    'the name block': ['5-5'],
    'half square': ['4-1', '4-5'],
  },
};
const RAGGED: QuiltGrid = { rows: 4, blocks: 5, shape: { rowLengths: [5, 4, 5, 3], shortRows: 'centred' } };

const placesOf = (notes: string | string[], quilt: QuiltGrid): string[] =>
  readLast(notes, quilt).entries.flatMap(({ entry }) => ('places' in entry ? (entry.places ?? []) : []));

describe('names of places', () => {
  it.each([
    ['the medallion is torn', ['2-2']],
    ['the medallion block is frayed', ['2-2']],
    ["the medallion's seam has split", ['2-2']],
    ['patched the star block by hand', ['1-1']],
    ['the name block is stained', ['5-5']],
    ['the half squares are faded', ['4-1', '4-5']],
  ])('%s', (note, places) => {
    expect(placesOf(note, MEDALLION)).toEqual(places);
  });

  it('are what "it" is, what a question is about, and what is said back', () => {
    expect(placesOf(['the medallion is torn', 'patched it by hand'], MEDALLION)).toEqual(['2-2']);
    expect(readLast('what about the medallion?', MEDALLION).arguments).toMatchObject({ places: ['2-2'] });
    expect(readLast('the name block is torn', MEDALLION).reply).toBe('The name block: a tear.');
  });

  it('mean nothing on a quilt that has none', () => {
    expect(placesOf('the medallion is torn', { rows: 5, blocks: 5 })).toEqual([]);
  });
});

describe('blocks of a quilt that is no plain grid', () => {
  it.each([
    ['row three block four is stained', ['2-2']],
    ['the middle block is stained', ['2-2']],
    ['the whole of row two is stained', ['2-1', '2-2', '2-5']],
    ['the last block of row two is stained', ['2-5']],
    ['column one is stained', ['1-1', '2-1', '3-1', '4-1', '5-1']],
  ])('medallion: %s', (note, places) => {
    expect(placesOf(note, MEDALLION)).toEqual(places);
  });

  it.each([
    ['the whole of row two is stained', ['2-1', '2-2', '2-3', '2-4']],
    ['rows two and four are stained', ['2-1', '2-2', '2-3', '2-4', '4-1', '4-2', '4-3']],
    ['the last block of row four is stained', ['4-3']],
    ['row four, third from the right is stained', ['4-1']],
    ['the last two blocks in row four are stained', ['4-2', '4-3']],
    ['the bottom right block is stained', ['4-3']],
    ['the corner blocks are stained', ['1-1', '1-5', '4-1', '4-3']],
    ['column five is stained', ['1-5', '3-5']],
    ['the block above 4-2 is stained', ['3-3']],
  ])('rows of different lengths: %s', (note, places) => {
    expect(placesOf(note, RAGGED)).toEqual(places);
  });

  it('asks for a block that the shape lacks', () => {
    for (const note of ['2-5 is torn', 'row two block five is torn', 'row 4 b 4 torn']) {
      expect(readLast(note, RAGGED).ask).toMatchObject({
        slot: 'place',
        question: 'This quilt has 4 rows, of 5, 4, 5 and 3 blocks. Which block do you mean?',
      });
    }
    expect(placesOf(['2-5 is torn', 'block four'], RAGGED)).toEqual(['2-4']);
  });

  it('asks which one, where several lie on that side', () => {
    expect(readLast(['the medallion is torn', 'the one above it is stained'], MEDALLION).ask).toMatchObject({
      slot: 'place',
    });
  });
});
