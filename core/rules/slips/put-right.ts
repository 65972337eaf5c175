import type { Slip } from '../../../shared/note.ts';
import { SLIPS, type SlipRow } from '../../lexicon/slips.ts';
import { HEARD_SLIPS } from '../../lexicon/slips-heard.ts';
import { NUMBER_SLIPS } from '../../lexicon/slips-numbers.ts';
import { PHRASE_SLIPS } from '../../lexicon/slips-phrases.ts';
import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { findBySound, isNameWord } from './by-sound.ts';
import { findBySpelling } from './by-spelling.ts';

const BY_WORD: Map<string, SlipRow[]> = new Map();
for (const row of [...SLIPS, ...HEARD_SLIPS, ...NUMBER_SLIPS])
  BY_WORD.set(row.heard, [...(BY_WORD.get(row.heard) ?? []), row]);

const PHRASES: Map<string, { heard: string[]; meant: string[] }[]> = new Map();
for (const [heard, meant] of PHRASE_SLIPS) {
  const words = heard.split(' ');
  const rows = PHRASES.get(words[0]!) ?? [];
  PHRASES.set(words[0]!, [...rows, { heard: words, meant: meant.split(' ') }]);
}

const OF_A_PLACE = /^(?:half|some|most|all|there|it|they|the)$/;
/**
 * The recogniser writes a comma where she ended a sentence: "…out of the top three rows, in row two half of them were gone". A
 * place that opens a clause with its own subject begins a new sentence; "still open, whether …" lists what is open.
 */
function mendedMark(tokens: Token[], i: number): string | undefined {
  // "4-5: hole / patched / 30 min": a slash that stands by itself is a comma, but in "106 / 107" and "replace? / patch?"
  if (tokens[i]!.w === '/' && !tokens[i]!.glued && !tokens[i + 1]?.glued && tokens[i - 1]?.w !== '?') {
    if (tokens[i - 1]?.kind !== 'number' || tokens[i + 1]?.kind !== 'number') return ',';
  }
  if (tokens[i]!.w !== ',') return undefined;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  if (/^(?:in|on)$/.test(w(1)) && /^(?:row|column|block)$/.test(w(2)) && OF_A_PLACE.test(w(4))) return '.';
  // "… in blocks two to five, row five is fine"
  if (
    /^(?:row|column)$/.test(w(1)) &&
    /^(?:is|'s|has|had|looks|was|needs|wants)$/.test(w(3)) &&
    (tokens[i + 2]?.kind === 'number' || isNumberWord(tokens[i + 2])) &&
    tokens.slice(Math.max(0, i - 12), i).some((t) => /^(?:is|'s|has|had|have|are|'ve|was|were)$/.test(t.w))
  )
    return '.';
  if (w(-1) === 'open' && w(-2) === 'still' && /^(?:whether|what|which|how)$/.test(w(1))) return ':';
  return undefined;
}

const SMALL_NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const PLURAL_NUMBERS = new Map(SMALL_NUMBERS.map((word) => [word === 'six' ? 'sixes' : `${word}s`, word]));
/** What may stand on either side of a "plus" between places. */
const PLACE_WORD = /^(?:top|bottom|left|right|sides?|r\d+|b\d+|[1-9])$/;
const isSmallNumber = (token: Token | undefined): boolean =>
  token !== undefined && (isNumberWord(token) || /^\d$/.test(token.w));
const isNumberWord = (token: Token | undefined): boolean =>
  token !== undefined && SMALL_NUMBERS.includes(token.w);

/** Two small numbers with a "to" between them, the first at token `i`. */
const isToPair = (tokens: Token[], i: number): boolean =>
  isSmallNumber(tokens[i]) && /^(?:to|too)$/.test(tokens[i + 1]?.w ?? '') && isSmallNumber(tokens[i + 2]);

/**
 * "shifted in 2 to 5", "laid over one to two", "1 to 2 is all done", "2 to 4 2 to 5 2 to 6": the "to" at token `i` is the dash of a
 * block's name where one is awaited and no stretch of rows, hours or lengths can be meant.
 */
function isDashOfBlock(tokens: Token[], i: number): boolean {
  if (!isToPair(tokens, i - 1)) return false;
  const w = (k: number): string => tokens[i + k]?.w ?? '';
  const opens = i === 1 || tokens[i - 2]?.w === '.';
  // named one after the other
  if (isToPair(tokens, i + 2) && opens) return true;
  if (isToPair(tokens, i - 4) && (isToPair(tokens, i + 2) || i === 4 || isToPair(tokens, i - 7))) return true;
  // of a stretch it would be "are"
  if (opens && /^(?:is|'s|has|needs|was|wants)$/.test(w(2))) return true;
  return (
    /^(?:in|on|over|behind)$/.test(w(-2)) &&
    !/^(?:rows?|blocks?|columns?|from)$/.test(w(-3)) &&
    /^(?:|,|\.|;|and|is|'s|has|had|needs|got|wants|was|with|by|as|i|which|are|patched|darned|resewn)$/.test(
      w(2),
    )
  );
}

/** The verb of treatment that is left when "re" is taken off a word that is none itself. */
function doneAgain(tokens: Token[], i: number): string | undefined {
  const { w } = tokens[i]!;
  if (w.length < 5 || LEXICON.longestAt(tokens, i)) return undefined;
  const rest = w.slice(2);
  const hit = LEXICON.longestAt([{ ...tokens[i]!, w: rest }], 0);
  return hit?.payloads.some((s) => s.k === 'action') ? rest : undefined;
}

/**
 * Puts right what the recogniser's ear made of the trade's words, only where the words as heard make no sense in the place
 * where they stand: words that this user has taught, then slips that are known, then words that sound like the one heard. A
 * token keeps what was heard. Numbers are never touched.
 */
export function putSlipsRight(
  tokens: Token[],
  taught: Record<string, string> | undefined,
  fabrics?: object,
): { tokens: Token[]; slips: Slip[] } {
  const slips: Slip[] = [];
  const out: Token[] = [];
  const lessons = taught
    ? Object.entries(taught).map(
        ([heard, means]) => [heard.toLowerCase().split(/\s+/), means.toLowerCase().split(/\s+/)] as const,
      )
    : [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    const lesson = lessons.find(([heard]) => heard.every((word, k) => tokens[i + k]?.w === word));
    if (lesson) {
      const last = tokens[i + lesson[0].length - 1]!;
      const heard = lesson[0].join(' ');
      lesson[1].forEach((word, k) => {
        out.push({ ...t, w: word, to: last.to, heard, glued: k > 0 ? false : t.glued });
      });
      slips.push({ heard, read: lesson[1].join(' '), from: t.from, to: last.to, rule: 'slip.taught' });
      i += lesson[0].length - 1;
      continue;
    }
    const mark = mendedMark(tokens, i);
    if (mark) {
      out.push({ ...t, w: mark, heard: t.w });
      continue;
    }
    const phrase = PHRASES.get(t.w)?.find((row) => row.heard.every((word, k) => tokens[i + k]?.w === word));
    if (phrase) {
      const last = tokens[i + phrase.heard.length - 1]!;
      const heard = phrase.heard.join(' ');
      phrase.meant.forEach((word, k) => {
        out.push({ ...t, kind: 'word', w: word, to: last.to, heard, glued: k > 0 ? false : t.glued });
      });
      slips.push({ heard, read: phrase.meant.join(' '), from: t.from, to: last.to, rule: 'slip.ear' });
      i += phrase.heard.length - 1;
      continue;
    }
    // "seven threes got a rip": three's
    const plural = PLURAL_NUMBERS.get(t.w);
    if (
      plural &&
      isNumberWord(out.at(-1)) &&
      !/^(below|above|next|in|on|that|up|down|with)$/.test(tokens[i + 1]?.w ?? '')
    ) {
      out.push({ ...t, w: plural, to: t.to - 1, heard: t.w });
      out.push({ ...t, w: "'s", from: t.to - 1, glued: true, heard: t.w });
      slips.push({ heard: t.w, read: `${plural}'s`, from: t.from, to: t.to, rule: 'slip.plural-number' });
      continue;
    }
    // "row's three, block four", "row's one, two and three": rows, and nobody's
    if (t.w === "'s" && /^(?:row|block|column)$/.test(out.at(-1)?.w ?? '') && isSmallNumber(tokens[i + 1])) {
      const head = out.pop()!;
      const several = /^(?:,|and|&|to|through)$/.test(tokens[i + 2]?.w ?? '') && isSmallNumber(tokens[i + 3]);
      out.push({ ...head, w: several ? `${head.w}s` : head.w, to: t.to, heard: `${head.w}'s` });
      slips.push({
        heard: `${head.w}'s`,
        read: out.at(-1)!.w,
        from: head.from,
        to: t.to,
        rule: 'slip.named-line',
      });
      continue;
    }
    // "the padding shifted in 2 to 5": the dash of a block's name
    if (/^(?:to|too)$/.test(t.w) && isDashOfBlock(tokens, i)) {
      out.push({ ...t, kind: 'mark', w: '-', glued: true, heard: t.w });
      out.push({ ...tokens[i + 1]!, glued: true });
      slips.push({ heard: t.w, read: '-', from: t.from, to: t.to, rule: 'slip.dash' });
      i++;
      continue;
    }
    // "r4 plus r5", "worn top plus bottom": the sign read aloud
    if (t.w === 'plus' && PLACE_WORD.test(out.at(-1)?.w ?? '') && PLACE_WORD.test(tokens[i + 1]?.w ?? '')) {
      out.push({ ...t, w: '+', heard: t.w });
      continue;
    }
    // "but 2 packs needles 4.10", "dot four yards at 9.25": bought
    if (
      /^(?:but|dot|bot)$/.test(t.w) &&
      (tokens[i + 1]?.kind === 'number' || isNumberWord(tokens[i + 1])) &&
      tokens[i + 2] !== undefined &&
      Object.hasOwn(UNIT_WORDS, tokens[i + 2]!.w) &&
      tokens
        .slice(i + 3)
        .some((x) => /^(?:[$£€@]|at|each|dollars|pounds|euros)$/.test(x.w) || /\d\.\d\d/.test(x.w))
    ) {
      out.push({ ...t, w: 'bought', heard: t.w });
      slips.push({ heard: t.w, read: 'bought', from: t.from, to: t.to, rule: 'slip.ear' });
      continue;
    }
    // "rows four in five are tied"
    if (
      t.w === 'in' &&
      isSmallNumber(out.at(-1)) &&
      /^(?:rows|rose|columns|blocks)$/.test(out.at(-2)?.w ?? '') &&
      isSmallNumber(tokens[i + 1])
    ) {
      out.push({ ...t, w: 'and', heard: t.w });
      slips.push({ heard: t.w, read: 'and', from: t.from, to: t.to, rule: 'slip.ear' });
      continue;
    }
    const before = out.at(-1)?.w ?? '';
    const after = tokens[i + 1]?.w ?? '';
    const row = BY_WORD.get(t.w)?.find(
      (r) =>
        (!r.before || r.before.includes(before)) &&
        (!r.after || r.after.includes(after)) &&
        !r.notBefore?.includes(before) &&
        !r.notAfter?.includes(after),
    );
    if (row) {
      out.push({ ...t, w: row.meant, heard: t.w });
      slips.push({ heard: t.w, read: row.meant, from: t.from, to: t.to, rule: 'slip.ear' });
      // "crepe line" is one word
      if (row.after && ['crepeline', 'sashing', 'fusible'].includes(row.meant)) i++;
      continue;
    }
    // "re-press r2", "re-photo 2-4": done once more
    const again = t.w.startsWith('re') ? doneAgain(tokens, i) : undefined;
    if (again) {
      out.push({ ...t, w: again, heard: t.w });
      continue;
    }
    const spelt = t.kind === 'word' ? findBySpelling(t.w) : undefined;
    if (spelt && !LEXICON.longestAt(tokens, i) && !(fabrics && isNameWord(fabrics, t.w))) {
      out.push({ ...t, w: spelt, heard: t.w });
      slips.push({ heard: t.w, read: spelt, from: t.from, to: t.to, rule: 'slip.spelling' });
      continue;
    }
    const alike = findBySound(tokens, i, out.at(-1), fabrics);
    if (alike) {
      const last = tokens[i + (alike.length ?? 1) - 1]!;
      const heard = last === t ? t.w : `${t.w} ${last.w}`;
      out.push({ ...t, w: alike.word, to: last.to, heard });
      slips.push({ heard, read: alike.word, from: t.from, to: last.to, rule: alike.rule });
      if (last !== t) i++;
      continue;
    }
    out.push(t);
  }
  return { tokens: out, slips };
}
