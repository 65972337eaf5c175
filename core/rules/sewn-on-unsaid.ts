import type { Token } from '../text/tokenise.ts';
import { wordsBetween } from './words-between.ts';

/**
 * A label, border or binding told with its place and no verb: "label on lower left corner, by hand", "label -> back, to do", "new
 * border on left and right, machine". The verb is put in, so that they are read as they would be written out.
 */
export function withUnsaidSewing(tokens: Token[]): Token[] {
  let out = tokens;
  for (let i = 0; i < out.length; i++) {
    const { w } = out[i]!;
    if (w === 'label') out = withLabelSewn(out, i);
    else if (/^(?:borders?|binding)$/.test(w)) out = withSideSewn(out, i);
  }
  return out;
}

const STOP = /^[.;!?\n]$/;
const LATER =
  '(?:tomorrow|tonight|later|next|to do|to go|todo|to come|still|(?:on |this |next )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:on )?(?:mon|tue|wed|thu|thur|thurs|fri|sat|sun)|next week|this week|this evening|outstanding)';
const HOW =
  '(?:by hand|by machine|hand|machine|took|about|(?:hand|machine) (?:sewn|stitched|sewed)|(?:slip |ladder |blanket |back |running |whip )?(?:stitch|stitched)(?: down| all round| round it)?|(?:whip|slip|back)stitch(?:ed)?(?: down| all round)?|zigzag|herringbone|ladder|half an hour|an hour|(?:\\d+|ten|fifteen|twenty|thirty|forty) (?:min|mins|minutes))';
const IS_LATER = new RegExp(` ${LATER} `);
const TELLS_HOW = new RegExp(` ${HOW} `);
const BEGINS_WITH_HOW = new RegExp(`^ *(?:[,(-] )?${HOW} `);
const CORNER =
  '(?:(?:the )?(?:top|bottom|lower|upper|btm) (?:left|right)(?: hand)?(?: corner| one)?|(?:the )?(?:back|front|reverse|verso)(?: ,? ?(?:in |at )?(?:the )?(?:top|bottom|lower|upper) (?:left|right)(?: hand)?(?: corner)?)?)';
/** Behind "label": how it is joined to its place, the place, and nothing further but how or when. */
const LABEL_AT = new RegExp(
  `^((?:(?:'s|is|sewn|'s sewn|is sewn) on(?: now)? ,|- >|->|>|→|:|-|,|maybe|perhaps|for|on|in|at|to|into|${HOW}|${LATER}) )*(${CORNER})(?: of (?:the|this) (?:quilt|cover|coverlet|back|backing|spread|throw))? (?:(?:,|-|;|\\(|\\)|and|maybe|perhaps|\\?|${HOW}|${LATER}|now|too) )*$`,
);
const BEFORE_LABEL = /^(?:the|a|her|his|my|our|new|name|sewn|printed|signed|and|&|plus|then|also|oh|so)$/;
const HEADING =
  / (?:to do|todo|remaining|still|left|outstanding|self|remember|next|plan|tomorrow) (?::|-|,) /;

/** A word that was not said, at the place behind `at`. */
const wordBehind = (at: Token, w: string): Token => ({ ...at, w, kind: 'word', from: at.to, glued: false });

/** Where the piece ends that begins at `i`: at a stop, or at a comma behind which something else is told. */
function endOfPiece(tokens: Token[], i: number): number {
  const stop = tokens.findIndex((t, m) => m > i && STOP.test(t.w) && t.kind === 'mark');
  return stop < 0 ? tokens.length : stop;
}

/** "label on the back, bottom left, whipstitched": sewn on there, or to be. */
function withLabelSewn(tokens: Token[], i: number): Token[] {
  let from = i;
  while (from > 0 && BEFORE_LABEL.test(tokens[from - 1]!.w)) from--;
  const mark = tokens[from - 1];
  if (mark && !/^(?:[.;!?\n,:(-]|--|and|&)$/.test(mark.w)) return tokens;
  const end = endOfPiece(tokens, i);
  const told = wordsBetween(tokens, i + 1, end).trimStart();
  if (end - i > 16) return tokens;
  const at = LABEL_AT.exec(told);
  if (!at) return tokens;
  const asked = tokens[end]?.w === '?' || / (?:maybe|perhaps|\?) /.test(` ${told}`);
  const pointed = / (?:>|->|→) /.test(` ${told}`);
  const arrow = / (?:>|->|→|for|to) /.test(` ${told.slice(0, told.indexOf(at[2]!))}`);
  const later =
    arrow || IS_LATER.test(` ${told}`) || HEADING.test(wordsBetween(tokens, sentenceStart(tokens, i), i));
  const how = TELLS_HOW.test(` ${told}`);
  const isNew = tokens.slice(from, i).some((t) => /^(?:new|name)$/.test(t.w));
  // what was just done to the quilt stands before it
  const among = / (?:\S+ed|bound|sewn|done|cut|put) /.test(wordsBetween(tokens, 0, from));
  if (!asked && !later && !how && !isNew && !among) return tokens;
  const label = tokens[i]!;
  const lead = at[0].slice(0, at[0].indexOf(at[2]!)).split(' ').filter(Boolean).length;
  const place = i + 1 + lead;
  // "label by hand on the bottom left corner": how, told before where, goes behind it
  const ahead = TELLS_HOW.exec(` ${at[0].slice(0, at[0].indexOf(at[2]!))}`);
  const manner = ahead ? [',', ...ahead[0].trim().split(' ')] : [];
  const verb = asked ? ['maybe', 'to', 'go', 'on'] : later ? ['to', 'go', 'on'] : ['sewn', 'on'];
  const before = tokens.slice(0, from);
  // told after other things in one breath: a statement of its own
  if (
    mark &&
    /^(?:,|and|&|-)$/.test(mark.w) &&
    from > 2 &&
    (pointed || !HEADING.test(wordsBetween(tokens, sentenceStart(tokens, i), i)))
  )
    before[from - 1] = { ...mark, w: ';', kind: 'mark' };
  return [
    ...before,
    ...tokens.slice(from, i + 1),
    ...verb.map((w) => wordBehind(label, w)),
    ...tokens.slice(place, end),
    ...manner.map((w) => ({
      ...wordBehind(label, w),
      kind: w === ',' ? ('mark' as const) : ('word' as const),
    })),
    ...tokens.slice(end),
  ];
}

const sentenceStart = (tokens: Token[], i: number): number =>
  tokens.slice(0, i).findLastIndex((t) => STOP.test(t.w)) + 1;

const SIDE =
  '(?:the )?(?:both |all |three |two |four )*(?:top|bottom|left|right|l|r|sides?|ends?)(?: hand)?(?: side| edge)?';
/** Behind "new border": the sides, and how or when. */
const SIDES = new RegExp(
  `^on (?:${SIDE})(?: (?:,|and|&|\\+) ${SIDE})*(?: (?:side|sides|edges?))? (?:$|[,;(-] |by |in |machine |hand |now |too |with |${LATER} )`,
);

/** "new border on left and right, 4 in wide", "binding on top & left, machine". */
function withSideSewn(tokens: Token[], i: number): Token[] {
  if (tokens[i + 1]?.w !== 'on') return tokens;
  const isNew = /^(?:new|fresh)$/.test(tokens[i - 1]?.w ?? '');
  const from = isNew ? i - 1 : i;
  if (!/^(?:|[.;!?\n,:(-]|--|and|&)$/.test(tokens[from - 1]?.w ?? '')) return tokens;
  const told = wordsBetween(tokens, i + 1, endOfPiece(tokens, i)).trimStart();
  const sides = SIDES.exec(told);
  if (!sides) return tokens;
  const rest = ` ${told.slice(sides[0].length - 2)}`;
  if (!isNew && !BEGINS_WITH_HOW.test(rest.trimStart().replace(/^[,(-] /, ''))) return tokens;
  const thing = tokens[i]!;
  const later = IS_LATER.test(` ${told}`);
  const verb = later ? ['to', 'go'] : ['sewn'];
  return [...tokens.slice(0, i + 1), ...verb.map((w) => wordBehind(thing, w)), ...tokens.slice(i + 1)];
}
