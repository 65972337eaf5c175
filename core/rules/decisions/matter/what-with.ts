import type { Topic } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';

/** What a thing is to be made, held or filled with, told without naming it. */
const WITH: Record<string, Topic> = {
  back: 'backing',
  line: 'backing',
  bind: 'binding',
  edge: 'binding',
  tie: 'tie-thread',
  quilt: 'thread',
  stitch: 'thread',
  fill: 'batting',
  pad: 'batting',
  wad: 'batting',
  border: 'border',
};

/** "what to back it with", "what colour to bind it in", "which yarn I'll tie it with" */
const WHAT_WITH =
  / (?:what|which)(?: \S+){0,2} (?:to|i|we|i 'll|we 'll|i 'm going to|she wants|i should|it 's to be|it 'll be|it gets|it is) (back|line|bind|edge|tie|quilt|stitch|fill|pad|wad|border|backed|lined|bound|edged|tied|quilted|filled)(?: (?:it|this|this one|the quilt|the whole thing|the top|the edges?))? (?:with|in|from|out of) /;

/** "how to finish the edge", "how to finish it off round the edges" */
const FINISH_EDGE =
  / how (?:to|i 'll|we 'll|i|we) (?:finish|do|treat)(?: it)?(?: off)?(?: (?:round|at|along))? the edges? /;

/** The matter of such words, told by what is to be done: it is no deed at a place. */
export function whatWith(words: string, items: Item[]): { topic: Topic; item: Item } | undefined {
  const item = items[0];
  if (!item) return undefined;
  if (FINISH_EDGE.test(words)) return { topic: 'binding', item };
  const verb = WHAT_WITH.exec(words)?.[1];
  if (!verb) return undefined;
  const stem = verb === 'bound' ? 'bind' : verb === 'tied' ? 'tie' : verb.replace(/e?d$/, '');
  const topic = WITH[verb] ?? WITH[stem] ?? WITH[`${stem}e`];
  return topic && { topic, item };
}
