import type { Action, Finding } from '../../../shared/vocabulary.ts';
import type { Item } from '../item.ts';
import { mentionsOf } from '../mentions-of.ts';
import type { ReaderState } from '../reader-state.ts';
import { unique } from './grid.ts';

/** What each deed mends: of several damaged sides it is the one that has this. */
const MENDS: Partial<Record<Action, readonly Finding[]>> = {
  resew: ['split-seam', 'tear', 'broken-stitching'],
  darn: ['hole', 'tear', 'thin', 'fraying'],
  patch: ['hole', 'tear', 'thin', 'fraying', 'missing', 'stain', 'insect-damage'],
  stabilize: ['thin', 'tear', 'shattered', 'fraying', 'hole'],
  overlay: ['shattered', 'fraying', 'thin', 'tear', 'hole'],
  clean: ['stain', 'mildew', 'dye-bleed'],
};

/**
 * "the right border's come loose" and then "the border seam's sewn up", "sponged the border": a side that is not named is the one
 * that was found damaged in the way that the deed mends, where it is but one.
 */
export function sideOfDamage(
  { memory, drafts }: ReaderState,
  action: Action,
  told: string[] | undefined,
  items: Item[],
): string[] | undefined {
  const part = told?.length === 1 ? told[0]! : '';
  const mends = MENDS[action];
  if (
    !mends ||
    !/^(?:border|edge|binding)$/.test(part) ||
    items.some((x) => /^(?:all|both|every|borders|edges)\b/.test(x.w))
  )
    return undefined;
  // the sides of the binding are edges, along which quilting stitches go as well
  if (part === 'binding' && action === 'resew') return undefined;
  const side = part === 'binding' ? 'edge' : part;
  const sides = unique(
    [...(memory.mentions ?? []), ...mentionsOf(drafts)].flatMap((m) =>
      m.finding && mends.includes(m.finding) ? m.places.filter((p) => p.startsWith(`${side}-`)) : [],
    ),
  );
  return sides.length === 1 ? sides : undefined;
}
