import { renderToString } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { PRINT_PALETTE } from '../../client/charts/palette.ts';
import { QuiltMap } from '../../client/charts/quilt-map.tsx';
import { placesOfForm } from '../../client/features/entries/state/entry-form.ts';
import { isLost, lostPlaces } from '../../client/features/quilt/state/lost-places.ts';
import { neighbour } from '../../client/features/quilt/view/quilt-page.tsx';
import { readPlaces } from '../../client/features/quilts/state/read-places.ts';
import { draftOfShape, readShape, type ShapeDraft } from '../../client/features/quilts/state/read-shape.ts';
import { onePlaceWords, placesWords } from '../../client/words/place-words.ts';
import { placesPhrase } from '../../core/record/wording/places-phrase.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import { LogBuilder } from '../log/log-builder.ts';

const MEDALLION: QuiltGrid = {
  rows: 5,
  blocks: 5,
  shape: { wide: { '2-2': { across: 3, down: 3 } } },
  placeNames: { medallion: ['2-2'], corners: ['1-1', '1-5', '5-1', '5-5'] },
};
const HEXAGONS: QuiltGrid = { rows: 3, blocks: 3, shape: { rowLengths: [2, 3, 2], outline: 'hexagon' } };

const draft = (changes: Partial<ShapeDraft>): ShapeDraft => ({
  rowLengths: '',
  shortRows: 'stretched',
  outline: 'square',
  wide: '',
  names: [],
  ...changes,
});

describe('a shape typed into its form', () => {
  it('comes back as it went in', () => {
    for (const grid of [MEDALLION, { ...HEXAGONS, placeNames: {} }])
      expect(readShape(draftOfShape(grid), grid)).toEqual({ grid });
  });

  it('is read with its names; the lengths of the rows say how many there are', () => {
    expect(
      readShape(
        draft({
          rowLengths: '4, 3, 4',
          shortRows: 'left',
          wide: '1-1 to 2-1',
          names: [{ id: 0, name: 'The Name Block', places: '3-4' }],
        }),
        { rows: 9, blocks: 9 },
      ),
    ).toEqual({
      grid: {
        rows: 3,
        blocks: 4,
        shape: { rowLengths: [4, 3, 4], shortRows: 'left', wide: { '1-1': { across: 1, down: 2 } } },
        placeNames: { 'name block': ['3-4'] },
      },
    });
  });

  it.each<[Partial<ShapeDraft>, string, RegExp]>([
    [{ rowLengths: '4, some' }, 'rowLengths', /“some” is no number of blocks/],
    [{ rowLengths: '4, 0' }, 'rowLengths', /“0” is no number/],
    [{ wide: 'the middle' }, 'wide', /2-2 to 4-4/],
    [{ wide: '4-4 to 2-2' }, 'wide', /ends before it begins/],
    [{ wide: '5-5 to 6-6' }, 'shape', /larger than the quilt/],
    [{ names: [{ id: 3, name: 'star', places: '' }] }, 'name-3', /which block star is/],
    [{ names: [{ id: 3, name: '', places: '1-1' }] }, 'name-3', /Give the place a name/],
    [{ names: [{ id: 3, name: 'star', places: '6-1' }] }, 'name-3', /no 6-1/],
  ])('%j is refused with a word', (changes, field, words) => {
    const read = readShape(draft(changes), { rows: 5, blocks: 5 });
    expect('faults' in read && (read.faults as Record<string, string>)[field]).toMatch(words);
  });
});

describe('places of a quilt that is no plain grid', () => {
  it('are typed by number or name', () => {
    expect(placesOfForm('the medallion, 1-2', MEDALLION)).toEqual(['1-2', '2-2']);
    expect(placesOfForm('3-3', MEDALLION)).toEqual(['2-2']);
    expect(readPlaces('2-*', HEXAGONS)).toEqual(['2-1', '2-2', '2-3']);
    expect(readPlaces('*-3', HEXAGONS)).toEqual(['2-3']);
    expect(readPlaces('1-3', HEXAGONS)).toMatchObject({
      fault: expect.stringContaining('2, 3 and 2 hexagons'),
    });
  });

  it('are said by name, by row and as all of them', () => {
    expect(placesWords(['2-2', '1-2'], MEDALLION)).toBe('the medallion and row 1, block 2');
    expect(placesWords(['1-1', '1-2'], HEXAGONS)).toBe('row 1');
    expect(placesWords(['1-1', '1-2', '2-1', '2-2', '2-3', '3-1', '3-2'], HEXAGONS)).toBe('every block');
    expect(onePlaceWords('2-2', 'british', MEDALLION)).toBe('the medallion (2-2)');
    const grid = { ...MEDALLION, spelling: 'british' as const };
    expect(placesPhrase(['2-2'], grid)).toBe('the medallion');
    expect(placesPhrase(['2-1', '2-2', '2-5', '1-1'], grid)).toBe(
      'all of row 2 and the first block of row 1',
    );
    expect(placesPhrase(['1-1', '1-5', '5-1', '5-5'], grid)).toBe('the corners');
  });

  it('are gone through by arrow key, from block to block as they lie', () => {
    expect(neighbour('2-2', 'ArrowUp', MEDALLION)).toBe('1-3');
    expect(neighbour('1-3', 'ArrowDown', MEDALLION)).toBe('2-2');
    expect(neighbour('3-5', 'ArrowLeft', MEDALLION)).toBe('2-2');
    expect(neighbour('1-2', 'End', HEXAGONS)).toBe('1-2');
    expect(neighbour('2-3', 'ArrowUp', HEXAGONS)).toBe('1-2');
    expect(neighbour('1-1', 'ArrowUp', { rows: 2, blocks: 2 })).toBeNull();
    expect(neighbour('edge-top', 'ArrowDown', MEDALLION)).toBe('1-1');
  });

  it('are drawn, each once, with its name and its span', () => {
    const svg = renderToString(
      <QuiltMap
        picture={{ grid: MEDALLION, places: new Map(), sides: {}, sashed: true }}
        moment="now"
        title="The quilt"
        palette={PRINT_PALETTE}
        current="1-1"
        onPick={() => undefined}
      />,
    );
    expect(svg.match(/data-place="\d+-\d+"/g)).toHaveLength(17);
    expect(svg).toContain('aria-label="the medallion, row 2, block 2: nothing noted"');
    expect(svg).toMatch(/aria-colspan="3" aria-rowspan="3"/);
    const hexagons = renderToString(
      <QuiltMap
        picture={{ grid: HEXAGONS, places: new Map(), sides: {}, sashed: false }}
        moment="now"
        title="The quilt"
      />,
    );
    expect(hexagons.match(/data-place="\d+-\d+"/g)).toHaveLength(7);
    expect(`${svg}${hexagons}`).not.toMatch(/NaN|undefined/);
  });
});

it('blocks that a changed grid no longer has are kept, listed and known as lost', () => {
  const { log } = new LogBuilder()
    .note('2026-03-14T09:00:00Z', { kind: 'condition', finding: 'tear', places: ['7-5', '2-3'] })
    .happen({
      type: 'quilt-changed',
      changes: { rows: 5, shape: { wide: { '2-2': { across: 2, down: 1 } } } },
    });
  expect(lostPlaces(log)).toEqual(['2-3', '7-5']);
  expect(isLost(log.quilt, '2-2')).toBe(false);
  expect(log.entries[0]?.entry).toMatchObject({ places: ['7-5', '2-3'] });
});
