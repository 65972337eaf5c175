import { COLOURS, PATTERN_WORDS } from '../../lexicon/colours.ts';
import type { Token } from '../../text/tokenise.ts';
import { LEXICON } from '../lexicon-index.ts';
import { isNameWord } from './by-sound.ts';
import { isDeedAt, sensesAt } from './senses-at.ts';
import { readAs, type SlipRule } from './slip-rule.ts';
import { smallValue } from './small-number-said.ts';

const isKnown = (tokens: readonly Token[], i: number, w: string): boolean =>
  LEXICON.longestAt([{ ...tokens[i]!, w }], 0) !== undefined;
/** Is the one word at `i`, or `w` in its place, a treatment that was done? */
const isDone = (tokens: readonly Token[], i: number, w = tokens[i]?.w ?? ''): boolean =>
  tokens[i] !== undefined && isDeedAt([{ ...tokens[i]!, w }], 0, 'past');

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
  const senses = found ? sensesAt([found], 0) : [];
  return all && senses.some((s) => s.k === 'finding' || (s.k === 'action' && s.form === 'past'))
    ? readAs(tokens[i]!, 'bar', 'slip.ear')
    : undefined;
};

/** "I'm pieced a new one", "and am pieced": a sound of thinking before what was done. */
const fillerHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const left = before.at(-1)?.w ?? '';
  // "and I'm the one under it is frayed", "and I'm there's a hole"
  if (
    t.w === "'m" &&
    left === 'i' &&
    /^(?:and|,|so)$/.test(before.at(-2)?.w ?? 'so') &&
    /^(?:the|there|row|block|both)$/.test(tokens[i + 1]?.w ?? '') &&
    // "so, I'm the only one left": that is of herself
    !/^(?:one|only|first|last) (?:who|that|to|one|person|left)$/.test(
      `${tokens[i + 2]?.w} ${tokens[i + 3]?.w}`,
    )
  )
    return {
      tokens: [{ ...before.at(-1)!, kind: 'mark', w: ',', to: t.to }],
      took: 1,
      tookBack: 1,
      rule: 'slip.ear',
    };
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
const columnHeard: SlipRule = ({ tokens, i, before, names }) => {
  const t = tokens[i]!;
  if (!/^(?:call|cal|coal|cole|cull|kohl|calls|called|carl)$/.test(t.w)) return undefined;
  const next = tokens[i + 1];
  if (smallValue(next) !== undefined) return readAs(t, 'col', 'slip.ear');
  const number = { for: 'four', to: 'two', too: 'two', won: 'one' }[next?.w ?? ''];
  return number &&
    (/^(?:|\.|,|of|on|in|all)$/.test(before.at(-1)?.w ?? '') ||
      (names !== undefined && isNameWord(names, before.at(-1)!.w))) &&
    /^(?:,|:|\.|both|all|is|are|faded|stained|torn)$/.test(tokens[i + 2]?.w ?? '')
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

/** What is sewn is sewn so: near by, one of these says that something was closed or put back. */
const SEWN_BACK = /^(?:back|shut|closed|together|machine|hand|stitch|seam|on)$/;
/** "So the bottom one back down with a straight stitch", "sout that gaping seam back up": sewed */
const sewedHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const left = before.at(-1)?.w ?? '';
  if (!/^(?:so|sout|sowed|sowd|soad|sode|sowt)$/.test(t.w)) return undefined;
  if (!/^(?:|,|\.|;|and|i|'ve|then|uh)$/.test(left)) return undefined;
  if (!/^(?:the|that|it|them|both|this|those|up)$/.test(tokens[i + 1]?.w ?? '')) return undefined;
  const clause: string[] = [];
  for (let k = i + 1; k < i + 9 && tokens[k] && !/^(?:,|\.|;)$/.test(tokens[k]!.w); k++)
    clause.push(tokens[k]!.w);
  if (
    clause.some((w) =>
      /^(?:is|are|'s|was|were|has|had|'ve|have|i|we|she|he|they|'ll|will|goes|gets|needs|wants|came|went|far)$/.test(
        w,
      ),
    )
  )
    return undefined;
  if (!clause.some((w) => SEWN_BACK.test(w))) return undefined;
  if (clause.includes('label') && clause.includes('on')) return readAs(t, 'sewed', 'slip.ear');
  // "so it back" says nothing else, "so on the machine" does
  return clause.some((w, k) => k > 0 && /^(?:back|shut|closed|together)$/.test(w)) || t.w !== 'so'
    ? readAs(t, 'sewed', 'slip.ear')
    : undefined;
};

/** "its new piece in green gingham's own in by hand": sewn in */
const sewnHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'own' &&
  before.at(-1)?.w === "'s" &&
  /^(?:in|on|back|down|up)$/.test(tokens[i + 1]?.w ?? '')
    ? { ...readAs(tokens[i]!, 'sewn', 'slip.ear') }
    : undefined;

/** "and unpatched one five": "um, patched"; there is no undoing of a patch by that name. */
const unHeard: SlipRule = ({ tokens, i }) => {
  const t = tokens[i]!;
  if (!/^u[nm](?!un)[a-z]{4,}ed$/.test(t.w) || isKnown(tokens, i, t.w)) return undefined;
  const rest = t.w.slice(2);
  return isDone(tokens, i, rest) ? readAs(t, rest, 'slip.ear') : undefined;
};

/** "and and picked the rose sateen", "and picked that piece": unpicked */
const unpickedHeard: SlipRule = ({ tokens, i, before }) => {
  if (tokens[i]!.w !== 'and') return undefined;
  const left = before.at(-1)?.w ?? '';
  const picked = tokens[i + 1];
  if (!/^pick(?:ed)?$/.test(picked?.w ?? '') || /^(?:up|out|and|over|off)$/.test(tokens[i + 2]?.w ?? ''))
    return undefined;
  if (!/^(?:|and|\.|,)$/.test(left)) return undefined;
  if (!/^(?:the|that|it|them|all|those)$/.test(tokens[i + 2]?.w ?? '')) return undefined;
  return {
    tokens: [{ ...picked!, w: 'unpicked', from: tokens[i]!.from, heard: `and ${picked!.w}` }],
    took: 2,
    rule: 'slip.ear',
  };
};

/** "that's staining", "one's staining as it is": staying */
const stayingHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'staining' &&
  /^(?:'s|is|are|'re)$/.test(before.at(-1)?.w ?? '') &&
  /^(?:|\.|as|put|where|how|the)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'staying', 'slip.ear')
    : undefined;

/** "the whole right hand column's tight except": tied */
const tiedHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'tight' &&
  /^(?:'s|is|are|all|now)$/.test(before.at(-1)?.w ?? '') &&
  before.slice(-6).some(({ w }) => /^(?:rows?|columns?|blocks?)$/.test(w)) &&
  /^(?:|\.|,|except|but|bar|now|and|with)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'tied', 'slip.ear')
    : undefined;

/** "the wadding is will", "and will for the ties": wool */
const woolHeard: SlipRule = ({ tokens, i, before }) => {
  const left = before.at(-1)?.w ?? '';
  const right = tokens[i + 1]?.w ?? '';
  if (tokens[i]!.w !== 'will') return undefined;
  const thing =
    /^(?:is|of|in|or|dyed|cotton|fine|thick|a)$/.test(left) &&
    /^(?:|\.|,|and|or|for|cloth|felt|batting|wadding|thread|yarn)$/.test(right);
  const coloured = COLOURS.has(left) && /^(?:|\.|,|for|ties|thread|yarn)$/.test(right);
  const ties = left === 'and' && right === 'for' && tokens[i + 2]?.w === 'the';
  return thing || coloured || ties ? readAs(tokens[i]!, 'wool', 'slip.ear') : undefined;
};

/** "crat line", "crep line": crepeline */
const crepelineHeard: SlipRule = ({ tokens, i }) =>
  /^(?:cr|gr|cl)[a-z]{1,3}[bptd]e?$/.test(tokens[i]!.w) &&
  /^(?:line|lion|lines|lane)$/.test(tokens[i + 1]?.w ?? '')
    ? {
        tokens: [
          {
            ...tokens[i]!,
            w: 'crepeline',
            to: tokens[i + 1]!.to,
            heard: `${tokens[i]!.w} ${tokens[i + 1]!.w}`,
          },
        ],
        took: 2,
        rule: 'slip.ear',
      }
    : undefined;

/** "quilt the looking over at nine fifteen", "with a 20 till five" : quit */
const quitHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'quilt' &&
  /^(?:|,|\.|and|i|then)$/.test(before.at(-1)?.w ?? '') &&
  ((tokens[i + 1]?.w === 'the' &&
    /ing$/.test(tokens[i + 2]?.w ?? '') &&
    /^(?:over|at|about|up)$/.test(tokens[i + 3]?.w ?? '')) ||
    (tokens[i + 1]?.w === 'at' &&
      (tokens[i + 2]?.kind === 'number' || smallValue(tokens[i + 2]) !== undefined)))
    ? readAs(tokens[i]!, 'quit', 'slip.ear')
    : undefined;

/** "the four throw", "in the sixth row": an ordinal that gave its end to the row */
const NTH = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];
const nthRowHeard: SlipRule = ({ tokens, i, before }) => {
  const n = smallValue(tokens[i]);
  if (
    n === undefined ||
    !/^(?:throws?|thro|through)$/.test(tokens[i + 1]?.w ?? '') ||
    !/^(?:the|of|in|that)$/.test(before.at(-1)?.w ?? '')
  )
    return undefined;
  if (tokens[i + 1]!.w === 'through' && before.at(-1)?.w !== 'the') return undefined;
  return {
    tokens: [
      { ...tokens[i]!, kind: 'word', w: NTH[n - 1]!, value: undefined, heard: tokens[i]!.w },
      { ...tokens[i + 1]!, w: 'row', heard: tokens[i + 1]!.w },
    ],
    took: 2,
    rule: 'slip.named-line',
  };
};

/** "rowed one block to its freight": row one, block two, it's */
const blockToHeard: SlipRule = ({ tokens, i, before }) => {
  const left = before.at(-1)?.w ?? '';
  if (tokens[i]!.w === 'rowed' && smallValue(tokens[i + 1]) !== undefined)
    return readAs(tokens[i]!, 'row', 'slip.named-line');
  if (
    /^(?:to|too)$/.test(tokens[i]!.w) &&
    /^(?:block|row|column)$/.test(left) &&
    /^(?:it|that|has|is|was|and|,|starting)$/.test(tokens[i + 1]?.w ?? '')
  )
    return readAs(tokens[i]!, 'two', 'slip.named-line');
  if (
    /^(?:to|too)$/.test(tokens[i]!.w) &&
    left === 'block' &&
    tokens[i + 1]?.w === 'its' &&
    LEXICON.longestAt(tokens, i + 2)?.payloads.some((s) => s.k === 'finding')
  )
    return readAs(tokens[i]!, 'two', 'slip.named-line');
  return undefined;
};

/** "those three one ones": worn; "a label once sewing on": wants */
const wornOrWants: SlipRule = ({ tokens, i, before }) => {
  const right = tokens[i + 1]?.w ?? '';
  const left = before.at(-1)?.w ?? '';
  if (
    tokens[i]!.w === 'one' &&
    right === 'ones' &&
    /^(?:the|those|these|other|two|three|four|all|five)$/.test(left)
  )
    return readAs(tokens[i]!, 'worn', 'slip.ear');
  // "worn once: net over", at the head of what is said
  if (
    tokens[i]!.w === 'once' &&
    /^(?:worn|torn|faded|frayed|stained|shattered|thin|weak|split)$/.test(left) &&
    /^(?:|\.|,|;)$/.test(before.at(-2)?.w ?? '') &&
    /^(?:,|:)$/.test(right)
  )
    return readAs(tokens[i]!, 'ones', 'slip.ear');
  if (
    tokens[i]!.w === 'once' &&
    /^(?:doing|pressing|darning|mending|washing|cleaning|patching|replacing|trimming|unpicking)$/.test(
      right,
    ) &&
    !/^(?:|at|,|\.|than|just)$/.test(left)
  )
    return readAs(tokens[i]!, 'wants', 'slip.ear');
  if (tokens[i]!.w === 'once' && /^(?:swing|sewing|sowing)$/.test(right) && tokens[i + 2]?.w === 'on')
    return {
      tokens: [
        { ...tokens[i]!, w: 'wants', heard: 'once' },
        { ...tokens[i + 1]!, w: 'sewing', heard: right },
      ],
      took: 2,
      rule: 'slip.ear',
    };
  return undefined;
};

/** "tell it is, on every strip": tulle */
const tulleHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:tell|till|tool|toll|two)$/.test(tokens[i]!.w) &&
  /^(?:|\.|,|so)$/.test(before.at(-1)?.w ?? '') &&
  tokens[i + 1]?.w === 'it' &&
  tokens[i + 2]?.w === 'is' &&
  /^(?:|,|\.|then|on|over|for)$/.test(tokens[i + 3]?.w ?? '')
    ? readAs(tokens[i]!, 'tulle', 'slip.ear')
    : undefined;

/** "tied to accept for blocks two and three": except */
const exceptHeard: SlipRule = ({ tokens, i }) =>
  tokens[i]!.w === 'accept' && /^(?:for|the|row|block|column)$/.test(tokens[i + 1]?.w ?? '')
    ? readAs(tokens[i]!, 'except', 'slip.ear')
    : undefined;

/** "laid tool over one one", "laid 2 over 1 1": tulle */
const laidTulle: SlipRule = ({ tokens, i, before }) =>
  /^(?:tool|two|2|to|too|tall|till|tell|toll)$/.test(tokens[i]!.w) &&
  /^(?:laid|put|sewed|couched|pinned|lay|some|,)$/.test(before.at(-1)?.w ?? '') &&
  tokens[i + 1]?.w === 'over' &&
  (before.at(-1)?.w !== ',' || /^(?:it|them)$/.test(tokens[i + 2]?.w ?? ''))
    ? {
        tokens: [{ ...tokens[i]!, kind: 'word', w: 'tulle', value: undefined, heard: tokens[i]!.w }],
        took: 1,
        rule: 'slip.ear',
      }
    : undefined;

/** "the calico's then.", "the calico's than": thin */
const thinHeard: SlipRule = ({ tokens, i, before, names }) =>
  /^(?:then|than)$/.test(tokens[i]!.w) &&
  /^(?:'s|is|are)$/.test(before.at(-1)?.w ?? '') &&
  /^(?:|\.)$/.test(tokens[i + 1]?.w ?? '') &&
  before.length > 1 &&
  ((names !== undefined && isNameWord(names, before.at(-2)!.w)) ||
    /^(?:ones?|cloth|fabric|backing)$/.test(before.at(-2)!.w))
    ? readAs(tokens[i]!, 'thin', 'slip.ear')
    : undefined;

/** "it's got to rust stain on it", "next to tear": a */
const aHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'to' &&
  /^(?:got|has|had|have|next|was|is|'s)$/.test(before.at(-1)?.w ?? '') &&
  /^(?:rust|hole|stain|tear|rip|split|small|big|little|long|nasty)$/.test(tokens[i + 1]?.w ?? '') &&
  !/^(?:it|that|the|them|this|up|out)$/.test(tokens[i + 2]?.w ?? '')
    ? readAs(tokens[i]!, 'a', 'slip.ear')
    : undefined;

/** What is left of a word whose s was heard with the one before: "top's mells of mildew" */
const BEHEADED: Record<string, string> = {
  mells: 'smells',
  mell: 'smell',
  tained: 'stained',
  titched: 'stitched',
  plit: 'split',
  hattered: 'shattered',
};
const beheaded: SlipRule = ({ tokens, i, before }) => {
  const whole = Object.hasOwn(BEHEADED, tokens[i]!.w) ? BEHEADED[tokens[i]!.w] : undefined;
  if (!whole) return undefined;
  const took = before.at(-1)?.w === "'s" && /^s(?:mell|tain|titch)/.test(whole);
  return {
    tokens: [{ ...tokens[i]!, w: whole, heard: tokens[i]!.w }],
    took: 1,
    ...(took ? { tookBack: 1 } : {}),
    rule: 'slip.ear',
  };
};

/** "leave a replace", "patch all darn": or */
const orHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:a|all|are|oh)$/.test(tokens[i]!.w) &&
  before.length > 0 &&
  isDeedAt(before, before.length - 1, 'base') &&
  isDeedAt(tokens, i + 1, 'base') &&
  /^(?:leave|replace|patch|darn|wash|tie|quilt|stabilize|stabilise)$/.test(before.at(-1)!.w) &&
  /^(?:leave|replace|patch|darn|wash|tie|quilt|stabilize|stabilise)$/.test(tokens[i + 1]!.w)
    ? readAs(tokens[i]!, 'or', 'slip.ear')
    : undefined;

/** "leave or replace and decided": undecided */
const undecidedHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'and' &&
  tokens[i + 1]?.w === 'decided' &&
  !/^(?:|to|on|that|the|i|it)$/.test(tokens[i + 2]?.w || 'x') &&
  before.slice(-6).some(({ w }) => w === 'or')
    ? {
        tokens: [
          { ...tokens[i]!, kind: 'mark', w: ',' },
          { ...tokens[i + 1]!, w: 'undecided', heard: 'and decided' },
          ...(tokens[i + 2]?.w === ','
            ? []
            : [{ ...tokens[i + 1]!, kind: 'mark' as const, w: '.', glued: true }]),
        ],
        took: 2,
        rule: 'slip.ear',
      }
    : undefined;

/** "rays stitch the loose edge", "race sew": done once more */
const againHeard: SlipRule = ({ tokens, i, before }) => {
  const verb = {
    stitch: 'restitched',
    stitched: 'restitched',
    sew: 'resewed',
    sewed: 'resewed',
    sowed: 'resewed',
    tied: 'retied',
    quilted: 'requilted',
  }[tokens[i + 1]?.w ?? ''];
  if (
    !verb ||
    !/^(?:ray|rays|race|raise|res|reach)$/.test(tokens[i]!.w) ||
    !/^(?:|,|\.|and|i|'ve|then)$/.test(before.at(-1)?.w ?? '')
  )
    return undefined;
  return {
    tokens: [{ ...tokens[i]!, w: verb, to: tokens[i + 1]!.to, heard: `${tokens[i]!.w} ${tokens[i + 1]!.w}` }],
    took: 2,
    rule: 'slip.ear',
  };
};

/** "next i hold piece the border": I'll */
const willHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:hold|old|all|eel|isle)$/.test(tokens[i]!.w) &&
  before.at(-1)?.w === 'i' &&
  isDeedAt(tokens, i + 1, 'base')
    ? readAs(tokens[i]!, "'ll", 'slip.ear')
    : undefined;

/** "umon picked that piece", "I'm in pick that": unpicked */
const umUnpicked: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  const picked =
    /^pick(?:ed)?$/.test(tokens[i + 1]?.w ?? '') && !/^(?:up|out|over)$/.test(tokens[i + 2]?.w ?? '');
  if (!picked) return undefined;
  const read = {
    tokens: [{ ...tokens[i + 1]!, w: 'unpicked', from: t.from, heard: `${t.w} ${tokens[i + 1]!.w}` }],
    took: 2,
    rule: 'slip.ear',
  };
  if (/^(?:um?on|um?and|um?an|umin|emin)$/.test(t.w)) return read;
  return t.w === 'in' && before.at(-1)?.w === "'m" && before.at(-2)?.w === 'i'
    ? { ...read, tookBack: 2 }
    : undefined;
};

/** "one that quarter pink print": a fat quarter */
const fatHeard: SlipRule = ({ tokens, i, before }) =>
  /^(?:that|flat|bad|fact|vat|pat)$/.test(tokens[i]!.w) &&
  /^quarters?$/.test(tokens[i + 1]?.w ?? '') &&
  (smallValue(before.at(-1)) !== undefined || /^(?:a|another)$/.test(before.at(-1)?.w ?? ''))
    ? readAs(tokens[i]!, 'fat', 'slip.ear')
    : undefined;

/** "must by 5.25 m", "I got a by half a yard", "need to by pins", "2-by one yard", "to by: thread": buy */
const buyHeard: SlipRule = ({ tokens, i, before }) => {
  const t = tokens[i]!;
  if (!/^(?:by|bye|bite)$/.test(t.w)) return undefined;
  const last = before
    .slice(-3)
    .map(({ w }) => w)
    .join(' ');
  const right = tokens[i + 1];
  if (right === undefined && t.w !== 'bite') return undefined;
  if (
    /(?:^| )(?:must|gotta|should|could|we 'll|i 'll|still to|(?:need|needs|have|has|got|want|wants|forgot|remember|going) (?:to|a|it))$/.test(
      last,
    ) &&
    !/^(?:hand|machine)$/.test(right?.w ?? '')
  ) {
    const heard = before.at(-1)!;
    // "got a by", "got it by" are gotta
    return /^(?:a|it)$/.test(heard.w) && before.at(-2)?.w === 'got'
      ? {
          tokens: [
            { ...heard, w: 'to' },
            { ...t, w: 'buy', heard: t.w },
          ],
          took: 1,
          tookBack: 1,
          rule: 'slip.ear',
        }
      : readAs(t, 'buy', 'slip.ear');
  }
  // "2-by one yard", "to by, thread": the list's head
  const head = before.at(-1)?.w === '-' ? before.at(-2) : before.at(-1);
  const from = before.at(-1)?.w === '-' ? before.length - 2 : before.length - 1;
  if (
    !/^(?:2|two|to|too)$/.test(head?.w ?? '') ||
    (from > 0 && !/^(?:[.,;]|and|still|also)$/.test(before[from - 1]!.w)) ||
    !(
      right?.kind === 'number' ||
      smallValue(right) !== undefined ||
      /^(?:a|some|more|,|:|half)$/.test(right?.w ?? '')
    )
  )
    return undefined;
  return {
    tokens: [
      { ...head!, kind: 'word', w: 'to', value: undefined, heard: head!.w },
      { ...t, w: 'buy', glued: false, heard: t.w },
    ],
    took: 1,
    tookBack: before.length - from,
    rule: 'slip.ear',
  };
};

/** "took the binding of the bottom edge": off */
const offHeard: SlipRule = ({ tokens, i, before }) => {
  if (tokens[i]!.w !== 'of' || !/^(?:the|that|this|all|row|block|\d)/.test(tokens[i + 1]?.w ?? ''))
    return undefined;
  const said = before.slice(-5).map(({ w }) => w);
  const at = said.findLastIndex((w) => /^(?:took|taken|take|taking|got|pulled|picked|peeled|cut)$/.test(w));
  if (at < 0) return undefined;
  const thing = said.slice(at + 1).join(' ');
  return /^(?:the |that |an? |its |their |old |whole )*(?:binding|backing|border|patch|old patch|label|sashing|ties|batting)$/.test(
    thing,
  )
    ? readAs(tokens[i]!, 'off', 'slip.ear')
    : undefined;
};

/** "to it that old patch off one three", "to the binding off": took */
const tookHeard: SlipRule = ({ tokens, i, before }) => {
  if (!/^(?:to|too|tuk|tuck)$/.test(tokens[i]!.w) || !/^(?:|\.|,|and|so|then)$/.test(before.at(-1)?.w ?? ''))
    return undefined;
  const extra =
    /^(?:it|cut)$/.test(tokens[i + 1]?.w ?? '') && /^(?:that|the|old|it)$/.test(tokens[i + 2]?.w ?? '');
  const from = i + (extra ? 2 : 1);
  if (!/^(?:that|the|it|all|old|out|off)$/.test(tokens[from]?.w ?? '')) return undefined;
  for (let k = from; k < from + 6 && tokens[k] && tokens[k]!.kind !== 'mark'; k++)
    if (/^(?:off|out)$/.test(tokens[k]!.w))
      return { ...readAs(tokens[i]!, 'took', 'slip.ear'), took: from - i };
  return undefined;
};

/** "no way, the patch was the red", "no way take that back": no, wait */
const noWaitHeard: SlipRule = ({ tokens, i, before }) =>
  tokens[i]!.w === 'way' &&
  before.at(-1)?.w === 'no' &&
  /^(?:|,|\.|and|oh)$/.test(before.at(-2)?.w ?? '') &&
  tokens[i + 1] !== undefined &&
  !/^(?:!|\.|am|was|i 'm|to|of|that)$/.test(tokens[i + 1]!.w)
    ? readAs(tokens[i]!, 'wait', 'slip.ear')
    : undefined;

/** "R1 be 2 and be 3", "r4 bee 1": the b of a block */
const letterHeard: SlipRule = ({ tokens, i, before }) => {
  if (!/^(?:be|bee)$/.test(tokens[i]!.w) || smallValue(tokens[i + 1]) === undefined) return undefined;
  const left = before.at(-1);
  const afterRow = left?.kind === 'number' && before.at(-2)?.w === 'r';
  const listed = /^(?:and|&)$/.test(left?.w ?? '') && before.slice(-8).some(({ w }) => w === 'b');
  return afterRow || listed ? readAs(tokens[i]!, 'b', 'slip.ear') : undefined;
};

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
  sewedHeard,
  sewnHeard,
  unHeard,
  unpickedHeard,
  stayingHeard,
  tiedHeard,
  woolHeard,
  crepelineHeard,
  quitHeard,
  nthRowHeard,
  blockToHeard,
  wornOrWants,
  tulleHeard,
  exceptHeard,
  laidTulle,
  thinHeard,
  aHeard,
  beheaded,
  orHeard,
  undecidedHeard,
  againHeard,
  willHeard,
  umUnpicked,
  fatHeard,
  buyHeard,
  offHeard,
  tookHeard,
  noWaitHeard,
  letterHeard,
];
