import { expect, test } from 'vitest';
import { killRounds } from './kill-rounds.ts';
import { powerCuts } from './power-cuts.ts';

/** The short form of the trials; `npm run trial:…` runs the long ones. */
test('killed without warning under load, three times: nothing acknowledged is lost', async () => {
  const report = await killRounds(3);
  expect(report.lost).toEqual([]);
  expect(report.acknowledged).toBeGreaterThan(10);
}, 120_000);

test('the power cut after every call to the disk, unsynced writes dropped, kept or torn', async () => {
  let state = 7;
  const random = (): number => {
    // A small generator with a fixed start (Park and Miller, 1988), so that a failure can be had again.
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const report = await powerCuts(4, random);
  expect(report.lost).toEqual([]);
  expect(report.cuts).toBeGreaterThan(500);
}, 120_000);
