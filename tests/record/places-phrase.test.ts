import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betweenBlocks, type Grid, inPlaces, placesPhrase } from '../../core/record/wording/places-phrase.ts';

const grid: Grid = {
  rows: 7,
  blocks: 5,
  spelling: 'british',
  fabrics: { gingham: ['1-2', '4-4', '6-1'], 'brown stripe': ['2-2'] },
};
const american: Grid = { ...grid, spelling: 'american' };
const row = (n: number): string[] => [1, 2, 3, 4, 5].map((block) => `${n}-${block}`);
const column = (n: number): string[] => [1, 2, 3, 4, 5, 6, 7].map((r) => `${r}-${n}`);
const all = [1, 2, 3, 4, 5, 6, 7].flatMap(row);

// What people say: common practice, no source.
describe('places as people say them', () => {
  test.each<[string, string[], string]>([
    ['one block', ['3-2'], 'the second block of row 3'],
    ['two in a row', ['3-2', '3-3'], 'the second and third blocks of row 3'],
    ['a run', ['3-2', '3-3', '3-4'], 'the second to fourth blocks of row 3'],
    ['a whole row', row(2), 'all of row 2'],
    ['whole rows', [...row(2), ...row(3), ...row(4), ...row(6)], 'all of rows 2 to 4 and 6'],
    ['a whole column', column(1), 'all of column 1'],
    ['a fabric', ['4-4', '6-1', '1-2'], 'the gingham blocks'],
    [
      'a fabric among others',
      ['1-2', '4-4', '6-1', '7-5'],
      'the gingham blocks and the fifth block of row 7',
    ],
    ['a fabric of one block is no name', ['2-2'], 'the second block of row 2'],
    ['the same block of several rows', ['3-2', '5-2'], 'the second blocks of rows 3 and 5'],
    ['all', all, 'every block'],
    ['all but one', all.filter((place) => place !== '1-1'), 'every block but the first block of row 1'],
    [
      'corners',
      ['corner-top-left', 'corner-top-right', 'corner-bottom-left', 'corner-bottom-right'],
      'all four corners',
    ],
    ['two edges', ['edge-top', 'edge-left'], 'the top and left edges'],
    ['batting', ['batting'], 'the wadding'],
    ['none', [], ''],
    ['said twice', ['3-2', '3-2'], 'the second block of row 3'],
  ])('%s', (_name, places, said) => {
    expect(placesPhrase(places, grid)).toBe(said);
  });

  test('American words', () => {
    expect(placesPhrase(['batting'], american)).toBe('the batting');
    expect(placesPhrase(['edge-top', 'edge-left', 'edge-right'], american)).toBe(
      'the top, right, and left edges',
    );
  });

  test('prepositions', () => {
    expect(inPlaces(['3-2', 'edge-top', 'corner-top-left'], grid)).toBe(
      'in the second block of row 3, along the top edge and at the top left corner',
    );
    expect(inPlaces(['1-1', '2-3', '4-5', '6-2', 'backing'], grid, 2)).toBe('in four blocks and the backing');
  });

  test('seams between blocks', () => {
    expect(betweenBlocks([['5-1', '5-2']], grid)).toBe('between the first and second blocks of row 5');
    expect(betweenBlocks([['5-4', '6-4']], grid)).toBe('between the fourth blocks of rows 5 and 6');
    expect(betweenBlocks([['5-1', '5-3']], grid)).toBeUndefined();
    expect(betweenBlocks([['5-1']], grid)).toBeUndefined();
  });

  test('numbers past twelve, and one row', () => {
    const wide: Grid = { rows: 1, blocks: 30, spelling: 'british' };
    expect(placesPhrase(['1-21', '1-23'], wide)).toBe('the 21st and 23rd blocks');
    expect(placesPhrase(['1-13'], wide)).toBe('the 13th block');
  });

  test('never throws, never repeats a phrase, says something for every place', () => {
    const place = fc.oneof(
      fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 5 })).map(([r, b]) => `${r}-${b}`),
      fc.constantFrom('quilt', 'backing', 'edge-top', 'border-left', 'corner-top-left', 'sashing'),
    );
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 40 }), (places) => {
        const said = placesPhrase(places, grid);
        expect(said).not.toMatch(/undefined|NaN|\s{2}|, ,| and $/);
        expect(said).not.toBe('');
        expect(placesPhrase([...places].reverse(), { ...grid, fabrics: {} }).length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});
