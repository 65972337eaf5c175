import { estimateWork } from '../../core/estimate/work.ts';
import { Working } from '../../core/estimate/working.ts';
import { simulateMaker } from './simulated-makers.ts';

export interface Calibration {
  /** Share of makers whose true remaining minutes lay in the 80 % range. */
  held: number;
  /** The same for each action by itself. */
  heldByAction: number;
  /** Mean of log(high / low) for the remaining work. */
  width: number;
}

/** How often the range of the work left holds the truth, after `logged` entries. */
export const calibratePace = (makers: number, logged: number, from = 0): Calibration => {
  let held = 0;
  let heldByAction = 0;
  let actions = 0;
  let width = 0;
  for (let seed = 1 + from; seed <= makers + from; seed++) {
    const maker = simulateMaker(seed);
    const log = maker.log.slice(0, logged).map(({ action, count, minutes }) => ({ action, count, minutes }));
    const truth = new Map<string, number>();
    for (const { action, trueMinutes } of maker.log.slice(logged))
      truth.set(action, (truth.get(action) ?? 0) + trueMinutes);
    const answer = estimateWork({ planned: maker.planned, log }, new Working('work', 'in'));
    const whole = [...truth.values()].reduce((sum, minutes) => sum + minutes, 0);
    if (whole >= answer.left.low && whole <= answer.left.high) held += 1;
    width += Math.log(answer.left.high / answer.left.low);
    for (const { action, remaining } of answer.actions) {
      const minutes = truth.get(action);
      if (minutes === undefined) continue;
      actions += 1;
      if (minutes >= remaining.low && minutes <= remaining.high) heldByAction += 1;
    }
  }
  return { held: held / makers, heldByAction: heldByAction / actions, width: width / makers };
};
