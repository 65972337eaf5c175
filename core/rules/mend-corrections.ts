import type { QuiltGrid } from '../../shared/quilt.ts';
import { ORDINAL_WORDS } from '../text/number-words.ts';
import { type Item, makeItem } from './item.ts';
import { columnOf, cornerBlock, rowOf, splitBlock } from './places/grid.ts';
import { wholeLines } from './places/line-spoken.ts';
import { afterthoughtAt, mayThinkAgain, secondThoughtAt } from './second-thought.ts';
import { wordsBetween } from './words-between.ts';

type Sort =
  | 'place'
  | 'clock'
  | 'span'
  | 'quantity'
  | 'cost'
  | 'duration'
  | 'stitch'
  | 'finding'
  | 'action'
  | 'material'
  | 'task';

function sortsOf(item: Item): Sort[] {
  const sorts: Sort[] = [];
  if (item.place && !['place.it', 'place.them', 'place.both'].includes(item.place.rule)) sorts.push('place');
  if (item.clock) sorts.push('clock');
  if (item.span) sorts.push('span');
  if (item.quantity) sorts.push('quantity');
  if (item.cost) sorts.push('cost');
  if (item.duration) sorts.push('duration');
  if (item.stitch) sorts.push('stitch');
  if (item.finding) sorts.push('finding');
  if (item.action) sorts.push('action');
  if (item.material) sorts.push('material');
  if (item.task) sorts.push('task');
  return sorts;
}

const MARKERS: string[][] = [
  ['no', 'wait'],
  ['no', 'no'],
  ['no', 'sorry'],
  ['no', 'make', 'that'],
  ['no', 'hang', 'on'],
  ['no', 'hold', 'on'],
  ['no', 'scratch', 'that'],
  ['scratch', 'that'],
  ['strike', 'that'],
  ['no', 'i', 'mean'],
  ['i', 'mean'],
  ['i', 'meant'],
  ['no', 'it', 'was'],
  ['no', 'that', "'s"],
  ['no', 'i', 'tell', 'a', 'lie'],
  ['i', 'tell', 'a', 'lie'],
  ['make', 'that'],
  ['sorry'],
  ['or', 'rather'],
  ['or', 'more', 'exactly'],
  ['or', 'more', 'precisely'],
  ['more', 'exactly'],
  ['more', 'precisely'],
  ['or', 'to', 'be', 'exact'],
  ['rather'],
  ['correction'],
  ['no'],
  ['wait'],
  ['not'],
  ['nope'],
  ['no', 'nearer'],
  ['no', 'closer', 'to'],
  ['no', 'call', 'it'],
  ['no', 'say'],
  ['no', 'nearer', 'to'],
  ['well', 'nearer'],
  ['or', 'more', 'like'],
  ['no', 'only'],
  ['no', 'not'],
  ['hang', 'on'],
  ['oops'],
  ['make', 'it'],
  ['actually'],
  ['i', 'should', 'say'],
  ['well'],
  ['pardon'],
  ['no', 'actually'],
  ['that', "'s", 'wrong'],
  ['no', 'tell', 'a', 'lie'],
  ['tell', 'a', 'lie'],
  ['wait', 'no'],
  ['hang', 'on', 'no'],
  ['sorry', 'no'],
  ['no', 'wait', 'no'],
  ['no', ',', 'what', 'am', 'i', 'saying'],
  ['no', 'what', 'am', 'i', 'saying'],
  ['what', 'am', 'i', 'saying'],
  ['er', 'no'],
  ['no', 'er'],
  ['no', ',', 'listen', 'to', 'me'],
  ['no', ',', 'silly', 'me'],
  ['silly', 'me'],
];
MARKERS.sort((a, b) => b.length - a.length);

const LIGHT = new Set([
  'it',
  'was',
  "'s",
  'is',
  'that',
  'the',
  'at',
  'in',
  'on',
  ',',
  'a',
  'an',
  'make',
  'not',
  'of',
  'to',
  'i',
  'mean',
  'meant',
  'sorry',
  'wait',
  'no',
  'about',
  'by',
  'with',
  'more',
  'like',
  '-',
  '--',
  'for',
  'and',
  'actually',
  'just',
  '.',
  ':',
  'between',
  'from',
  'them',
  'were',
  'till',
  'said',
  'did',
  'used',
  'over',
  'behind',
]);

const BY_FIRST = new Map<string, string[][]>();
for (const marker of MARKERS) BY_FIRST.set(marker[0]!, [...(BY_FIRST.get(marker[0]!) ?? []), marker]);

const WEAK = new Set(['no', 'not', 'wait', 'well', 'rather', 'actually', 'sorry', 'nope', 'oops']);
const STOP = /^[.;!?\n]$/;

/**
 * What is said last wins: "row two, no, row three block four", "at two no wait it was ten to two", "ninety no make that
 * sixty mil", "3-2 has a hole, no, 3-3". The later word of the same sort takes the place of the earlier, and the marker between
 * goes. No word's offsets change.
 */
export function mendCorrections(items: Item[], grid: QuiltGrid): Item[] {
  const out = [...items];
  if (mayThinkAgain(items)) mendSecondThoughts(out, grid);
  for (let k = 1; k < out.length; k++) {
    const marker = BY_FIRST.get(out[k]!.w)?.find((m) => m.every((word, q) => out[k + q]?.w === word));
    // "row two done as well": no "well" that puts right
    if (!marker || (marker[0] === 'well' && out[k - 1]!.w === 'as')) continue;
    // "did i say 2-3 i meant 3-3": of the last note, which is mended
    if (marker[0] === 'i' && / did i (?:say|put|write) /.test(wordsBetween(out, Math.max(0, k - 6), k)))
      continue;
    const at =
      takeAway(out, k, k + marker.length) ??
      saidBehind(out, k, marker, grid) ??
      correctAt(out, k, marker, grid);
    if (at === undefined) continue;
    apologyBehind(out, at);
    k = Math.max(0, at - 1);
  }
  return out;
}

/** "thirty millilitres, no, let me be exact, forty-five": what comes between is as good as a plain "no". */
function mendSecondThoughts(out: Item[], grid: QuiltGrid): void {
  for (let k = 1; k < out.length; k++) {
    const length = secondThoughtAt(out, k);
    const after = length ? 0 : afterthoughtAt(out, k);
    // "Twenty minutes. Twenty-five, to be honest."
    const from = after ? k - 1 : k;
    if ((!length && !after) || from < 1) continue;
    const plain = [...out];
    const no = makeItem(out[from]!.i, out[from]!.i, 'no', {
      ...out[from]!.token,
      w: 'no',
      to: out[from]!.token.from,
    });
    if (after) plain.splice(k, after);
    const comma = { ...no, w: ',' };
    const pause = /^[,.;:-]$/.test(plain[from - 1]!.w) ? [] : [comma];
    plain.splice(from, length, ...pause, no, comma);
    const at = correctAt(plain, from + pause.length, ['no'], grid);
    if (at === undefined) continue;
    out.splice(0, out.length, ...plain);
    k = Math.max(0, at - 1);
  }
}

/** "the right hand edge, no, left hand edge, sorry": what was put right already needs no second marker. */
function apologyBehind(out: Item[], at: number): void {
  const last = out.findIndex((x, n) => n >= at && STOP.test(x.w));
  const end = last < 0 ? out.length : last;
  const words = out.slice(at, end).map((x) => x.w);
  const marker = words.at(-1) === 'sorry' ? 1 : words.slice(-2).join(' ') === 'i mean' ? 2 : 0;
  if (!marker || words.length - marker > 3) return;
  const pause = words.at(-marker - 1) === ',' ? 1 : 0;
  out.splice(end - marker - pause, marker + pause);
}

/** "block 3 is torn, block 2, sorry", "20 minutes, 30 I mean": the marker behind the right one, which ends the sentence. */
function saidBehind(out: Item[], k: number, marker: string[], grid: QuiltGrid): number | undefined {
  if (!/^(sorry|i mean|i meant|correction)$/.test(marker.join(' '))) return undefined;
  const after = out[k + marker.length]?.w;
  if (after !== undefined && !STOP.test(after)) return undefined;
  const b = out[k - 1]?.w === ',' ? k - 2 : k - 1;
  const right = out[b];
  const first = out.findLastIndex((x, n) => n < b && STOP.test(x.w)) + 1;
  if (
    !right ||
    b - first < 2 ||
    !sortsOf(right).some((sort) => FIGURES.has(sort)) ||
    !(/^[,-]$/.test(out[b - 1]!.w) || (right.place && out[b - 1]!.place)) ||
    out.slice(first, b).some((x) => /^(not|no|and|or|&)$/.test(x.w))
  )
    return undefined;
  // as if the marker had been said first
  const plain = [...out.slice(0, b), ...out.slice(k, k + marker.length), right];
  const at = correctAt(plain, b, marker, grid);
  if (at !== undefined) out.splice(0, k + marker.length, ...plain);
  return at;
}

/** "3-2, 3-3 and 3-4, sorry, not 3-3": of the places said, one goes. Gives the index to go on from. */
function takeAway(out: Item[], k: number, after: number): number | undefined {
  let m = k;
  while (m < after + 3 && out[m] && out[m]!.w !== 'not') m++;
  const gone = out[m]?.w === 'not' ? out[m + 1]?.place?.places : undefined;
  if (!gone?.length || (m === k && !/^[,-]$/.test(out[k - 1]?.w ?? ''))) return undefined;
  // "not 3-3, 3-2" puts another in its stead
  if (out[m + 2]?.w === ',' && out[m + 3]?.place) return undefined;
  const holders: number[] = [];
  for (let b = k - 1; b >= Math.max(0, k - 12) && !STOP.test(out[b]!.w); b--) {
    const places = out[b]!.place?.places;
    if (places && places.length && gone.every((p) => places.includes(p))) holders.push(b);
  }
  const b = holders[0];
  const others = out.slice(0, k).some((x, n) => n !== b && x.place?.places.some((p) => !gone.includes(p)));
  if (b === undefined || (!others && out[b]!.place!.places.length === gone.length)) return undefined;
  out.splice(k, m + 2 - k);
  const holder = out[b]!;
  const left = holder.place!.places.filter((p) => !gone.includes(p));
  if (left.length) out[b] = { ...holder, place: { ...holder.place!, places: left } };
  else {
    // the joint that led to it goes with it
    const joined = /^(,|and|&)$/.test(out[b - 1]?.w ?? '') ? 1 : 0;
    out.splice(b - joined, 1 + joined);
  }
  return b;
}

function correctAt(out: Item[], k: number, marker: string[], grid: QuiltGrid): number | undefined {
  const alone = marker.length === 1 ? marker[0]! : '';
  const weak = WEAK.has(alone);
  let m = k + marker.length;
  while (m < out.length && m < k + marker.length + 5 && LIGHT.has(out[m]!.w) && !sortsOf(out[m]!).length) m++;
  // "35 minutes I mean, not 25": what was right is told before
  if (!marker.includes('not') && out.slice(k + marker.length, m).some((x) => x.w === 'not')) return undefined;
  restOfEarlier(out, k, m, grid);
  const next = out[m];
  const sorts = next ? sortsOf(next) : [];
  // "not 3-3, 3-2" names the wrong one first and is read as an amendment.
  if (!next || !sorts.length || alone === 'not') return undefined;
  // "but no, I darned it" calls a plan off
  const paused =
    out[k - 1]?.w !== 'but' &&
    (out.slice(k + marker.length, m).some((x) => /^(,|a|an|more|of|it|that|i)$/.test(x.w)) ||
      next.action?.form === 'past');
  const found =
    rightBefore(out, k, next) ??
    earlierOf(out, k, sorts, weak, paused, /^(till|until|to)$/.test(out[m - 1]?.w ?? '')) ??
    otherReading(out, k, next, weak);
  if (!found) return undefined;
  const { from, hit } = found;
  // "not muslin, I mean the gingham": the earlier is denied already, and the later stands beside it
  const denial = /^(the|a|an|any)$/.test(out[from - 1]?.w ?? '') ? from - 2 : from - 1;
  if (out[denial]?.w === 'not' && denial < 3) return undefined;
  // plain "no" directly before a finding or an action denies it: "backing sound, no holes"
  if (
    alone === 'no' &&
    (hit === 'finding' || hit === 'action' || hit === 'material' || hit === 'task') &&
    !paused
  )
    return undefined;
  if (
    alone === 'no' &&
    next.stitch &&
    ![out[k - 1], out[k - 2]].some((x) => x?.stitch) &&
    out[m - 1]?.w !== ','
  )
    return undefined;
  const earlier = out[from]!;
  if (hit === 'place' && earlier.place?.kind === 'part' && next.place?.kind !== 'part' && weak)
    return undefined;
  // "a by b, no, c by b": both go
  if (hit === 'quantity' && out[m + 1]?.w === 'by' && out[m + 2]?.quantity) {
    const by = out[from - 1]?.w === 'by' ? from - 2 : from;
    const unit = out[by + 2]?.quantity?.unit ?? earlier.quantity?.unit;
    const last = out[m + 2]!;
    if (by >= 0 && out[by]?.quantity) {
      if (unit && !last.quantity!.unit) out[m + 2] = { ...last, quantity: { ...last.quantity!, unit } };
      out.splice(by, m - by);
      return by;
    }
  }
  // "between 2-1 and 2-2, no, between 2-2 and 2-3": both go
  if (
    hit === 'place' &&
    out[from - 1]?.w === 'and' &&
    out[from - 2]?.place &&
    out[m + 1]?.w === 'and' &&
    out[m + 2]?.place
  ) {
    out.splice(from - 2, m - from + 2);
    return from - 2;
  }
  const put = ranOn(out, m, keepRest(earlier, next, hit));
  const between = out.slice(from + 1, k);
  // "three inches of overhang all round, no, four, and basted it": the number alone
  const bare = hit === 'quantity' && !next.quantity?.unit && !/^(of|in|for)$/.test(out[m + 1]?.w ?? '');
  const restated = saysMore(out, m + 1) && !(bare && between.some((x) => x.measure));
  const aside = between.at(-1)?.w === ',' && out[m + 1]?.w === ',';
  // "darned 5-1, sorry, patched": where it was done stands, unless another place is told
  const placed = hit !== 'place' && between.some(namesBlock) && !out.slice(m + 1).some(namesBlock);
  // "an hour off for dinner, no, an hour and fifteen minutes": still what was taken off
  const rest =
    hit === 'duration' && between.some((x) => /^(off|out|away|break|lunch|dinner|tea|supper)$/.test(x.w));
  if (placed || rest || (between.some((x) => tells(x)) && !restated)) {
    // "3-2 has a hole, no, 3-3": only the word itself changes
    out.splice(k, m + 1 - k);
    out[from] = put;
    return from + 1;
  }
  out[m] = put;
  // "2 skeins, make that 3 skeins, of floss": the pause after belongs to the correction
  if (aside && /^(of|for|at|with|in|on|from|to)$/.test(out[m + 2]?.w ?? '')) out.splice(m + 1, 1);
  out.splice(from, m - from);
  return from;
}

const namesBlock = (x: Item): boolean => x.place?.kind === 'blocks' && x.place.places.length > 0;

/** What is left out because it was said before: the hour of "at twenty past two, no, half past", the corner of "no, the bottom left". */
function restOfEarlier(out: Item[], k: number, m: number, grid: QuiltGrid): void {
  const back = out.slice(Math.max(0, k - 5), k).reverse();
  const words = ` ${out
    .slice(m, m + 4)
    .map((x) => x.w)
    .join(' ')} `;
  const clock = back.find((x) => x.clock)?.clock;
  const past =
    clock &&
    (!out[m]?.clock || out[m].clock.anyHour) &&
    /^ (?:a )?(half|quarter|twenty five|twenty|ten|five) (past|after|to) (?:[.,;!] |$)/.exec(words);
  if (past) {
    const minutes = { half: 30, quarter: 15, 'twenty five': 25, twenty: 20, ten: 10, five: 5 }[past[1]!]!;
    // of the hours about the one said, that which lies nearest
    const wanted = past[2] === 'to' ? 60 - minutes : minutes;
    const ahead = (((wanted - clock.minute) % 60) + 60) % 60;
    // "quarter past three, I mean quarter to": of the hour that was named
    const before = ahead > 30 || (ahead === 30 && past[2] === 'to');
    const minute = clock.minute + (before ? ahead - 60 : ahead);
    const length = (words.startsWith(' a ') ? 1 : 0) + past[1]!.split(' ').length + 1;
    // read as one word of its own already, or as two or three
    join(out, m, out[m]!.clock?.anyHour ? 1 : length, {
      clock: { ...clock, minute: (minute + 1440) % 1440 },
    });
    return;
  }
  if (sumInTwo(out, k, m) || clockInTwo(out, clock, m)) return;
  if (blocksOfRow(out, back, m, grid) || otherLines(out, back, m, grid)) return;
  const edge = back.find((x) =>
    /^(edge|border)-(left|right|top|bottom)$/.test(x.place?.places.join() ?? ''),
  )?.place;
  const other = edge && /^ (left|right|top|bottom)(?: hand)?(?: one| side)? (?:[.,;!] |$)/.exec(words);
  if (other && !out[m]!.place) {
    const [kind] = edge.places[0]!.split('-');
    join(
      out,
      m,
      other[0]
        .trim()
        .replace(/ [.,;!]$/, '')
        .split(' ').length,
      { place: { ...edge, places: [`${kind}-${other[1]}`] } },
    );
    return;
  }
  const corner = back.find((x) => cornerOf(x))?.place;
  const side =
    corner && /^ (?:(top|upper|bottom|lower) )?(left|right)(?: hand)?(?: one)? (?:[.,;!] |$)/.exec(words);
  if (side && !out[m]!.place) {
    const said = cornerOf({ place: corner })!;
    const row = side[1] ? (/top|upper/.test(side[1]) ? 'top' : 'bottom') : said.row;
    const edge = side[2] ?? said.edge;
    join(
      out,
      m,
      side[0]
        .trim()
        .replace(/ [.,;!]$/, '')
        .split(' ').length,
      {
        place: {
          ...corner,
          places: [
            corner.kind === 'blocks'
              ? cornerBlock(grid, row === 'top', edge === 'left')
              : `corner-${row}-${edge}`,
          ],
        },
      },
    );
  }
}

/** "row three blocks one to three, no, one to two", "row 3 block 2, no, 4": other blocks of the row just told. */
function blocksOfRow(out: Item[], back: Item[], m: number, grid: QuiltGrid): boolean {
  const told = back.slice(0, 2).find((x) => x.place);
  if (!told || !/\b(?:blocks?|squares?) /.test(told.w) || told.place!.kind !== 'blocks') return false;
  const rows = new Set(told.place!.places.map((p) => splitBlock(p)?.row));
  const [row] = rows;
  const [first, joint, last] = [
    blockNumber(out[m], grid),
    out[m + 1]?.w ?? '',
    blockNumber(out[m + 2], grid),
  ];
  if (rows.size !== 1 || row === undefined || first === undefined) return false;
  const range = /^(to|till|through|thru|-)$/.test(joint) && last !== undefined && last > first;
  const pair = /^(and|&)$/.test(joint) && last !== undefined && endsHere(out[m + 3]);
  if (!range && !pair && !endsHere(out[m + 1])) return false;
  const blocks = range
    ? Array.from({ length: last - first + 1 }, (_x, n) => first + n)
    : pair
      ? [first, last]
      : [first];
  join(out, m, range || pair ? 3 : 1, {
    place: { ...told.place!, places: blocks.map((block) => `${row}-${block}`) },
  });
  return true;
}

/** "the third row, no, the fourth", "rows one to three, no, just one and two", "well two really": other rows or columns. */
function otherLines(out: Item[], back: Item[], m: number, grid: QuiltGrid): boolean {
  const told = back.find((x) => x.place)?.place;
  const said = told?.kind === 'blocks' && told.places.length > 1 ? wholeLines(grid, told.places) : undefined;
  // "row four now four inches apart, no, five": the figure is of the inches
  const nearer = back.slice(
    0,
    back.findIndex((x) => x.place),
  );
  if (!said || nearer.some((x) => x.quantity || x.duration || x.clock || x.cost || x.span)) return false;
  const most = said.axis === 'row' ? grid.rows : grid.blocks;
  const at = (n: number): number | undefined => {
    const x = out[n];
    const value = x?.quantity?.unit
      ? undefined
      : (x?.quantity?.value ?? ORDINAL_WORDS.indexOf(x?.w ?? '') + 1);
    return x && !x.place && value && Number.isInteger(value) && value <= most ? value : undefined;
  };
  const lines = [at(m)];
  let size = 1;
  const joint = out[m + 1]?.w ?? '';
  const second = at(m + (out[m + 2]?.w === 'the' ? 3 : 2));
  if (lines[0] !== undefined && second !== undefined && /^(and|&|to|till|through|or)$/.test(joint)) {
    size = out[m + 2]?.w === 'the' ? 4 : 3;
    if (/^(and|&)$/.test(joint)) lines.push(second);
    else for (let n = lines[0] + 1; n <= second; n++) lines.push(n);
  }
  const next = out[m + size];
  if (lines.some((n) => n === undefined)) return false;
  if (!endsHere(next) && !/^(really|only|actually|sorry|instead|rows?)$/.test(next?.w ?? '')) return false;
  // "rows one to three, well two really": of a run from the first, so many
  const whole = lines as number[];
  const counted =
    whole.length === 1 && said.lines.length > 1 && said.lines[0] === 1 && whole[0]! < said.lines.length
      ? said.lines.slice(0, whole[0])
      : whole;
  const places = counted.flatMap((n) => (said.axis === 'row' ? rowOf(grid, n) : columnOf(grid, n)));
  join(out, m, size, { place: { ...told!, places } });
  return true;
}

const endsHere = (x: Item | undefined): boolean =>
  !x || /^[.,;!?\n]$/.test(x.w) || /^(and|but|is|are|has|have|'s|that|which|with|so|i|then|by)$/.test(x.w);

/** A bare number that can be a block of a row of this quilt. */
const blockNumber = (x: Item | undefined, grid: QuiltGrid): number | undefined => {
  const { value, unit } = x?.quantity ?? {};
  return value !== undefined && !unit && Number.isInteger(value) && value >= 1 && value <= grid.blocks
    ? value
    : undefined;
};

/** The corner that one place names: of the quilt, or the block in it. */
function cornerOf({ place }: Pick<Item, 'place'>): { row: string; edge: string } | undefined {
  if (place?.places.length !== 1) return undefined;
  const [kind, level, edge] = place.places[0]!.split('-');
  if (kind === 'corner') return { row: level!, edge: edge! };
  const at = place.rule === 'place.corner-block' ? splitBlock(place.places[0]!) : undefined;
  return at && { row: at.row === 1 ? 'top' : 'bottom', edge: at.block === 1 ? 'left' : 'right' };
}

/** Makes one item of several, with a sense that they have together. */
function join(out: Item[], m: number, length: number, sense: Partial<Item>): void {
  const [first, last] = [out[m]!, out[m + length - 1]!];
  const words = out.slice(m, m + length).map((x) => x.w);
  out.splice(m, length, {
    ...makeItem(first.i, last.j, words.join(' '), first.token),
    end: last.end ?? last.token.to,
    ...sense,
  });
}

type Hit = { from: number; hit: Sort };

const bareNumber = (x: Item | undefined): number | undefined =>
  x?.quantity?.unit || x?.place || x?.clock ? undefined : x?.quantity?.value;

/** "twenty six fifty, no, twenty nine fifty": behind a price, two numbers are the price that is right. */
function sumInTwo(out: Item[], k: number, m: number): boolean {
  const cost = out[out[k - 1]?.w === ',' ? k - 2 : k - 1]?.cost;
  const [whole, cents] = [bareNumber(out[m]), bareNumber(out[m + 1])];
  if (!cost || whole === undefined || cents === undefined || cents < 5 || cents > 99) return false;
  join(out, m, 2, { cost: { ...cost, amount: whole + cents / 100 } });
  return true;
}

/** "at seven fifteen, no, I'm lying, seven thirty": behind a clock, two numbers are the clock that is right. */
function clockInTwo(out: Item[], clock: Item['clock'], m: number): boolean {
  const [hour, minutes] = [bareNumber(out[m]), bareNumber(out[m + 1])];
  if (!clock || !hour || hour > 12 || minutes === undefined || minutes < 5 || minutes > 59) return false;
  const minute = (hour % 12) * 60 + minutes;
  const late = Math.abs(minute + 720 - clock.minute) < Math.abs(minute - clock.minute);
  join(out, m, 2, { clock: { ...clock, minute: late ? minute + 720 : minute } });
  return true;
}

/** "six yards for the backing, thirty six pounds, correction, thirty nine": a bare number puts right the price or the length of time right before it. */
function rightBefore(out: Item[], k: number, next: Item): Hit | undefined {
  const from = /^[,-]$/.test(out[k - 1]?.w ?? '') ? k - 2 : k - 1;
  const before = out[from];
  if (!before || bareNumber(next) === undefined) return undefined;
  if (before.cost && !before.quantity) return { from, hit: 'cost' };
  return before.duration && !before.quantity ? { from, hit: 'duration' } : undefined;
}

/** "10:30, correction 10:40, to 12:05": what runs on from the clock that is right is a stretch. */
function ranOn(out: Item[], m: number, put: Item): Item {
  const to = out[m + 1]?.w === ',' ? m + 2 : m + 1;
  const end = out[to + 1]?.clock;
  if (!put.clock || !end || !/^(to|till|until|-)$/.test(out[to]?.w ?? '')) return put;
  out.splice(m + 1, to + 1 - m);
  return {
    ...put,
    clock: undefined,
    span: { next: end.next, start: put.clock, end, sure: true, rule: 'time.span' },
  };
}

/** The nearest word before the marker of a sort that the later word has too. */
function earlierOf(
  out: Item[],
  k: number,
  sorts: Sort[],
  weak: boolean,
  paused: boolean,
  until: boolean,
): Hit | undefined {
  // "three inches of overhang all the way round, no, four": the measure tells which figure
  const measured = sorts.includes('quantity') && out.slice(Math.max(0, k - 8), k).some((x) => x.measure);
  let reach = weak && !measured ? 5 : 9;
  for (let b = k - 1; b >= Math.max(0, k - reach); b--) {
    // "the bottom right corner of the quilt, no, the bottom left"
    if (out[b]!.place?.places[0] === 'quilt' && /^(of|on)$/.test(out[b - 2]?.w ?? '') && out[b - 3]?.place)
      continue;
    const own = sortsOf(out[b]!);
    // "from one till ten to three on the label, no, till three"
    if (out[b]!.span && sorts.includes('clock') && until) return { from: b, hit: 'span' };
    const firm = own.find(
      (s) => sorts.includes(s) && s !== 'action' && s !== 'material' && s !== 'finding' && s !== 'task',
    );
    // "whipstitched the seam in 5-1, I mean ladder stitched": the seam is no deed
    const loose = (weak && !paused) || out[b]!.seam ? undefined : own.find((s) => sorts.includes(s));
    const hit = firm ?? (weak && b < k - 4 ? undefined : loose);
    if (hit) return { from: b, hit };
    if (STOP.test(out[b]!.w)) {
      // a sentence of its own, "No, 3-3.", may mend the one before
      if (b !== k - 1) return undefined;
      reach += 4;
    }
  }
  return undefined;
}

/** A bare number that the later word shows to have been a clock, a price or a length of time; a stretch whose end is put right. */
function otherReading(out: Item[], k: number, next: Item, weak: boolean): Hit | undefined {
  // "Forty minutes. No, fifty."
  const alone = out[k]!.w === 'no' && STOP.test(out[k - 1]?.w ?? '') && isEndOf(out, next);
  const b = out[k - 1]?.w === ',' || alone ? k - 2 : k - 1;
  const before = out[b];
  if (!before) return undefined;
  if (before.span && next.clock) return { from: b, hit: 'span' };
  if (before.clock && next.span) return { from: b, hit: 'clock' };
  const bare = next.quantity?.value !== undefined && !next.quantity.unit;
  if (bare && before.duration) return { from: b, hit: 'duration' };
  if (bare && before.cost) return { from: b, hit: 'cost' };
  const number = before.quantity && !before.quantity.unit;
  // "twenty nine fifty, no, thirty one fifty all up": the sum before it was read as two numbers
  if (next.cost && number && bareNumber(out[b - 1]) !== undefined) return { from: b - 1, hit: 'cost' };
  if (
    (number || (!weak && (before.place || before.clock))) &&
    (next.clock || next.span || next.duration || next.cost || next.quantity?.unit)
  )
    return { from: b, hit: 'quantity' };
  return undefined;
}

/** Does nothing more follow in its sentence? */
const isEndOf = (out: Item[], item: Item): boolean =>
  /^(|[.;!?,\n])$/.test(out[out.indexOf(item) + 1]?.w ?? '');

/** The later word, with what the earlier one said beside it: the unit of a number, the start of a stretch. */
function keepRest(earlier: Item, next: Item, hit: Sort): Item {
  const unit = earlier.quantity?.unit;
  if (hit === 'quantity' && unit && next.quantity && !next.quantity.unit)
    return { ...next, quantity: { ...next.quantity, unit } };
  if (hit === 'span' && earlier.span && next.clock && !next.span) {
    return { ...next, clock: undefined, span: { ...earlier.span, end: next.clock } };
  }
  const value = next.quantity?.unit ? undefined : next.quantity?.value;
  if (hit === 'duration' && earlier.duration && value !== undefined) {
    const minutes = /\bh(?:ou)?rs?\b/.test(earlier.w) ? value * 60 : value;
    return { ...next, quantity: undefined, duration: { ...earlier.duration, minutes } };
  }
  if (hit === 'cost' && earlier.cost && value !== undefined) {
    return { ...next, quantity: undefined, cost: { ...earlier.cost, amount: value } };
  }
  if (hit === 'cost' && earlier.cost?.each && next.cost && !next.cost.each)
    return { ...next, cost: { ...next.cost, each: true } };
  // "whipstitched 5-1, no, ladder stitch": the stitch alone is put right
  if (hit === 'stitch' && earlier.action && !next.action)
    return { ...earlier, stitch: next.stitch, w: next.w };
  return next;
}

const FIGURES: ReadonlySet<Sort> = new Set([
  'place',
  'clock',
  'span',
  'quantity',
  'cost',
  'duration',
  'stitch',
]);

const tells = (x: Item): boolean =>
  Boolean(x.finding || x.action || x.stitch || x.object || x.fabric || x.material || x.measure);

/** Does what follows, up to the next pause, say what was found or done? Then the whole statement was begun anew. */
function saysMore(out: Item[], m: number): boolean {
  for (let n = m; n < Math.min(out.length, m + 12); n++) {
    const x = out[n]!;
    if (STOP.test(x.w) || x.w === 'but' || (x.w === 'and' && n > m && !out[n - 1]?.place)) return false;
    if (x.finding || x.action || x.measure || x.material || /^(is|was|are|were|has|had|'s)$/.test(x.w))
      return true;
  }
  return false;
}
