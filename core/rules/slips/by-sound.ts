import { doubleMetaphone } from 'double-metaphone';
import { ACTION_VERBS } from '../../lexicon/actions.ts';
import { FINDING_PHRASES } from '../../lexicon/findings.ts';
import { MATERIAL_PHRASES } from '../../lexicon/materials.ts';
import { OBJECT_PHRASES } from '../../lexicon/objects.ts';
import { STITCH_PHRASES } from '../../lexicon/stitches.ts';
import { inflect } from '../../text/inflect.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';

/** A word of the trade that sounds like the one heard, or like that and the next together (`length` 2). */
export type SoundAlike = { word: string; rule: string; length?: 2 };

const plainWords = (phrases: string[]): string[] =>
  phrases.flatMap((p) => (/^[a-z]{5,}$/.test(p) ? [p] : []));
const codesOf = (word: string): string[] => [...new Set(doubleMetaphone(word))].filter((code) => code !== '');

type Sounds = Map<string, string>;
function soundsOf(words: Iterable<string>): Sounds {
  const sounds: Sounds = new Map();
  // The first word of a sound keeps it: the lists begin with the commonest.
  for (const word of words) for (const code of codesOf(word)) if (!sounds.has(code)) sounds.set(code, word);
  return sounds;
}

/** What can stand before "stitch", in one word: "ladder", "blanket". */
const STITCH_WAYS = soundsOf(
  Object.values(STITCH_PHRASES)
    .flatMap(({ phrases }) => phrases)
    .flatMap((p) => /^([a-z]{4,}) (?:stitch|st)(?:\||$)/.exec(p)?.[1] ?? []),
);
const FINDINGS = soundsOf(
  Object.values(FINDING_PHRASES)
    .flatMap(plainWords)
    .filter((w) => w.endsWith('ed')),
);

/** Long words of the trade whose sound hardly another word has: "crepeline", "interfacing", "herringbone". */
const DISTINCT = soundsOf(
  [
    ...Object.values(STITCH_PHRASES).flatMap(({ phrases }) => phrases),
    ...Object.values(MATERIAL_PHRASES).flat(),
    ...Object.values(OBJECT_PHRASES).flat(),
  ].flatMap((phrase) => (/^[a-z]{8,}$/.test(phrase) ? [phrase] : [])),
);
/** Which letters a word has, one bit each. */
function lettersOf(word: string): number {
  let letters = 0;
  for (let k = 0; k < word.length; k++) letters |= 1 << (word.charCodeAt(k) - 97);
  return letters;
}
function countBits(bits: number): number {
  let count = 0;
  for (let rest = bits; rest; rest &= rest - 1) count++;
  return count;
}
const DISTINCT_BY_LETTER = new Map<string, { length: number; letters: number }[]>();
for (const word of new Set(DISTINCT.values()))
  DISTINCT_BY_LETTER.set(word[0]!, [
    ...(DISTINCT_BY_LETTER.get(word[0]!) ?? []),
    { length: word.length, letters: lettersOf(word) },
  ]);
/**
 * Can a word of DISTINCT be reached by so many changes of a letter? Asked before the sound of a word is made out, which takes
 * a hundred times as long: hardly a word of everyday comes near.
 */
function isNearDistinct(word: string, changes: number): boolean {
  const letters = lettersOf(word);
  return (
    DISTINCT_BY_LETTER.get(word[0]!)?.some(
      (other) =>
        Math.abs(other.length - word.length) <= changes &&
        countBits(other.letters & ~letters) <= changes &&
        countBits(letters & ~other.letters) <= changes,
    ) ?? false
  );
}
const distinct = (word: string): string | undefined =>
  codesOf(word)
    .filter((code) => code.length >= 5)
    .flatMap((code) => DISTINCT.get(code) ?? [])
    .find((found) => found[0] === word[0]);

/** What cloth and thread are counted in: between a number and "of" an unknown word of that sound is one. */
const UNITS = soundsOf(['yards', 'metres', 'inches', 'spools', 'skeins']);
const NUMBER_WORDS = new Set(
  'two three four five six seven eight nine ten eleven twelve fifteen twenty half quarter eighth few'.split(
    ' ',
  ),
);
const isNumber = (token: Token | undefined): boolean =>
  token !== undefined && (/^[\d½¼¾⅛⅜⅝⅞./]+$/.test(token.w) || NUMBER_WORDS.has(token.w));

/** Words that stand between a number and "of" and are no unit misheard. */
const NO_UNITS = new Set(
  'ounces squares scarves skirts sides strips pieces blocks rows columns stars months matters mothers sets sheets scraps sorts parts pairs kinds layers corners quarters halves thirds eighths ends lots cups bags boxes tins jars plates members minutes hours mentions patches seams steps stacks spots marks'.split(
    ' ',
  ),
);
/** Long verbs of treatment, whose sound hardly another word has: "vacuaming", "herringboning". */
const VERBS = soundsOf(
  Object.values(ACTION_VERBS)
    .flat()
    .flatMap((row) => {
      const { past, ing } = inflect(row);
      return [...past, ...ing];
    })
    .filter((w) => /^[a-z]{8,}$/.test(w)),
);
const verbOf = (word: string): string | undefined =>
  codesOf(word)
    .filter((code) => code.length >= 5)
    .flatMap((code) => VERBS.get(code) ?? [])
    .find((found) => found[0] === word[0] && lettersApart(word, found) <= 3);

/** Words that make sense before "stitch" as they are. */
const STITCH_ADJECTIVES = new Set(
  (
    'that this each every loose broken other another little short long small tiny large neat even same first last next half quarter inch single double open close closed more many these those every with from over good quick rough tight final extra ' +
    'morning evening afternoon night today tonight hour hours minute minutes struck strike spent started stopped finished keep kept carry done hate love ' +
    'enjoy like resume continue begin began forget drop scrap cancel skip consider considering then again whole while before after about without been being start stop'
  ).split(' '),
);
const IS = new Set([
  "'s",
  'is',
  'are',
  'was',
  'were',
  'badly',
  'very',
  'slightly',
  'rather',
  'edge',
  'edges',
]);
const AFTER_FINDING = new Set([
  '',
  'at',
  'along',
  'in',
  'on',
  'all',
  'down',
  'near',
  'and',
  'right',
  'too',
  'as',
  'just',
]);
const CLOTH_NOUNS = new Set(
  'block blocks one ones piece pieces patch patches square squares fabric cloth strip strips'.split(' '),
);

/** Words of everyday that sound like a finding and are none. */
const EVERYDAY = new Set('reached allowed wrapped logged rushed shared tried afforded'.split(' '));

/** How many letters have to be changed, put in or left out (Levenshtein). */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length]!;
}

const isOneApart = (a: string, b: string): boolean => {
  if (Math.abs(a.length - b.length) > 1) return false;
  let from = 0;
  while (from < a.length && a[from] === b[from]) from++;
  let end = 0;
  while (end < Math.min(a.length, b.length) - from && a.at(-1 - end) === b.at(-1 - end)) end++;
  return Math.max(a.length, b.length) - from - end <= 1;
};

type FabricSounds = { words: Set<string>; byWord: { word: string; name: string[]; codes: string[] }[] };
const fabricSounds = new WeakMap<object, FabricSounds>();
function soundsOfFabrics(fabrics: object): FabricSounds {
  let known = fabricSounds.get(fabrics);
  if (!known) {
    const names = Object.keys(fabrics).map((name) =>
      name
        .toLowerCase()
        .split(/[^a-z0-9']+/)
        .filter(Boolean),
    );
    known = {
      words: new Set(names.flat()),
      byWord: names.flatMap((name) => name.map((word) => ({ word, name, codes: codesOf(word) }))),
    };
    fabricSounds.set(fabrics, known);
  }
  return known;
}

/** "bubble gum", where a cloth is named "bubblegum print": how many words from `i` on are one word of a name written apart. */
export function nameWordApart(
  tokens: readonly Token[],
  i: number,
  fabrics: object,
): { word: string; length: number } | undefined {
  const [first, second] = [tokens[i]!, tokens[i + 1]];
  const hyphen = second?.w === '-' && second.glued;
  const last = hyphen ? tokens[i + 2] : second;
  if (first.kind !== 'word' || last?.kind !== 'word' || first.w.length < 3 || last.w.length < 3)
    return undefined;
  const word = first.w + last.w;
  const { words } = soundsOfFabrics(fabrics);
  return words.has(word) && !words.has(first.w) && !words.has(last.w)
    ? { word, length: hyphen ? 3 : 2 }
    : undefined;
}

/** Is the word one of those that the names of this quilt's fabrics and places are made of? */
export const isNameWord = (fabrics: object, word: string): boolean =>
  soundsOfFabrics(fabrics).words.has(word);

/**
 * A word of the trade, or of this quilt's fabrics, that sounds like the one heard (Double Metaphone), where the word as heard
 * says nothing: it is in no list of the trade, and stands where only such a word can. Never a number.
 *
 * @param before the token before, as put right
 */
export function findBySound(
  tokens: readonly Token[],
  i: number,
  before: Token | undefined,
  fabrics: object | undefined,
  spoken = false,
): SoundAlike | undefined {
  const { w, kind } = tokens[i]!;
  if (kind !== 'word' || w.length < 4 || !/^[a-z]+$/.test(w)) return undefined;
  const after = tokens[i + 1]?.kind === 'mark' ? '' : (tokens[i + 1]?.w ?? '');
  const beforeStitch = /^(?:stitch|stitches|stitched|stitching)$/.test(after);
  const asFinding = IS.has(before?.w ?? '') && AFTER_FINDING.has(after);
  const names = fabrics ? soundsOfFabrics(fabrics) : undefined;
  if (LEXICON.longestAt(tokens, i) || names?.words.has(w)) return undefined;
  const whole = isNearDistinct(w, 3) ? distinct(w) : undefined;
  if (whole && lettersApart(w, whole) <= 3) return { word: whole, rule: 'slip.sound' };
  const next = tokens[i + 1];
  if (!beforeStitch && next?.kind === 'word' && /^[a-z]{3,}$/.test(next.w) && !next.glued) {
    const joined = isNearDistinct(w + next.w, 2) ? distinct(w + next.w) : undefined;
    if (joined && !joined.endsWith('ed') && lettersApart(w + next.w, joined) <= 2)
      return { word: joined, rule: 'slip.sound', length: 2 };
  }
  // "three artis of calico"
  if (after === 'of' && isNumber(before)) {
    const unit = codesOf(w).flatMap((code) => (code.length >= 4 ? (UNITS.get(code) ?? []) : []))[0];
    if (unit) return { word: unit, rule: 'slip.sound-unit' };
    // "four scents of red worsted": one sound in place of another
    if (spoken && w.endsWith('s') && !NO_UNITS.has(w))
      for (const code of codesOf(w)) {
        const near = [...UNITS].find(
          ([other]) =>
            other.length >= 4 &&
            other[0] === code[0] &&
            other.length === code.length &&
            isOneApart(code, other),
        );
        if (near && near[1][0] === w[0]) return { word: near[1], rule: 'slip.sound-unit' };
      }
  }
  if (spoken && w.length >= 6) {
    const verb = verbOf(w);
    if (verb) return { word: verb, rule: 'slip.sound-verb' };
  }
  // Of a name of one word only before "blocks" and the like; of a longer name beside one of its other words.
  const beside = CLOTH_NOUNS.has(after) || names?.words.has(before?.w ?? '') || names?.words.has(after);
  const fabricWords = !(names && beside)
    ? []
    : names.byWord.filter(
        ({ word, name }) =>
          word.length >= 4 &&
          (name.some((other) => other !== word && (other === before?.w || other === after)) ||
            (name.length === 1 && CLOTH_NOUNS.has(after))),
      );
  if (!beforeStitch && !asFinding && !fabricWords.length) return undefined;
  const codes = codesOf(w);
  const long = codes.filter((code) => code.length >= 3);
  if (beforeStitch && !STITCH_ADJECTIVES.has(w)) {
    for (const code of codes) {
      const same = STITCH_WAYS.get(code);
      if (same) return { word: same, rule: 'slip.sound-stitch' };
    }
    for (const code of long) {
      const near = [...STITCH_WAYS].filter(([other]) => other.length >= 4 && isOneApart(code, other));
      // One sound in place of another is likelier than one lost.
      const found = near.find(([other]) => other.length === code.length) ?? near[0];
      if (found) return { word: found[1], rule: 'slip.sound-stitch' };
    }
  }
  if (asFinding)
    for (const code of long) {
      const word = FINDINGS.get(code);
      if (word && w.endsWith('d') && !EVERYDAY.has(w) && lettersApart(w, word) <= 2)
        return { word, rule: 'slip.sound-finding' };
    }
  const fabric = fabricWords.find(({ codes: own }) => own.some((code) => long.includes(code)));
  return fabric && { word: fabric.word, rule: 'slip.sound-fabric' };
}
