import { BLOCK_WORDS, ROW_WORDS } from '../../lexicon/place-words.ts';
import { readCount, readOrdinal } from '../../text/read-number.ts';
import type { Token } from '../../text/tokenise.ts';

/**
 * Number words as a recogniser may hear them where only a number can stand: after "row" and "block".
 * From the measured slips of the recogniser ("block due", "block for", "row tree").
 */
const HEARD: Record<string, number> = {
  to: 2,
  too: 2,
  due: 2,
  do: 2,
  tu: 2,
  for: 4,
  fore: 4,
  fur: 4,
  won: 1,
  wan: 1,
  tree: 3,
  free: 3,
  ate: 8,
  sex: 6,
  sicks: 6,
  fife: 5,
  hive: 5,
  sevin: 7,
};

/** A row or block number: digits, words, ordinals; `homophones` where only a number makes sense. */
export function readIndex(
  tokens: Token[],
  i: number,
  homophones: boolean,
): { value: number; next: number; heard?: string } | undefined {
  const t = tokens[i];
  if (!t) return undefined;
  // "block 2.4" never; "3.1" is a pair and is read elsewhere.
  const count = readCount(tokens, i);
  if (count && count.value > 0) return { value: count.value, next: count.next };
  const ordinal = readOrdinal(tokens, i);
  if (ordinal) return ordinal;
  // "the block to the right of it" has no number
  if (
    t.w === 'to' &&
    /^(the|its)$/.test(tokens[i + 1]?.w ?? '') &&
    /^(left|right)$/.test(tokens[i + 2]?.w ?? '')
  )
    return undefined;
  // "every gingham block to get net over it": what is to become of it, and no second block
  if (t.w === 'to' && BECOMES.test(tokens[i + 1]?.w ?? '')) return undefined;
  // "I'm a row too low"
  if (t.w === 'too' && TOO_MUCH.test(tokens[i + 1]?.w ?? '')) return undefined;
  if (homophones && Object.hasOwn(HEARD, t.w)) return { value: HEARD[t.w]!, next: i + 1, heard: t.w };
  return undefined;
}

const BECOMES = /^(?:be|get|have|go|come|stay|do|take|receive|follow|wait|keep|remain|need|show)$/;

const TOO_MUCH = /^(?:low|high|far|many|much|short|long|wide|narrow|big|small|soon|early|late)$/;

const isTo = (t: Token | undefined): boolean =>
  t !== undefined &&
  (t.w === 'to' ||
    t.w === 'through' ||
    t.w === 'thru' ||
    t.w === 'till' ||
    t.w === 'until' ||
    t.w === '-' ||
    t.w === 'too');
const isAnd = (t: Token | undefined): boolean =>
  t !== undefined && (t.w === 'and' || t.w === '&' || t.w === ',' || t.w === '+' || t.w === '/');

/**
 * A list of indices: "two", "one and two", "1, 3 and 5", "one to three", "1-3". `prefix` are the words
 * that may stand again before each number ("b2 & b4"). Stops before an index that begins something else.
 */
export function readIndexList(
  tokens: Token[],
  i: number,
  options: { prefix: ReadonlySet<string>; homophones: boolean; max: number; plural?: boolean },
): { values: number[]; next: number } | undefined {
  const { prefix, homophones, max } = options;
  const first = readIndex(tokens, i, homophones);
  if (!first) return undefined;
  const ordered = readOrdinal(tokens, i) !== undefined;
  const values = [first.value];
  let next = first.next;
  let joint = '';
  for (;;) {
    // A range: "one to three", "1-3", "one through six".
    const t = tokens[next];
    if (isTo(t)) {
      const j = tokens[next + 1] && prefix.has(tokens[next + 1]!.w) ? next + 2 : next + 1;
      const last = readIndex(tokens, j, homophones && t!.w !== '-');
      const from = values.at(-1)!;
      if (last && last.value > from && last.value <= Math.max(max, from)) {
        for (let k = from + 1; k <= last.value; k++) values.push(k);
        next = last.next;
        continue;
      }
      return { values, next };
    }
    if (!isAnd(t)) {
      // "rows three four and five": a list said without its commas
      // "blocks 1 3 and 5", but "rows 2 3-4": figures with a mark between them are a block
      const bare = options.plural && t ? readCount(tokens, next) : undefined;
      if (
        bare &&
        bare.value > values.at(-1)! &&
        bare.value <= max &&
        (t!.kind === 'word' || !/^[-/.:x]$/.test(tokens[bare.next]?.w ?? '')) &&
        !(tokens[bare.next] && AMOUNT_FOLLOWS.has(tokens[bare.next]!.w) && !/^of$/.test(tokens[bare.next]!.w))
      ) {
        values.push(bare.value);
        next = bare.next;
        continue;
      }
      return { values, next };
    }
    // ", and" counts as one joint.
    let j = next + 1;
    if (t!.w === ',' && (tokens[j]?.w === 'and' || tokens[j]?.w === '&')) j++;
    const again = tokens[j] !== undefined && prefix.has(tokens[j]!.w);
    if (again) j++;
    const more = readIndex(
      tokens,
      j,
      homophones &&
        (isAlone(tokens, j) || (options.plural === true && values.length === 1 && t!.w === 'and')),
    );
    if (!more) return { values, next };
    // "row five, second from the right": an ordinal after a number begins something else
    if (!ordered && readOrdinal(tokens, j)) return { values, next };
    // "rows one and two and row four as far as block four", "rows 4-5 + row 3 blks 1-2", "cols 1-2, col 4 rows 1-2": a row or column
    // told with its blocks is a place of its own
    if (again) {
      const then = tokens[tokens[more.next]?.w === ',' ? more.next + 1 : more.next]?.w ?? '';
      if (NARROWED_BY.has(then) && !prefix.has(then)) return { values, next };
    }
    // "ties out of rows one and two, row one faded": told already, it begins something of its own
    if (again && t!.w === ',' && values.includes(more.value)) return { values, next };
    // "row two and row three one to three": of the second its blocks
    if (again && !/s$/.test(tokens[j - 1]!.w) && isRun(tokens, more.next)) return { values, next };
    // "pressed row one, row two wants doing": one row with a verb of its own, where the first was the object of another
    if (
      again &&
      i > 1 &&
      values.length === 1 &&
      /^(wants|needs|is|'s|has|was|gets|looks|will|'ll)$/.test(tokens[more.next]?.w ?? '') &&
      ((t!.w === ',' && j === next + 2) || !LEADS_ON.test(tokens[i - 2]!.w))
    )
      return { values, next };
    // "a hole in rows one and two, rows four and five need pressing", "tied rows one and two, row three next": closed by its "and"
    if (again && t!.w === ',' && j === next + 2 && /^(and|&|\+)$/.test(joint)) return { values, next };
    // "tied row one, row two next"
    if (
      again &&
      t!.w === ',' &&
      /^(next|tomorrow|tmrw|later|tonight|still)$/.test(tokens[more.next]?.w ?? '')
    )
      return { values, next };
    // "rows 1-3, 2-2" or "row two, three inches": the next number begins another place or an amount.
    const after = tokens[more.next];
    if (after?.w === '-' && after.glued && tokens[more.next + 1]?.kind === 'number') return { values, next };
    const ofRow =
      after?.w === 'of' &&
      /^(row|rows|column|columns|col|cols|the|that|this|r|it)$/.test(tokens[more.next + 1]?.w ?? '');
    if (after && AMOUNT_FOLLOWS.has(after.w) && !ofRow && !(after.w === 'in' && !isInch(tokens, more.next)))
      return { values, next };
    if (t!.w === ',' && (readCount(tokens, more.next) || more.value > max)) return { values, next };
    // "took the ties out of row two, one broken"
    if (
      t!.w === ',' &&
      !options.plural &&
      !again &&
      j === next + 1 &&
      more.value <= values.at(-1)! &&
      tokens[more.next]?.w !== 'and'
    )
      return { values, next };
    values.push(more.value);
    next = more.next;
    joint = t!.w;
  }
}

/** What follows a row or a column of which only some blocks are meant. */
const NARROWED_BY = new Set(['as', 'up', ...BLOCK_WORDS, ...ROW_WORDS]);

/** "one to three", "1-4" at `i`. */
function isRun(tokens: Token[], i: number): boolean {
  const first = readCount(tokens, i);
  const last = first && isTo(tokens[first.next]) ? readCount(tokens, first.next + 1) : undefined;
  return last !== undefined && last.value > first!.value && !AMOUNT_FOLLOWS.has(tokens[last.next]?.w ?? '');
}

const LEADS_ON =
  /^(in|on|along|between|of|across|both|at|from|down|through|over|the|and|but|so|then|,|\.|;|:|-|--)$/;

/** "rows three and for between …": heard as "for", and nothing follows that it could be for. */
const isAlone = (tokens: Token[], j: number): boolean =>
  /^(|between|and|is|are|all|'s|was|were|have|has|had|need|needs|want|wants|\.|,|;|both)$/.test(
    tokens[j + 1]?.w ?? '',
  );

/** "rows 1 and 2 in the ditch", "blocks one and four in row two": no inches. */
const isInch = (tokens: Token[], k: number): boolean =>
  /^(long|wide|apart|x|across|deep|high|square|strips?|tails?|seams?|borders?|overhang|,|\.|;|\))?$/.test(
    tokens[k + 1]?.w ?? '',
  );

/** Words after a number that show that it counts something else. */
const AMOUNT_FOLLOWS = new Set(
  'inch inches in cm mm m metre metres meter meters yard yards yd yds minutes minute min mins hour hours hr hrs h half quarter spools spool reels reel skeins skein balls ball rolls roll packets packet hanks hank lengths fat packs pack past oclock am pm percent dollars pounds quid pence euros and/or point hundred ties pins stitches pieces other of'.split(
    ' ',
  ),
);
