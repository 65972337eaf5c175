import { describe, expect, it } from 'vitest';
import { dropAsides } from '../../core/rules/drop-asides.ts';
import { indexFabrics } from '../../core/rules/fabrics/find-fabric.ts';
import { scan } from '../../core/rules/scan/scan.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { QUILT } from './bench-quilt.ts';

const kept = (text: string): string =>
  dropAsides(scan(tokenise(text), indexFabrics(QUILT), { grid: QUILT, focus: [], earlier: [] }).items)
    .map((x) => x.w)
    .join(' ');

describe('an aside between a subject and its verb falls out', () => {
  it.each([
    ['2-4, if I am seeing this right, is torn', '2 - 4 is torn'],
    ['the binding, which I had been itching to be rid of, is off', 'the binding is off'],
    ['and all of row two, now that I look at it, has faded', 'and all of row two has faded'],
    ['the ties, baler twine if you please, have snapped', 'the ties have snapped'],
  ])('%s', (said, rest) => {
    expect(kept(said)).toBe(rest);
  });
});

describe('what tells of the work stays', () => {
  it.each([
    '2-4 , which was torn , is patched now',
    '2-4 , as well as 2-5 , is torn',
    '2-4 is torn , i think , is it not',
    'the border , which took two hours , is on',
  ])('%s', (said) => {
    expect(kept(said).replaceAll(' - ', '-')).toBe(said);
  });
});
