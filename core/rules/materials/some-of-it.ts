import type { Draft } from '../draft.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';

const SOME_OF_IT =
  / (?:(?:with|using|used|from) (?:(?:some|a bit|a piece|a scrap|a strip|half|most|part|a length) of )?(?:it|that|them|this) |(?:some|a bit|a piece|a scrap|a strip|half|most|part|a length) of (?:it|that|them|this) (?:down |sewn |stitched |laid )?(?:in|into|behind|over|on|onto|under|underneath|across|around|round) )/;
/** What each is done with. */
const DONE_WITH: Record<string, RegExp> = {
  patch: /^fabric$/,
  replace: /^fabric$/,
  stabilize: /^(?:fabric|backing|interfacing|net)$/,
  overlay: /^net$/,
  darn: /^(?:thread|tie-thread)$/,
  resew: /^(?:thread|tie-thread)$/,
  tie: /^(?:thread|tie-thread)$/,
  quilt: /^thread$/,
  bind: /^(?:binding|fabric)$/,
};

/** "bought a yard of muslin, and I've whipstitched some of it in behind 1-2": what was told of in the same note is what the work used up. */
export function someOfIt(
  drafts: Draft[],
  v: { index: number; sentence: number; items: Item[] },
  made: Draft[],
): Draft | undefined {
  const found = SOME_OF_IT.exec(wordsBetween(v.items));
  const deed = found && made.find(({ entry: e }) => e.kind === 'treatment' && DONE_WITH[e.action ?? '']);
  if (deed?.entry.kind !== 'treatment') return undefined;
  const fits = DONE_WITH[deed.entry.action!]!;
  const told = drafts.findLast((d) => d.entry.kind === 'material');
  if (told?.entry.kind !== 'material' || told.entry.use === 'used' || !fits.test(told.entry.material ?? ''))
    return undefined;
  const { material, name } = told.entry;
  return makeDraft(
    'material',
    v,
    {
      material: [material, `material.${material}`, v.items, 'implied'],
      use: ['used', 'use.used', undefined],
      ...(name
        ? { name: [name, 'material.name', v.items, 'implied'] as [unknown, string, Item[], 'implied'] }
        : {}),
    },
    'unneeded',
  );
}
