import type { Entry } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Action, Finding } from '../../shared/vocabulary.ts';
import { allBlocks, columnOf, rowOf, splitBlock } from '../rules/places/grid.ts';

const FINDING_WORDS: Record<Finding, string> = {
  tear: 'a tear',
  hole: 'a hole',
  'split-seam': 'seam split',
  fraying: 'fraying',
  shattered: 'shattered',
  thin: 'thin',
  stain: 'stained',
  fading: 'faded',
  'dye-bleed': 'dye has bled',
  missing: 'fabric missing',
  'old-repair': 'an old repair',
  'lumpy-batting': 'batting lumpy',
  puckering: 'puckered',
  mildew: 'mildew',
  'insect-damage': 'insect damage',
  'broken-stitching': 'stitching broken',
  'out-of-square': 'out of square',
  sound: 'sound',
};
const PAST: Record<Action, string> = {
  replace: 'piece replaced',
  patch: 'patched',
  stabilize: 'supported from behind',
  overlay: 'net laid over',
  resew: 're-sewn',
  darn: 'darned',
  remove: 'taken off',
  clean: 'cleaned',
  wash: 'washed',
  dry: 'dried',
  press: 'pressed',
  leave: 'left as found',
  cut: 'cut',
  piece: 'pieced',
  'add-border': 'border put on',
  layer: 'layered',
  baste: 'basted',
  tie: 'tied',
  quilt: 'quilted',
  bind: 'bound',
  trim: 'trimmed',
  'square-up': 'squared up',
  label: 'labelled',
  measure: 'measured',
  photograph: 'photographed',
};
const TO_DO: Record<Action, string> = {
  replace: 'replace the piece',
  patch: 'patch',
  stabilize: 'support from behind',
  overlay: 'lay net over',
  resew: 're-sew',
  darn: 'darn',
  remove: 'take off',
  clean: 'clean',
  wash: 'wash',
  dry: 'dry',
  press: 'press',
  leave: 'leave as found',
  cut: 'cut',
  piece: 'piece',
  'add-border': 'put the border on',
  layer: 'layer',
  baste: 'baste',
  tie: 'tie',
  quilt: 'quilt',
  bind: 'bind',
  trim: 'trim',
  'square-up': 'square up',
  label: 'label',
  measure: 'measure',
  photograph: 'photograph',
};

const list = (parts: string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Places as people say them: "row 3, blocks 2 and 4", "all of column 1", "the top border". */
export function sayPlaces(places: string[], grid: QuiltGrid): string {
  const blocks = places.filter((p) => splitBlock(p));
  // one block, as mostly, is no whole row or column of a quilt that has several
  if (places.length === 1 && blocks.length === 1 && grid.rows > 1 && grid.blocks > 1 && !grid.placeNames) {
    const { row, block } = splitBlock(blocks[0]!)!;
    return `row ${row}, block ${block}`;
  }
  const parts = places
    .filter((p) => !splitBlock(p))
    .map((p) => {
      const side = /^(border|edge|corner)-(.+)$/.exec(p);
      return side ? `the ${side[2]!.replace('-', ' ')} ${side[1]}` : `the ${p}`;
    });
  const said: string[] = [];
  const left = new Set(blocks);
  if (left.size === allBlocks(grid).length && left.size > 1) return 'every block';
  const takeAll = (line: string[], words: string): void => {
    if (line.length > 1 && line.every((p) => left.has(p))) {
      said.push(words);
      for (const p of line) left.delete(p);
    }
  };
  const wholeColumns = Array.from({ length: grid.blocks }, (_, k) => k + 1).filter((c) =>
    columnOf(grid, c).every((p) => left.has(p)),
  );
  for (let r = 1; r <= grid.rows; r++) takeAll(rowOf(grid, r), `row ${r}`);
  if (grid.rows > 1) for (const c of wholeColumns) takeAll(columnOf(grid, c), `column ${c}`);
  for (const [name, named] of Object.entries(grid.placeNames ?? {})) {
    if (!named.every((p) => left.has(p))) continue;
    said.push(`the ${name.replace(/^the /i, '')}`);
    for (const p of named) left.delete(p);
  }
  const byRow = new Map<number, number[]>();
  for (const p of left) {
    const at = splitBlock(p)!;
    byRow.set(at.row, [...(byRow.get(at.row) ?? []), at.block]);
  }
  for (const [row, cols] of byRow)
    said.push(
      `row ${row}, block${cols.length > 1 ? 's' : ''} ${list(cols.sort((a, b) => a - b).map(String))}`,
    );
  return list([...said, ...parts]);
}

const clock = (local: string): string => local.slice(11);
const minutesWords = (m: number): string =>
  m < 60 ? `${m} minutes` : m % 60 ? `${Math.floor(m / 60)} h ${m % 60} min` : `${m / 60} h`;

/** One entry in a few words; numbers are said back, so that a slip is noticed. */
export function sayEntry(e: Entry, grid: QuiltGrid): string {
  const where = 'places' in e && e.places?.length ? sayPlaces(e.places, grid) : '';
  const at = where ? `${where}: ` : '';
  switch (e.kind) {
    case 'condition':
      return `${at}${FINDING_WORDS[e.finding]}`;
    case 'treatment': {
      if (!e.action) return `${at}work done`;
      const how = e.stitch
        ? e.stitch === 'hand' || e.stitch === 'machine'
          ? ` by ${e.stitch}`
          : `, ${e.stitch.replaceAll('-', ' ')}${['zigzag', 'whipstitch', 'backstitch', 'couching', 'herringbone', 'in-the-ditch'].includes(e.stitch) ? '' : ' stitch'}`
        : '';
      const what =
        e.action === 'remove'
          ? `${(e.object ?? 'piece').replace('-', ' ')} ${e.state === 'done' ? 'taken off' : 'to come off'}`
          : undefined;
      const time = e.minutes ? `, ${minutesWords(e.minutes)}` : '';
      if (e.state === 'done') return `${at}${what ?? PAST[e.action]}${how}${time}`;
      if (e.state === 'doing') return `${at}${what ?? `${TO_DO[e.action]}, in hand`}${how}${time}`;
      if (e.state === 'planned') return `${at}to do: ${what ?? TO_DO[e.action]}${how}`;
      if (e.state === 'considering') return `${at}undecided: ${what ?? TO_DO[e.action]}`;
      return `${at}not going to ${TO_DO[e.action]}`;
    }
    case 'material': {
      const amount = e.quantity !== undefined ? `${e.quantity} ${e.unit ?? ''} `.replace('  ', ' ') : '';
      const price = e.cost ? `, ${e.cost.amount}${e.cost.each ? ' each' : ''}` : '';
      return `${e.use === 'on-hand' ? 'on hand' : e.use}: ${amount}${e.name ?? e.material ?? 'of something'}${price}`;
    }
    case 'measurement':
      return `${e.of.replaceAll('-', ' ')} ${e.value ?? '?'} ${e.unit ?? ''}`.trim();
    case 'work': {
      const task = e.task ? e.task.replaceAll('-', ' ') : 'work';
      if (e.mark)
        return `${task} ${e.mark === 'start' ? 'started' : 'stopped'}${e.time ? ` at ${clock(e.time)}` : ''}`;
      if (e.start && e.end)
        return `${task} ${clock(e.start)} to ${clock(e.end)}${e.minutes ? `, ${minutesWords(e.minutes)} of work` : ''}`;
      return e.minutes ? `${task}, ${minutesWords(e.minutes)}` : task;
    }
    case 'decision':
      return `${e.about.replaceAll('-', ' ')} ${e.status === 'open' ? 'still open' : 'settled'}`;
    case 'remark':
      return 'noted';
  }
}

/** What is said back: one short sentence for the whole note. */
export function replyTo(entries: Entry[], grid: QuiltGrid): string {
  if (!entries.length) return 'Nothing logged.';
  if (entries.length > 5) {
    const first = entries.slice(0, 4).map((e) => sayEntry(e, grid));
    return sentence(`${first.join('; ')}; and ${entries.length - 4} more`);
  }
  return sentence(entries.map((e) => sayEntry(e, grid)).join('; '));
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
