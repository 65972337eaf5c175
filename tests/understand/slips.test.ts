import { describe, expect, it } from 'vitest';
import { putSlipsRight } from '../../core/rules/slips/put-right.ts';
import { tokenise } from '../../core/text/tokenise.ts';
import { conditionsSaid, placesSaid, treatmentsSaid } from './bench-quilt.ts';

const reread = (text: string, taught?: Record<string, string>): string =>
  putSlipsRight(tokenise(text), taught)
    .tokens.map((t) => t.w)
    .join(' ');

describe('slips of the ear are put right where the words as heard make no sense', () => {
  it.each([
    ['took the batten out', 'took the batting out'],
    ['the bedding has gone lumpy', 'the batting has gone lumpy'],
    ['the biding is frayed', 'the binding is frayed'],
    ['sowed it up by hand', 'sewed it up by hand'],
    ['the seem between 2-4 and 2-5 is open', 'the seam between 2-4 and 2-5 is open'],
  ])('%s -> %s', (heard, meant) => {
    expect(reread(heard).replaceAll(' - ', '-')).toBe(meant);
  });

  it('keeps what was heard beside what was read', () => {
    const { slips } = putSlipsRight(tokenise('the biding is frayed'), undefined);
    expect(slips).toEqual([{ heard: 'biding', read: 'binding', from: 4, to: 10, rule: 'slip.ear' }]);
  });

  it('takes the words that this user has taught first', () => {
    expect(reread('the waiting room cloth', { 'waiting room': 'wadding' })).toBe('the wadding cloth');
  });
});

describe('words that make sense stay as they are', () => {
  it.each(['they seem sound to me', 'so I patched it', 'waiting for the thread', 'four yards for the back'])(
    '%s',
    (said) => {
      expect(reread(said)).toBe(said.toLowerCase());
    },
  );

  it.each(['3-2', '12', '4.5', 'twenty', 'row three block two'])('a number is never touched: %s', (said) => {
    expect(putSlipsRight(tokenise(said), undefined).slips).toEqual([]);
  });
});

describe('a note with slips is understood as if it had been heard right', () => {
  it('rows and blocks', () => {
    expect(placesSaid('road three block too is stained')).toEqual(['3-2']);
    expect(placesSaid('rose one and two are stained')).toHaveLength(12);
  });
  it('parts and stitches', () => {
    expect(treatmentsSaid('lifted the batten out')).toEqual(['remove done batting batting']);
    expect(conditionsSaid('the biding is frayed')).toEqual(['fraying binding']);
  });
});
