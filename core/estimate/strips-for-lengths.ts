import { widthsToCover } from './cloth.ts';
import { type Exact, exact } from './exact.ts';

/**
 * How many strips of `usable` length give all `lengths`. A length that fits one strip is never joined; a
 * longer one is made of full strips and one end piece, its joins as few as can be. Short lengths and end
 * pieces share strips, longest first into the first that has room.
 */
export const stripsForLengths = (
  lengths: readonly Exact[],
  usable: Exact,
  perJoin: Exact,
  fields: { seam: string; usable: string },
): number => {
  let full = 0;
  const ends: Exact[] = [];
  for (const length of lengths) {
    const count = widthsToCover(length, usable, perJoin, fields);
    full += count - 1;
    ends.push(length.sub(usable.sub(perJoin).mul(count - 1)));
  }
  ends.sort((a, b) => b.compare(a));
  const rooms: Exact[] = [];
  for (const end of ends) {
    const at = rooms.findIndex((room) => room.compare(end) >= 0);
    if (at >= 0) rooms[at] = rooms[at]!.sub(end);
    else rooms.push(exact(usable).sub(end));
  }
  return full + rooms.length;
};
