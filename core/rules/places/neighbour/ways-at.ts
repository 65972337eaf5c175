import type { Token } from '../../../text/tokenise.ts';
import { wordAt as w } from '../../../text/word-at.ts';

/** A step down (up: -1) and to the right (to the left: -1). */
export type Step = { row: number; block: number };

/** `one`: a single direction; `several`: all of these steps at once ("either side", "around"). */
/** `slantwise`: the side is told behind the block that it is counted from. */
export type Way = { steps: Step[]; next: number; several: boolean; slack?: boolean; slantwise?: boolean };

/** One way or several that are told of one block, and the token behind them. */
export type Ways = { list: Way[]; next: number };

/** A single step, where the words that tell it are behind us. */
export const oneStep = (step: Step, next: number): Ways => ({
  list: [{ steps: [step], next, several: false }],
  next,
});

/** Several steps at once, each to a block of its own. */
export const allSteps = (steps: Step[], next: number): Ways => ({
  list: [{ steps, next, several: true }],
  next,
});

export const STEPS = new Map<string, Step>(
  Object.entries({
    below: { row: 1, block: 0 },
    beneath: { row: 1, block: 0 },
    under: { row: 1, block: 0 },
    underneath: { row: 1, block: 0 },
    down: { row: 1, block: 0 },
    above: { row: -1, block: 0 },
    up: { row: -1, block: 0 },
    along: { row: 0, block: 1 },
    across: { row: 0, block: 1 },
    over: { row: 0, block: 1 },
    after: { row: 0, block: 1 },
    before: { row: 0, block: -1 },
    beside: { row: 0, block: 1 },
    alongside: { row: 0, block: 1 },
    left: { row: 0, block: -1 },
    right: { row: 0, block: 1 },
    l: { row: 0, block: -1 },
    r: { row: 0, block: 1 },
  }),
);

export const CROSS: Step[] = [
  { row: -1, block: 0 },
  { row: 0, block: -1 },
  { row: 0, block: 1 },
  { row: 1, block: 0 },
];

const RING: Step[] = [
  ...CROSS,
  { row: -1, block: -1 },
  { row: -1, block: 1 },
  { row: 1, block: -1 },
  { row: 1, block: 1 },
];

export const SIDES: Step[] = [
  { row: 0, block: -1 },
  { row: 0, block: 1 },
];

/** One way or several: "above and below", "below and to the left", "left and right of". */
export function waysAt(tokens: Token[], i: number, count: number | undefined): Ways | undefined {
  const first = wayAt(tokens, i, count);
  if (!first) return undefined;
  const list = [first];
  let next = first.next;
  const joint = /^(and|&|or|,)$/.test(w(tokens, next));
  const second = wayAt(tokens, joint ? next + 1 : next, count);
  const sideways = second && !second.several && second.steps[0]!.row === 0;
  if (second && !first.several && !second.several) {
    const turned = (first.steps[0]!.row === 0) !== (second.steps[0]!.row === 0);
    const opposite =
      first.steps[0]!.row + second.steps[0]!.row === 0 &&
      first.steps[0]!.block + second.steps[0]!.block === 0;
    const plain = /^(to|on|left|right|above|below|beneath|under)$/.test(w(tokens, joint ? next + 1 : next));
    if (plain && (joint ? turned || opposite : turned && sideways && w(tokens, next) !== 'under')) {
      list.push(second);
      next = second.next;
    }
  }
  // "above and below it" told with the second left bare: "left and right of it"
  if (
    joint &&
    list.length === 1 &&
    /^(left|right)$/.test(w(tokens, next + 1)) &&
    /^(left|right)$/.test(w(tokens, next - 1))
  ) {
    list.push({ steps: [STEPS.get(w(tokens, next + 1))!], next: next + 2, several: false });
    next += 2;
  }
  return { list, next };
}

export function wayAt(tokens: Token[], i: number, count: number | undefined): Way | undefined {
  let k = i;
  while (
    /^(just|directly|immediately|straight|that|'s|is|are|lying|sitting|which|all|comes|coming|lies|sits|stands)$/.test(
      w(tokens, k),
    ) &&
    k < i + 3
  )
    k++;
  // "its neighbour over on the left"
  if (
    /^(over|across|along|round|across)$/.test(w(tokens, k)) &&
    /^(to|on|at)$/.test(w(tokens, k + 1)) &&
    /^(left|right)$/.test(w(tokens, k + 3))
  )
    k++;
  // "two further along", "two further on"
  if (/^(further|farther)$/.test(w(tokens, k)) && /^(along|on|across|over|down|up)$/.test(w(tokens, k + 1))) {
    k++;
    if (w(tokens, k) === 'on') return { steps: [STEPS.get('along')!], next: k + 1, several: false };
  }
  // "the one on top of it"
  if (
    /^on top of (it|that|this)$/.test(
      `${w(tokens, k)} ${w(tokens, k + 1)} ${w(tokens, k + 2)} ${w(tokens, k + 3)}`,
    )
  )
    return { steps: [STEPS.get('above')!], next: k + 2, several: false };
  const diagonal = /^diagonal(ly)?$/.test(w(tokens, k));
  if (diagonal) k++;
  // "diagonally below it": to which side is not said
  const ahead = diagonal ? ` ${[1, 2, 3, 4, 5, 6, 7].map((n) => w(tokens, k + n)).join(' ')} ` : '';
  // "diagonally below 2-2 on the right"
  const slantwise =
    / (?:\d+|one|two|three|four|five|six|seven|eight) (?:on|to) (?:the|its) (?:left|right) /.test(ahead);
  if (diagonal && !slantwise && !/^(?: \S+){0,4} (?:left|right) /.test(ahead)) return undefined;
  // "to the left", "on its right", "to the L", "left of"
  if (/^(to|on|at)$/.test(w(tokens, k)) && /^(the|its)$/.test(w(tokens, k + 1))) {
    const side = w(tokens, k + 2);
    const far = /^(immediate|far)$/.test(side) ? k + 3 : k + 2;
    if (!/^(left|right|l|r)$/.test(w(tokens, far)) || w(tokens, far - 1) === 'far') return undefined;
    let next = far + 1;
    while (/^(hand|side)$/.test(w(tokens, next))) next++;
    if (/^(edge|border|column|corner|end|block)$/.test(w(tokens, next))) return undefined;
    return { steps: [STEPS.get(w(tokens, far))!], next, several: false };
  }
  const word = w(tokens, k);
  if ((word === 'left' || word === 'right') && /^(and|&|of|or)$/.test(w(tokens, k + 1)) && !diagonal)
    return { steps: [STEPS.get(word)!], next: k + 1, several: false };
  if (word === 'right' && (STEPS.has(w(tokens, k + 1)) || w(tokens, k + 1) === 'next'))
    return wayAt(tokens, k + 1, count);
  if (word === 'next') {
    let next = k + 1;
    if (/^(to|too|door)$/.test(w(tokens, next))) next++;
    else return undefined;
    const side = wayAt(tokens, next, count);
    if (
      side &&
      w(tokens, next - 1) === 'door' &&
      !side.several &&
      side.steps[0]!.row === 0 &&
      /^(to|on)$/.test(w(tokens, next)) &&
      /^(left|right)$/.test(w(tokens, next + 2))
    )
      return side;
    if (w(tokens, next) === 'to') next++;
    return { steps: [{ row: 0, block: 1 }], next, several: false, slack: true };
  }
  if (/^(either|both|each)$/.test(word)) {
    const at = w(tokens, k + 1) === 'of' ? k + 2 : k + 1;
    return /^sides?$/.test(w(tokens, at)) ? { steps: SIDES, next: at + 1, several: true } : undefined;
  }
  if (
    /^(on|at|to)$/.test(word) &&
    /^(either|both|each)$/.test(w(tokens, k + 1)) &&
    /^sides?$/.test(w(tokens, k + 2))
  )
    return { steps: SIDES, next: k + 3, several: true };
  if (/^(around|round|surrounding|touching|touch|adjoining|bordering)$/.test(word)) {
    const eight = count === undefined ? /^(around|round|surrounding)$/.test(word) : count > 4;
    return { steps: eight ? RING : CROSS, next: k + 1, several: true };
  }
  // "the block over it" and "the two over them" lie above, "two over from that" beside
  if (
    word === 'over' &&
    (/^(it|them|those|these)$/.test(w(tokens, k + 1)) ||
      (count === undefined && (/^(that|this|\d+)$/.test(w(tokens, k + 1)) || k > i)))
  )
    return { steps: [STEPS.get('above')!], next: k + 1, several: false };
  const step = STEPS.get(word);
  if (!step || /^(left|right|l|r)$/.test(word)) return undefined;
  // "the one beside it on the left" says on which side
  const slack = /^(beside|alongside)$/.test(word);
  return {
    steps: [step],
    next: k + 1,
    several: false,
    ...(slack ? { slack } : {}),
    ...(slantwise && step.row ? { slantwise } : {}),
  };
}
