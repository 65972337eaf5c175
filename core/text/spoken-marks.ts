/**
 * Marks that were said as words, as people do who are used to dictating: "row four comma first and last
 * block comma stained period new line sashing is puckered period". Each becomes the mark itself, at the end of
 * the word before it; the rest of its room is filled with spaces, so that every offset into the words as
 * said stays true.
 *
 * "Comma", "semicolon", "full stop" are hardly anything else. "Period" is also a time ("a period piece", "over
 * that period"), "colon" a slip of the ear for "column", "dash" a little of something, "new line" a line of quilting: these
 * are marks only in a note that is dictated, as its other marks show, and not where their neighbours say otherwise.
 */
export function withSpokenMarks(text: string): string {
  if (!ANY.test(text)) return text;
  const said = [...text.matchAll(SAID)].filter((m) => !isWord(text, m));
  const dictated = said.some((m) => tellsDictation(text, m, said));
  let out = text;
  for (const m of said) {
    const name = m[1]!.toLowerCase().replace(/\s+/g, ' ');
    if (!dictated && !(name === 'colon' && opensList(text, m))) continue;
    if (name === 'dash' && !dictated) continue;
    out = put(out, m.index, m[0].length, MARKS[name]!);
  }
  return out;
}

const ANY =
  /\b(?:period|comma|colon|full stop|semi-?colon|new (?:line|paragraph)|question mark|exclamation (?:mark|point)|dash)\b/i;

const SAID =
  /\b(period|comma|colon|full\s+stop|semi-?\s?colon|new\s+line|new\s+paragraph|question\s+mark|exclamation\s+mark|exclamation\s+point|dash)\b/gi;

const MARKS: Record<string, string> = {
  period: '.',
  'full stop': '.',
  comma: ',',
  colon: ':',
  semicolon: ';',
  'semi-colon': ';',
  'semi colon': ';',
  'new line': '.',
  'new paragraph': '.',
  'question mark': '?',
  'exclamation mark': '!',
  'exclamation point': '!',
  dash: ' - ',
};

const before = (text: string, m: RegExpMatchArray): string => text.slice(0, m.index).trimEnd().toLowerCase();
const behind = (text: string, m: RegExpMatchArray): string =>
  text
    .slice(m.index! + m[0].length)
    .trimStart()
    .toLowerCase();

/** "a period piece", "of that period", "in colon four", "a dash of vinegar", "a new line of stitches": the word itself is meant. */
function isWord(text: string, m: RegExpMatchArray): boolean {
  const name = m[1]!.toLowerCase();
  const [left, right] = [before(text, m), behind(text, m)];
  if (/\b(?:a|an|the|that|this|each|every|any|no|which|what|missing)$/.test(left)) return true;
  if (name === 'period')
    return (
      /\b(?:of|in|long|short|same|time|trial|test|waiting|drying|rest|victorian|edwardian|georgian|regency|war|wartime|depression|holiday|whole|right|true)$/.test(
        left,
      ) ||
      /^(?:piece|fabric|cloth|cotton|print|style|feedsack|correct|furniture|costume|detail|of|and style)s?\b/.test(
        right,
      )
    );
  // "all of colon four", "colons two and three"
  if (name === 'colon')
    return /\b(?:in|of|down|all|whole|along|on|and|to|from|last|first|second|third|middle)$/.test(left);
  // "three dash two" is a block, and known as one
  if (name === 'dash')
    return (
      /^(?:of|one|two|three|four|five|six|seven|eight|nine|ten|\d+)\b/.test(right) ||
      /\b(?:to|quick)$/.test(left)
    );
  if (/^new\s+line/.test(name))
    return /^of\b/.test(right) || /\b(?:sewed|sewn|stitched|quilted|ran|put|with)$/.test(left);
  return false;
}

/** A comma, a full stop, a new line; a period at the very end, or a second one: whoever says these says the others as well. */
function tellsDictation(text: string, m: RegExpMatchArray, said: RegExpMatchArray[]): boolean {
  const name = m[1]!.toLowerCase();
  if (/^(?:comma|full|semi|question|exclamation)/.test(name)) return true;
  if (name === 'period')
    return (
      behind(text, m).replace(/[.\s]/g, '') === '' || said.filter((o) => /^period$/i.test(o[1]!)).length > 1
    );
  return false;
}

/** "correction colon four and a half inches", "to buy colon two reels": what stands before it is no place that it could count. */
const opensList = (text: string, m: RegExpMatchArray): boolean =>
  /^\s*(?:\S+\s+){0,3}(?:correction|note|notes|update|bought|buy|needed|settled|open|undecided|done|findings|survey|today|reminder|quilt)$/i.test(
    before(text, m),
  );

/** The mark at the end of the word before, the rest blank. A mark written there already ("row four, comma,") gives way. */
function put(text: string, at: number, length: number, mark: string): string {
  let from = at;
  while (from > 0 && /[\s.,;:]/.test(text[from - 1]!) && at - from < 3) from--;
  let to = at + length;
  while (/[.,;:]/.test(text[to] ?? '') && to < at + length + 2) to++;
  const head = text.slice(0, from);
  // two marks one behind the other ("period new line") are one
  const shown = /[.?!:;,]\s*$/.test(head) ? ' ' : mark;
  return head + shown.padEnd(to - from, ' ') + text.slice(to);
}
