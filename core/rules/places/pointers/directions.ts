/** How many rows down and blocks across a word goes. */
export const DIRECTIONS = new Map<string, [row: number, block: number]>(
  Object.entries({
    below: [1, 0],
    beneath: [1, 0],
    under: [1, 0],
    underneath: [1, 0],
    above: [-1, 0],
    over: [-1, 0],
    left: [0, -1],
    right: [0, 1],
  }),
);
