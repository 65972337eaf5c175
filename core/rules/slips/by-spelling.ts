import { ACTION_VERBS } from '../../lexicon/actions.ts';
import { FINDING_PHRASES } from '../../lexicon/findings.ts';
import { MATERIAL_PHRASES } from '../../lexicon/materials.ts';
import { OBJECT_PHRASES } from '../../lexicon/objects.ts';
import { SPELT_LIKE, SPELT_WORDS } from '../../lexicon/spelling.ts';
import { STITCH_PHRASES } from '../../lexicon/stitches.ts';
import { inflect } from '../../text/inflect.ts';

/** Shorter words of the trade have too many neighbours that mean something: "hole", "tear", "seam". */
const wordsIn = (phrase: string): string[] => phrase.split(/[ |?]/).filter((w) => /^[a-z]{6,}$/.test(w));

function wordsToSpell(): Set<string> {
  const words = new Set(SPELT_WORDS);
  const phrases = [
    ...Object.values(FINDING_PHRASES).flat(),
    ...Object.values(MATERIAL_PHRASES).flat(),
    ...Object.values(OBJECT_PHRASES).flat(),
    ...Object.values(STITCH_PHRASES).flatMap((s) => s.phrases),
    ...Object.values(ACTION_VERBS)
      .flat()
      .flatMap((row) => Object.values(inflect(row)).flat()),
  ];
  for (const phrase of phrases) for (const word of wordsIn(phrase)) words.add(word);
  return words;
}

/** How a word comes out in haste: a letter left out (not the first or last), doubled, or changed about with its neighbour. */
function misspelt(word: string): string[] {
  const out: string[] = [];
  for (let k = 0; k < word.length; k++) {
    const [letter, next] = [word[k]!, word[k + 1]];
    if (word.length >= 5 && k > 0 && next) out.push(word.slice(0, k) + word.slice(k + 1));
    if (word.length >= 5) out.push(word.slice(0, k + 1) + word.slice(k));
    if (next && letter !== next) out.push(word.slice(0, k) + next + letter + word.slice(k + 2));
  }
  return out;
}

/** Made once, so that a word costs one look. The first word that a misspelling can be keeps it: plain words come first. */
const MEANT = new Map<string, string>();
const RIGHT = wordsToSpell();
for (const word of RIGHT)
  for (const wrong of misspelt(word))
    if (!RIGHT.has(wrong) && !SPELT_LIKE.has(wrong) && !MEANT.has(wrong)) MEANT.set(wrong, word);

/** The word that was meant by one typed in haste ("teh", "stoped", "pukered"), where it is no word itself. */
export const findBySpelling = (word: string): string | undefined => MEANT.get(word);
