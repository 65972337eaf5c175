import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

const told = (notes: string[]): string[] =>
  say(notes).entries.flatMap(({ entry: e }) =>
    e.kind === 'treatment' ? [`${e.action} ${e.places?.join(' ') ?? ''}`.trim()] : [],
  );

describe('what is put behind or over is where the talk last was', () => {
  it.each([
    ['put a bit of fusible behind', ['stabilize 4-4']],
    ['laid net over', ['overlay 4-4']],
    ['closed it and put muslin behind', ['resew 4-4', 'stabilize 4-4']],
    ['closed that and put muslin behind it', ['resew 4-4', 'stabilize 4-4']],
    ['stitched it down over a scrap of muslin put in behind', ['stabilize 4-4']],
  ])('%s', (note, wanted) => {
    expect(told(['4-4 has a tear', note])).toEqual(wanted);
  });

  it('asks where nothing was spoken of', () => {
    expect(say('put a bit of fusible behind').ask?.slot).toBe('place');
  });
});

describe('what is said last of a place wins', () => {
  it.each([
    ["2-2 i'll patch no actually i'm leaving it"],
    ["2-2 needs net, no hang on, i'm not touching that one"],
    ['im gonna soak 2-2 no wait im not gonna touch it'],
  ])('%s', (note) => {
    expect(told([note])).toEqual(['leave 2-2']);
  });

  it('keeps what is planned for another place', () => {
    expect(told(["2-2 i'll patch, no question, and 3-3 i'm leaving"])).toEqual(['patch 2-2', 'leave 3-3']);
  });
});

describe('trimming all round is of the quilt', () => {
  it.each([['trimmed a bit off all round'], ['trimmed 1/4" off all sides'], ['trimmed and squared it up']])(
    '%s',
    (note) => {
      const reading = say(['2-2 has a hole', note]);
      expect(reading.ask).toBeNull();
      expect(told(['2-2 has a hole', note])).toContain('trim quilt');
    },
  );

  it('leaves a part that is named', () => {
    expect(told(['trimmed the batting all round'])).toEqual(['trim batting']);
  });
});

it.each([
  ['gonna stop there its quarter to twelve', true],
  ["i'll stop there, ten to nine", true],
  ["i'll stop at five", false],
  ['enough for today, ten past nine', true],
  ["i'm going to stop the fraying there", false],
])('%s: a stop %s', (note, stops) => {
  expect(say(note).entries.some(({ entry: e }) => e.kind === 'work' && e.mark === 'stop')).toBe(stops);
});

it.each([
  ['3-3 the silk is brittle and splitting everywhere', 'thin shattered'],
  ['the seam in 2-3 is splitting', 'split-seam'],
  ['bottom binding is through to the batting', 'fraying'],
  ['the needle went through to the backing', ''],
])('%s', (note, findings) => {
  expect(
    say(note)
      .entries.flatMap(({ entry: e }) => (e.kind === 'condition' ? [e.finding] : []))
      .join(' '),
  ).toBe(findings);
});
