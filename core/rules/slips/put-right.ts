import type { Slip } from '../../../shared/note.ts';
import type { QuiltGrid } from '../../../shared/quilt.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { BLOCKS_HEARD } from './blocks-heard.ts';
import { findBySound, isNameWord, nameWordApart } from './by-sound.ts';
import { findBySpelling } from './by-spelling.ts';
import { droppedEnding } from './dropped-ending.ts';
import { FIGURES_HEARD } from './figures-heard.ts';
import { HOURS_HEARD } from './hours-heard.ts';
import { boughtHeard, knownPhrase, knownWord, taughtWord } from './known-slips.ts';
import { MARKS_HEARD } from './marks-heard.ts';
import { NUMBERS_HEARD } from './numbers-heard.ts';
import { sideHeard } from './sides-heard.ts';
import { readAs, readPhraseAs, type SlipRule, wordsOf } from './slip-rule.ts';
import { STOPS_HEARD } from './stops-heard.ts';
import { findByConsonants } from './vowels-left-out.ts';
import { WORDS_HEARD } from './words-heard.ts';

/** "re-press r2", "re-photo 2-4": done once more */
const doneOnceMore: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  const verb = t.w.startsWith('re') ? doneAgain(tokens, i) : undefined;
  return verb ? readAs(t, verb) : undefined;
};

const misspelt: SlipRule = ({ tokens, i, names }) => {
  const t = tokens[i]!;
  const spelt = t.kind === 'word' ? findBySpelling(t.w) : undefined;
  if (!spelt || LEXICON.longestAt(tokens, i) || (names && isNameWord(names, t.w))) return undefined;
  return readAs(t, spelt, 'slip.spelling');
};

const vowelsLeftOut: SlipRule = ({ tokens, i, names, spoken }) => {
  const t = tokens[i]!;
  const meant = spoken || t.kind !== 'word' ? undefined : findByConsonants(t.w);
  if (!meant || LEXICON.longestAt(tokens, i) || (names && isNameWord(names, t.w))) return undefined;
  return readAs(t, meant, 'slip.short');
};

/** "darn'd 3-2", "qlt'd row 1", "sew'd shut": a past form with its ending hung on. */
const endingHungOn: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const ending = tokens[i + 1];
  if (/^(the|that|this|a)$/.test(before.at(-1)?.w ?? '')) return undefined;
  if (
    ending?.w !== "'d" ||
    !ending.glued ||
    t.kind !== 'word' ||
    LEXICON.longestAt(tokens, i)?.next === i + 2
  )
    return undefined;
  const past = [`${t.w}ed`, `${t.w}d`, findByConsonants(`${t.w}d`)].find(
    (w) =>
      w !== undefined &&
      LEXICON.longestAt([{ ...t, w }], 0)?.payloads.some(
        (s) => s.k === 'finding' || (s.k === 'action' && s.form === 'past'),
      ),
  );
  return past
    ? { tokens: [{ ...t, w: past, to: ending.to, heard: `${t.w}'d` }], took: 2, rule: 'slip.short' }
    : undefined;
};

/** "bubble gum print", of a cloth named "bubblegum print". */
const nameApart: SlipRule = (at) => {
  const { tokens, i, names } = at;
  const apart = names && nameWordApart(tokens, i, names);
  return apart ? readPhraseAs(at, apart.length, [apart.word], 'slip.sound-fabric') : undefined;
};

const soundsLike: SlipRule = ({ tokens, i, before, names, spoken }) => {
  const t = tokens[i]!;
  const alike = findBySound(tokens, i, before.at(-1), names, spoken);
  if (!alike) return undefined;
  const took = alike.length ?? 1;
  const heard = tokens
    .slice(i, i + took)
    .map(({ w }) => w)
    .join(' ');
  return { tokens: [{ ...t, w: alike.word, to: tokens[i + took - 1]!.to, heard }], took, rule: alike.rule };
};

const KNOWN_AND_ALIKE: readonly SlipRule[] = [
  nameApart,
  knownPhrase,
  ...NUMBERS_HEARD,
  ...HOURS_HEARD,
  ...MARKS_HEARD,
  boughtHeard,
  knownWord,
  droppedEnding,
  doneOnceMore,
  endingHungOn,
  misspelt,
  vowelsLeftOut,
  soundsLike,
];

/** The first that applies is taken: what the user taught, what is known to be heard, then what sounds or looks alike. */
const RULES: readonly SlipRule[] = [taughtWord, ...KNOWN_AND_ALIKE];
/** The same for notes said aloud, where the recogniser writes names of blocks, figures and ends of statements otherwise. */
const RULES_HEARD: readonly SlipRule[] = [
  taughtWord,
  ...BLOCKS_HEARD,
  ...FIGURES_HEARD,
  sideHeard,
  ...WORDS_HEARD,
  ...STOPS_HEARD,
  ...KNOWN_AND_ALIKE,
];

/** The verb of treatment that is left when "re" is taken off a word that is none itself. */
function doneAgain(tokens: readonly Token[], i: number): string | undefined {
  const { w } = tokens[i]!;
  if (w.length < 5 || LEXICON.longestAt(tokens, i)) return undefined;
  const rest = w.slice(2);
  const hit = LEXICON.longestAt([{ ...tokens[i]!, w: rest }], 0);
  return hit?.payloads.some((s) => s.k === 'action') ? rest : undefined;
}

/**
 * Puts right what the recogniser's ear made of the trade's words, only where the words as heard make no sense in the place
 * where they stand: words that this user has taught, then slips that are known, then words that sound like the one heard. A
 * token keeps what was heard. Numbers are never touched in what was typed; where a number said aloud is read otherwise, the slip says so.
 */
export function putSlipsRight(
  tokens: readonly Token[],
  taught: Record<string, string> | undefined,
  names?: object,
  spoken = false,
  grid?: QuiltGrid,
): { tokens: Token[]; slips: Slip[] } {
  const slips: Slip[] = [];
  const before: Token[] = [];
  const rules = spoken ? RULES_HEARD : RULES;
  const lessons = Object.entries(taught ?? {}).map(
    ([heard, means]) => [heard.toLowerCase().split(/\s+/), means.toLowerCase().split(/\s+/)] as const,
  );
  for (let i = 0; i < tokens.length; ) {
    const at = { tokens, i, before, lessons, names, spoken, grid };
    let mend: ReturnType<SlipRule>;
    for (const rule of rules) {
      mend = rule(at);
      if (mend) break;
    }
    if (!mend) {
      before.push(tokens[i]!);
      i++;
      continue;
    }
    const replaced = [
      ...before.splice(before.length - (mend.tookBack ?? 0)),
      ...tokens.slice(i, i + mend.took),
    ];
    if (mend.rule) {
      slips.push({
        heard: wordsOf(replaced),
        read: wordsOf(mend.tokens),
        from: replaced[0]!.from,
        to: replaced.at(-1)!.to,
        rule: mend.rule,
      });
    }
    before.push(...mend.tokens);
    i += mend.took;
  }
  return { tokens: before, slips };
}
