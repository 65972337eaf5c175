import { ANYWHERE, CLOSINGS, OPENINGS, OPENINGS_APART, PASSING } from '../lexicon/talk.ts';
import { PhraseTrie } from './phrase-trie.ts';
import { isNumberAt } from './starts-number.ts';
import type { Token } from './tokenise.ts';
import { wordSet } from './word-set.ts';

const trieOf = (...lists: string[][]): PhraseTrie<true> => {
  const trie = new PhraseTrie<true>();
  for (const list of lists) for (const phrase of list) trie.add(phrase, true);
  return trie;
};

const OPEN = trieOf(OPENINGS);
const APART = trieOf(OPENINGS_APART);
const BETWEEN = trieOf(PASSING);
const LAST = trieOf(PASSING, CLOSINGS);

const LOOSE = trieOf(ANYWHERE);

const STOPS = wordSet('. ; ! \n');
const JOINTS = wordSet(', . ; : ! - --');
const VERBS = wordSet("is are was were has have had 's 're 've needs need wants want will 'll does did");
const BEING = wordSet("is are was were 's 're has have had 've");
const ASKS = wordSet('is are was were has have did do does needs need can should shall must');
/** "the binding, top and right", "bottom, right": a side, and no closing word. */
const SIDES = wordSet('top bottom upper lower left right front back and or side');

/** As many words as can be said of a beginning. */
const FEW = 3;

/**
 * The tokens without what is said around them: "just to say 3-2 is torn", "good evening, 3-2 is torn",
 * "3-2 is, you know, torn, so there we are". Where a comma stood on both sides one stays. A note that is nothing else is
 * left as it is.
 */
export function withoutTalk(tokens: Token[]): Token[] {
  const kept: Token[] = [];
  let atHead = true;
  for (let i = 0; i < tokens.length; ) {
    const next =
      (atHead ? openingAt(tokens, i) : undefined) ??
      passingAt(tokens, i, kept.at(-1)) ??
      anyhowAt(tokens, i) ??
      LOOSE.longestAt(tokens, i)?.next ??
      toListenerAt(tokens, i);
    if (next !== undefined) {
      // "the other one, bless it, is torn": no comma is left between a subject and its verb
      // "there are, let me count, four holes": nor between the verb and what it tells
      if (kept.at(-1)?.w === ',' && (VERBS.has(tokens[next]?.w ?? '') || BEING.has(kept.at(-2)?.w ?? '')))
        kept.pop();
      // "half a metre of, what's the word, crepeline": nor between an amount and its stuff
      if (kept.findLast((t) => t.w !== ',')?.w === 'of' && !isNumberAt(tokens, next))
        while (kept.at(-1)?.w === ',') kept.pop();
      i = next;
      continue;
    }
    const token = tokens[i]!;
    atHead = STOPS.has(token.w);
    kept.push(token);
    i++;
  }
  // the comma before a word that closed the note closes nothing
  if (kept.length < tokens.length) {
    const stop = STOPS.has(kept.at(-1)?.w ?? '') ? kept.pop() : undefined;
    while (/^(?:,|-|--|:)$/.test(kept.at(-1)?.w ?? '')) kept.pop();
    if (stop) kept.push(stop);
  }
  return kept.some((t) => t.kind !== 'mark') ? kept : tokens;
}

/** Where it goes on behind words that only open a sentence. */
function openingAt(tokens: Token[], i: number): number | undefined {
  const open = OPEN.longestAt(tokens, i);
  const apart = open ?? APART.longestAt(tokens, i);
  if (!apart) return undefined;
  const mark = tokens[apart.next]?.w ?? '';
  const marked = /^(?:[,:.!-]|--)$/.test(mark);
  const next = marked ? apart.next + 1 : apart.next;
  if (next >= tokens.length || tokens[next]!.kind === 'mark') return undefined;
  // "what else is there to mend" asks
  if (open && tokens[apart.next - 1]!.w === 'else' && !marked && ASKS.has(tokens[next]!.w)) return undefined;
  if (open) return next;
  // "Next: wash, dry flat" is a heading, "Right, not left" an answer
  const heading = mark === ':' && tokens[apart.next - 1]!.w === 'next';
  // "ok, tying", "right, down to it": with so little behind it the word begins the work
  return marked && !heading && tokens[next]!.w !== 'not' && tokens.length > next + FEW ? next : undefined;
}

/** "would you know", "let you know": something is known; "you know what": and here it is said what. */
const KNOWS = wordSet(
  "do does did would n't not will 'll 'd let as if can could should must may might how what where that than whether when who all to have because since",
);
const KNOWN = wordSet(
  'what how where which who whose why when if that it the this those these them him her me my about of i a more better best already whether',
);

/** "half of them were gone anyhow", "it was thin anyway, so I netted it": at the end of what is told. */
const anyhowAt = (tokens: Token[], i: number): number | undefined =>
  ANYHOW.has(tokens[i]!.w) &&
  i > 1 &&
  tokens[i - 1]!.kind === 'word' &&
  (tokens[i + 1]?.kind ?? 'mark') === 'mark'
    ? i + 1
    : undefined;
const ANYHOW = wordSet('anyhow anyway anyways');

/** "in you know row three", with no comma about it. */
function toListenerAt(tokens: Token[], i: number): number | undefined {
  const after = tokens[i + 2];
  return tokens[i]!.w === 'you' &&
    tokens[i + 1]?.w === 'know' &&
    after !== undefined &&
    after.kind !== 'mark' &&
    !KNOWN.has(after.w) &&
    !KNOWS.has(tokens[i - 1]?.w ?? '')
    ? i + 2
    : undefined;
}

/** "green twill: ok", "row four - fine": told of what heads it. */
const saysHowItIs = (before: Token, { w }: Token): boolean =>
  before.w === ':' || (/^--?$/.test(before.w) && /^(?:ok|okay|alright|all)$/.test(w));

/** Where it goes on behind words said in passing, the comma behind them taken too. */
function passingAt(tokens: Token[], i: number, before: Token | undefined): number | undefined {
  if (!before || !JOINTS.has(before.w)) return undefined;
  // "three yards of, oh, what's it called, twenty-one dollars"
  const sighs = /^(?:oh|ah|er|um|now)$/.test(tokens[i]!.w) && tokens[i + 1]?.w === ',';
  const between = BETWEEN.longestAt(tokens, sighs ? i + 2 : i);
  if (between && before.w === ',' && tokens[between.next]?.w === ',') return between.next + 1;
  const last = LAST.longestAt(tokens, i);
  if (!last || saysHowItIs(before, tokens[i]!)) return undefined;
  const end = tokens.slice(last.next).every((t) => t.w === '.' || t.w === '!');
  return end && !SIDES.has(tokens[i - 2]?.w ?? '') ? last.next : undefined;
}
