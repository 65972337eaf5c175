/** Part of a pattern: a fixed character, the edge of a word, something that may be anything, or a choice of sequences. */
type Part = { from: Piece[]; least: number; most: number };
type Piece =
  | { kind: 'char'; char: string }
  | { kind: 'edge' }
  | { kind: 'any' }
  | { kind: 'choice'; of: Part[][] };

/** Stand in the spelt-out forms of a pattern for the edge of a word and for anything at all, nothing included. */
const EDGE = '\u0001';
const ANY = '\u0002';
/** More forms than this of one stretch are not spelt out. */
const MOST_FORMS = 600;
/** Words of nearly every note: a pattern that has a rarer one is known by that. */
const COMMON = new Set(
  'a an the i it is s was be been and or to of in on at for with that this one not n t no all my her his out off up so now from by has have had are'.split(
    ' ',
  ),
);

/**
 * Words of which one at least stands in every text that the pattern matches; undefined where that cannot be told. A word is a
 * run of small letters with none on either side. Looks at the source of the pattern alone, and gives up, rather than guess, at
 * what it does not know.
 */
export function wordsNeeded(pattern: RegExp): Set<string> | undefined {
  if (/[iuvsm]/.test(pattern.flags)) return undefined;
  try {
    const needed = neededOf(readChoice(new Reader(pattern.source)), false, false);
    return needed && new Set(needed);
  } catch (error) {
    if (error instanceof Unknown) return undefined;
    throw error;
  }
}

class Unknown extends Error {}

class Reader {
  at = 0;
  constructor(readonly source: string) {}
  get next(): string {
    return this.source[this.at] ?? '';
  }
  take(text: string): boolean {
    if (!this.source.startsWith(text, this.at)) return false;
    this.at += text.length;
    return true;
  }
}

function readChoice(r: Reader): Part[][] {
  const choice: Part[][] = [[]];
  while (r.next && r.next !== ')') {
    if (r.take('|')) choice.push([]);
    else choice.at(-1)!.push(readPart(r));
  }
  return choice;
}

function readPart(r: Reader): Part {
  const from = readPiece(r);
  let [least, most] = [1, 1];
  const counted = /^\{(\d+)(,?)(\d*)\}/.exec(r.source.slice(r.at));
  if (r.take('?')) least = 0;
  else if (r.take('*')) [least, most] = [0, 9];
  else if (r.take('+')) most = 9;
  else if (counted) {
    r.at += counted[0].length;
    least = Number(counted[1]);
    most = counted[2] ? Number(counted[3] || 9) : least;
  }
  r.take('?');
  return { from, least, most };
}

function readPiece(r: Reader): Piece[] {
  if (r.take('(?<![a-z])') || r.take('(?![a-z])')) return [{ kind: 'edge' }];
  const looks = ['(?=', '(?!', '(?<=', '(?<!'].some((opening) => r.take(opening));
  if (looks || r.take('(')) {
    if (!looks && !r.take('?:') && r.next === '?') throw new Unknown();
    const of = readChoice(r);
    if (!r.take(')')) throw new Unknown();
    // what stands around it is not asked for: without it the pattern matches more, never less
    return looks ? [] : [{ kind: 'choice', of }];
  }
  if (r.take('[')) {
    const end = /^(?:[^\\\]]|\\.)*\]/.exec(r.source.slice(r.at));
    if (!end) throw new Unknown();
    r.at += end[0].length;
    return [{ kind: 'any' }];
  }
  if (r.take('^') || r.take('$')) return [{ kind: 'edge' }];
  if (r.take('.')) return [{ kind: 'any' }];
  if (r.take('\\')) {
    const char = r.next;
    r.at++;
    if (char === 'b') return [{ kind: 'edge' }];
    if (char === 'd') return [{ kind: 'char', char: '0' }];
    if (/[DwWsS]/.test(char)) return [{ kind: 'any' }];
    if (/[a-zA-Z0-9]/.test(char) && char !== 'n') throw new Unknown();
    return [{ kind: 'char', char: char === 'n' ? '\n' : char }];
  }
  const char = r.next;
  r.at++;
  return [{ kind: 'char', char }];
}

const isLetter = (char: string): boolean => char >= 'a' && char <= 'z';
const isEdge = ({ from, least, most }: Part): boolean =>
  least === 1 &&
  most === 1 &&
  (from[0]?.kind === 'edge' || (from[0]?.kind === 'char' && !isLetter(from[0].char)));

/** `open` and `closed`: does the edge of a word stand before and behind? */
function neededOf(choice: Part[][], open: boolean, closed: boolean): string[] | undefined {
  const all: string[] = [];
  for (const parts of choice) {
    const needed = neededInSequence(parts, open, closed);
    if (!needed) return undefined;
    all.push(...needed);
  }
  return all;
}

/** Of the stretches between the edges of words, the one whose words are fewest and rarest. */
function neededInSequence(parts: Part[], open: boolean, closed: boolean): string[] | undefined {
  let best: string[] | undefined;
  let from = 0;
  for (let k = 0; k <= parts.length; k++) {
    if (k < parts.length && !isEdge(parts[k]!)) continue;
    const needed = neededInStretch(parts.slice(from, k), from > 0 || open, k < parts.length || closed);
    if (needed && (!best || costOf(needed) < costOf(best))) best = needed;
    from = k + 1;
  }
  return best;
}

const costOf = (words: string[]): number => words.reduce((sum, word) => sum + (COMMON.has(word) ? 40 : 1), 0);

function neededInStretch(parts: Part[], open: boolean, closed: boolean): string[] | undefined {
  const only = parts.length === 1 ? parts[0]! : undefined;
  if (only?.from[0]?.kind === 'choice' && only.least === 1 && only.most === 1)
    return neededOf(only.from[0].of, open, closed);
  const forms = formsOf(parts);
  if (!forms) return undefined;
  const chosen = forms.map((form) => {
    const words = `${open ? EDGE : ANY}${form}${closed ? EDGE : ANY}`
      .split(/[^a-z\u0002]+/)
      .filter((word) => word !== '' && !word.includes(ANY));
    return words.sort((a, b) => costOf([a]) - costOf([b]) || b.length - a.length)[0];
  });
  return chosen.every((word) => word !== undefined) ? chosen : undefined;
}

/** Every form that the parts can take, or nothing where they are too many. */
function formsOf(parts: Part[]): string[] | undefined {
  let forms = [''];
  for (const { from, least, most } of parts) {
    const own = from.length ? formsOfPiece(from[0]!) : [''];
    if (!own) return undefined;
    const repeated = most > 1 ? own.map((form) => form + ANY + endOf(own)) : own;
    const ways = least === 0 ? ['', ...repeated] : repeated;
    forms = forms.flatMap((form) => ways.map((way) => form + way));
    if (forms.length > MOST_FORMS) return undefined;
  }
  return forms;
}

/** "(?:still |and )*open": whatever is said again, the word behind begins anew. */
const endOf = (forms: string[]): string =>
  forms.every((form) => form !== '' && form.at(-1) !== ANY && !isLetter(form.at(-1)!)) ? EDGE : '';

function formsOfPiece(piece: Piece): string[] | undefined {
  if (piece.kind === 'char') return [piece.char];
  if (piece.kind === 'edge') return [EDGE];
  if (piece.kind === 'any') return [ANY];
  const forms: string[] = [];
  for (const parts of piece.of) {
    const own = formsOf(parts);
    if (!own) return undefined;
    forms.push(...own);
  }
  return forms;
}
