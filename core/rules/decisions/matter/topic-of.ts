import type { Topic } from '../../../../shared/vocabulary.ts';
import { COLOURS } from '../../../lexicon/colours.ts';
import type { Item } from '../../item.ts';
import { wordsBetween } from '../../words-between.ts';
import { whatWith } from './what-with.ts';

const PARTS: Record<string, Topic> = {
  backing: 'backing',
  batting: 'batting',
  binding: 'binding',
  border: 'border',
  thread: 'thread',
  'tie-thread': 'tie-thread',
};

const TIES_OF =
  /\bties? (?:colou?r|thread|yarn)s?\b|\b(?:colou?rs?|thread|yarn|floss) (?:(?:of|for|to (?:do|make|have|use for)|(?:i|we)(?: \S+){1,3}) )?(?:the |my |those |these |its )*ties\b/;

const TIE_STUFF =
  /^(?:wool(?:len)?|cotton|silk|linen|floss|yarn|crewel|pearl|perle|crochet|embroidery|worsted|hemp|pearl cotton|perle cotton|crochet cotton)$/;

/** The matter that a part of a sentence turns on. */
export function topicOf(items: Item[]): { topic: Topic; item: Item } | undefined {
  const words = wordsBetween(items);
  const unnamed = whatWith(words, items);
  if (unnamed) return unnamed;
  const target =
    /\bfor (?:the |my |its |her |a |new )*(ties|tying|backing|back|lining|binding|border|borders|batting|wadding)\b/.exec(
      words,
    )?.[1];
  // "the colour of the thread for the border": what is for it is told
  if (target && !/\bthread (?:\S+ )?for\b/.test(words)) {
    const item = items.findLast((x) => x.w.split(' ').includes(target));
    const topic: Topic = /^(ties|tying)$/.test(target)
      ? 'tie-thread'
      : /^(backing|back|lining)$/.test(target)
        ? 'backing'
        : /^border/.test(target)
          ? 'border'
          : /^(batting|wadding)$/.test(target)
            ? 'batting'
            : 'binding';
    if (item) return { topic, item };
  }
  const yarn = items.find((x) => x.topic === 'tie-thread' || x.material === 'tie-thread');
  if (yarn) return { topic: 'tie-thread', item: yarn };
  // "what colour the ties should be", "which yarn I'll use for ties"
  const ties = TIES_OF.test(words) ? items.find((x) => /^ties?/.test(x.w)) : undefined;
  if (ties) return { topic: 'tie-thread', item: ties };
  // "the ties will be red"
  if (
    /^ (?:the )?(?:ties|tying) (?:(?:i|we) (?:'m|'re|am|are|'ll be|will be) having|(?:i|we) ?(?:'ll|will) have|will be|'ll be|are|are going to be|to be|are to be|in) (?:in )?(?:\w+ )?(?:red|blue|white|cream|ecru|black|navy|green|gr[ae]y|brown|wool|cotton|silk|floss)\b/.test(
      words,
    )
  ) {
    const item = items.find((x) => /^(ties|tying)$/.test(x.w));
    if (item) return { topic: 'tie-thread', item };
  }
  // "ties navy or red?"
  const tied = items.findIndex((x) => x.w === 'ties');
  const colour = /^(?:in|:|,)$/.test(items[tied + 1]?.w ?? '') ? tied + 2 : tied + 1;
  if (tied >= 0 && tied < 2 && COLOURS.has(items[colour]?.w ?? ''))
    return { topic: 'tie-thread', item: items[tied]! };
  // "wool ties": what they are of, and not whether there are any
  const named = items.filter((x) => x.token.kind !== 'mark');
  if (
    named.length > 1 &&
    /^(?:ties|knots)$/.test(named.at(-1)!.w) &&
    named
      .slice(0, -1)
      .every(
        (x) => COLOURS.has(x.w) || TIE_STUFF.test(x.w) || /^(?:the|dark|light|pale|deep|all)$/.test(x.w),
      ) &&
    named.slice(0, -1).some((x) => COLOURS.has(x.w) || TIE_STUFF.test(x.w))
  )
    return { topic: 'tie-thread', item: named.at(-1)! };
  let soft: { topic: Topic; item: Item } | undefined;
  const width = items.find((x) => x.measure === 'border' && !x.quantity);
  if (width) return { topic: 'border', item: width };
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const topic = senseOf(x, items, k);
    if (!topic) continue;
    if (topic === 'fabric' || topic === 'other' || topic === 'price' || topic === 'deadline') {
      if (topic !== 'deadline') soft ??= { topic, item: x };
      continue;
    }
    return { topic, item: x };
  }
  return soft;
}

/** After "back" these show that it is no backing: "back and forth", "back them with lawn". */
const NO_NOUN_BACK =
  /^(?:and|to|again|on|in|it|them|that|this|those|by|with|here|there|up|at|from|from|together|home|through)$/;

/** "when she needs it back", "back and forth": no backing. */
const isNoNounBack = (items: Item[], k: number): boolean =>
  NO_NOUN_BACK.test(items[k + 1]?.w ?? '') ||
  /^(?:it|them|that|this|go|come|going|coming|get|getting)$/.test(items[k - 1]?.w ?? '');

/** The matter that one word of a sentence can stand for, by what stands beside it. */
export function senseOf(x: Item, items: Item[], k: number): Topic | undefined {
  const next = items[k + 1]?.w ?? '';
  if (x.action?.v === 'tie' || /^(ties|knots)$/.test(x.w)) return 'tying';
  if (x.action?.v === 'quilt' && !/^(quilt|qlt)$/.test(x.w)) return 'quilting';
  if (/^(quilt|qlt)$/.test(x.w)) {
    const before = items[k - 1]?.w ?? '';
    return /^(?:it|or|vs|versus|\/)$/.test(next) ||
      // "quilt by hand or machine"
      /^by (?:hand|machine) /.test(`${next} ${items[k + 2]?.w ?? ''} `) ||
      /^(or|to|vs|versus|hand|machine|\/|not|i)$/.test(before)
      ? 'quilting'
      : undefined;
  }
  if (x.topic && x.topic !== 'tying' && x.topic !== 'quilting') {
    if (x.w === 'back' && isNoNounBack(items, k)) return undefined;
    return x.topic;
  }
  if (x.topic === 'quilting') return x.w === 'pattern' ? undefined : 'quilting';
  if (x.action?.v === 'wash') return 'washing';
  if (x.material && PARTS[x.material]) return PARTS[x.material];
  if (x.part && PARTS[x.part]) return x.w === 'back' && isNoNounBack(items, k) ? undefined : PARTS[x.part];
  if (x.action?.v === 'bind' && x.action.form === 'base') return 'binding';
  if (/^(fabric|cloth)$/.test(x.w)) return 'fabric';
  return undefined;
}
