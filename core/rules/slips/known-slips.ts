import { SLIPS, type SlipRow } from '../../lexicon/slips.ts';
import { HEARD_SLIPS } from '../../lexicon/slips-heard.ts';
import { NUMBER_SLIPS } from '../../lexicon/slips-numbers.ts';
import { PHRASE_SLIPS } from '../../lexicon/slips-phrases.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import { type HeardAt, readAs, readPhraseAs, type SlipRule } from './slip-rule.ts';
import { isNumberWord } from './small-number-said.ts';

const BY_WORD: Map<string, SlipRow[]> = new Map();
for (const row of [...SLIPS, ...HEARD_SLIPS, ...NUMBER_SLIPS])
  BY_WORD.set(row.heard, [...(BY_WORD.get(row.heard) ?? []), row]);

const PHRASES: Map<string, { heard: string[]; meant: string[] }[]> = new Map();
for (const [heard, meant] of PHRASE_SLIPS) {
  const words = heard.split(' ');
  PHRASES.set(words[0]!, [...(PHRASES.get(words[0]!) ?? []), { heard: words, meant: meant.split(' ') }]);
}

const standsAt = ({ tokens, i }: HeardAt, words: readonly string[]): boolean =>
  words.every((word, k) => tokens[i + k]?.w === word);

/** Words that this user has taught. */
export const taughtWord: SlipRule = (at) => {
  const lesson = at.lessons.find(([heard]) => standsAt(at, heard));
  return lesson && readPhraseAs(at, lesson[0].length, lesson[1], 'slip.taught');
};

/** Several words that are known to be heard for others. */
export const knownPhrase: SlipRule = (at) => {
  const phrase = PHRASES.get(at.tokens[at.i]!.w)?.find(({ heard }) => standsAt(at, heard));
  return phrase && readPhraseAs(at, phrase.heard.length, phrase.meant, 'slip.ear');
};

/** "but 2 packs needles 4.10", "dot four yards at 9.25": bought */
export const boughtHeard: SlipRule = ({ tokens, i }) => {
  const amount = tokens[i + 1];
  const unit = tokens[i + 2];
  if (!/^(?:but|dot|bot)$/.test(tokens[i]!.w)) return undefined;
  if (!unit || !(amount?.kind === 'number' || isNumberWord(amount)) || !Object.hasOwn(UNIT_WORDS, unit.w))
    return undefined;
  const priced = tokens
    .slice(i + 3)
    .some(({ w }) => /^(?:[$£€@]|at|each|dollars|pounds|euros)$/.test(w) || /\d\.\d\d/.test(w));
  return priced ? readAs(tokens[i]!, 'bought', 'slip.ear') : undefined;
};

/** One word that is known to be heard for another, where its neighbours allow it. */
export const knownWord: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const rows = BY_WORD.get(t.w);
  if (!rows) return undefined;
  const left = before.at(-1)?.w ?? '';
  const right = tokens[i + 1]?.w ?? '';
  const row = rows.find(
    (r) =>
      (!r.before || r.before.includes(left)) &&
      (!r.after || r.after.includes(right)) &&
      !r.notBefore?.includes(left) &&
      !r.notAfter?.includes(right),
  );
  if (!row || (t.w === 'seam' && row.meant === 'same' && isOfSeam(tokens.slice(i + 1)))) return undefined;
  // "crepe line" is one word
  const joins = row.after !== undefined && ['crepeline', 'sashing', 'fusible'].includes(row.meant);
  return { ...readAs(t, row.meant, 'slip.ear'), took: joins ? 2 : 1 };
};

/** "seam on the left of 3-3 has popped": what comes of seams alone is told of it before the statement ends. */
function isOfSeam(after: HeardAt['tokens']): boolean {
  const stop = after.findIndex(({ w }) => /^(?:[.,;!?\n]|and|but)$/.test(w));
  return after
    .slice(0, stop < 0 ? 12 : stop)
    .some(({ w }) =>
      /^(?:open|opened|popped|split|splitting|gone|going|undone|loose|apart|adrift|failed|burst|gaping|unstitched|closed|shut|resewn|resewed|sewn)$/.test(
        w,
      ),
    );
}
