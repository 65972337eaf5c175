import { seededSequence } from '../../core/estimate/cutting/seeded-sequence.ts';
import { PACE_SHEET } from '../../core/estimate/pace-sheet.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';

type Work = NonNullable<EstimateSpec['work']>;

export interface Maker {
  planned: Work['planned'];
  /** Entries in order; each also carries its true minutes, which the maker may have left out. */
  log: { action: string; count: number; minutes?: number; trueMinutes: number }[];
}

const ACTIONS = ['replace', 'patch', 'stabilize', 'resew', 'darn', 'tie', 'clean', 'press'];

/**
 * A maker with a pace of her own: quicker or slower on the whole and in each action, with good and bad
 * sittings and pieces, growing quicker as she goes, and forgetting to note some of her times. None of the
 * figures are the model's own: spreads, learning and gaps are drawn for each maker from wide ranges.
 */
export const simulateMaker = (seed: number): Maker => {
  const draw = seededSequence(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
  const between = (low: number, high: number): number => low + (high - low) * draw();
  const overall = normal() * 0.4;
  const own = new Map(ACTIONS.map((action) => [action, normal() * between(0.2, 0.5)]));
  const pieceNoise = between(0.2, 0.6);
  const sittingNoise = between(0.1, 0.3);
  const learning = between(0, 0.1);
  const missing = between(0, 0.4);
  const chosen = ACTIONS.filter(() => draw() < 0.7);
  const actions = chosen.length > 1 ? chosen : ACTIONS.slice(0, 3);
  const log: Maker['log'] = [];
  const done = new Map<string, number>();
  for (let i = 0; i < 90; i++) {
    const action = actions[Math.floor(draw() * actions.length)]!;
    const count =
      action === 'tie'
        ? 6 + Math.floor(draw() * 12)
        : action === 'press'
          ? 1 + Math.floor(draw() * 6)
          : 1 + Math.floor(draw() * 3);
    const sitting = normal() * sittingNoise;
    let trueMinutes = 0;
    for (let n = 0; n < count; n++) {
      const before = done.get(action) ?? 0;
      done.set(action, before + 1);
      const pieces = action === 'tie' ? before / 12 : before;
      trueMinutes +=
        PACE_SHEET[action]!.minutes *
        Math.exp(
          overall + own.get(action)! - learning * Math.log1p(pieces) + sitting + normal() * pieceNoise,
        );
    }
    log.push({
      action,
      count,
      trueMinutes,
      ...(draw() < missing ? {} : { minutes: Math.max(1, Math.round(trueMinutes)) }),
    });
  }
  const planned = actions
    .filter((action) => done.has(action))
    .map((action) => ({ action, count: done.get(action)! }));
  return { planned, log };
};
