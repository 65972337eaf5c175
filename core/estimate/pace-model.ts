import type { Estimated } from '../../shared/estimate-answer.ts';

/**
 * Pace as a conjugate log-normal model with partial pooling.
 *
 * The log of the minutes for one of a kind (an action, or an action on one kind of damage) is
 *   starting guess + the maker's own pace (shared by all kinds) + the action's own + the damage's own
 *   - learning x the log of how many were done before,
 * each normal. What is logged is that plus a sitting's and each piece's own luck. All of it
 * is Gaussian, so the posterior is exact; only the size of the luck is unknown and is taken over a short
 * grid, each weighed by how well it foretold the log. Sums are matched by their exact mean and variance.
 */
export interface Kind {
  action: string;
  damage?: string | undefined;
  /** Log of the starting guess. */
  logGuess: number;
}

/** One logged time: `count` of kind `kind` in `minutes`, when `before` of the kind were done; `ago` entries came after it. */
export interface Timed {
  kind: number;
  minutes: number;
  count: number;
  before: number;
  ago: number;
  /** Extra variance of the log, where the time was shared out. */
  extra: number;
}

/** Spread of the log of pace: of makers, of an action within a maker, of a kind of damage within an action. */
const MAKER = 0.4 ** 2;
const ACTION = 0.35 ** 2;
const DAMAGE = 0.25 ** 2;
/** Luck of a sitting and of one piece, before they are scaled by the grid. */
const SITTING = 0.2 ** 2;
const PIECE = 0.4 ** 2;
/** Pace drifts in ways that the model does not know: an entry counts less for each one that came after it. */
const DRIFT = 0.0005;
/** Learning: by how much the log of the minutes falls as the log of the number done grows. */
const LEARNING = { mean: 0.05, variance: 0.04 ** 2 };
/** The starting guess is meant for about the tenth of a kind. */
const PRACTISED = Math.log1p(10);
const LUCK = [
  { scale: 0.4, weight: 1 },
  { scale: 0.65, weight: 2 },
  { scale: 1, weight: 3 },
  { scale: 1.5, weight: 2 },
  { scale: 2.2, weight: 1 },
] as const;

interface Posterior {
  weight: number;
  mean: number[];
  covariance: number[][];
  sitting: number;
  piece: number;
}

/** How many of a kind are to be done, after how many, and how many of them in one sitting. */
export interface Batch {
  count: number;
  before: number;
  sitting: number;
}

export interface PaceModel {
  /** Minutes for a batch of each kind in turn, together. */
  foretell(batches: readonly Batch[]): Estimated;
  /** Median minutes for one of a kind. */
  median(kind: number): number;
}

/** How far from practised a maker is in the middle of a batch, on the scale of learning. */
const practiceAt = (before: number, count: number): number => Math.log1p(before + count / 2) - PRACTISED;

/** Where no kind of damage is told there is none whose own pace could differ. */
const ownOfDamage = (a: Kind, b: Kind): number =>
  a.damage !== undefined && a.damage === b.damage ? DAMAGE : 0;

/** Kinds first, learning last. */
const covarianceOf = (kinds: readonly Kind[]): number[][] => [
  ...kinds.map((a) => [
    ...kinds.map((b) => MAKER + (a.action === b.action ? ACTION + ownOfDamage(a, b) : 0)),
    0,
  ]),
  [...kinds.map(() => 0), LEARNING.variance],
];

/** Sum of n log-normal lots of log-variance `piece` around one pace: shift and variance of the log of its mean. */
const lot = (piece: number, count: number): { shift: number; variance: number } => {
  const variance = Math.log1p(Math.expm1(piece) / Math.max(count, 1e-9));
  return { shift: (piece - variance) / 2, variance };
};

const update = (posterior: Posterior, timed: Timed): void => {
  const { mean, covariance } = posterior;
  const { shift, variance } = lot(posterior.piece, Math.max(1, timed.count));
  const noise = variance + posterior.sitting + timed.extra + DRIFT * timed.ago;
  const learning = mean.length - 1;
  const practice = practiceAt(timed.before, timed.count);
  const column = covariance.map((row) => row[timed.kind]! - practice * row[learning]!);
  const total = column[timed.kind]! - practice * column[learning]! + noise;
  const surprise =
    Math.log(timed.minutes / timed.count) - shift - (mean[timed.kind]! - practice * mean[learning]!);
  posterior.weight += -0.5 * (Math.log(total) + (surprise * surprise) / total);
  for (let i = 0; i < column.length; i++) {
    mean[i]! += (column[i]! * surprise) / total;
    const row = covariance[i]!;
    for (let j = 0; j < column.length; j++) row[j]! -= (column[i]! * column[j]!) / total;
  }
};

export const learnPace = (kinds: readonly Kind[], log: readonly Timed[]): PaceModel => {
  const posteriors: Posterior[] = LUCK.map(({ scale, weight }) => ({
    weight: Math.log(weight),
    mean: [...kinds.map(({ logGuess }) => logGuess), LEARNING.mean],
    covariance: covarianceOf(kinds),
    sitting: SITTING * scale * scale,
    piece: PIECE * scale * scale,
  }));
  for (const posterior of posteriors) for (const timed of log) update(posterior, timed);
  const heaviest = Math.max(...posteriors.map(({ weight }) => weight));
  for (const posterior of posteriors) posterior.weight = Math.exp(posterior.weight - heaviest);
  const sum = posteriors.reduce((all, { weight }) => all + weight, 0);
  for (const posterior of posteriors) posterior.weight /= sum;
  return {
    foretell(batches) {
      if (!batches.some(({ count }) => count > 0)) return { low: 0, likely: 0, high: 0 };
      const parts = posteriors.map((posterior) => ({
        weight: posterior.weight,
        ...sumOf(posterior, batches),
      }));
      return { low: quantile(parts, 0.1), likely: quantile(parts, 0.5), high: quantile(parts, 0.9) };
    },
    median: (kind) =>
      Math.exp(posteriors.reduce((mean, posterior) => mean + posterior.weight * posterior.mean[kind]!, 0)),
  };
};

/** The log-normal with the exact mean and variance of the sum over all batches. */
const sumOf = (
  { mean, covariance, sitting, piece }: Posterior,
  batches: readonly Batch[],
): { mu: number; sigma: number } => {
  const learning = mean.length - 1;
  const practice = batches.map(({ before, count }) => practiceAt(before, count));
  const shared = (i: number, j: number): number =>
    covariance[i]![j]! -
    practice[i]! * covariance[learning]![j]! -
    practice[j]! * covariance[i]![learning]! +
    practice[i]! * practice[j]! * covariance[learning]![learning]!;
  let total = 0;
  let second = 0;
  const expected = batches.map(({ count }, i) =>
    count <= 0
      ? 0
      : count *
        Math.exp(mean[i]! - practice[i]! * mean[learning]! + shared(i, i) / 2 + (piece + sitting) / 2),
  );
  batches.forEach(({ count, sitting: size }, i) => {
    if (expected[i] === 0) return;
    total += expected[i]!;
    for (let j = 0; j < batches.length; j++) {
      if (expected[j] !== 0) second += expected[i]! * expected[j]! * Math.exp(shared(i, j));
    }
    // Luck of pieces and sittings is their own: it thins out over many.
    const sittings = Math.max(1, count / Math.max(1, size));
    const pieces = Math.max(1, count);
    const luck = (1 + Math.expm1(piece) / pieces) * (1 + Math.expm1(sitting) / sittings) - 1;
    second += expected[i]! * expected[i]! * Math.exp(shared(i, i)) * luck;
  });
  const variance = Math.log(second / (total * total));
  return { mu: Math.log(total) - variance / 2, sigma: Math.sqrt(Math.max(variance, 1e-12)) };
};

/** Standard normal distribution function (Abramowitz and Stegun 26.2.17, error below 7.5e-8). */
export const normalBelow = (z: number): number => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
};

/** The p-th quantile of a mixture of log-normals, by halving. */
const quantile = (parts: readonly { weight: number; mu: number; sigma: number }[], p: number): number => {
  let low = Math.min(...parts.map(({ mu, sigma }) => mu - 6 * sigma));
  let high = Math.max(...parts.map(({ mu, sigma }) => mu + 6 * sigma));
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const below = parts.reduce(
      (sum, { weight, mu, sigma }) => sum + weight * normalBelow((middle - mu) / sigma),
      0,
    );
    if (below < p) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
};
