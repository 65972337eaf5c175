import type { QuiltGrid } from '../../../shared/quilt.ts';
import { ORDINAL_WORDS } from '../../text/number-words.ts';
import { type Item, makeItem } from '../item.ts';
import { blockAt, blocksOfLine, cornerBlock, splitBlock } from '../places/grid.ts';
import { wholeLines } from '../places/line-spoken.ts';
import { bareNumber } from './earlier-of.ts';

/** What is left out because it was said before: the hour of "at twenty past two, no, half past", the corner of "no, the bottom left". */
export function restOfEarlier(out: Item[], k: number, m: number, grid: QuiltGrid): void {
  const back = out.slice(Math.max(0, k - 5), k).reverse();
  const words = ` ${out
    .slice(m, m + 4)
    .map((x) => x.w)
    .join(' ')} `;
  // "from one till quarter past three, no, half past": the end of a stretch
  const span = back.find((x) => x.clock || x.span)?.span;
  const clock = span?.end ?? back.find((x) => x.clock)?.clock;
  const past =
    clock &&
    (!out[m]?.clock || out[m].clock.anyHour) &&
    /^ (?:a )?(half|quarter|twenty five|twenty|ten|five) (past|after|to) (?:[.,;!] |$|it (?:was|is) |and |so |but |i )/.exec(
      words,
    );
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
    const right = { ...clock, minute: (minute + 1440) % 1440 };
    join(
      out,
      m,
      out[m]!.clock?.anyHour ? 1 : length,
      span ? { span: { ...span, end: right } } : { clock: right },
    );
    return;
  }
  if (sumInTwo(out, k, m) || clockInTwo(out, clock, m)) return;
  if (sameBlockOfRow(out, back, m, grid)) return;
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

/** "the third block of row one, no, row two": that block of the other row. */
function sameBlockOfRow(out: Item[], back: Item[], m: number, grid: QuiltGrid): boolean {
  const told = back.slice(0, 3).find((x) => x.place)?.place;
  const next = out[m]?.place;
  if (
    !told ||
    !next ||
    told.places.length !== 1 ||
    !/^place\.(?:ordinal-)?(?:row-block|block-row)$/.test(told.rule)
  )
    return false;
  const line = next.kind === 'blocks' ? wholeLines(grid, next.places) : undefined;
  const block = splitBlock(told.places[0]!)?.block;
  if (line?.axis !== 'row' || line.lines.length !== 1 || !block || !/^(?:the )?\S+ \S+$/.test(out[m]!.w))
    return false;
  const place = blockAt(grid, line.lines[0]!, block);
  if (!place) return false;
  out[m] = { ...out[m]!, place: { ...next, places: [place], rule: told.rule } };
  return true;
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
  const places = counted.flatMap((n) => blocksOfLine(grid, said.axis, n));
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
