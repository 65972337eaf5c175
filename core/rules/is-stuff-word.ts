import { COLOURS } from '../lexicon/colours.ts';
import type { Item } from './item.ts';

/** "the old wool batting", "a blue silk binding": what a thing is made of, or its colour, told before it. */
export const isStuffWord = (x: Item | undefined): boolean =>
  x !== undefined &&
  x.object === undefined &&
  x.place === undefined &&
  x.action === undefined &&
  (x.material === 'fabric' || x.material === 'thread' || COLOURS.has(x.w));
