import { describe, expect, it } from 'vitest';
import { entriesOf } from './say.ts';

const lengths = (notes: string | string[]) => entriesOf('measurement', notes);
const of = (name: string, value: number, unit: string) => ({ of: name, value, unit });

describe('measurements', () => {
  it.each([
    [
      'The top measures seventy two inches by eighty eight and a half. Seam allowances are three eighths. Blocks twelve and a half.',
      [of('width', 72, 'in'), of('length', 88.5, 'in'), of('seam', 0.375, 'in'), of('block', 12.5, 'in')],
    ],
    [
      "it's a hundred and eighty four centimetres across by two hundred and ten on the table",
      [of('width', 184, 'cm'), of('length', 210, 'cm')],
    ],
    [
      'hundred and sixty eight centimetres by two hundred and one',
      [of('width', 168, 'cm'), of('length', 201, 'cm')],
    ],
    [
      '58 by 81 inches, ninety-nine and three quarters corner to corner, with ten-inch blocks and a border of three',
      [
        of('width', 58, 'in'),
        of('length', 81, 'in'),
        of('diagonal', 99.75, 'in'),
        of('block', 10, 'in'),
        of('border', 3, 'in'),
      ],
    ],
    ['borders cut at five inches, quarter inch seams', [of('strip', 5, 'in'), of('seam', 0.25, 'in')]],
    ['binding cut and joined, 2 in wide', [of('strip', 2, 'in')]],
    ['cut two yards of it for the border', []],
    ['cut the label three inches square', []],
    ['left three inches of backing all round', [of('overhang', 3, 'in')]],
    ['layered it, and the overhang comes to uh inches all round', [{ of: 'overhang', unit: 'in' }]],
    ['seams on this old thing are three eighths of an inch', [of('seam', 0.375, 'in')]],
    ['seam allowance a mean eighth of an inch', [of('seam', 0.125, 'in')]],
    ['the seams in row two are three inches open', []],
    [
      "trimmed two cm off the bottom and it's 143 by 190 cm",
      [of('width', 143, 'cm'), of('length', 190, 'cm')],
    ],
    ['measures 150 across and 180 down, cm', [of('length', 180, 'cm'), of('width', 150, 'cm')]],
    ["there's four inches of overhang all around", [of('overhang', 4, 'in')]],
    [
      'sides: 60 top, 72 right, 61 bottom and 71 and a half left, inches',
      [
        of('side-top', 60, 'in'),
        of('side-right', 72, 'in'),
        of('side-bottom', 61, 'in'),
        of('side-left', 71.5, 'in'),
      ],
    ],
    ["i've cut the strips for the binding at um oh what was it inches", [{ of: 'strip', unit: 'in' }]],
    ['new border? maybe', []],
    // a gap left for the number
    [
      '89 x 112 cm, border __ cm',
      [of('width', 89, 'cm'), of('length', 112, 'cm'), { of: 'border', unit: 'cm' }],
    ],
    ['width ?? cm, length 190 cm', [of('length', 190, 'cm'), { of: 'width', unit: 'cm' }]],
    ['width 5 foot 4, length 6 ft 10 1/2', [of('width', 64, 'in'), of('length', 82.5, 'in')]],
    [
      'top side 140, btm 141.5, left 160, right 159 cm',
      [
        of('side-top', 140, 'cm'),
        of('side-bottom', 141.5, 'cm'),
        of('side-left', 160, 'cm'),
        of('side-right', 159, 'cm'),
      ],
    ],
    [
      'L side 212, R 214, top 180, bottom 181, all cm',
      [
        of('side-left', 212, 'cm'),
        of('side-right', 214, 'cm'),
        of('side-top', 180, 'cm'),
        of('side-bottom', 181, 'cm'),
      ],
    ],
    [
      'tied every 6 inches with crochet cotton, inch and a quarter tails',
      [of('tie-spacing', 6, 'in'), of('tail', 1.25, 'in')],
    ],
    ['overhang three inches on all sides', [of('overhang', 3, 'in')]],
    ['cut the strips at 65 mm with an 8 mm seam', [of('strip', 65, 'mm'), of('seam', 8, 'mm')]],
    [
      'a hundred and forty centimetres across, a hundred and ninety down',
      [of('width', 140, 'cm'), of('length', 190, 'cm')],
    ],
    [
      'corner to corner 98 3/4 in one way and 99 1/8 the other',
      [of('diagonal', 98.75, 'in'), of('diagonal', 99.125, 'in')],
    ],
    ['the border is 18 cm wide', [of('border', 18, 'cm')]],
    [
      'w 71 in, l 6 ft 8, blocks 11 1/2 in, border 2 in',
      [of('width', 71, 'in'), of('length', 80, 'in'), of('block', 11.5, 'in'), of('border', 2, 'in')],
    ],
    [
      'top 1.62 m, bottom 1.6, left 2.05, right 2.04',
      [
        of('side-top', 1.62, 'm'),
        of('side-bottom', 1.6, 'm'),
        of('side-left', 2.05, 'm'),
        of('side-right', 2.04, 'm'),
      ],
    ],
    [
      "the left side's eighty inches and the right's seventy nine",
      [of('side-left', 80, 'in'), of('side-right', 79, 'in')],
    ],
    [
      'It comes to 75 centimetres by 110, and the blocks are eighteen square',
      [of('width', 75, 'cm'), of('length', 110, 'cm'), of('block', 18, 'cm')],
    ],
    ['quilt 72" x 84", block 12"', [of('width', 72, 'in'), of('length', 84, 'in'), of('block', 12, 'in')]],
    ['left four inches of backing over all the way round', [of('overhang', 4, 'in')]],
    ['the sashing strips are two inches', [of('strip', 2, 'in')]],
    ['cut six strips from the indigo, two and a half inches', [of('strip', 2.5, 'in')]],
    ['it measures sixty two by seventy four inches', [of('width', 62, 'in'), of('length', 74, 'in')]],
    ['w 1480 mm x 1920 mm', [of('width', 1480, 'mm'), of('length', 1920, 'mm')]],
  ])('%s', (said, expected) => expect([...lengths(said)].sort(byName)).toEqual([...expected].sort(byName)));
  it('is a treatment too where the verb is said', () => {
    expect(entriesOf('treatment', 'measured it, 60 by 75 inches')).toEqual([
      { action: 'measure', state: 'done' },
    ]);
    expect(entriesOf('treatment', '60 by 75 inches')).toEqual([]);
    expect(entriesOf('treatment', 'it measures 60 by 75 inches')).toEqual([]);
    expect(entriesOf('treatment', 'each block measures 9 inches')).toEqual([]);
  });
  it.each([
    'ten down and eight across',
    'a tear two inches long in 3-2',
    'the stain in 4-4 is 6 cm wide',
    'trimmed 15 mm off the right edge',
    'the block diagonally below is torn',
    'need 2 m of net',
    'blocks 3-1 and 3-2 are sound',
  ])('no measurement of the quilt: %s', (said) => expect(lengths(said)).toEqual([]));
});

function byName(a: Record<string, unknown>, b: Record<string, unknown>): number {
  return `${a['of']}${a['value']}`.localeCompare(`${b['of']}${b['value']}`);
}
