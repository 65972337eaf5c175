import type { Draft } from '../../rules/draft.ts';
import type { Item } from '../../rules/item.ts';
import { wordsBetween } from '../../rules/words-between.ts';
import type { Standing } from '../standing.ts';
import { named } from './items.ts';

/** Words that begin a note of its own, and no second look at the goods just told. */
const ANEW =
  / (?:bought|buy|got|ordered|picked|used|need|needs|want|also|another|more|put|darned|patched|sewed|will|'ll|going|tomorrow) /;
const DENIED = / (?:not|n't|no|none|never|without) /;
const WHOLE = / (?:the lot|altogether|in all|all in|total|for (?:both|all|the pair)|the pair) /;

/**
 * "chalk was 1.90, calico 1 1/4 m", "fat quarters 3, felt not bought", "don't need the thread, and pins only 2 packs": two or more of
 * the goods that the last note told, each with what is right of it. Gives the last note's entries; nothing where any part
 * of the note speaks of anything else.
 */
export function goodsAgain(standing: Standing[], items: Item[]): Draft[] | undefined {
  if (standing.filter(({ was }) => was.kind === 'material').length < 2 || items.length > 30) return undefined;
  if (items.some((x) => x.finding || x.duration || x.clock || x.span || x.place?.kind === 'blocks'))
    return undefined;
  const parts = partsOf(items);
  if (parts.length < 2) return undefined;
  const told = parts.map((part) => ({ part, s: goodsNamed(standing, part) }));
  if (told.some(({ s }) => !s) || new Set(told.map(({ s }) => s)).size < parts.length) return undefined;
  const gone = new Set<Standing>();
  for (const { part, s } of told) {
    const words = wordsBetween(part);
    const figures = part.filter((x) => x.cost || x.quantity?.value !== undefined);
    const denied = DENIED.test(words);
    if (denied ? figures.length : figures.length !== 1) return undefined;
    if (!denied && ANEW.test(words)) return undefined;
    if (denied) gone.add(s!);
    else if (!putRight(s!, figures[0]!, words)) return undefined;
  }
  return standing.filter((s) => !gone.has(s)).map((s) => s.draft);
}

/** The parts between commas, stops and "and", without those that say nothing. */
function partsOf(items: Item[]): Item[][] {
  const parts: Item[][] = [[]];
  for (const x of items)
    if (/^(?:[,.;]|and|&|\+|but)$/.test(x.w)) parts.push([]);
    else parts.at(-1)!.push(x);
  return parts.filter((part) =>
    part.some((x) => !/^(?:no|sorry|oh|wait|actually|correction|er|um|,)$/.test(x.w)),
  );
}

/** The one good of the last note that a part names. */
function goodsNamed(standing: Standing[], part: Item[]): Standing | undefined {
  const goods = standing.filter(
    ({ was }) =>
      part.some((x) => named(was, x)) ||
      (was.kind === 'material' &&
        ((was.unit === 'fat-quarter' &&
          part.some((x) => x.w === 'fat' || x.quantity?.unit === 'fat-quarter')) ||
          part.some(
            (x) => x.material !== undefined && x.material === was.material && x.material !== 'fabric',
          ))),
  );
  return goods.length === 1 ? goods[0] : undefined;
}

/** The amount or the price that is right; false where the figure fits neither. */
function putRight({ draft }: Standing, x: Item, words: string): boolean {
  const { entry: e } = draft;
  if (e.kind !== 'material') return false;
  const decimal = /^\d*\.\d\d$/.test(x.w);
  const amount = x.cost?.amount ?? (decimal && !x.quantity?.unit ? x.quantity?.value : undefined);
  if (amount !== undefined) {
    const each = x.cost?.each || (e.cost?.each && !WHOLE.test(words) && !x.cost?.whole);
    draft.entry = { ...e, cost: { amount, ...(each ? { each: true } : {}) } };
    return true;
  }
  const { value, unit } = x.quantity ?? {};
  if (value === undefined) return false;
  draft.entry = { ...e, quantity: value, ...(unit ? { unit } : {}) };
  return true;
}
