import type { Item } from '../item.ts';
import { itemWord as w } from '../item-word.ts';
import { wordsBetween } from '../words-between.ts';
import type { Mark } from './marks-of.ts';

/** A verb that stops or starts work, what stands behind the name of the work, and whether a thing may be meant by it as well. */
const SPLIT: { verb: RegExp; behind: RegExp; mark: Mark['mark']; ofThings?: true }[] = [
  // "packed the cleaning in", "jacking the tying in"
  { verb: /^(?:pack|jack|chuck)(?:ed|ing)?$/, behind: /^ (?:it )?(?:all )?(?:in|up) /, mark: 'stop' },
  // "wrapped the survey up", "gave the piecing up", "finished the cutting off"
  {
    verb: /^(?:wrap(?:ped|ping)?|g[ai]v(?:e|ing)|finish(?:ed|ing)?)$/,
    // and not "finished stitching up the second block"
    behind:
      /^ (?:up|over|off) (?!(?:the|that|this|all|both|row|block|column|it|them|my|\d|one|two|three|four|five|six) )/,
    mark: 'stop',
  },
  // "knocked the survey on the head"
  { verb: /^(?:knock(?:ed|ing)?)$/, behind: /^ (?:on the head|off) /, mark: 'stop' },
  // "put the piecing away at quarter to one", "laid the mending by for tonight"
  {
    verb: /^(?:put|putting|laid|laying|set|setting|left|leaving)$/,
    behind: /^ (?:away|down|by|aside|off|there|at that|for (?:now|today|tonight|the (?:day|night|evening))) /,
    mark: 'stop',
    ofThings: true,
  },
  // "took the quilting up again at half two", "picking the mending back up"
  { verb: /^(?:took|take|taking|pick(?:ed|ing)?)$/, behind: /^ (?:back )?up /, mark: 'start' },
  // "let's get this survey going", "got the cutting under way by nine"
  {
    verb: /^(?:get|got|getting|set|setting)$/,
    behind: /^ (?:going|started|under ?way|under way|on the go|moving|begun) /,
    mark: 'start',
  },
];
const BEFORE_NAME = /^(?:the|my|this|that|some|all|with|it)$/;

/** "packed the cleaning in at two", "let's get this survey going": the name of the work between a verb and what belongs to it. */
export function splitMark(items: Item[], k: number): Mark | undefined {
  const word = w(items, k);
  const rule = SPLIT.find(({ verb }) => verb.test(word));
  if (!rule) return undefined;
  let at = k + 1;
  while (at < k + 3 && !items[at]?.task && BEFORE_NAME.test(w(items, at))) at++;
  const named = items[at];
  if (!named?.task) return undefined;
  for (const { verb, behind, mark, ofThings } of SPLIT) {
    if (!verb.test(word)) continue;
    const found = behind.exec(`${wordsBetween(items, at + 1, at + 7)} `);
    if (!found) continue;
    // "put the binding away in the drawer", "got the binding started": the thing, unless a time is told
    if (
      ofThings &&
      named.part &&
      !/ (?:at|for (?:now|today|tonight|the (?:day|night|evening))) /.test(wordsBetween(items, at, at + 9))
    )
      continue;
    return {
      at: k,
      end: at + 1 + found[0].trim().split(' ').length,
      mark,
      word: `${word}${found[0]}`.trim(),
      task: { task: named.task, at, item: named },
    };
  }
  return undefined;
}
