import { blockAt, blocksOfLine, cornerBlock, rowOf } from '../../rules/places/grid.ts';
import { countsOf, ORDINAL_WORDS } from '../../text/number-words.ts';
import { type Answering, SMALL } from './answering.ts';

const COUNT: Record<string, number> = countsOf(1, 20);

/** "one of the blocks in row three", "a seam in the second column": the line that the question is about. */
const LINE =
  /\b(?:(row|column|col) ?(\w+)|(first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|top|bottom|last|left(?:[- ]hand)?|right(?:[- ]hand)?) (row|col|column))\b/gi;

const SOUND = String.raw`(?:um|uh|er|oh|ah|well|it was|it 's|it is|that was|that 's|they were|the one|ones|i think|block|blocks|number|numbers|no|the|that one|in|at|,)`;
const COUNTED = String.raw`(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|last|middle|end|far left|far right|left(?: hand)?|right(?: hand)?|top|bottom)`;
const OF_LINE = String.raw`(?:one|ones|block|blocks|square|squares|of them|of those|of it|of that row|in that row|along|across|down|in|from the left|from the right|from the top|end|actually|i think|then|that is|that was|it was|both|seam)`;
const NTHS = new RegExp(
  String.raw`^ (?:${SOUND} )*(${COUNTED})(?: ${OF_LINE})*((?: (?:,|and|&|,? and) (?:the |block |number )?${COUNTED}(?: ${OF_LINE})*)*)(?: [.!])* $`,
);
/** "between three and four", "the three-four one": a seam. */
const BETWEEN = new RegExp(
  String.raw`^ (?:${SOUND} )*(?:(?:the )?(?:one|seam) )?between (?:the )?(?:blocks? )?(${COUNTED}) and (?:the )?(?:block )?(${COUNTED})(?: ${OF_LINE})*(?: [.!])* $`,
);

/**
 * "one of the blocks in row three", then "third", "two and four", "the last one": blocks of that line. "between three and four": the
 * two on either side of the seam.
 */
export function ofTheLine(a: Answering): string[] | undefined {
  if (a.last.heard || a.items.length > 12) return undefined;
  const { grid } = a.state;
  const lines = [...a.last.said.matchAll(LINE)].flatMap(([, axis, nth, ordinal, axisBehind]) => {
    const of = /^r/i.test(axis ?? axisBehind ?? '') ? ('row' as const) : ('column' as const);
    const most = of === 'row' ? grid.rows : rowOf(grid, 1).length;
    const n = lineNumber((nth ?? ordinal ?? '').toLowerCase(), most);
    return n ? [{ of, n }] : [];
  });
  const [line, another] = lines;
  if (!line || another) return undefined;
  const blocks = blocksOfLine(grid, line.of, line.n);
  // "row five", of one in the second column
  const across = a.items.filter((x) => x.place?.places.length);
  const crossing = across.length === 1 ? across[0]!.place!.places.filter((p) => blocks.includes(p)) : [];
  if (
    crossing.length === 1 &&
    across[0]!.place!.places.length > 1 &&
    a.items.every((x) => x.place || SMALL.test(x.w))
  )
    return crossing;
  const between = BETWEEN.exec(a.words);
  const nths = between ? undefined : NTHS.exec(a.words);
  if (!between && !nths) return undefined;
  const fromRight = / from the (?:right|bottom) /.test(a.words);
  const list = fromRight ? [...blocks].reverse() : blocks;
  const words = between
    ? [between[1]!, between[2]!]
    : [nths![1]!, ...(`${nths![2]!} `.match(new RegExp(`(?<= )${COUNTED}(?= )`, 'g')) ?? [])];
  const picked = words.map((w) => pick(list, w, line.of));
  if (picked.some((p) => p === undefined)) return undefined;
  return [...new Set(picked as string[])];

  function pick(from: string[], w: string, axis: 'row' | 'column'): string | undefined {
    if (/^(?:last|end)$/.test(w)) return from.at(-1);
    if (w === 'middle') return from.length % 2 ? from[(from.length - 1) / 2] : undefined;
    if (/left|right/.test(w)) return axis === 'row' ? (/left/.test(w) ? from[0] : from.at(-1)) : undefined;
    if (/^(?:top|bottom)$/.test(w))
      return axis === 'column' ? (w === 'top' ? from[0] : from.at(-1)) : undefined;
    const n = COUNT[w] ?? (ORDINAL_WORDS.indexOf(w) + 1 || Number(w));
    if (!n) return undefined;
    return axis === 'row' ? (fromRight ? from[n - 1] : blockAt(grid, line!.n, n)) : from[n - 1];
  }
}

const CORNER =
  /^ (?:(?:um|uh|er|oh|it was|it 's|the|on|in|at|,) )*(top|bottom|upper|lower) (?:and )?(left|right)(?: hand)?(?: (?:one|corner|block))*(?: (?:[.!]|actually|i think|that was))* $/;

/** "hole in one of the corner blocks", then "top right". */
export function whichCorner(a: Answering): string[] | undefined {
  const corner = /\bcorner(?:s|[- ](?:blocks?|squares?|patch(?:es)?|ones?))?\b/i.exec(a.last.said)?.[0];
  const said = CORNER.exec(a.words);
  if (!corner || !said) return undefined;
  const top = /top|upper/.test(said[1]!);
  return /block|square|patch|one/i.test(corner)
    ? [cornerBlock(a.state.grid, top, said[2] === 'left')]
    : [`corner-${top ? 'top' : 'bottom'}-${said[2]}`];
}

/** The number of the line: "3", "three", "third", "bottom". */
function lineNumber(word: string, most: number): number | undefined {
  if (/^(?:top|left)/.test(word)) return 1;
  if (/^(?:bottom|last|right)/.test(word)) return most;
  const n = COUNT[word] ?? (ORDINAL_WORDS.indexOf(word) + 1 || Number(word));
  return n && n <= most ? n : undefined;
}
