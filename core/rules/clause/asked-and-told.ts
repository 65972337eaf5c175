import type { Token } from '../../text/tokenise.ts';
import { wordSet } from '../../text/word-set.ts';
import { wordsOf } from '../../text/words-of.ts';
import { LEXICON } from '../lexicon-index.ts';

const STOPS = wordSet('. ! ? ; \n');
const LEADS = wordSet('so and well now ok okay right but then oh , any the my your its those these old new');
/** What leaves a matter open, or asks on. */
const NO_ANSWER =
  /^(?:not|do|dunno|undecided|tbd|open|maybe|perhaps|probably|might|could|hm+|who|what|why|how|when|or|if|whichever|ask|no idea)$/;
const BE = /^(?:is|are|was|were|has|have|had|does|do|did)$/;
const THEY = /^(?:it|they|that|those|she|he|there|some|one)$/;
const YES = /^(?:yes|yep|yeah|yup|aye)$/;
const NO = /^(?:no|nope|nah)$/;

/**
 * What she asks aloud and answers in the next breath is told: "and the mending? I was at that on Sunday", "the ties, how far apart? four
 * inches", "is the batting sound? it is", "does the backing come off? it doesn't, I'm leaving it be", "moth in three of them. Which ones?
 * 1-1, 2-2 and 3-3". The question becomes the statement, or the heading of one, that it is answered with.
 */
export function askedAndTold(tokens: Token[]): Token[] {
  if (!tokens.some((t, k) => /^[?:]$/.test(t.w) && k < tokens.length - 1)) return tokens;
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const mark = tokens[k]!;
    const answer = mark.kind === 'mark' && /^[?:]$/.test(mark.w) ? answerBehind(tokens, k + 1) : undefined;
    let from = out.length;
    while (from > 0 && !STOPS.has(out[from - 1]!.w)) from--;
    const told = answer && toldBy(out.slice(from), answer, mark, out.slice(0, from));
    if (!told) {
      out.push(mark);
      continue;
    }
    out.length = told.joined ? from - 1 : from;
    out.push(...told.said);
    k += told.taken;
  }
  return out;
}

/** "what about the sashing? it's puckered" */
const ABOUT =
  /^(?:what|how) (?:about|of|is|are|'s|does|do|look) (?:(?:the|my|its|those|old|new) )+(?=\S+(?: \S+)?$)/;

type Told = {
  said: Token[];
  /** How many tokens of the answer are told by it. */
  taken: number;
  /** It goes on with the sentence before. */
  joined?: boolean;
};

/** The answer up to its stop, unless it asks on or leaves open what was asked. */
function answerBehind(tokens: Token[], from: number): Token[] | undefined {
  let to = from;
  while (to < tokens.length && !STOPS.has(tokens[to]!.w)) to++;
  const answer = tokens.slice(from, to);
  return answer.length && tokens[to]?.w !== '?' && !NO_ANSWER.test(answer[0]!.w) ? answer : undefined;
}

function toldBy(asked: Token[], answer: Token[], mark: Token, before: Token[]): Told | undefined {
  let lead = 0;
  while (lead < asked.length && LEADS.has(asked[lead]!.w)) lead++;
  const about = ABOUT.exec(wordsOf(asked.slice(lead)))?.[0];
  const own = asked.slice(lead + (about ? about.trim().split(' ').length : 0));
  if (!own.length) return undefined;
  const as = (w: string): Token => ({ ...mark, w });
  // "stains: on 3-3, brown", "mildew: a bit on the backing"
  if (mark.w === ':') return damageHeads(own, answer);
  return (
    whichOrWhere(own, answer, as(','), before.length > 0) ??
    whatDid(own, answer) ??
    lengthAsked(own, answer, as(',')) ??
    thereAre(own, answer) ??
    isItSo(isIt(own), answer, as(',')) ??
    headed(own, answer, as(':'), before, about !== undefined)
  );
}

/** "Which ones? 1-1 and 2-2", "Where? Down in the bottom left corner": where the thing is that was told before. */
function whichOrWhere(own: Token[], answer: Token[], comma: Token, goesOn: boolean): Told | undefined {
  const words = wordsOf(own);
  // "Patched 3-4. With what? The blue check", "Stitch? Blanket"
  if (goesOn && /^(?:with|in|using) what$/.test(words)) return { said: [own[0]!], taken: 0, joined: true };
  if (goesOn && /^(?:what |which )?stitch$/.test(words)) return { said: [comma], taken: 0, joined: true };
  if (goesOn && words === 'how big') return { said: [comma], taken: 0, joined: true };
  if (!BEGINS_PLACE.test(answer[0]!.w)) return undefined;
  if (goesOn && words === 'where else') return { said: [{ ...own[0]!, w: 'and' }], taken: 0, joined: true };
  if (goesOn && /^(?:where(?: exactly)?|which|which (?:ones?|blocks?|rows?|two|three))$/.test(words))
    return { said: [comma], taken: 0, joined: true };
  // "the label goes where? bottom right corner"
  if (own.length > 1 && own.at(-1)!.w === 'where') return { said: own.slice(0, -1), taken: 0 };
  // "which blocks are torn? 2-2 and 3-4"
  const are = own.findIndex((t) => /^(?:are|is|have|has)$/.test(t.w));
  return are > 0 && are < own.length - 1 && /^which(?: ones?| blocks?| squares?)? /.test(words)
    ? { said: [...own.slice(are + 1), { ...comma, w: ':' }], taken: 0 }
    : undefined;
}
const BEGINS_PLACE =
  /^(?:\d+|row|rows|column|columns|block|blocks|the|in|on|at|down|up|along|across|all|both|every|one|two|three|four|five|six|seven|eight|nine|bottom|top|left|right)$/;

/** "the ties, how far apart? four inches", "how wide is the border? three": what is measured stands before the figure, and what of it behind. */
function lengthAsked(own: Token[], answer: Token[], comma: Token): Told | undefined {
  const how = own.findIndex((t) => t.w === 'how');
  if (how < 0 || !answer.slice(0, 3).some((t) => t.kind === 'number' || NUMBER.test(t.w))) return undefined;
  const asked = own.slice(how);
  const size = HOW_LONG.exec(wordsOf(asked));
  if (!size) return undefined;
  const behind = size[2] ? asked.slice(size[0].split(' ').length - size[2].split(' ').length) : [];
  const of = how > 0 ? own.slice(0, how) : behind;
  if (!of.length || (how > 0 && behind.length)) return undefined;
  const end = answer.findIndex((t, k) => k > 0 && (t.w === ',' || t.w === '-'));
  const figure = end < 0 ? answer : answer.slice(0, end);
  return {
    said: [
      ...of,
      ...(of.at(-1)!.w === ',' ? [] : [comma]),
      ...figure,
      { ...own[how]!, w: size[1]!.split(' ').at(-1)! },
    ],
    taken: figure.length,
  };
}
const HOW_LONG = /^how (far apart|wide|deep)(?: (?:is|are|were|was|should) (.+))?$/;
const NUMBER =
  /^(?:an?|half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|about)$/;

/** "what did I use? a yard of muslin", "what did the net cost? four dollars", "what's next? the binding comes off". */
function whatDid(own: Token[], answer: Token[]): Told | undefined {
  const words = wordsOf(own);
  if (NEXT.test(words)) return { said: [], taken: 0 };
  const verb = DID_I.exec(words)?.[1];
  if (verb) return { said: [{ ...own.at(-1)!, w: DONE[verb]! }], taken: 0 };
  const cost = /^(?:what|how much) (?:did|do) .+ cost$/.test(words) && answer[0]!.kind !== 'mark';
  return cost ? { said: own.slice(words.startsWith('how') ? 3 : 2), taken: 0 } : undefined;
}
const NEXT = /^(?:what 's|what is|what) (?:next|else|now|left)(?: then)?$/;
const DID_I = /^(?:and )?what (?:did|do|have) (?:i|we) (use|used|buy|bought|get|need|still need)$/;
const DONE: Record<string, string> = {
  use: 'used',
  used: 'used',
  buy: 'bought',
  bought: 'bought',
  get: 'bought',
  need: 'need',
  'still need': 'need',
};

/** "are there holes? yes, in 2-2" */
function thereAre(own: Token[], answer: Token[]): Told | undefined {
  if (own[1]?.w !== 'there' || !/^(?:is|are)$/.test(own[0]!.w)) return undefined;
  let from = 2;
  while (/^(?:any|a|an|some|more|much)$/.test(own[from]?.w ?? '')) from++;
  const taken = from < own.length ? yesBefore(answer) : undefined;
  return taken ? { said: own.slice(from), taken } : undefined;
}

/** "and the binding, is that worn?" is asked as "is the binding worn?" */
function isIt(own: Token[]): Token[] {
  const at = own.findIndex(
    (t, k) =>
      t.w === ',' &&
      BE.test(own[k + 1]?.w ?? '') &&
      /^(?:it|that|they|those|this)$/.test(own[k + 2]?.w ?? ''),
  );
  return at > 0 ? [own[at + 1]!, ...own.slice(0, at), ...own.slice(at + 3)] : own;
}

/** "is the batting sound? it is, all of it", "has the border faded? no, it hasn't": what is so, or what it is asked of where it is not so. */
function isItSo(own: Token[], answer: Token[], comma: Token): Told | undefined {
  const be = own[0]!;
  if (!BE.test(be.w) || /^(?:i|we|you|n't|not|there|any)$/.test(own[1]?.w ?? '') || own.length < 3)
    return undefined;
  if (own.some((t) => /^(?:or|whether|if)$/.test(t.w))) return undefined;
  const said = answer.findIndex((t) => !YES.test(t.w) && !NO.test(t.w) && t.w !== ',');
  const rest = said < 0 ? [] : answer.slice(said);
  const verb = THEY.test(rest[0]?.w ?? '') && BE.test(rest[1]?.w ?? '') ? rest[1]!.w : undefined;
  const not = verb !== undefined && /^(?:n't|not)$/.test(rest[2]?.w ?? '');
  const bare = verb !== undefined && /^(?:|,|-|--|all|and|but|indeed)$/.test(rest[not ? 3 : 2]?.w ?? '');
  const no = NO.test(answer[0]!.w) ? !verb || not || !bare : not && bare;
  const partly = PARTLY.test(answer[0]!.w);
  const yes = !no && (partly || YES.test(answer[0]!.w) ? !/^(?:do|does|did)$/.test(be.w) : bare && !not);
  if (!no && !yes) return undefined;
  let taken = said < 0 ? answer.length : said;
  if (bare) taken += not ? 3 : 2;
  if (answer[taken]?.w === ',') taken++;
  const more = taken < answer.length;
  if (yes && /^(?:is|are|was|were|has|have)$/.test(be.w)) {
    // "the batting sound": with its verb behind what it is said of
    const at = predicateAt(own);
    if (at === undefined) return undefined;
    const told = [...own.slice(1, at), be, ...own.slice(at)];
    return partly ? { said: told, taken: 0 } : { said: [...told, ...(more ? [comma] : [])], taken };
  }
  if (!no) return undefined;
  const at = subjectEnd(own);
  if (at === undefined) return undefined;
  return more
    ? { said: [...own.slice(1, at), { ...comma, w: ':' }], taken }
    : { said: [], taken: answer.length };
}

const PARTLY = /^(?:some|half|most|only|just|mostly|mainly|badly|slightly)$/;

/** Where the words begin that something is asked to be, behind the thing itself. */
function predicateAt(own: Token[]): number | undefined {
  for (let k = 2; k < own.length; k++) {
    if (own[k]!.w === 'worth') return k;
    const hit = LEXICON.longestAt(own, k);
    if (
      hit?.payloads.some((s) => s.k === 'finding' || s.k === 'fail' || (s.k === 'action' && s.form !== 'ing'))
    )
      return k;
  }
  return undefined;
}

/** Where the thing ends that was asked about: behind its name as a part, or before what it is asked to be. */
function subjectEnd(own: Token[]): number | undefined {
  for (let k = 1; k < own.length; k++) {
    const hit = LEXICON.longestAt(own, k);
    if (hit?.payloads.some((s) => s.k === 'part')) return hit.next;
  }
  return predicateAt(own);
}

/** "and the mending? I was at that on Sunday", "holes? in 2-3": the kind of work or of damage heads what is told of it. */
function headed(
  own: Token[],
  answer: Token[],
  colon: Token,
  before: Token[],
  about: boolean,
): Told | undefined {
  const hit = LEXICON.longestAt(own, 0);
  if (!hit || hit.next !== own.length) {
    // "and the wool for the ties? navy, that's settled"
    return hit && FOR_THEM.test(wordsOf(own.slice(hit.next))) && hit.payloads.some((s) => s.k === 'material')
      ? { said: [...ofTheTies(own, before), colon], taken: 0 }
      : undefined;
  }
  const work =
    hit.payloads.some((s) => s.k === 'task') &&
    /^(?:i|did|was|put|spent|had|got|an?|some|half)$/.test(answer[0]!.w);
  // "what about the sashing? it's puckered all over", "how's the binding? worn along the top"
  const part = hit.payloads.some((s) => s.k === 'part') && about;
  if (part) return { said: [...own, colon], taken: 0 };
  return work ? { said: [...own, colon], taken: 0 } : damageHeads(own, answer);
}
/** "… the ties, four inches apart. And the wool for them?" */
const ofTheTies = (own: Token[], before: Token[]): Token[] =>
  own.at(-1)!.w === 'them' && before.some((t) => /^(?:ties|tie|tails|knots)$/.test(t.w))
    ? [...own.slice(0, -1), { ...own.at(-1)!, w: 'ties' }]
    : own;
/** "holes? in 2-3", "stains: one, on 3-3, brown": the damage, and where it is. */
function damageHeads(own: Token[], answer: Token[]): Told | undefined {
  const hit = LEXICON.longestAt(own, 0);
  if (hit?.next !== own.length || !hit.payloads.some((s) => s.k === 'finding')) return undefined;
  if (PLACED.test(wordsOf(answer.slice(0, 2)))) return { said: own, taken: 0 };
  const taken = yesBefore(answer);
  return taken ? { said: own, taken } : undefined;
}
const FOR_THEM = /^for (?:it|them|that|those|the \w+)$/;
const PLACED =
  /^(?:(?:in|on|all|along|across|at|down|over|both|every|everywhere|near|round|around)(?: |$)|the (?:whole|top|bottom|left|right|first|second|third|fourth|fifth|last|middle|same)$)/;

/** "yes, in the blue check", "one, on 3-3", "a bit, on the backing": how much of the answer says no more than that there is some. */
function yesBefore(answer: Token[]): number | undefined {
  const few =
    /^(?:a (?:bit|few|little|lot|couple|good few)|(?:yes|yep|yeah|yup|aye)(?: , (?:a (?:bit|few|little|lot|couple)|one|two|three|some|plenty|lots))?|plenty|lots|some|one|two|three|four|five|six|several)(?: ,| -| --)? (?=in |on |all |along |across |at |down |over |both |every)/.exec(
      `${wordsOf(answer)} `,
    );
  return few ? few[0].trim().split(' ').length : undefined;
}
