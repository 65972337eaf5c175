import type { Item } from '../../item.ts';
import { wordsBetween } from '../../words-between.ts';
import type { Part } from './part.ts';

const SPLITS = new Set([
  ',',
  'and',
  '&',
  '+',
  'but',
  'so',
  'because',
  'though',
  'although',
  'nor',
  '(',
  ')',
  '--',
  ':',
  'ditto',
]);

/** "Back and forth" is one phrase. */
const PAIRS = /^(?:back forth|humming hawing|hemming hawing|by by|once for|y n|ifs buts|umming ahing)$/;

/** The parts of a sentence, each with the joint that stands before it. */
export function partsOf(items: Item[]): Part[] {
  const out: Part[] = [];
  let current: Item[] = [];
  let joint = '';
  const close = (next: string): void => {
    if (current.length) out.push({ items: current, words: wordsBetween(current), joint });
    if (current.length || /^(:|ditto|nor|as|or|so is)$/.test(next)) joint = next;
    current = [];
  };
  items.forEach((item, k) => {
    const next = items[k + 1]?.w ?? '';
    const dash = item.w === '-' && !item.token.glued;
    const or = item.w === 'or' && /^(whether|how|what|which|who|if)$/.test(next);
    const as = item.w === 'as' && /^(is|are|does|do)$/.test(next);
    // "and so is the backing"
    if (item.w === 'so' && /^(is|are|'s|'re|was|were|do|does|have|has)$/.test(next)) {
      close('so is');
      return;
    }
    const pair = item.w === 'and' && PAIRS.test(`${items[k - 1]?.w ?? ''} ${next}`);
    // "can't decide between the check and the plain for the binding"
    const both = item.w === 'and' && current.some((x) => x.w === 'between');
    if (pair || both) {
      current.push(item);
      return;
    }
    // "I can't decide on the binding then patched 2-3"; "it's settled then, cotton"
    if (item.w === 'then' && current.length > 2 && items[k + 1] && items[k + 1]!.token.kind !== 'mark') {
      close('and');
      return;
    }
    if ((SPLITS.has(item.w) && !item.place && !item.span && !item.clock && !item.cost) || dash || or || as) {
      close(item.w);
      return;
    }
    current.push(item);
  });
  close('');
  return out;
}
