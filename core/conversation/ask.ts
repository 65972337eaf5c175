import type { Ask } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
import type { Unknown } from '../rules/amounts/unknown-amounts.ts';
import type { Draft } from '../rules/draft.ts';
import type { ReaderState } from '../rules/reader-state.ts';
import { shapeWords } from '../shape/shape-words.ts';

/** The one question that the note leaves open, or null: the first thing without which an entry can't be whole. */
export function askFor(drafts: Draft[], grid: QuiltGrid, state: ReaderState): Ask | null {
  for (const d of drafts) {
    const e = d.entry;
    if (d.cloth !== undefined && 'places' in e && !e.places?.length) {
      const several = clothsCalled(d.cloth, grid);
      return {
        slot: 'fabric',
        question:
          several.length > 1
            ? whichOf(several)
            : `No cloth of this quilt is called ${d.cloth}. Which one is it?`,
      };
    }
    if ((e.kind === 'condition' || e.kind === 'treatment') && d.outside)
      return {
        slot: 'place',
        question: `This quilt has ${shapeWords(grid)}. Which block do you mean?`,
      };
    if (
      (e.kind === 'condition' || e.kind === 'treatment') &&
      e.places &&
      !e.places.length &&
      !(e.kind === 'treatment' && (e.action === 'cut' || e.action === 'piece'))
    ) {
      return { slot: 'place', question: e.kind === 'condition' ? 'Where is that?' : 'Which block was that?' };
    }
  }
  if (strayBlock(drafts, state))
    return { slot: 'place', question: `This quilt has ${shapeWords(grid)}. Which block do you mean?` };
  for (const d of drafts) {
    const e = d.entry;
    if (e.kind === 'treatment' && !e.action)
      return {
        slot: 'action',
        question:
          e.state === 'done' || e.state === 'doing'
            ? 'What did you do to it?'
            : 'What do you mean to do to it?',
      };
    if (e.kind === 'material' && !e.material)
      return {
        slot: 'material',
        question:
          e.quantity === undefined && e.cost
            ? 'What was it that you bought?'
            : `${e.quantity ?? 'How much'} ${e.unit ?? ''} of what?`.replace('  ', ' '),
      };
    if (e.kind === 'measurement' && e.value === undefined)
      return { slot: 'quantity', question: `How much is the ${e.of.replaceAll('-', ' ')}?` };
    if (e.kind === 'material' && e.unit && e.quantity === undefined)
      return { slot: 'quantity', question: `How much ${e.name ?? e.material}?` };
    if (e.kind === 'work' && !e.mark && !e.start && !e.end && !e.minutes)
      return { slot: 'time', question: 'When, and for how long?' };
  }
  const short = uncounted(drafts, state);
  if (short) return { slot: 'quantity', question: `How much ${short}?` };
  // A cloth of this quilt that could be one of several
  for (const d of drafts) {
    const e = d.entry;
    const name =
      e.kind === 'material' && e.use === 'used' && e.material === 'fabric'
        ? e.name
        : e.kind === 'treatment' && e.state !== 'done' && e.state !== 'doing'
          ? e.fabric
          : undefined;
    const doubtful = name ?? clothOfPlan(d, state);
    if (!doubtful) continue;
    const names = clothsCalled(doubtful, state.grid);
    if (names.length > 1 && !names.includes(doubtful)) return { slot: 'fabric', question: whichOf(names) };
  }
  return null;
}

/** "will replace 2-3 with the orchid", of a quilt with an orchid dot and an orchid plaid. */
function clothOfPlan(d: Draft, state: ReaderState): string | undefined {
  const e = d.entry;
  if (e.kind !== 'treatment' || e.state !== 'planned' || !/^(patch|replace|stabilize)$/.test(e.action ?? ''))
    return undefined;
  const items = state.clauses[d.clause]?.items ?? [];
  return items.find(
    (x, k) =>
      x.fabric &&
      x.fabric.names.length > 1 &&
      !x.fabric.full &&
      items.slice(Math.max(0, k - 5), k).some((y) => /^(with|w|w\/|in|from|using|out of)$/.test(y.w)),
  )?.fabric?.words;
}

/** What she says she does not know ("can't remember how long"), where something was told that has it. A price is not asked for. */
export function askUnknown(unknown: Unknown | undefined, drafts: Draft[]): Ask | null {
  const told = drafts.map((d) => d.entry);
  if (unknown === 'time')
    return told.some(
      (e) => (e.kind === 'treatment' && /^(?:done|doing)$/.test(e.state)) || e.kind === 'work',
    ) && !told.some((e) => 'minutes' in e && e.minutes !== undefined)
      ? { slot: 'time', question: 'How long did it take, roughly?' }
      : null;
  if (unknown === 'hour') {
    const mark = told.find((e) => e.kind === 'work' && e.mark && !e.time);
    return mark?.kind === 'work' ? { slot: 'time', question: `When did you ${mark.mark}?` } : null;
  }
  if (unknown === 'quantity' || unknown === 'width') {
    const goods = told.find((e) => e.kind === 'material' && e.quantity === undefined);
    if (goods?.kind === 'material')
      return { slot: 'quantity', question: `How much ${goods.name ?? goods.material}?` };
    if (
      told.some((e) => e.kind === 'measurement' && e.value === undefined) ||
      told.some((e) => e.kind === 'treatment' && e.action === 'cut')
    )
      return { slot: 'quantity', question: 'How wide?' };
  }
  return null;
}

/** The quilt's cloths in whose names all of these words stand. */
function clothsCalled(words: string, grid: QuiltGrid): string[] {
  const said = words.toLowerCase().split(' ');
  return Object.keys(grid.fabrics ?? {}).filter((n) =>
    said.every((word) => n.toLowerCase().split(' ').includes(word)),
  );
}
const whichOf = (names: string[]): string =>
  `The ${names.slice(0, -1).join(', the ')} or the ${names.at(-1)}?`;

/** "3-2 is weak, and row eight block one the same" in a quilt of seven rows: nothing is told of that block but that it is like the others. */
const strayBlock = (drafts: Draft[], state: ReaderState): boolean =>
  state.clauses.some(
    ({ items }, index) =>
      items.some((x) => x.place?.outside && !x.place.places.length) &&
      items.some((x) => /^(same|too|also|likewise|ditto|so|as well)$/.test(x.w)) &&
      !items.some((x) => /^(not|n't|no)$/.test(x.w)) &&
      !drafts.some((d) => d.clause === index && d.outside),
  );

const COUNTED = /^(thread|tie-thread|fabric|backing|batting|binding|net|interfacing)$/;

/** The stuff whose amount is missing: bought by itself for a price, or told as not counted. */
function uncounted(drafts: Draft[], state: ReaderState): string | undefined {
  const goods = drafts.filter((d) => d.entry.kind === 'material' && d.entry.quantity === undefined);
  const last = goods.at(-1)?.entry;
  if (last?.kind !== 'material' || !last.material) return undefined;
  const name = last.name ?? last.material;
  if (
    drafts.length === 1 &&
    last.use === 'bought' &&
    last.cost &&
    !last.cost.each &&
    COUNTED.test(last.material)
  )
    return name;
  const words = ` ${state.tokens.map((t) => t.w).join(' ')} `;
  return goods.length === 1 &&
    last.use !== 'on-hand' &&
    / (?:(?:not sure|forget|forgot|no idea|do n't know|could n't say|ca n't remember|did n't count|have n't counted|never counted|lost count) (?:.{0,12} )?how (?:much|many)|however (?:much|many)|(?:abt|about|roughly|approx|(?<!should )say)(?: [.?!])*) $/.test(
      words.replace(
        / (?:skeins|spools|yards|metres|meters|of it|balls|packs|i used|i bought|i need)(?= $)/,
        '',
      ),
    )
    ? name
    : undefined;
}
