import { COLOURS, PATTERN_WORDS } from '../../lexicon/colours.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { isNameWord } from './by-sound.ts';
import { type HeardAt, readAs, type SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

const isKnown = (tokens: readonly Token[], i: number, w: string): boolean =>
  LEXICON.longestAt([{ ...tokens[i]!, w }], 0) !== undefined;
const isDone = (tokens: readonly Token[], i: number, w = tokens[i]?.w ?? ''): boolean =>
  tokens[i] !== undefined &&
  (LEXICON.longestAt([{ ...tokens[i]!, w }], 0)?.payloads ?? []).some(
    (s) => s.k === 'action' && s.form === 'past',
  );

/** Whoever may know: after these "know" means itself. */
const KNOWS =
  /^(?:i|you|we|they|he|she|to|n't|not|never|who|do|did|does|will|would|'ll|'d|also|already|let|people|don't|must|should|please|well|just|you'd|as|far)$/;
/** "the top three know the top four", "ones get them know what I mean": no */
const noHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'know' && before.length > 0 && !KNOWS.test(before.at(-1)!.w)
    ? readAs(tokens[i]!, 'no', 'slip.ear')
    : undefined;

/** "all the blue gingham once faded", "the print once get net": ones */
const onesHeard: SlipRule = ({ tokens, i, before, names }) => {
  const left = before.at(-1)?.w ?? '';
  if (tokens[i]!.w !== 'once') return undefined;
  if (
    !COLOURS.has(left) &&
    !PATTERN_WORDS.has(left) &&
    !(names && isNameWord(names, left)) &&
    left !== 'print' &&
    left !== 'check'
  )
    return undefined;
  return before.slice(-5).some(({ w }) => /^(?:the|all|every|both|those|these|any)$/.test(w))
    ? readAs(tokens[i]!, 'ones', 'slip.ear')
    : undefined;
};

/** "the stars are all faded by the one in the bottom row": bar */
const barHeard: SlipRule = ({ tokens, i, before }) => {
  if (
    tokens[i]!.w !== 'by' ||
    tokens[i + 1]?.w !== 'the' ||
    !/^(?:ones?|top|bottom|last|first|corner)$/.test(tokens[i + 2]?.w ?? '')
  )
    return undefined;
  const found = before.at(-1);
  const all = before.slice(-6).some(({ w }) => /^(?:all|every|everything|whole)$/.test(w));
  const senses = found ? (LEXICON.longestAt([found], 0)?.payloads ?? []) : [];
  return all && senses.some((s) => s.k === 'finding' || (s.k === 'action' && s.form === 'past'))
    ? readAs(tokens[i]!, 'bar', 'slip.ear')
    : undefined;
};

/** "I'm pieced a new one", "and am pieced": a sound of thinking before what was done. */
const fillerHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const left = before.at(-1)?.w ?? '';
  if (
    !isDone(tokens, i + 1) &&
    !(t.w === 'am' && tokens[i + 1]?.kind === 'word' && isDone(tokens, i + 1, pastOf(tokens[i + 1]!.w)))
  )
    return undefined;
  // "I'm done", "I'm finished", "I'm tied up": so it stands with her
  if (
    /^(?:done|finished|tied|stuck|bound|set|gone|worn|through|left|cut|put|split|covered|pressed)$/.test(
      tokens[i + 1]!.w,
    )
  )
    return undefined;
  if (t.w === "'m" && left === 'i') return { ...readAs(t, "'ve"), rule: 'slip.ear' };
  if (t.w !== 'am' || left !== 'and') return undefined;
  const next = tokens[i + 1]!;
  return {
    tokens: [{ ...next, w: isDone(tokens, i + 1) ? next.w : pastOf(next.w), heard: next.w }],
    took: 2,
    rule: 'slip.ear',
  };
};
const pastOf = (w: string): string => (w.endsWith('e') ? `${w}d` : `${w}ed`);

/** "pieced to new one in from navy serge": a new one */
const aNewHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'to' && tokens[i + 1]?.w === 'new' && isDone(before, before.length - 1)
    ? readAs(tokens[i]!, 'a', 'slip.ear')
    : undefined;

/** "it's sink rather than rust" (ink), "row force mells" (four smells): the s of one word went to its neighbour. */
const sMoved: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const head = before.at(-1);
  if (t.kind !== 'word' || !head) return undefined;
  if (head.w === "'s" && /^s[a-z]{2,}$/.test(t.w) && !isKnown(tokens, i, t.w) && FROM_S.has(t.w.slice(1)))
    return readAs(t, t.w.slice(1), 'slip.ear');
  return undefined;
};
const FROM_S = new Set(['ink', 'limp', 'thin', 'mould', 'torn', 'rust']);

/** Numbers that an s ran into: "force", "fours", "sick's" */
const WITH_S: Record<string, string> = {
  force: 'four',
  fours: 'four',
  threes: 'three',
  twos: 'two',
  ones: 'one',
  fives: 'five',
  sevens: 'seven',
  eights: 'eight',
  nines: 'nine',
};
/** "row force mells musty", "row threes plit" */
const numberTookS: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const number = WITH_S[t.w];
  const next = tokens[i + 1];
  if (!number || !/^(?:row|block|column|col)$/.test(before.at(-1)?.w ?? '') || next?.kind !== 'word')
    return undefined;
  const whole = `s${next.w}`;
  if (isKnown(tokens, i + 1, next.w) || !(isKnown(tokens, i + 1, whole) || whole === 'smells'))
    return undefined;
  return {
    tokens: [
      { ...t, w: number, heard: t.w },
      { ...next, w: whole, heard: next.w },
    ],
    took: 2,
    rule: 'slip.ear',
  };
};

/** "Rose X, block two", "columns x is": six */
const sixHeard: SlipRule = ({ tokens, i, before }) => {
  if (
    !/^(?:x|sex|sicks|sics)$/.test(tokens[i]!.w) ||
    !/^(?:row|rows|rose|column|columns|block|blocks|ro|col)$/.test(before.at(-1)?.w ?? '')
  )
    return undefined;
  const line = before.at(-1)!;
  const single = { rose: 'row', rows: 'row', columns: 'column', blocks: 'block' }[line.w] ?? line.w;
  return {
    tokens: [
      { ...line, w: single, heard: line.w },
      { ...tokens[i]!, w: 'six', heard: tokens[i]!.w },
    ],
    took: 1,
    tookBack: 1,
    rule: 'slip.named-line',
  };
};

/** "call for, tulle over it", "cal 4": col 4 */
const columnHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^(?:call|cal|coal|cole|cull|kohl|calls|carl)$/.test(t.w)) return undefined;
  const next = tokens[i + 1];
  if (smallValue(next) !== undefined) return readAs(t, 'col', 'slip.ear');
  const number = { for: 'four', to: 'two', too: 'two', won: 'one' }[next?.w ?? ''];
  return number &&
    /^(?:|\.|,|of|on|in|all)$/.test(before.at(-1)?.w ?? '') &&
    /^(?:,|:|\.)$/.test(tokens[i + 2]?.w ?? '')
    ? {
        tokens: [
          { ...t, w: 'col', heard: t.w },
          { ...next!, w: number, heard: next!.w },
        ],
        took: 2,
        rule: 'slip.ear',
      }
    : undefined;
};

/** "the quiltings let go", "the stitchings gone": 's, before what became of it */
const isHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const next = tokens[i + 1];
  if (!/ings$/.test(t.w) || !next || isKnown(tokens, i, t.w) || !isKnown(tokens, i, t.w.slice(0, -1)))
    return undefined;
  if (!/^(?:the|old|my|and|,|\.|)$/.test(before.at(-1)?.w ?? '')) return undefined;
  if (!/^(?:let|come|gone|worn|split|torn|all|broken|off|loose|coming|going|fraying|got)$/.test(next.w))
    return undefined;
  return {
    tokens: [
      { ...t, w: t.w.slice(0, -1), to: t.to - 1, heard: t.w },
      { ...t, w: "'s", from: t.to - 1, glued: true, heard: t.w },
    ],
    took: 1,
    rule: 'slip.ear',
  };
};

/** "pasted W the safety pins": with; "net over w muslin" is a typed short form and is read elsewhere. */
const withHeard: SlipRule = ({ tokens, i }) =>
  tokens[i]!.w === 'w' &&
  !tokens[i + 1]?.glued &&
  /^(?:the|a|an|my|some|that|this|it)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'with', 'slip.sign')
    : undefined;

/** What "st." behind a kind of stitch is heard as, read aloud. */
const ST = /^(?:street|saint|st|straight|state|stead|sent|seat|treat)$/;
const KIND = /^(?:blanket|running|straight|ladder|whip|back|slip|herringbone|overcast|backstitch|zigzag)$/;
const KIND_HEARD: Record<string, string> = {
  blanked: 'blanket',
  blankets: 'blanket',
  letter: 'ladder',
  latter: 'ladder',
  lather: 'ladder',
  runnings: 'running',
  wipe: 'whip',
  strait: 'straight',
};
/** "blanket saint round it", "let her street": a stitch by its kind. */
const stitchHeard: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  const two = t.w === 'let' && tokens[i + 1]?.w === 'her';
  const kind = two ? 'ladder' : KIND.test(t.w) ? t.w : KIND_HEARD[t.w];
  const at = i + (two ? 2 : 1);
  if (!kind || !ST.test(tokens[at]?.w ?? '')) return undefined;
  if (
    /^(?:edges?|lines?|seams?|sides?|across|along|down|through|grain|border|strips?)$/.test(
      tokens[at + 1]?.w ?? '',
    )
  )
    return undefined;
  return {
    tokens: [
      { ...t, w: kind, heard: t.w },
      { ...tokens[at]!, w: 'stitch', heard: tokens[at]!.w },
    ],
    took: at + 1 - i,
    rule: 'slip.sign',
  };
};

/** "Red me back everything", "bread me back": read */
const readHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:red|bred|bread|reed)$/.test(tokens[i]!.w) &&
  /^(?:me|us)$/.test(tokens[i + 1]?.w ?? '') &&
  /^(?:back|bag|the)$/.test(tokens[i + 2]?.w ?? '') &&
  !/^(?:the|a|i)$/.test(before.at(-1)?.w ?? '')
    ? readAs(tokens[i]!, 'read', 'slip.ear')
    : undefined;

/** Little words that the ear took for others where these make no sense; only in what was heard. */
export const WORDS_HEARD: readonly SlipRule[] = [
  noHeard,
  onesHeard,
  barHeard,
  fillerHeard,
  aNewHeard,
  sMoved,
  numberTookS,
  sixHeard,
  columnHeard,
  isHeard,
  withHeard,
  stitchHeard,
  readHeard,
].map((rule) => (at: HeardAt) => (at.spoken ? rule(at) : undefined));
