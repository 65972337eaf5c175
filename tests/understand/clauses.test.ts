import { describe, expect, it } from 'vitest';
import { cutClauses } from '../../core/rules/clause/cut-clauses.ts';
import { indexFabrics } from '../../core/rules/fabrics/find-fabric.ts';
import { scan } from '../../core/rules/scan/scan.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { QUILT } from './bench-quilt.ts';

/** The clauses of a note, each as its words. */
const cut = (text: string): string[] =>
  cutClauses(scan(tokenise(text), indexFabrics(QUILT), { grid: QUILT, focus: [], earlier: [] }).items).map(
    (c) => c.items.map((x) => x.w.replaceAll(' - ', '-')).join(' '),
  );

describe('speech that runs on is cut before each new statement', () => {
  it.each([
    ['2-4 is torn 2-5 is stained', ['2-4 is torn', '2-5 is stained']],
    [
      'took the tacking out of row two the batting is lumpy',
      ['took the tacking out of row two', 'the batting is lumpy'],
    ],
    ['the tear in 2-4 is darned now', ['the tear in 2-4 is darned now']],
    [
      'moth along the top border and in row two block three the silk is torn',
      ['moth along the top border', 'in row two block three the silk is torn'],
    ],
    ['there is mildew in 3-2 and in 4-4 a tear', ['there is mildew in 3-2', 'in 4-4 a tear']],
    ['pressed row one, row two wants doing', ['pressed row one', 'row two wants doing']],
    ['patched 2-4 and darned 2-5', ['patched 2-4', 'darned 2-5']],
  ])('%s', (said, clauses) => {
    expect(cut(said)).toEqual(clauses);
  });
});

describe('what belongs together is not cut', () => {
  it.each([
    'holes in 2-2 and in 3-3 and in row five',
    'the seam between row one and row two is open',
    'took the old patch off 2-4',
    'the ties are out of the last three rows',
    'ripped the stitching out between 2-1 and 3-1',
    'the seam is whipped closed by hand',
    '2-4 has gone ever so thin',
    'black spots of mould on the back',
    'leaving 2-4 just the way it is',
  ])('%s', (said) => {
    expect(cut(said)).toHaveLength(1);
  });
});

describe('questions', () => {
  it('ask of their own part only, where the rest is told', () => {
    const clauses = cutClauses(
      scan(tokenise("I'm leaving 2-4 be, because why would you mend it?"), indexFabrics(QUILT), {
        grid: QUILT,
        focus: [],
        earlier: [],
      }).items,
    );
    expect(clauses.map((c) => c.asked)).toEqual([false, true]);
  });
});
