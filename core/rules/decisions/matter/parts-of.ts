import { COLOURS } from '../../../lexicon/colours.ts';
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

/** "navy, not brown, for the binding": what it is not to be goes out, and the commas about it. */
function withoutDeniedOther(items: Item[]): Item[] {
  const not = items.findIndex(
    (x, k) => x.w === 'not' && k > 0 && isChoice(items[items[k - 1]!.w === ',' ? k - 2 : k - 1]),
  );
  if (not < 0) return items;
  let end = not + 1;
  while (
    end < not + 4 &&
    items[end] &&
    (isChoice(items[end]) || /^(?:the|a|plain|dark|light)$/.test(items[end]!.w))
  )
    end++;
  if (end === not + 1 || !/^(?:for|on)$/.test(items[items[end]?.w === ',' ? end + 1 : end]?.w ?? ''))
    return items;
  const from = items[not - 1]!.w === ',' ? not - 1 : not;
  return [...items.slice(0, from), ...items.slice(items[end]?.w === ',' ? end + 1 : end)];
}
const isChoice = (x: Item | undefined): boolean =>
  x !== undefined &&
  (COLOURS.has(x.w) || x.material !== undefined || x.fabric !== undefined) &&
  !x.action &&
  !x.place;

const ITS_THE =
  /^ (?:so |then |and |right )*it (?:'s|is|'ll be) (?:going to be |to be )?(?:the |a )?(?:\S+ )?(?:batting|wadding|backing|binding|lining|thread|floss|yarn) (?:then )?$/;

const isWay = (x: Item): boolean =>
  /^(?:tie|quilt|wash)$/.test(x.action?.v ?? '') || /^(?:tying|quilting)$/.test(x.topic ?? '');

/** The parts of a sentence, each with the joint that stands before it. */
export function partsOf(said: Item[]): Part[] {
  const items = withoutDeniedOther(said);
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
    // "tie it, or quilt it?": one choice
    if (item.w === ',' && next === 'or' && current.some(isWay) && items.slice(k + 2, k + 5).some(isWay))
      return;
    const pair = item.w === 'and' && PAIRS.test(`${items[k - 1]?.w ?? ''} ${next}`);
    // "can't decide between the check and the plain for the binding"
    const both = item.w === 'and' && current.some((x) => x.w === 'between');
    if (pair || both) {
      current.push(item);
      return;
    }
    // "it's the wool batting | i got a roll of it": what was chosen, and what was bought of it
    if (
      /^(?:i|we)$/.test(item.w) &&
      ITS_THE.test(wordsBetween(current)) &&
      /^(?:got|bought|have|'ve|need)$/.test(next)
    ) {
      close('and');
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
