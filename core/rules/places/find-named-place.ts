import { type Token, tokenise } from '../../text/tokenise.ts';
import { splitBlock } from './grid.ts';
import type { PlaceContext, PlaceFound } from './place-found.ts';

type Named = { words: string[]; places: string[] };
const known = new WeakMap<object, Map<string, Named[]>>();

/** Names by their first word, the longest first; "the" before a name is no part of it. */
function indexNames(placeNames: Record<string, string[]>): Map<string, Named[]> {
  let index = known.get(placeNames);
  if (index) return index;
  index = new Map();
  for (const [name, places] of Object.entries(placeNames)) {
    const words = tokenise(name).map((token) => token.w);
    while (words.length > 1 && /^(the|a|an|my|her|our)$/.test(words[0]!)) words.shift();
    if (!words[0]) continue;
    const first = index.get(words[0]) ?? [];
    index.set(
      words[0],
      [...first, { words, places }].sort((a, b) => b.words.length - a.words.length),
    );
  }
  known.set(placeNames, index);
  return index;
}

/** Words that may follow a name and say no more than it does: "the medallion block". */
const NOUN = /^(block|blocks|square|panel|patch|centre|center)$/;

/** A name that she gave to a place of this quilt: "the medallion", "star block", "the name block". */
export function namedPlace(tokens: Token[], i: number, { grid }: PlaceContext): PlaceFound | undefined {
  if (!grid.placeNames) return undefined;
  const named = indexNames(grid.placeNames)
    .get(tokens[i]!.w)
    ?.find(({ words }) => words.every((word, k) => sounds(tokens[i + k]?.w, word, k === words.length - 1)));
  if (!named) return undefined;
  let next = i + named.words.length;
  const last = named.words.at(-1)!;
  // "the medallion block", but not "the medallion, block two" nor "the star block two"
  if (!NOUN.test(last) && NOUN.test(tokens[next]?.w ?? '') && tokens[next + 1]?.kind !== 'number') next++;
  return {
    next,
    places: named.places,
    how: 'said',
    rule: 'place.named',
    kind: named.places.some((place) => splitBlock(place)) ? 'blocks' : 'part',
  };
}

/** The word of a name as said; its last word also in the plural or without it. */
const sounds = (said: string | undefined, word: string, last: boolean): boolean =>
  said === word || (last && said !== undefined && (said === `${word}s` || `${said}s` === word));
