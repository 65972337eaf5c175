import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { blockAt, columnOf, isWholeRow, rowOf, splitBlock } from '../../rules/places/grid.ts';
import { outermostOf } from '../../rules/places/outermost.ts';
import { countsOf, ORDINAL_WORDS } from '../../text/number-words.ts';
import { readNumber } from '../../text/read-number.ts';
import { POINTERS } from '../mend/items.ts';
import { put, type Standing } from '../standing.ts';
import { type Answering, placesNamed } from './answering.ts';
import { ofTheLine, whichCorner } from './of-the-line.ts';

/** The first stretch says nothing but the answer: no damage, no deed. */
const bare = (items: Item[]): boolean =>
  // "3-4 out, new piece in"
  !/^(?:out|off|done|finished|gone)$/.test(items.at(-1)?.w ?? '') &&
  !items.some((x) => x.finding || x.action || x.stitch || x.task || x.cost || x.duration);

/** Where it was: blocks, a number of a block or row heard before, or one of the blocks of its cloth. */
export function answerPlace(a: Answering): boolean {
  const open = a.standing.filter(({ draft: { entry: e } }) => 'places' in e && e.places?.length === 0);
  if (!open.length) return answerShort(a);
  const inLine = ofTheLine(a) ?? whichCorner(a);
  if (inLine) {
    for (const s of open) put(s.draft, 'places', inLine, 'answer.place', a.items);
    for (const x of a.items) a.used.add(x);
    for (const d of a.state.drafts) a.taken.add(d);
    return true;
  }
  const first = firstStretch(a.items);
  const told = a.state.drafts.filter((d) => d.entry.kind !== 'remark');
  // "middle block: old patch removed": a heading, and what is told of that block
  const heads = a.items[first.length]?.w === ':' && told.some((d) => !saysAgain(a, d, open));
  const lead =
    !heads && bare(first) && first.some((x) => x.place?.places.length && !POINTERS.has(x.place.rule));
  const otherDamage = OTHER_DAMAGE.test(a.words) && told.every((d) => d.entry.kind === 'condition');
  if (!lead && !otherDamage && a.cue !== 'strong' && told.some((d) => !saysAgain(a, d, open))) return false;
  // "1-2 is all done": another block, another deed
  if (
    a.cue === 'none' &&
    told.some((d) => d.entry.kind === 'treatment' && !d.entry.action && d.placed === 'said') &&
    open.every(({ was }) => was.kind !== 'treatment' || was.action !== undefined)
  )
    return false;
  if (!lead && a.cue === 'none' && a.items.length > 24) return false;
  const whereInIt = NEAR_IN_IT.test(a.head[first.length + 1]?.w ?? a.head[first.length]?.w ?? '');
  let found = placesHeard(
    a,
    lead ? (bare(a.head) && !whereInIt ? (goesOn(a) ? a.items : a.head) : first) : a.head,
  );
  let from = lead ? first : a.head;
  if (!found.length) {
    found = placesHeard(a, a.items);
    from = a.items;
  }
  const at = found.join();
  const corner = found.length > 1 ? undefined : cornerOfCloth(a, open, found[0]);
  if (corner) found = [corner];
  if (!found.length)
    found = [numberHeard(a), lineHeard(a), sideOfSeveral(a, open)].find((p) => p !== undefined) ?? [];
  const cloth = from.find((x) => x.fabric?.names.length === 1);
  const inCloth = cloth ? (a.state.fabrics.blocks[cloth.fabric!.names[0]!] ?? []) : [];
  if (!found.length) found = [...inCloth];
  if (!found.length) return false;
  for (const s of open) {
    const e = s.draft.entry;
    const fabric = 'fabric' in e ? e.fabric : undefined;
    const blocks = fabric !== undefined ? a.state.fabrics.blocks[fabric] : undefined;
    // "the one in row three": the cloth's block in that row
    const inside = blocks ? found.filter((p) => blocks.includes(p)) : [];
    const items = from.filter((x) => x.place?.places.length);
    put(s.draft, 'places', found.length > 1 && inside.length ? inside : found, 'answer.place', items);
    for (const x of items) a.used.add(x);
  }
  if (corner) {
    // "the lower left of the four, whipstitched": what picks the block counts nothing, and what is told behind it is of that block
    for (const x of first) if (x.action?.v === 'leave' || (x.quantity && !x.quantity.unit)) a.used.add(x);
    for (const d of told)
      if (sewsOn(d, open)) a.taken.add(d);
      else if ('places' in d.entry && d.entry.places?.join() === at)
        put(d, 'places', [corner], 'answer.place', []);
  }
  for (const d of told)
    if (d.clause === 0 || saysAgain(a, d, open)) if (saysAgain(a, d, open)) a.taken.add(d);
  return true;
}

/** "1-1 & 1-9 want it too", then "1-4": the block that was meant stands beside those that were right. */
function answerShort(a: Answering): boolean {
  const short = a.standing.filter((_, k) => a.last.short?.includes(k));
  if (!short.length || !bare(a.items) || a.items.length > 10 || / (?:only|just|all) /.test(a.words))
    return false;
  const found = placesHeard(a, a.items);
  if (!found.length || found.length > 2) return false;
  for (const { draft, was } of short) {
    const right = 'places' in was ? (was.places ?? []) : [];
    put(draft, 'places', [...new Set([...right, ...found])], 'answer.place-beside', a.items);
  }
  for (const x of a.items) a.used.add(x);
  for (const d of a.state.drafts) a.taken.add(d);
  return true;
}

/** "whipstitched", of a patch whose place was asked for: how it was sewn on, and no deed of its own. */
const sewsOn = ({ entry: e }: Draft, open: Standing[]): boolean =>
  e.kind === 'treatment' &&
  e.action === 'resew' &&
  e.stitch !== undefined &&
  open.some(({ was }) => was.kind === 'treatment' && was.action !== undefined && was.action !== 'resew');

/** "5-2. also 5-3": more of the answer behind a stop. */
const goesOn = (a: Answering): boolean =>
  a.head.length < a.items.length &&
  a.items.length <= 10 &&
  bare(a.items) &&
  / [.;] (?:and|also|plus|oh and) /.test(a.words);

/** "3-5, near the middle of it": where in the block. */
const NEAR_IN_IT = /^(near|nearer|towards?|close|right|just|about|over|dead|bang)\b/;

/** "four three, no hole in that one just thin": what was there, beside where. */
const OTHER_DAMAGE = / (?:no|not|n't|never|without) (?:\S+ ){1,7}(?:just|only|merely|simply|it was) /;

/** Up to the first comma or stop. */
function firstStretch(items: Item[]): Item[] {
  const end = items.findIndex(
    (x, k) =>
      k > 0 &&
      ((/^[.;!?\n,:-]$/.test(x.w) &&
        x.token.kind === 'mark' &&
        items.slice(0, k).some((y) => y.place?.places.length) &&
        !(items[k + 1]?.place && items[k + 1]!.w !== 'it' && x.w === ',')) ||
        // "it was four three and you know there wasn't any hole", "3-2 it was thin"
        (k < 10 &&
          ((/^(and|but|where|though)$/.test(x.w) && /^(there|it|you|that)$/.test(items[k + 1]?.w ?? '')) ||
            (x.w === 'it' && /^(was|'s|is|had|has|did|does)$/.test(items[k + 1]?.w ?? ''))) &&
          items
            .slice(0, Math.min(k, 6))
            .some((y) => y.place?.kind === 'blocks' && y.place.places.length === 1))),
  );
  return end > 0 ? items.slice(0, end) : items;
}

/** Does the draft only name again what the question was about: "the hole is in 3-2", "that darning was on 4-3"? */
function saysAgain(a: Answering, d: Draft, open: Standing[]): boolean {
  const e = d.entry;
  return open.some(({ was }) => {
    if (was.kind === 'condition' && e.kind === 'condition') return was.finding === e.finding;
    if (was.kind === 'treatment' && e.kind === 'treatment')
      return (
        was.action === e.action &&
        !(e.stitch && e.stitch !== was.stitch) &&
        !(e.minutes && e.minutes !== was.minutes) &&
        (a.cue !== 'none' || was.state === e.state)
      );
    return false;
  });
}

/** Places said; a row or a block alone is filled up with what was heard of the block outside the grid. */
function placesHeard(a: Answering, items: Item[]): string[] {
  const said = placesNamed(items);
  const alone = items.find(
    (x) => x.place && !x.place.places.length && /^(block|blk|bl|b|square|patch)\b/.test(x.w),
  );
  if (a.last.heard && said.kind === 'none' && alone) {
    const n = readNumber(a.state.tokens, alone.i + 1)?.value;
    const block = n === undefined ? undefined : blockAt(a.state.grid, a.last.heard.row, n);
    return block ? [block] : [];
  }
  if (said.kind !== 'specific' && said.kind !== 'general') return [];
  const { heard } = a.last;
  const { grid } = a.state;
  if (heard && said.items.length === 1) {
    const rule = said.items[0]!.place!.rule;
    const first = splitBlock(said.places[0] ?? '');
    if (first && /row/.test(rule) && isWholeRow(grid, said.places) && grid.blocks > 1) {
      const block = blockAt(grid, first.row, heard.block);
      if (block) return [block];
    }
    if (first && said.places.length === 1 && /^block/.test(said.items[0]!.w)) {
      const block = blockAt(grid, heard.row, first.block);
      if (block && !/row/.test(said.items[0]!.w)) return [block];
    }
  }
  return said.places;
}

/** The number that is right: not the one behind "not". */
const numberSaid = (a: Answering): Item | undefined =>
  a.items.find(
    (x, k) =>
      x.quantity?.value !== undefined &&
      !x.quantity.unit &&
      !a.items.slice(Math.max(0, k - 2), k).some((y) => /^(not|n't|say|said|of)$/.test(y.w)),
  );

const LINE_SAID = /\b(r(?:ow)?|c(?:ol(?:umn)?)?)s? ?(\w+)\b/gi;
const COUNT: Record<string, number> = countsOf(1, 20);

/** "row seven is torn", then "six", "sorry, six": the whole line, where one was named that the quilt has not got. */
function lineHeard(a: Answering): string[] | undefined {
  const { grid } = a.state;
  if (a.last.heard || a.items.length > 8) return undefined;
  const n = numberSaid(a)?.quantity?.value;
  if (n === undefined) return undefined;
  for (const [, line, word] of a.last.said.matchAll(LINE_SAID)) {
    const rows = /^r/i.test(line!);
    const wrong = COUNT[word!.toLowerCase()] ?? Number(word);
    if (!(wrong > (rows ? grid.rows : grid.blocks))) continue;
    const places = rows ? rowOf(grid, n) : columnOf(grid, n);
    return places.length ? places : undefined;
  }
  return undefined;
}

/** "six, not nine", "it's six rows down and not seven" after a block outside the grid: the number that was wrong is put right. */
function numberHeard(a: Answering): string[] | undefined {
  const { heard } = a.last;
  const { grid } = a.state;
  if (!heard || a.items.length > (a.cue === 'strong' ? 18 : 8)) return undefined;
  // "the fifth", "the last one then"
  const nth =
    / (?:the|it 's) (?:(first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)|last|end)(?: one| block)?(?: (?:then|that is|i think|it must be))*(?: [.!])* $/.exec(
      a.words,
    );
  if (nth) {
    const most = heard.row > grid.rows ? grid.rows : grid.blocks;
    const index = nth[1] ? ORDINAL_WORDS.indexOf(nth[1]) + 1 : most;
    const block = heard.row > grid.rows ? blockAt(grid, index, heard.block) : blockAt(grid, heard.row, index);
    return block === undefined ? undefined : [block];
  }
  const number = numberSaid(a);
  const n = number?.quantity?.value;
  if (n === undefined) return undefined;
  const counted = a.items[a.items.indexOf(number!) + 1]?.w ?? '';
  const ofRow =
    /^rows?$/.test(counted) || (!/^(along|across|over|in)$/.test(counted) && heard.row > grid.rows);
  const block = ofRow ? blockAt(grid, n, heard.block) : blockAt(grid, heard.row, n);
  return block === undefined ? undefined : [block];
}

/** The blocks of the cloth of which one was told: "one of the buff sprigs has a tear". */
function blocksAskedOf({ state, last }: Answering, open: Standing[]): string[] {
  const { blocks } = state.fabrics;
  const told = open.flatMap(({ was }) =>
    'fabric' in was && was.fabric !== undefined && was.kind === 'condition' ? [was.fabric] : [],
  )[0];
  const said = last.said.toLowerCase();
  const fabric = told ?? Object.keys(blocks).find((name) => said.includes(`of the ${name.toLowerCase()}`));
  return fabric === undefined ? [] : (blocks[fabric] ?? []);
}

const AT_CORNER = / (top|upper|bottom|lower) (?:and )?(?:hand )?(left|right)(?: hand)? /;

/** "(one of the buff sprigs) the lower right one": the corner of the blocks of that cloth, where it is no corner of the quilt. */
function cornerOfCloth(a: Answering, open: Standing[], found: string | undefined): string | undefined {
  const said = AT_CORNER.exec(a.words);
  const all = said ? blocksAskedOf(a, open) : [];
  if (all.length < 2 || (found !== undefined && all.includes(found))) return undefined;
  const across = outermostOf(all, said![1]!) ?? [];
  const [corner, another] = outermostOf(across, said![2]!) ?? [];
  return another ? undefined : corner;
}

/** "the lower one", "the left-hand one", "the first": one of the blocks of the cloth that was named. */
function sideOfSeveral(a: Answering, open: Standing[]): string[] | undefined {
  const all = blocksAskedOf(a, open);
  if (all.length < 2 || a.items.length > 12) return undefined;
  // "both", "all of them"
  if (
    / (?:both|all|every one|each|the lot)(?: of (?:them|those)| three| four| one)* (?:[.!,] |$|i think |actually |then )/.test(
      a.words,
    ) &&
    (all.length === 2 || !/ both /.test(a.words))
  )
    return [...all];
  const at = (p: string): { row: number; block: number } => splitBlock(p) ?? { row: 0, block: 0 };
  const rows = [...all].sort((p, q) => at(p).row - at(q).row);
  const columns = [...all].sort((p, q) => at(p).block - at(q).block);
  const picks: [RegExp, string[], number][] = [
    [/ (lower|bottom|lowest|last) /, rows, -1],
    [/ (upper|top|higher|highest|first) /, rows, 0],
    [/ (left|leftmost) /, columns, 0],
    [/ (right|rightmost) /, columns, -1],
    [/ second /, rows, 1],
    [/ (middle|third) /, rows, / third /.test(a.words) ? 2 : Math.floor(all.length / 2)],
  ];
  for (const [said, list, k] of picks) {
    const pick = said.test(a.words) ? list.at(k) : undefined;
    if (pick !== undefined) return [pick];
  }
  return undefined;
}
