import type { Token } from '../../text/tokenise.ts';
import { markBefore } from '../../text/with-marks.ts';

const THINGS =
  "(?:(?:there 's |there are |i 've |i have )?(?:two|three|four|a couple of|a few|some|several|the) )?(?:things?|matters?|questions?|points?|bits?)";
const NOT_DECIDED =
  "(?:(?:have|'ve|do|ca|has|had) ?n't|have not|not) (?:yet |really )?(?:settled|decided|made up my mind|made my mind up|made my mind|worked out|know|fixed|agreed|figured out|settle|decide)(?: yet| on| about)*";
const OPEN =
  'open|undecided|unsettled|up in the air|not settled|not decided|not agreed|to be decided|to decide';
/** "what's still open is", "what's not decided yet, …", "two things I haven't made up my mind on."; in the middle of a note `matter-heads.ts` finds others. */
const OPEN_HEAD = new RegExp(
  [
    `^(?:what(?: 's| is)?|(?:the|all) that 's|here 's what 's) (?:still |yet |not yet )*(?:${OPEN})(?: yet| still)? (?:(?:is|are)(?: :)?|[:,]) `,
    `^what (?:i|we) (?:still )?${NOT_DECIDED} (?:(?:is|are)(?: :)?|[:,]) `,
    `^(?:the )?(?:two |three |four |only )?(?:open|undecided) (?:questions?|matters?|points?|things?) (?:is|are)(?: :)? `,
    `^${THINGS} (?:that )?(?:i|we) (?:still )?${NOT_DECIDED} [.:,;] `,
  ].join('|'),
);
/** "haven't settled", "undecided on", where a list of matters follows. */
const OPEN_LIST = new RegExp(
  `^(?:i |we |i 'm |i am )?(?:still |yet |not yet )*(?:${NOT_DECIDED}|undecided(?: yet| still)?(?: on| about)?|not sure (?:yet )?about) `,
);
const MATTER = /^(?:batting|wadding|border|binding|thread|fabric|backing|quilting|quilt|tying|tie|cloth)$/;
/** No list of matters has more words: what comes after them is not looked at. */
const LONGEST_LIST = 60;
const listsMatters = (tokens: Token[], from: number): boolean => {
  let stop = from + 1;
  while (stop < tokens.length && stop < from + LONGEST_LIST && !/^[.;?!\n]$/.test(tokens[stop]!.w)) stop++;
  const told = tokens.slice(from, stop);
  return told.filter((t) => MATTER.test(t.w)).length > 2 && !told.some((t) => /^(?:nor|but)$/.test(t.w));
};

/** "what's settled is", "what's settled, it's …", "here's what I've settled,", "it's settled that" */
const SETTLED_HEAD = new RegExp(
  [
    "^(?:what|all that)(?: 's| is) (?:now |been |already )?(?:settled|decided|agreed|fixed)(?: (?:now|so far|already))?(?: is|(?: [:,])(?! (?:what|and|or|please)\\b)) (?:: |that )?",
    "^(?:here 's |this is )?what (?:i|we)(?: 've| have)? (?:now |already )?(?:settled|decided|agreed|fixed)(?: on)? (?:is|[,:.]) (?:that )?",
    "^it(?: 's| is) (?:now |all |already )?(?:settled|decided|agreed) that ",
  ].join('|'),
);
/** "resolved: tying, not quilting", "unresolved: the backing": as settled and unsettled, whatever stands about them. */
const RESOLVED: Record<string, string> = { resolved: 'settled', unresolved: 'unsettled' };
const HINT =
  /^(?:(?:un)?resolved|open|undecided|unsettled|air|settled|decided|agreed|fixed|mind|decide|know|worked|figured)$/;

/**
 * "what's settled is it only gets washed cold and what's still open is the thread and the batting": a list told in a whole sentence is
 * read as the list under its heading that it is ("settled: … ; open: …").
 */
export function nameHeads(said: Token[]): Token[] {
  if (!said.some((t) => HINT.test(t.w))) return said;
  const tokens = said.map((t, k) =>
    Object.hasOwn(RESOLVED, t.w) && !/^(?:that|to)$/.test(said[k + 1]?.w ?? '')
      ? { ...t, w: RESOLVED[t.w]! }
      : t,
  );
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const before = out.at(-1)?.w ?? '.';
    const begins = /^(?:[.,;:!?\n-]|--|and|but|so|then|now|okay|ok|right|well|well,)$/.test(before);
    const words = begins
      ? `${tokens
          .slice(i, i + 16)
          .map((t) => t.w)
          .join(' ')} `
      : '';
    const open = words && (OPEN_HEAD.exec(words) ?? (listsMatters(tokens, i) ? OPEN_LIST.exec(words) : null));
    const settled = words && !open ? SETTLED_HEAD.exec(words) : undefined;
    const head = open || settled;
    // "what's still open is?" asks
    if (!head || tokens.at(-1)!.w === '?') {
      out.push(tokens[i]!);
      continue;
    }
    const length = head[0].trim().split(' ').length;
    const last = tokens[i + length - 1]!;
    if (/^(?:and|but|so|then)$/.test(before)) out.pop();
    if (out.length && !/^[.;:!?\n]$/.test(out.at(-1)!.w)) out.push(markBefore(tokens[i]!, ';'));
    out.push({ ...tokens[i]!, w: open ? 'open' : 'settled', to: last.to }, markBefore(last, ':'));
    i += length - 1;
  }
  return out;
}
