import { ACTION_VERBS } from '../../lexicon/actions.ts';
import { ASIDE_THINGS } from '../../lexicon/asides.ts';
import { FINDING_PHRASES } from '../../lexicon/findings.ts';
import { MATERIAL_PHRASES } from '../../lexicon/materials.ts';
import { OBJECT_PHRASES } from '../../lexicon/objects.ts';
import { BLOCK_WORDS, COLUMN_WORDS, PART_PHRASES, SIDES } from '../../lexicon/place-words.ts';
import { NO_SHORT_FORM, SHORT_FORM_FIRST, SPELT_WORDS } from '../../lexicon/spelling.ts';
import { STITCH_PHRASES } from '../../lexicon/stitches.ts';
import { TASK_PHRASES } from '../../lexicon/tasks.ts';
import { HOUR_WORDS, MINUTE_WORDS, UNIT_WORDS } from '../../lexicon/units.ts';
import { inflect } from '../../text/inflect.ts';

/** The words of the trade, the commonest first: of two that are written alike the first is meant. */
function* wordsToShorten(): Iterable<string> {
  yield* SHORT_FORM_FIRST;
  for (const row of Object.values(ACTION_VERBS).flat())
    for (const forms of Object.values(inflect(row))) for (const form of forms) yield* form.split(/[ |?-]/);
  const phrases = [
    ...Object.values(FINDING_PHRASES).flat(),
    ...Object.values(OBJECT_PHRASES).flat(),
    ...PART_PHRASES.map(([phrase]) => phrase),
    ...Object.values(STITCH_PHRASES).flatMap((s) => s.phrases),
    ...Object.values(MATERIAL_PHRASES).flat(),
    ...Object.values(TASK_PHRASES).flat(),
  ];
  for (const phrase of phrases) yield* phrase.split(/[ |?-]/);
  yield* SPELT_WORDS;
}

/** "patched" -> "ptchd"; "backing" -> "bckng", "bkng", "bkg", "backg"; "pressed" -> "prssd", "prsd"; "side" -> "sde"; "frayed" -> "frd", "fryd". */
function shortFormsOf(word: string): string[] {
  const bones = (w: string, vowels: RegExp): string => w[0]! + w.slice(1).replace(vowels, '');
  const forms = new Set<string>();
  for (const w of [word, word.replace(/([a-z])\1/g, '$1'), word.replace(/ck/g, 'k')])
    for (const vowels of [/[aeiou]/g, /[aeiouy]/g]) {
      const short = bones(w, vowels);
      forms.add(short);
      if (w.endsWith('ing')) forms.add(`${short.slice(0, -2)}g`);
      // "thing" is no "thinning"
      if (w.endsWith('ing') && !w.endsWith('ning')) forms.add(`${w.slice(0, -3)}g`);
      if (w.endsWith('e')) forms.add(`${short}e`);
    }
  return [...forms];
}

/** Short forms that are known for themselves wherever they are read. */
const KNOWN = new Set([
  ...NO_SHORT_FORM,
  ...Object.keys(UNIT_WORDS),
  ...HOUR_WORDS,
  ...MINUTE_WORDS,
  ...Object.keys(SIDES),
  ...BLOCK_WORDS,
  ...COLUMN_WORDS,
  // "dog" is no "doing"
  ...ASIDE_THINGS.filter((x) => !x.includes(' ')),
  'thr',
  'thrd',
]);
function meantByShortForms(): ReadonlyMap<string, string> {
  const meant = new Map<string, string>();
  for (const word of wordsToShorten()) {
    if (!/^[a-z]{4,}$/.test(word)) continue;
    for (const short of shortFormsOf(word))
      if (short.length >= 3 && short.length < word.length && !KNOWN.has(short) && !meant.has(short))
        meant.set(short, word);
  }
  return meant;
}

/** Made once, so that a word costs one look; at the first look, since it takes some 30 ms that starting need not wait for. */
let meant: ReadonlyMap<string, string> | undefined;

/** The word of the trade that was typed without its vowels ("drnd", "ptchd", "sde"), as hurried thumbs do. */
export function findByConsonants(word: string): string | undefined {
  meant ??= meantByShortForms();
  return meant.get(word);
}
