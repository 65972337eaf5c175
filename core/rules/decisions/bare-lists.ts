import { COLOURS } from '../../lexicon/colours.ts';
import { isStop, startOfSentence } from '../clause/joints.ts';
import { boundaryBefore, type Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { isDeadline } from './is-deadline.ts';
import { WELL } from './matter/part.ts';
import { senseOf } from './matter/topic-of.ts';

const MAY_HEAD = /^(?:open|undecided|unsettled|settled|decided|agreed|fixed|settle|decide)$/;
export const HEAD =
  /^ ((?:(?:still|yet|not yet|as yet) )*(?:open|undecided|unsettled|not (?:settled|decided|agreed)|(?:still )?to (?:settle|decide|agree)|to be (?:settled|decided|agreed))(?: (?:still|yet))?|(?:(?:now|already) )?(?:settled|decided|agreed|fixed)(?: (?:now|today|so far))?) (?!is |are |'s |on |in |to |with |by |that |for |about |when |at |up |from |as |because |and |, |: |the seam)/;
/** Words that stand before the name of a matter: "which", "the", "navy", "hand or machine". */
const BEFORE_NAME =
  /^(?:the|a|an|its|new|which|what|whether|how|kind|sort|type|of|for|colou?r|col|width|weight|hand|machine|cold|cool|warm|lukewarm|tepid|hot|gentle|or|and|wool|cotton|linen|poly|polyester|bamboo|silk|plain|wide|narrow|thin|thick|pieced|bought|home-made|it|i|gets|is|be|to|will|oz|a|b|1|2|goes|on|re-tie)$/;
/** Behind the name of a matter these belong to it. */
const BEHIND_NAME = /^(?:colou?r|col|cols|weight|width|type|kind|size|pattern|style)$/;
const LEANS =
  /^(?:of|for|or|and|&|by|in|to|the|a|an|with|on|what|which|whether|how|who|not|no|vs|versus|\/|:|,|;|new|hand|machine|cold|warm|cool|goes)$/;
/** Matters that have no name of their own in the list of them. */
const NAMELESS = /^(?:sleeve|hanging|postage|delivery|insurance|delivered)$/;
const ASKS = /^(?:who|what|which|whether|how|when|where|if)$/;
const SAYS = /^(?:i|we|they|she|he)$/;

/** The first matter named at `k` or behind the words that lead to it. */
export function matterAhead(items: Item[], k: number): { at: number; about: string } | undefined {
  for (let m = k; m < Math.min(items.length, k + 8); m++) {
    const x = items[m]!;
    const about = senseOf(x, items, m);
    if (about) return { at: m, about };
    if (
      x.token.kind === 'mark' ||
      !(BEFORE_NAME.test(x.w) || COLOURS.has(x.w) || x.material || x.fabric || x.quantity)
    )
      return undefined;
  }
  return undefined;
}

/** How many items from `k` on head a list of matters that follows without a mark; 0 where none does. */
function headAt(items: Item[], k: number, listed: boolean): number {
  const head = HEAD.exec(wordsBetween(items, k, k + 7));
  if (!head) return 0;
  const count = head[1]!.split(' ').length;
  const next = items[k + count];
  if (
    !next ||
    (next.token.kind === 'mark' && !next.cost) ||
    items.slice(k + count, k + count + 5).some((x) => x.seam || x.finding)
  )
    return 0;
  const before = items[k - 1];
  // "who collects it | fixed price 85"
  const whole =
    listed &&
    before?.w === 'it' &&
    ASKS.test(items.slice(Math.max(0, k - 4), k).find((x) => ASKS.test(x.w))?.w ?? '');
  const asIs = before?.w === 'is' && items[k - 2]?.w === 'as';
  if (
    before &&
    !whole &&
    !asIs &&
    /^(?:is|are|'s|'re|was|were|been|be|not|n't|have|has|'ve|i|we|it|that|got|left|still|yet|to|nothing|all)$/.test(
      before.w,
    )
  )
    return 0;
  const settles =
    /(?:^| )(?:settled|decided|agreed|fixed)(?: |$)/.test(head[1]!) &&
    !/^(?:not|to|still|yet)/.test(head[1]!);
  const matter = matterAhead(items, k + count);
  // "fixed the binding" is a deed
  if (!listed && /^fixed/.test(head[1]!)) return 0;
  const named =
    matter !== undefined || (settles && listed && (next.cost !== undefined || next.w === 'price'));
  if (!named && !(listed && (handsOver(items, k + count) || ASKS.test(next.w)))) return 0;
  if (listed || k === 0 || isStop(before!)) return count;
  // "25 min oiling the machine settled …": nothing before it could be what is settled
  const from = startOfSentence(items, k);
  return items.slice(from, k).some((x, m) => senseOf(x, items, from + m) !== undefined || x.cost) ||
    items.slice(from, k).some((x) => SAYS.test(x.w))
    ? 0
    : count;
}

/** "I carry it over myself", "they fetch it", "it goes by carrier": how it gets home. */
const handsOver = (items: Item[], k: number): boolean =>
  /^(?:i|we|they|she|he|it)$/.test(items[k]!.w) &&
  / (?:carry|carries|fetch|fetches|collect|collects|deliver|delivers|post|posts|ship|ships|bring|brings|drive|drives|send|sends|take|takes|drop|drops|hand|goes|travels|carrying|fetching|collecting|delivering|posting|shipping|bringing|driving|sending|taking|dropping)\b/.test(
    wordsBetween(items, k + 1, k + 4),
  );

/** "back to her by 1 december", up to what is no date. */
export function isDateAhead(items: Item[], k: number): boolean {
  const end = items.findIndex((x, m) => m > k && (x.duration || x.topic || x.token.kind === 'mark'));
  const own = items.slice(k, Math.min(end < 0 ? items.length : end, k + 8));
  return isDeadline(wordsBetween(own), own);
}

/** Does the next matter of the list begin at `k`, behind those of `told`? */
function beginsMatter(items: Item[], k: number, told: Set<string>): boolean {
  const x = items[k]!;
  const before = items[k - 1]!;
  if ((before.token.kind === 'mark' && !before.cost) || LEANS.test(before.w)) return false;
  // "the colour binding", but "binding colour | thread"
  if (/^(?:colou?r|col)$/.test(before.w) && !(items[k - 2] && senseOf(items[k - 2]!, items, k - 2)))
    return false;
  if (x.cost || NAMELESS.test(x.w) || (x.w === 'price' && told.size > 0)) return true;
  if (handsOver(items, k)) return true;
  if (ASKS.test(x.w)) return true;
  if (
    /^(?:back|ready|due|finished|done|deadline|delivered|fetched|collected)$/.test(x.w) &&
    isDateAhead(items, k)
  )
    return true;
  if (BEHIND_NAME.test(x.w) && !/^(?:of|for)$/.test(items[k + 1]?.w ?? '')) return false;
  if (x.quantity && before.w === 'price') return false;
  if (/^(?:or|and|it|is|be|goes|on|of|for|i|gets)$/.test(x.w)) return false;
  const ahead = matterAhead(items, k);
  return ahead !== undefined && !told.has(ahead.about);
}

/** Does something that is no matter begin at `k`: a length of time, a finding, a deed? */
function endsList(items: Item[], k: number): boolean {
  const x = items[k]!;
  if (x.duration || x.span) return true;
  if (x.task && items[k + 1]?.duration && !senseOf(x, items, k)) return true;
  if (x.finding && !WELL.test(x.w)) return true;
  return (
    x.action?.form === 'past' &&
    !/^(?:quilt|tie|wash|bind|leave)$/.test(x.action.v) &&
    !x.topic &&
    !x.material
  );
}

/** Has the list no mark of its own up to the end of its sentence, and no turn? */
function isBare(items: Item[], from: number): boolean {
  for (let k = from; k < items.length && !isStop(items[k]!); k++)
    if (/^(?:,|nor|but|neither|:|--|-|while)$/.test(items[k]!.w)) return false;
  return true;
}

/**
 * "open tie or quilt binding colour thread settled cold wash I carry it over myself": a list of matters told under its heading without a
 * mark gets those that stand in it in writing, the colon behind the heading, commas between the matters and the stop before the next heading.
 */
export function withBareLists(items: Item[]): Item[] {
  if (!items.some((x) => MAY_HEAD.test(x.w))) return items;

  const out: Item[] = [];
  let listed = items.some((x, k) => MAY_HEAD.test(x.w) && items[k + 1]?.w === ':');
  let inList = listed && MAY_HEAD.test(items[0]!.w);
  let told = new Set<string>();
  let bare = false;
  for (let k = 0; k < items.length; k++) {
    const x = items[k]!;
    const head = x.token.kind === 'mark' ? 0 : headAt(items, k, listed && inList);
    if (head) {
      if (out.length && !isStop(out.at(-1)!)) out.push(boundaryBefore(x, ';'));
      out.push(...items.slice(k, k + head), boundaryBefore(items[k + head]!, ':'));
      k += head - 1;
      bare = isBare(items, k + 1);
      listed = true;
      inList = true;
      told = new Set();
      continue;
    }
    if (x.w === ':') bare = isBare(items, k + 1);
    if (isStop(x)) {
      inList &&= x.w === ';' || MAY_HEAD.test(items[k + 1]?.w ?? '');
      told = new Set();
    } else if (/^(?:,|and|&|\+)$/.test(x.w)) told = new Set();
    else if (inList && bare && out.at(-1)?.w !== ':') {
      if (endsList(items, k) && !(items[k - 1] && isStop(items[k - 1]!))) {
        out.push(boundaryBefore(x, ';'));
        inList = false;
      } else if (told.size > 0 && beginsMatter(items, k, told)) {
        out.push(boundaryBefore(x, ','));
        told = new Set();
      }
    }
    if (inList) {
      const about = senseOf(x, items, k);
      if (about) told.add(about);
      else if (
        handsOver(items, k) ||
        x.w === 'who' ||
        /^(?:back|ready|due|finished|done|deadline)$/.test(x.w) ||
        NAMELESS.test(x.w) ||
        x.cost
      )
        told.add('other');
    }
    out.push(x);
  }
  return listed ? out : items;
}
