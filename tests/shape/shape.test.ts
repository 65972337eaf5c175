import { describe, expect, it } from 'vitest';
import { blocksBeside } from '../../core/shape/blocks-beside.ts';
import { faultOfShape } from '../../core/shape/fault-of-shape.ts';
import { layOutBlocks } from '../../core/shape/lay-out-blocks.ts';
import { shapeOf } from '../../core/shape/shape-of.ts';
import { shapeWords } from '../../core/shape/shape-words.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';

const MEDALLION: QuiltGrid = {
  rows: 5,
  blocks: 5,
  shape: { wide: { '2-2': { across: 3, down: 3 } } },
  placeNames: { medallion: ['2-2'] },
};
const RAGGED: QuiltGrid = { rows: 3, blocks: 4, shape: { rowLengths: [4, 3, 4] } };
const HEXAGONS: QuiltGrid = {
  rows: 5,
  blocks: 5,
  shape: { rowLengths: [3, 4, 5, 4, 3], outline: 'hexagon' },
};

/** Area by the shoelace formula (Gauss), in fractions of the whole. */
const areaOf = (outline: [number, number][]): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) / 2,
  );

describe('a top that is no plain grid', () => {
  it('has the blocks that lie in it', () => {
    expect(shapeOf(MEDALLION).blocks).toHaveLength(17);
    expect(shapeOf(MEDALLION).at(3, 4)).toBe('2-2');
    expect(shapeOf(MEDALLION).row(3)).toEqual(['3-1', '2-2', '3-5']);
    expect(shapeOf(MEDALLION).column(3)).toEqual(['1-3', '2-2', '5-3']);
    expect(shapeOf(RAGGED).row(2)).toEqual(['2-1', '2-2', '2-3']);
    expect(shapeOf(RAGGED).at(2, 4)).toBeUndefined();
    expect(shapeOf(RAGGED).at(4, 1)).toBeUndefined();
    expect(shapeOf({ rows: 2, blocks: 2 }).blocks).toEqual(['1-1', '1-2', '2-1', '2-2']);
  });

  it('is covered by squares without a gap', () => {
    for (const grid of [MEDALLION, RAGGED, { rows: 7, blocks: 6 }]) {
      const sum = layOutBlocks(grid).blocks.reduce((all, block) => all + areaOf(block.outline), 0);
      expect(sum).toBeCloseTo(1, 9);
    }
  });

  it('lays hexagons of equal sides into the notches of the row above', () => {
    const { blocks, ratio } = layOutBlocks(HEXAGONS);
    // A regular hexagon one wide has the area √3/2 (from memory).
    for (const { outline } of blocks) {
      expect(areaOf(outline) * 5 * (5 / ratio)).toBeCloseTo(Math.sqrt(3) / 2, 9);
    }
    const of = (place: string) => blocks.find((block) => block.place === place)!.box;
    expect(of('2-1').left).toBeCloseTo(of('1-1').left - 0.5 / 5, 9);
    expect(of('3-1').left).toBe(0);
    // Rows of one length lie half a block aside, and back again.
    const even = layOutBlocks({ rows: 3, blocks: 4, shape: { outline: 'hexagon' } }).blocks;
    expect(even.filter((block) => block.block === 1).map((block) => block.box.left * 4.5)).toEqual([
      0, 0.5, 0,
    ]);
  });

  it('knows what lies beside a block', () => {
    expect(blocksBeside(MEDALLION, '2-2', 'above')).toEqual(['1-2', '1-3', '1-4']);
    expect(blocksBeside(MEDALLION, '3-5', 'left')).toEqual(['2-2']);
    expect(blocksBeside(HEXAGONS, '3-3', 'above')).toEqual(['2-2', '2-3']);
    expect(blocksBeside(HEXAGONS, '3-3', 'right')).toEqual(['3-4']);
    expect(blocksBeside(HEXAGONS, '3-5', 'right')).toEqual([]);
  });

  it('says in words what cannot be laid out', () => {
    expect(faultOfShape(MEDALLION)).toBeUndefined();
    expect(faultOfShape({ ...MEDALLION, rows: 3 })?.message).toMatch(/larger than the quilt/);
    expect(faultOfShape({ ...RAGGED, rows: 2 })?.message).toMatch(/3 rows and the quilt has 2/);
    expect(faultOfShape({ ...RAGGED, blocks: 3 })?.message).toMatch(/Row 1 has 4 blocks/);
    expect(
      faultOfShape({
        ...MEDALLION,
        shape: { wide: { '1-1': { across: 2, down: 2 }, '2-2': { across: 2, down: 2 } } },
      })?.message,
    ).toMatch(/both take 2-2/);
    expect(
      faultOfShape({ ...RAGGED, shape: { ...RAGGED.shape, wide: { '1-1': { across: 1, down: 2 } } } })
        ?.message,
    ).toMatch(/rows that are not alike/);
    expect(faultOfShape({ rows: 2, blocks: 2, placeNames: { star: ['3-1'] } })).toMatchObject({
      field: 'placeNames',
    });
  });

  it('is told in words', () => {
    expect(shapeWords({ rows: 7, blocks: 6 })).toBe('7 rows of 6 blocks');
    expect(shapeWords(RAGGED)).toBe('3 rows, of 4, 3 and 4 blocks');
    expect(shapeWords(HEXAGONS)).toBe('5 rows, of 3, 4, 5, 4 and 3 hexagons');
    expect(shapeWords(MEDALLION)).toBe('5 rows of 5 blocks, one of them larger than one place');
  });
});
