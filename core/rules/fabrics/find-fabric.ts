import type { QuiltGrid } from '../../../shared/quilt.ts';
import { COLOURS, PATTERN_WORDS } from '../../lexicon/colours.ts';
import { CLOTH_WORDS } from '../../lexicon/materials.ts';
import { type Token, withoutAccents } from '../../text/tokenise.ts';
import type { FabricFound } from '../item.ts';

/** The quilt's named cloths, by each word of their names. */
export type FabricIndex = {
  byWord: Map<string, Set<string>>;
  names: Map<string, string[]>;
  blocks: Record<string, string[]>;
};

/** "the stripey ones" of a cloth called "grey stripe". */
const LIKENESS: Record<string, string> = {
  stripey: 'stripe',
  stripy: 'stripe',
  striped: 'stripe',
  spotty: 'spot',
  dotty: 'dot',
  dotted: 'dot',
  checky: 'check',
  chequered: 'check',
  checkered: 'check',
  flowery: 'floral',
  flowered: 'floral',
  checkerboard: 'check',
};

/** "bunnies" and "daisies" as "bunny" and "daisy". */
const stem = (word: string): string =>
  word.length > 4 && word.endsWith('ies')
    ? `${word.slice(0, -3)}y`
    : word.length > 3 && word.endsWith('s') && !word.endsWith('ss')
      ? word.slice(0, -1)
      : word;

/** Words that stand in names of cloth but also everywhere else: alone they name nothing. */
const TOO_COMMON = new Set([
  'old',
  'new',
  'the',
  'and',
  'of',
  'sack',
  'print',
  'cloth',
  'fabric',
  'plain',
  'dark',
  'light',
  'fine',
  'flour',
  'feed',
  'shirt',
  'with',
  'on',
  'tie',
  'back',
  'bottle',
  'bag',
  'work',
  'school',
  'day',
  'square',
  'school',
  'rose',
  'hand',
]);

/** Words of a colour that say how light it is, and not which. */
const SHADES = new Set(['dark', 'light', 'pale', 'golden']);

const DAMAGED =
  /^(?:thin|worn|bare|weak|tender|threadbare|bald|damp|wet|rusty?|mould|mold|soft|sore|bad|stained|torn|frayed|faded|shabby|rough)$/;

const cache = new WeakMap<object, FabricIndex>();

/** Index of the quilt's cloths; made once for each quilt value. */
export function indexFabrics(grid: QuiltGrid): FabricIndex {
  const fabrics = grid.fabrics ?? {};
  const known = cache.get(fabrics);
  if (known) return known;
  const byWord = new Map<string, Set<string>>();
  const names = new Map<string, string[]>();
  for (const name of Object.keys(fabrics)) {
    const words = withoutAccents(name.toLowerCase())
      .split(/[^a-z0-9']+/)
      .filter(Boolean)
      .map(stem);
    names.set(name, words);
    for (const word of words) {
      const set = byWord.get(word) ?? new Set<string>();
      set.add(name);
      byWord.set(word, set);
    }
  }
  const index = { byWord, names, blocks: fabrics as Record<string, string[]> };
  if (grid.fabrics) cache.set(fabrics, index);
  return index;
}

/** Is one letter changed, put in or left out between the two words, and no more? */
function isOneChangeApart(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1 || a === b) return false;
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  let k = 0;
  while (k < short.length && short[k] === long[k]) k++;
  return short.length === long.length
    ? short.slice(k + 1) === long.slice(k + 1)
    : short.slice(k) === long.slice(k + 1);
}

/** Fewest single-letter changes from `a` to `b`, up to 2; 3 means more. */
function distance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 3;
  let previous = Array.from({ length: b.length + 1 }, (_, k) => k);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++)
      row.push(
        Math.min(row[j - 1]! + 1, previous[j]! + 1, previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)),
      );
    previous = row;
  }
  return Math.min(previous[b.length]!, 3);
}

/**
 * A named cloth at token `i`: by its whole name ("blue gingham"), by a telling part ("the gingham", "damask"), or with one
 * word a little misheard after a word of its name ("red banana" for red bandanna). Several names are given where the
 * words fit several cloths.
 */
export function findFabric(
  tokens: Token[],
  i: number,
  index: FabricIndex,
): { found: FabricFound; next: number } | undefined {
  if (!index.names.size) return undefined;
  const first = tokens[i];
  if (first?.kind !== 'word') return undefined;
  // "just a thin spot", of a quilt with an orange spot
  if (first.w.startsWith('spot') && DAMAGED.test(tokens[i - 1]?.w ?? '')) return undefined;
  let names = index.byWord.get(stem(first.w)) ?? index.byWord.get(LIKENESS[first.w] ?? '');
  if (!names && first.w.length >= 6) {
    const said = stem(first.w);
    for (const [word, set] of index.byWord)
      if (word.length >= 6 && first.w !== 'strips' && isOneChangeApart(said, word)) names = set;
  }
  if (!names) return undefined;
  let candidates = [...names];
  let j = i + 1;
  const said = [index.byWord.has(stem(first.w)) ? stem(first.w) : (LIKENESS[first.w] ?? stem(first.w))];
  for (; j < tokens.length; j++) {
    const t = tokens[j]!;
    if (t.kind !== 'word') break;
    const word = stem(t.w);
    const narrower = candidates.filter((n) => index.names.get(n)!.includes(word));
    if (narrower.length) {
      candidates = narrower;
      said.push(word);
      continue;
    }
    // one misheard word after a true one: "red banana"
    const near = candidates.filter((n) =>
      index.names
        .get(n)!
        .some((x) => x.length >= 5 && word.length >= 5 && !said.includes(x) && distance(word, x) <= 2),
    );
    if (near.length && said.length) {
      candidates = near;
      said.push(word);
      continue;
    }
    break;
  }
  const telling = said.some((word) => !TOO_COMMON.has(word));
  if (!telling && !candidates.some((n) => index.names.get(n)!.length === said.length)) return undefined;
  // "the purple sateen" is not the quilt's rose sateen
  const colour = tokens[i - 1]?.w ?? '';
  if (COLOURS.has(colour) && !SHADES.has(colour) && !said.some((word) => COLOURS.has(word)))
    candidates = candidates.filter((n) => {
      const words = index.names.get(n)!;
      return words.includes(colour) || !words.some((word) => COLOURS.has(word) && !SHADES.has(word));
    });
  // nor "the green sprig" its green lawn
  const next = stem(tokens[j]?.w ?? '');
  // "the orange fabric" is one of this quilt, "orange fabric" may be any
  const ofQuilt =
    /^(?:fabric|cloth|material)$/.test(next) && /^(?:the|that|this|those|our)$/.test(tokens[i - 1]?.w ?? '');
  if (
    !ofQuilt &&
    (PATTERN_WORDS.has(next) || CLOTH_WORDS.has(next)) &&
    said.every((word) => COLOURS.has(word))
  )
    candidates = candidates.filter((n) => index.names.get(n)!.every((word) => COLOURS.has(word)));
  if (!candidates.length) return undefined;
  const full = candidates.filter((n) => index.names.get(n)!.every((word) => said.includes(word)));
  const chosen = full.length ? full : candidates;
  // "the army blanket comforter", "the velvet crazy quilt": what she calls it, and no cloth in it
  if (!full.length && isNameOfQuilt(tokens, j)) return undefined;
  return {
    found: {
      names: chosen,
      full: full.length > 0,
      words: tokens
        .slice(i, j)
        .map((t) => t.w)
        .join(' '),
    },
    next: j,
  };
}

/** Does what a quilt is called stand at `j`, behind a word for cloth? */
const isNameOfQuilt = (tokens: Token[], j: number): boolean =>
  /^(?:(?:crazy|crib|cot|baby|doll's|doll|lap|camp|log|wedding) )?(?:quilt|comforter|coverlet|bedspread|eiderdown|throw|counterpane|wagga|cabin quilt|pram cover)(?! (?:top|block|square)s?\b)\b/.test(
    tokens
      .slice(j, j + 3)
      .map((t) => t.w)
      .join(' '),
  );
