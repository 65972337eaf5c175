import type { QuiltGrid } from '../../shared/quilt.ts';
import { readCount } from '../text/read-number.ts';
import type { Token } from '../text/tokenise.ts';
import { LEXICON } from './lexicon-index.ts';
import { blockAt, blocksOfLine, countUp } from './places/grid.ts';

type Heading = { axis: 'row' | 'column'; value: number; next: number };

const NOS = /^(?:nos?|numbers?)$/;
const LEADS = /^(?:in|on|at|through|across)$/;
const JOINT = /^(?:and|&|\+|,|to|-|or)$/;
const ENDS = /^(?:[.,;:!?\n)]|--|and|but|with|so|is|are|has|have|'s|was|were|both|all|too|also)$/;

/**
 * "Row 3: seam open between 2 and 3", "col 2: 1 torn, 3 to 5 stained", "row 2, nos 3 and 4 are thin": under the line that heads the sentence a
 * bare number is a block of it. Each is given the block's name, so that it is read as if that had been said. Left alone is
 * what counts or measures ("row 2: 3 holes", "row 4: 20 minutes"), and in a row what `scan` reads by itself ("row 2: 3 and 4 thin").
 */
export function nameHeadedNumbers(tokens: Token[], grid: QuiltGrid): Token[] {
  if (!tokens.some((t) => /^(?:row|r|col|column|c)$/.test(t.w))) return tokens;
  const out: Token[] = [];
  let heading: Heading | undefined;
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i]!;
    if (/^[.!?\n]$/.test(t.w) && !isShort(tokens, i)) heading = undefined;
    const opened = headingAt(tokens, i, grid);
    if (opened) {
      out.push(...tokens.slice(i, opened.next));
      i = opened.next - 1;
      heading = opened;
      continue;
    }
    const named = heading && numbersAt(tokens, i, heading, grid);
    if (!named) {
      out.push(t);
      continue;
    }
    out.push(...named.tokens);
    i = named.next - 1;
  }
  return out;
}

/** "no. 6": the stop of a word cut short. */
const isShort = (tokens: Token[], i: number): boolean => /^nos?$/.test(tokens[i - 1]?.w ?? '');

/** "row 3:", "col 2 -", "row 5, no. 5": one line, and that it heads what follows. */
function headingAt(tokens: Token[], i: number, grid: QuiltGrid): Heading | undefined {
  const word = tokens[i]!.w;
  const axis = /^(?:row|r)$/.test(word) ? 'row' : /^(?:col|column|c)$/.test(word) ? 'column' : undefined;
  if (!axis) return undefined;
  const n = readCount(tokens, i + 1);
  if (!n || !blocksOfLine(grid, axis, n.value).length) return undefined;
  const mark = tokens[n.next];
  if (!mark || !(mark.w === ':' || mark.w === ',' || (mark.w === '-' && !mark.glued) || mark.w === '--'))
    return undefined;
  // "row five, no, row six" mends
  const nos = tokens[n.next + 1]?.w ?? '';
  if (mark.w === ',' && !(NOS.test(nos) && (nos !== 'no' || tokens[n.next + 2]?.w === '.'))) return undefined;
  return { axis, value: n.value, next: n.next + 1 };
}

/** The run of bare numbers that stands at `i`, each with the name of its block. */
function numbersAt(
  tokens: Token[],
  i: number,
  heading: Heading,
  grid: QuiltGrid,
): { tokens: Token[]; next: number } | undefined {
  const before = tokens[i - 1]!;
  const nos = NOS.test(tokens[i]!.w);
  const first = nos ? i + (tokens[i + 1]?.w === '.' ? 2 : 1) : i;
  const isSeam = /^(?:between|seams?)$/.test(before.w);
  const run = runFrom(tokens, first, isSeam, heading, grid);
  // "tear in 4, 3 cm long": what is measured is no block
  while (run.length > 1 && run.at(-1)!.joint?.w === ',' && !endsAt(tokens, run.at(-1)!.next)) run.pop();
  const next = run.at(-1)?.next;
  if (next === undefined) return undefined;
  const [one, other] = run;
  const pair = isSeam && run.length === 2 && Math.abs(one!.value - other!.value) === 1;
  // "row 3: 2-4 torn": as it is typed, a block or a stretch
  if (!nos && !pair && other?.joint?.w === '-' && other.joint.glued) return undefined;
  const apart = /^[:,;-]$/.test(before.w) && (heading.axis === 'column' || before.w === ';');
  const led = (LEADS.test(before.w) || isDeed(tokens, i - 1)) && endsAt(tokens, next);
  if (!nos && !pair && !led && !(apart && (endsAt(tokens, next) || tellsOf(tokens, next)))) return undefined;
  const between = pair && before.w === 'seam' ? [unsaid(tokens[first]!, 'between')] : [];
  const named = run.flatMap(({ value, at, joint }, k) => [
    // "3 to 5": each that lies between
    ...(joint && /^(?:to|-)$/.test(joint.w) && !pair
      ? blocksWithin(run[k - 1]!.value, value).flatMap((n) => [
          unsaid(at, ','),
          ...sayBlock(heading, n, at, apart),
        ])
      : []),
    ...(joint ? [unsaid(joint, 'and')] : []),
    ...sayBlock(heading, value, at, apart),
  ]);
  return { tokens: [...between, ...named], next };
}

type Numbered = { value: number; at: Token; next: number; joint: Token | undefined };

function runFrom(
  tokens: Token[],
  from: number,
  isSeam: boolean,
  heading: Heading,
  grid: QuiltGrid,
): Numbered[] {
  const run: Numbered[] = [];
  let k = from;
  let joint: Token | undefined;
  for (;;) {
    const value = plainNumber(tokens, k);
    if (value === undefined || !isOfLine(value, heading, grid)) return run;
    run.push({ value, at: tokens[k]!, next: k + 1, joint });
    const w = tokens[k + 1]?.w ?? '';
    const both = w === ',' && /^(?:and|&)$/.test(tokens[k + 2]?.w ?? '');
    if (!both && !JOINT.test(w) && !(isSeam && w === '/')) return run;
    k += both ? 3 : 2;
    joint = tokens[k - 1]!;
  }
}

const blocksWithin = (first: number, last: number): number[] =>
  last - first > 1 ? countUp(first + 1, last - 1) : [];

const endsAt = (tokens: Token[], k: number): boolean => k >= tokens.length || ENDS.test(tokens[k]!.w);

/** "patched", "netted": done to what comes next. */
const isDeed = (tokens: Token[], k: number): boolean =>
  LEXICON.longestAt(tokens, k)?.payloads.some((s) => s.k === 'action' && s.form === 'past') ?? false;

/** The block as it would have been said at the number; at the head of a piece, under a column, "row 2" alone (`nameUnderLine` says the column again). */
const sayBlock = ({ axis, value }: Heading, n: number, at: Token, heads: boolean): Token[] => {
  const number = (v: number): Token => ({ ...at, w: String(v), kind: 'number', value: v, glued: false });
  if (axis === 'row') return [unsaid(at, 'block'), number(n)];
  return [unsaid(at, 'row'), number(n), ...(heads ? [] : [unsaid(at, 'block'), number(value)])];
};

const unsaid = (at: Token, w: string): Token => ({
  ...at,
  w,
  kind: w === ',' ? 'mark' : 'word',
  value: undefined,
  glued: false,
});

const plainNumber = (tokens: Token[], k: number): number | undefined => {
  const n = readCount(tokens, k);
  return n && n.next === k + 1 && Number.isInteger(n.value) ? n.value : undefined;
};

const isOfLine = (n: number, { axis, value }: Heading, grid: QuiltGrid): boolean =>
  (axis === 'row' ? blockAt(grid, value, n) : blockAt(grid, n, value)) !== undefined;

/** Is at once told what is so of them, in a word that cannot be counted: "torn", and no "holes"? */
function tellsOf(tokens: Token[], k: number): boolean {
  const found = LEXICON.longestAt(tokens, k);
  return (
    (found?.payloads.some((s) => s.k === 'finding') ?? false) &&
    !/^(?:holes?|tears?|stains?|rips?|splits?|patch|patches|seams?|mends?|repairs?|marks?)$/.test(
      tokens[k]!.w,
    )
  );
}
