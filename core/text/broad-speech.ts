import type { Token } from './tokenise.ts';
import { wordSet } from './word-set.ts';

/** Words as they are said and written in one part of the country, and the same words as all others write them. */
const PLAIN = new Map<string, string[]>(
  Object.entries({
    // the north of England
    wi: 'with',
    nay: 'no',
    nowt: 'nothing',
    owt: 'anything',
    summat: 'something',
    misen: 'myself',
    meself: 'myself',
    yon: 'that',
    // Scotland and Ulster
    wee: 'small',
    oot: 'out',
    doon: 'down',
    aff: 'off',
    auld: 'old',
    roond: 'round',
    frae: 'from',
    tae: 'to',
    ower: 'over',
    noo: 'now',
    aboot: 'about',
    hae: 'have',
    wisnae: "was n't",
    wasnae: "was n't",
    isnae: "is n't",
    arenae: "are n't",
    werenae: "were n't",
    didnae: "did n't",
    dinnae: "do n't",
    dinna: "do n't",
    didna: "did n't",
    doesnae: "does n't",
    hasnae: "has n't",
    havenae: "have n't",
    cannae: "ca n't",
    canna: "ca n't",
    couldnae: "could n't",
    willnae: "wo n't",
    winnae: "wo n't",
    wouldnae: "would n't",
    amnt: "am n't",
  }).map(([said, plain]) => [said, plain.split(' ')]),
);

/** Words that lose their end to an apostrophe. */
const CLIPPED = new Map(Object.entries({ an: 'and', o: 'of', t: 'the', th: 'the', wi: 'with' }));
/** "it were", "that were": of one. */
const ONE = wordSet('it that this he she i which');
/** "if it were mine", "the names on it were stitched": of several, or of none. */
const NOT_ITS = /^(?:if|as|though|on|in|of|with|at|behind|to|under|over|by|from)$/;
/** "me mind", "me needle": what is one's own. */
const OWN = wordSet(
  'mind own tape tapes thread threads needle needles glasses specs hand hands thumb thumbs finger fingers eye eyes mam mum nan nana gran grandma mother sister dad scissors machine iron frame pins dinner tea bench kitchen table word notes fault list',
);
/** Behind these "me" is given or told something, and has nothing. */
const GIVES = wordSet(
  'give gave gives given tell told tells show showed cost costs took takes take let lets gets got get bring brought left hand handed',
);

/** A word that begins with a vowel when it is said: before it "an" is no "and". */
const VOWEL = /^(?:[aeiouh]|8|11|18|1[18]\d|8\d)/;

/**
 * The words of broad speech in their common form: "patched it wi' moleskin", "nay, it were running stitch", "binding an' all", "comin'
 * apart", "3-4 isnae torn". Offsets stay those of the words as said.
 */
export function withPlainWords(tokens: Token[]): Token[] {
  return tokens.flatMap((t, k) => {
    if (t.kind !== 'word') return [t];
    // "binding an' all": that too
    if (isAndAll(tokens, k)) return [{ ...t, w: 'too' }];
    if (isAndAll(tokens, k - 1)) return [];
    const before = tokens[k - 1]?.w ?? '';
    const next = tokens[k + 1];
    const plain = PLAIN.get(t.w) ?? inThisPlace(t, before, next, tokens[k - 2]?.w ?? '');
    if (!plain) return [t];
    return plain.map((w, n) => ({ ...t, w, glued: n > 0 || t.glued }));
  });
}

function inThisPlace(
  t: Token,
  before: string,
  next: Token | undefined,
  earlier: string,
): string[] | undefined {
  const { w } = t;
  // the apostrophe at the end of a word is no part of `w`, but of the words as said
  const clipped = t.to - t.from === w.length + 1;
  if (clipped && CLIPPED.has(w)) return [CLIPPED.get(w)!];
  if (clipped && w.length > 3 && w.endsWith('in')) return [`${w}g`];
  // "in t'corner"
  const joined = /^th?'([a-z]{3,})$/.exec(w)?.[1];
  if (joined) return ['the', joined];
  // "there were a hole", but "there were two holes" and "if it were mine"
  if (
    w === 'were' &&
    !NOT_ITS.test(earlier) &&
    (ONE.has(before) || (before === 'there' && /^an?$/.test(next?.w ?? '')))
  )
    return ['was'];
  if (w === 'me' && next && OWN.has(next.w) && !GIVES.has(before)) return ['my'];
  if (w === 'an' && next && (next.kind === 'number' ? !VOWEL.test(next.w) : AND.has(next.w))) return ['and'];
  return undefined;
}

/** "an' all", and "and all" behind a thing or a place that is all its statement says. */
function isAndAll(tokens: Token[], k: number): boolean {
  const t = tokens[k];
  if (!t || !/^(?:an|and)$/.test(t.w) || tokens[k + 1]?.w !== 'all' || !isEnd(tokens[k + 2])) return false;
  if (t.w === 'an') return true;
  let from = k;
  while (from > 0 && !isEnd(tokens[from - 1])) from--;
  return from > 0 && k > from && k - from <= 3;
}
const isEnd = (t: Token | undefined): boolean => !t || /^(?:[.,;!?\n]|--)$/.test(t.w);

/** Before these "an" can be nothing but "and". */
const AND = wordSet(
  'the i it then so that this there one two three four five six seven nine ten row block col column both my',
);
