import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RECOGNISER_MODEL } from '../../shared/recogniser-model.ts';
import { MODELS } from '../speech/support/places.ts';
import { cutJournals } from './cut-journals.ts';
import { compressedDay } from './day.ts';
import { fuzz } from './fuzz.ts';
import { killRounds } from './kill-rounds.ts';
import { killWhileSpeaking } from './kill-while-speaking.ts';
import { powerCuts } from './power-cuts.ts';

/** A small generator with a fixed start (Park and Miller, 1988), so that a failure can be had again. */
function randomFrom(state: number): () => number {
  let now = state;
  return () => {
    now = (now * 48_271) % 2_147_483_647;
    return now / 2_147_483_647;
  };
}

/** The short form of the trials; `npm run trial:…` runs the long ones. */
test('killed without warning under load, three times: nothing acknowledged is lost', async () => {
  const report = await killRounds(3);
  expect(report.lost).toEqual([]);
  expect(report.acknowledged).toBeGreaterThan(10);
}, 120_000);

test.skipIf(!existsSync(`${MODELS}/${RECOGNISER_MODEL}`))(
  'killed twice while somebody speaks: all that was said safe is on the disk, and in the end in the log, once',
  async () => {
    const report = await killWhileSpeaking(2);
    expect(report.lost).toEqual([]);
    expect(report.twice).toEqual([]);
    expect(report.utterances).toBeGreaterThan(3);
  },
  400_000,
);

test('the power cut after every call to the disk, unsynced writes dropped, kept or torn', async () => {
  const report = await powerCuts(4, randomFrom(7));
  expect(report.lost).toEqual([]);
  expect(report.cuts).toBeGreaterThan(500);
}, 120_000);

test('the open segment cut at every length, bits turned over in any file: nothing wrong is served', async () => {
  const report = await cutJournals(200, randomFrom(11));
  expect(report.wrong).toEqual([]);
  expect(report.segments).toBeGreaterThan(3);
}, 120_000);

// Descriptors and processes are counted in /proc, which Linux has.
test.skipIf(process.platform !== 'linux' || !existsSync(`${MODELS}/${RECOGNISER_MODEL}`))(
  'a small day: after it no descriptor, timer, process or file is left, and all of it is in the log',
  async () => {
    const report = await compressedDay({ notes: 120, utterances: 6, uploads: 3 });
    expect(report.wrong).toEqual([]);
    expect(report.heardWithWords).toBeGreaterThan(2);
  },
  400_000,
);

test('notes, messages, recordings and archives that nobody would send: no crash, no hang, nothing taken wrongly', async () => {
  expect(await fuzz({ notes: 500, messages: 300, sounds: 100, archives: 100 }, 20_260_314)).toEqual([]);
}, 300_000);
