import type { Action, Material } from '../../../shared/vocabulary.ts';
import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { findGood, type GoodFound } from './find-good.ts';

/** Treatments that use no cloth of their own: "washed it on the linen" uses none. */
const NO_CLOTH = new Set<Action>([
  'clean',
  'press',
  'wash',
  'dry',
  'remove',
  'leave',
  'photograph',
  'measure',
  'trim',
  'square-up',
  'cut',
]);
/** A material is what the work was done with after one of these. */
const WITH = new Set([
  'with',
  'w',
  'in',
  'from',
  'of',
  'using',
  'used',
  'out',
  'by',
  'through',
  'on',
  'some',
  'scrap',
  'into',
  'under',
  'over',
]);
/** Things in use, not used up. */
const TOOLS =
  /\b(label|screen|brush|brushes|sponge|sponges|hoop|towel|towels|box|chalk|sleeve|buttons?|tape|thimble|gloves|blade|blades|pencil|blotting paper|braid|lace|fringe|hooks|oil)$/;

/** Drafts of the materials that the treatments `made` in a clause used; of planned ones none. */
export function readMaterials(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  made: Draft[],
  used: Set<Item>,
): void {
  const { items } = v;
  const here = made.filter(isDone);
  // A clause of its own after a treatment: "…, 0.6 m net", "cream silk thread"
  const before = state.drafts.filter((d) => isDone(d) && d.clause >= 0 && d.clause < v.index).at(-1);
  const bare = !made.length && !state.drafts.some((d) => d.clause === v.index);
  const owner = here.at(-1) ?? (bare ? before : undefined);
  if (!owner) return;
  const action = (owner.entry as { action?: Action }).action;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.material && !item.fabric && !item.quantity?.unit) continue;
    // an amount comes before its noun: begin at the amount
    const good = findGood(items, k, false);
    if (!good) continue;
    const head = good.head === undefined ? undefined : items[good.head]!;
    const told = good.quantity !== undefined && good.unit !== undefined;
    if (isUsed(items, k, good, head, action, owner, here.length > 0, told, used)) {
      push(state, v, good, head, owner);
    }
    k = Math.max(k, good.next - 1);
  }
}

const isDone = (d: Draft): boolean =>
  d.entry.kind === 'treatment' && (d.entry.state === 'done' || d.entry.state === 'doing');

function isUsed(
  items: Item[],
  k: number,
  good: GoodFound,
  head: Item | undefined,
  action: Action | undefined,
  _owner: Draft,
  inClause: boolean,
  told: boolean,
  used: Set<Item>,
): boolean {
  const lead = items.slice(Math.max(0, k - 4), k).map((x) => x.w);
  const last = lead.at(-1) ?? ',';
  const words = items
    .slice(k, good.next)
    .map((x) => x.w)
    .join(' ');
  const { material } = good;
  if (lead.some((x) => /^(no|not|without|n't)$/.test(x))) return false;
  if (!head) {
    // "30 cm" after the net: how much of it
    return told && !good.points && material !== undefined && inClause === false;
  }
  if (/^(piece|patch|bit|square)$/.test(head.w) && !head.fabric) return false;
  if (material === 'backing' || material === 'batting' || material === 'binding')
    return told && !/^(the|old)$/.test(last);
  const led = lead.some((x) => WITH.has(x)) || /^(,|and|&|\+|w\/|:|-|--)$/.test(last) || k === 0;
  if (material === 'fabric') {
    if (
      !action ||
      NO_CLOTH.has(action) ||
      action === 'darn' ||
      action === 'tie' ||
      action === 'baste' ||
      action === 'layer'
    )
      return false;
    if (
      /^(piece|fabric|material|cloth|print|check|stripe|dot|floral|solid)$/.test(good.name) &&
      !head.fabric &&
      !lead.some((x) => /^(with|from|of|using)$/.test(x))
    )
      return false;
    if (action === 'stabilize' || action === 'overlay') {
      const after = items.slice(good.next, good.next + 3).map((x) => x.w);
      const behind =
        /^(behind|underneath|under|beneath|in|going|over|on)$/.test(after[0] ?? '') ||
        after.includes('behind');
      return behind || lead.some((x) => /^(with|from|of|using|behind)$/.test(x)) || used.has(head);
    }
    // the cloth that was mended stands before the verb or after "the", "on", "in the"
    if (/^(the|that|both|all|every)$/.test(last) && !lead.some((x) => /^(with|from|of|using|w)$/.test(x)))
      return false;
    if (last === 'in' || last === 'on')
      return (
        /^(replace|patch|piece|add-border|bind|label)$/.test(action) &&
        !/ in the /.test(` ${lead.join(' ')} `) &&
        last === 'in'
      );
    if (action === 'resew' || action === 'quilt') return lead.some((x) => /^(with|using)$/.test(x)) && told;
    return (
      lead.some((x) => /^(with|w|from|using|of)$/.test(x)) ||
      (/^(,|&|-|--|:)$/.test(last) && k > 0 && Boolean(head.fabric || told || good.name)) ||
      (k === 0 && !inClause)
    );
  }
  if (material === 'thread' || material === 'tie-thread') {
    if (head.object === 'stitching' && used.has(head)) return false;
    if (action === 'remove') return false;
    if (/^(old|the old)$/.test(last)) return false;
    return led || told;
  }
  if (material === 'net')
    return action === 'overlay' || action === 'stabilize' || action === 'baste' ? true : led && told;
  if (material === 'interfacing') return action === 'stabilize' || (led && action !== 'remove');
  if (material === 'pins' || material === 'needle')
    return told || good.quantity !== undefined || lead.slice(-3).some((x) => /^(with|w|using)$/.test(x));
  if (material === 'adhesive')
    return (
      action !== undefined &&
      /^(baste|patch|stabilize|label|resew|overlay)$/.test(action) &&
      (led || told) &&
      !/^(spray|glue)$/.test(
        words.trim() === good.name && !told && !lead.some((x) => /^(with|w|using|of)$/.test(x))
          ? good.name
          : '',
      )
    );
  if (material === 'detergent') return led || told;
  if (material === 'other') {
    if (TOOLS.test(good.name)) return told && !/\b(screen|towels?|box|brush)$/.test(good.name);
    return lead.some((x) => /^(with|w|using|of|in)$/.test(x)) || told || (/^(and|&|\+)$/.test(last) && led);
  }
  return false;
}

function push(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  good: GoodFound,
  head: Item | undefined,
  owner: Draft,
): void {
  let material: Material | undefined = good.material;
  const said = head !== undefined;
  if (!said) {
    // a length alone is of the net or cloth just put on
    const last = state.drafts.findLast((d) => d.entry.kind === 'material' && d.entry.use === 'used');
    const action = (owner.entry as { action?: Action }).action;
    if (
      last?.entry.kind === 'material' &&
      last.entry.quantity === undefined &&
      good.unit &&
      LENGTH_UNIT_SET.has(good.unit) &&
      good.name === 'it'
    ) {
      last.entry.quantity = good.quantity!;
      last.entry.unit = good.unit;
      return;
    }
    if (action === 'overlay' && good.name === 'it') material = 'net';
    else if (good.name === 'it') return;
  }
  const twin = state.drafts.find(
    (d) =>
      d.entry.kind === 'material' &&
      d.entry.use === 'used' &&
      d.entry.material === material &&
      d.entry.name === good.name &&
      d.sentence === v.sentence,
  );
  if (twin) return;
  // "a piece of the denim", "a scrap of fusible" is no count
  const vague = good.unit === 'piece' && good.quantity === 1;
  state.drafts.push(
    makeDraft(
      'material',
      v,
      {
        material: [material, `material.${material}`, good.items],
        use: ['used', 'use.used', undefined],
        quantity: [vague ? undefined : good.quantity, 'amount', good.items],
        unit: [vague || good.quantity === undefined ? undefined : good.unit, 'amount', good.items],
        cost: [good.cost, 'cost', good.items],
        name: [good.name, 'material.name', good.items],
      },
      'unneeded',
    ),
  );
}
