import { expect, it } from 'vitest';
import { countPhrases, sayingsOf } from '../../server/speech/phrase-counts.ts';
import { TradePhrases } from '../../server/speech/trade-phrases.ts';

const vocabulary = 'Ġhow Ġwide Ġthe Ġborder Ġbarter Ġrow Ġthree Ġfree Ġ4 , 2 ĠBorder er'.split(' ');
const id = (token: string): number => vocabulary.indexOf(token);
const tokens = (line: string): string[] => line.split(' ').map((word) => `Ġ${word}`);
const phrases = new TradePhrases(
  countPhrases([
    tokens('how wide the border'),
    tokens('the border is thin'),
    tokens('row three'),
    tokens('row three'),
  ]),
  vocabulary,
);

/** Scores in nats: what is not named is out of hearing. */
function heard(scores: Record<string, number>): number[] {
  const logits = vocabulary.map(() => -20);
  for (const [token, score] of Object.entries(scores)) logits[id(token)] = score;
  return logits;
}
const choose = (said: string[], scores: Record<string, number>): string => {
  const logits = heard(scores);
  const best = logits.indexOf(Math.max(...logits));
  return vocabulary[phrases.choose(said.map(id), logits, best)]!;
};

it('takes the word that the notes go on with where the sound is torn', () => {
  expect(choose(['Ġhow', 'Ġwide', 'Ġthe'], { Ġbarter: 0, Ġborder: -1 })).toBe('Ġborder');
  expect(choose(['Ġhow', 'Ġwide', 'Ġthe'], { Ġbarter: 0, ĠBorder: -1 })).toBe('ĠBorder');
});

it('leaves a word that the sound is sure of', () => {
  expect(choose(['Ġhow', 'Ġwide', 'Ġthe'], { Ġbarter: 0, Ġborder: -3 })).toBe('Ġbarter');
});

it('never takes one number for another', () => {
  expect(choose(['Ġrow'], { Ġ4: 0, Ġthree: -0.1 })).toBe('Ġ4');
  expect(choose(['Ġrow'], { Ġfree: 0, Ġthree: -1 })).toBe('Ġthree');
});

it('leaves marks to the sound', () => {
  expect(choose(['Ġthe'], { ',': 0, Ġborder: -0.1 })).toBe(',');
  expect(choose(['Ġthe'], { Ġborder: 0, ',': -0.1 })).toBe('Ġborder');
});

it('looks past marks and the further figures of a number', () => {
  expect(sayingsOf(['ĠRow', 'Ġ4', ',', 'Ġ2', '5', '-', '3', 'Ġtorn'])).toEqual(['Ġrow', '#', '#', 'Ġtorn']);
});

it('counts three tokens at a time from the beginning of a note', () => {
  const { tokens: names, triples } = countPhrases([tokens('row three'), tokens('row five')]);
  expect(names).toEqual(['<', '#', 'Ġrow']);
  expect(triples).toEqual([0, 0, 2, 2, 0, 2, 1, 2]);
});

it('shares out among words what the sound gives them together, and leaves marks alone', () => {
  const next = [
    { id: id('Ġbarter'), logProb: Math.log(0.4) },
    { id: id('Ġborder'), logProb: Math.log(0.3) },
    { id: id(','), logProb: Math.log(0.2) },
  ];
  const [barter, border, comma] = phrases
    .weigh(['Ġhow', 'Ġwide', 'Ġthe'].map(id), next)
    .map((logProb) => Math.exp(logProb)) as [number, number, number];
  expect(border).toBeGreaterThan(barter);
  expect(border + barter).toBeCloseTo(0.7);
  expect(comma).toBeCloseTo(0.2);
});
