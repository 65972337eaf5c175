import { splitBlock } from './grid.ts';

/** The block of a group that lies furthest to one side, where it is but one. */
export function outermost(group: string[], side: string): string | undefined {
  const best = outermostOf(group, side);
  return best?.length === 1 ? best[0] : undefined;
}

/** "the top left" of a group of blocks: the one that lies both farthest up and farthest left, where there is such a one. */
export function outermostCorner(group: string[], up: string, side: string): string | undefined {
  const spots = group.flatMap((p) => splitBlock(p) ?? []);
  const rows = spots.map((p) => p.row);
  const blocks = spots.map((p) => p.block);
  const row = /top|upper/.test(up) ? Math.min(...rows) : Math.max(...rows);
  const place = `${row}-${side === 'left' ? Math.min(...blocks) : Math.max(...blocks)}`;
  return group.includes(place) ? place : undefined;
}

/** The blocks of a group that lie furthest to one side; of a line the first `count` from there. */
export function outermostOf(group: string[], told: string, count = 1): string[] | undefined {
  // "leftmost", "bottommost"
  const side = told.replace(/^(left|right|top|bottom|upper|lower)most$/, '$1');
  if (areSides(group)) {
    const found = group.filter((p) =>
      p
        .split('-')
        .slice(1)
        .includes(SIDE_WORDS.get(side) ?? side),
    );
    return found.length ? found : undefined;
  }
  const at = group.map((p) => splitBlock(p)!);
  const by = /^(top|upper|higher|highest|uppermost)$/.test(side)
    ? at.map((p) => -p.row)
    : /^(bottom|lower|lowest|btm)$/.test(side)
      ? at.map((p) => p.row)
      : side === 'left'
        ? at.map((p) => -p.block)
        : side === 'right'
          ? at.map((p) => p.block)
          : undefined;
  if (!by) return undefined;
  // "column five has faded", then "the top two": no others lie as far to that side
  const [least, next] = [...by].sort((x, y) => y - x).slice(count - 1, count + 1);
  if (count > 1 && least !== next && least !== undefined) return group.filter((_p, k) => by[k]! >= least);
  const best = Math.max(...by);
  return group.filter((_p, k) => by[k] === best);
}

/** "left border torn, bottom one stained", then "the first one": sides and corners are told of together as blocks are. */
export const areSides = (group: string[]): boolean => group.every((p) => /^(border|edge|corner)-/.test(p));

const SIDE_WORDS = new Map(Object.entries({ upper: 'top', lower: 'bottom', btm: 'bottom' }));
