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
    ['quarter passed two', 'quarter past two'],
    ['at half passed ate', 'at half past eight'],
    ['block four ate', 'block four eight'],
    ['ate balls of wool', 'eight balls of wool'],
    ['stopped at to thirty', 'stopped at two thirty'],
    ['the seem between 2-4 and 2-5 is open', 'the seam between 2-4 and 2-5 is open'],
    ["row's three, block four has a hole", 'row three , block four has a hole'],
    ["row's one, two and three are tied", 'rows one , two and three are tied'],
    ['tide rows four in five', 'tied rows four and five'],
    ['brows one and two are tied', 'rows one and two are tied'],
    ['the padding shifted in 2 to 5 and nowhere else', 'the batting shifted in 2-5 and nowhere else'],
    ['net laid over one to two', 'net laid over one-two'],
    ['2 to 4 2 to 5 2 to 6 patched', '2-4 2-5 2-6 patched'],
    ['1 to 2 is done', '1-2 is done'],
    ['but 2 packs needles 4.10', 'bought 2 packs needles 4.10'],
    ['binding worn top plus bottom', 'binding worn top + bottom'],
    ['the week one below', 'the weak one below'],
    ['finished by my ninth', 'finished by may ninth'],
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
  it.each([
    'they seem sound to me',
    'so I patched it',
    'waiting for the thread',
    'four yards for the back',
    'moths ate the wool',
    'the seam passed two tests',
    'two of them , but 3 to 4 are sound',
    'from 2 to 5 in the evening',
    'put in 2 to 3 hours',
    'the whole of row two in one week',
    'but two of them are torn',
    'a slash in 2 - 4',
  ])('%s', (said) => {
    expect(reread(said)).toBe(said.toLowerCase());
  });

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

describe('runs of words, and words by their sound', () => {
  const rereadIn = (said: string, fabrics: Record<string, string[]> = {}) =>
    putSlipsRight(tokenise(said), undefined, fabrics)
      .tokens.map((token) => token.w)
      .join(' ');

  it.each([
    ['Race stitch the loose edge', 're-stitched the loose edge'],
    ['it has a whole right through', 'it has a hole right through'],
    ['down the hole of the left hand column', 'down the whole of the left hand column'],
    ['the net soft and', "the net 's off and"],
    ['till over it or leave it', 'tulle over it or leave it'],
  ])('%s -> %s', (said, meant) => {
    expect(rereadIn(said)).toBe(meant);
  });

  it.each([
    ['blended stitch round it', 'blanket stitch round it'],
    ['the lader stitch', 'the ladder stitch'],
    ['the binding is frade', 'the binding is frayed'],
    ['row two is staned', 'row two is stained'],
    ['a scrap of crap line', 'a scrap of crepeline'],
    ['the seam close by hand', 'the seam closed by hand'],
    [
      'out of the top three rows, in row two half of them were gone',
      'out of the top three rows . in row two half of them were gone',
    ],
    ['Still open, whether I tie it', 'still open : whether i tie it'],
  ])('%s -> %s', (said, meant) => {
    expect(rereadIn(said)).toBe(meant);
  });

  it("this quilt's fabrics, beside a word of the name or before what only cloth has", () => {
    const fabrics = { 'navy foulard': ['1-1'], seersucker: ['2-2'] };
    expect(rereadIn('patched the navy fullard with it', fabrics)).toBe('patched the navy foulard with it');
    expect(rereadIn('all the searsucker blocks are faded', fabrics)).toBe(
      'all the seersucker blocks are faded',
    );
    expect(rereadIn('a fullard moon', fabrics)).toBe('a fullard moon');
    expect(rereadIn('patched the navy fullard with it')).toBe('patched the navy fullard with it');
  });

  it('a unit between a number and "of"', () => {
    expect(rereadIn('got three artis of calico')).toBe('got three yards of calico');
    expect(rereadIn('use half a yard of calico')).toBe('used half a yard of calico');
  });

  it.each([
    'that little stitch is sound',
    'every broken stitch in row two',
    'it is turned under along the edge',
    'the block is washed and dried',
    'she was afforded a day',
    'the edge is reached',
    'a full minute',
    'three kinds of thread',
    'three lots of calico',
    'patched in row two, in row three, half of it by hand',
  ])('sounds alike but makes sense: %s', (said) => {
    expect(putSlipsRight(tokenise(said), undefined, { 'navy dot': ['1-1'] }).slips).toEqual([]);
  });
});

describe('words typed in haste are put right where they are no words themselves', () => {
  it.each([
    [
      'stoped cutting at 7 adn pached 3-3 wiht teh indigo',
      'stopped cutting at 7 and patched 3 - 3 with the indigo',
    ],
    ['blcok 3-2 is frayd along the botom egde', 'block 3 - 2 is frayed along the bottom edge'],
    ['need 3 skiens of tie yarn tommorow', 'need 3 skeins of tie yarn tomorrow'],
    ['with a 15 min brake', 'with a 15 min break'],
  ])('%s -> %s', (typed, meant) => {
    expect(reread(typed)).toBe(meant);
  });
  it.each([
    'though three of them stated it',
    'the skin form was ripping',
    'taking the power tails out',
    'took a saving stand',
  ])('everyday words one letter off stay: %s', (said) => {
    expect(reread(said)).toBe(said);
  });
  it('a word of a fabric name stays', () => {
    expect(putSlipsRight(tokenise('the geen is torn'), undefined, { 'geen stripe': ['1-1'] }).slips).toEqual(
      [],
    );
  });
});

describe('an ending that was not heard', () => {
  const spoken = (text: string): string =>
    putSlipsRight(tokenise(text), undefined, undefined, true)
      .tokens.map((t) => t.w)
      .join(' ');

  it.each([
    ['brush the dust off the top border', 'brushed the dust off the top border'],
    ['patch 2-3 and press the top', 'patched 2 - 3 and pressed the top'],
    ['washed it , trim the edge', 'washed it , trimmed the edge'],
    ['okay piece that strip out to length', 'okay pieced that strip out to length'],
  ])('%s -> %s', (heard, meant) => {
    expect(spoken(heard)).toBe(meant);
  });

  it.each([
    'patch 2-3 tomorrow',
    'must wash it and press the top',
    'patch is loose in 2-3',
    'press the top before the border goes on',
    'should i patch 2-3 ?',
    'the patch in 2-3',
  ])('%s stays as it is', (said) => {
    expect(spoken(said).replaceAll(' - ', '-')).toBe(said);
  });

  it('is none where a note was typed', () => {
    expect(reread('patch 2-3')).toBe('patch 2 - 3');
  });
});

it.each([
  ['patched w slash wool', 'patched with wool'],
  ['blanket street round it', 'blanket stitch round it'],
  ['the quilt came from a street in town', 'the quilt came from a street in town'],
])('signs and short forms read aloud: %s', (heard, meant) => {
  expect(reread(heard)).toBe(meant);
});
