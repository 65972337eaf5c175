import type { Action, Material } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { findStuff, useOf } from './find-materials.ts';

/** Drafts of the materials of a clause: bought, needed, on hand, or used by the treatments `made` in it. */
export function readMaterials(
  state: ReaderState,
  clause: Clause,
  v: { index: number; sentence: number; items: Item[] },
  made: Draft[],
  used: Set<Item>,
  words: string,
  sentence: string,
): void {
  const { items } = clause;
  const done = made.find(
    (d) => d.entry.kind === 'treatment' && (d.entry.state === 'done' || d.entry.state === 'doing'),
  );
  const commerce = items.some((x) => x.cost) || items.some((x) => x.quantity?.unit);
  let use = useOf(words);
  const saidUse = use;
  // within one sentence a list goes on: "bought 3 m linen, 2 packs of needles, one spool of thread"
  const earlier = [...state.drafts]
    .reverse()
    .find((d) => d.entry.kind === 'material' && d.sentence === clause.sentence);
  if ((!use || use === 'used') && earlier && !done) use = (earlier.entry as { use: typeof use }).use;
  if (!use && !done && commerce && / (need|buy|bought|got|have|to get) /.test(sentence))
    use = useOf(sentence);
  if (
    made.length &&
    !done &&
    (use === 'used' || use === undefined || use === 'on-hand') &&
    !items.some((x) => x.cost)
  )
    return;
  if (
    made.length &&
    use &&
    use !== 'used' &&
    done &&
    !items.some((x) => x.cost) &&
    !/ (bought|to buy|still need) /.test(words)
  )
    use = 'used';
  const taken = new Set<Item>();
  for (const item of items) {
    if (item.place && item.part && !item.material) taken.add(item);
    if (item.stitch && !/silk|thread/.test(item.w)) taken.add(item);
    if (used.has(item) && item.material && !['net', 'interfacing', 'fabric'].includes(item.material) && done)
      taken.add(item);
    if (
      item.object &&
      used.has(item) &&
      made.some((d) => d.entry.kind === 'treatment' && d.entry.action === 'remove')
    )
      taken.add(item);
    if (item.action && item.material && item.action.form !== 'base' && used.has(item)) taken.add(item);
  }
  const stuff = findStuff(items, taken);
  if (done || (made.length && use === 'used')) {
    const d = done!;
    if (!d) return;
    for (const s of stuff) {
      const k = s.from;
      const lead = items.slice(Math.max(0, k - 4), k).map((x) => x.w);
      const entry = d.entry as { action?: Action };
      const led =
        lead.some((x) =>
          /^(with|w|in|from|of|using|used|some|a|the|and|\+|&|,|new|more|for|by|through|down|w\/|on|behind|plus|out|scrap|bit)$/.test(
            x,
          ),
        ) || k === 0;
      if (!led) continue;
      if (['backing', 'batting', 'binding'].includes(s.material) && !quantityFor(items, s)) {
        // the part of the quilt that is worked on, not cloth used up
        if (!/\b(new|fresh)\b/.test(s.name)) continue;
        continue;
      }
      if (
        s.material === 'other' &&
        /\b(label|screen|brush|soft brush|sponge|hoop|towels|box|chalk|sleeve|buttons?|tape|thimble|gloves)\b/.test(
          s.name,
        )
      )
        continue;
      if (s.material === 'fabric' && s.items.some((x) => x.fabric) && !usedCloth(items, s, entry.action))
        continue;
      if (
        s.material === 'fabric' &&
        /^(piece|fabric|material|cloth|wool|print|check|stripe|dot|floral)$/.test(s.name) &&
        !items.slice(Math.max(0, k - 4), k).some((x) => /^(with|from|of)$/.test(x.w))
      )
        continue;
      if (s.material === 'pins' || s.material === 'needle') {
        if (!/\b(with|w|using|used)\b/.test(lead.join(' ')) && !quantityFor(items, s)) continue;
      }
      if (s.material === 'thread' && s.items.some((x) => x.object === 'stitching' && used.has(x))) continue;
      if (
        s.material === 'fabric' &&
        (entry.action === 'clean' ||
          entry.action === 'press' ||
          entry.action === 'wash' ||
          entry.action === 'remove')
      )
        continue;
      pushMaterial(state, v, items, s, 'used', used);
    }
    if (saidUse && saidUse !== 'used' && items.some((x) => x.cost)) {
      // bought things told in the same breath
    }
    return;
  }
  if (!use) return;
  if (
    use === 'on-hand' &&
    !commerce &&
    !/\b(have|'ve got|on hand|in stock|plenty|enough|in the cupboard|in my stash)\b/.test(words)
  )
    return;
  if (use === 'used' && !commerce && !/\b(used|used up|went through|using)\b/.test(words)) return;
  if (use === 'needed' && !commerce && !stuff.length) return;
  const rest = stuff.filter((s) => !(s.material === 'other' && s.name === 'label'));
  for (const s of rest) {
    if (
      s.items.every(
        (x) => x.part === 'backing' || x.part === 'binding' || x.part === 'batting' || x.w === 'back',
      ) &&
      items.slice(Math.max(0, s.from - 3), s.from).some((x) => x.w === 'for')
    )
      continue;
    if (s.material === 'tie-thread' || s.material === 'fabric' || true)
      pushMaterial(state, v, items, s, use, used);
  }
  if (!rest.length && commerce && items.some((x) => x.quantity?.unit || x.cost)) {
    // "bought 3 yards of it", "three balls of it", "half a dozen more"
    const q = items.find((x) => x.quantity?.unit ?? x.quantity?.value);
    if (!q && !items.some((x) => x.cost && /\b(bought|cost|paid)\b/.test(words))) return;
    if (q && used.has(q)) return;
    if (use === 'used' && !/\b(used|went through|used up)\b/.test(words)) return;
    const ofIt = / (it|them|that|those|more|same|another) /.test(words);
    const known = ofIt ? (state.memory.material ?? undefined) : undefined;
    const inNote = [...state.drafts]
      .reverse()
      .find(
        (d) => d.entry.kind === 'material' || (d.entry.kind === 'decision' && d.entry.about === 'tie-thread'),
      );
    const material: Material | undefined =
      inNote?.entry.kind === 'material'
        ? inNote.entry.material
        : inNote?.entry.kind === 'decision'
          ? 'tie-thread'
          : known?.material;
    const cost = items.find((x) => x.cost);
    state.drafts.push(
      makeDraft(
        'material',
        v,
        {
          ...(material ? { material: [material, 'material.of-it', undefined, 'implied'] } : {}),
          use: [use, `use.${use}`, undefined],
          ...(q
            ? { quantity: [q.quantity!.value, q.quantity!.rule, q], unit: [unitOf(q), q.quantity!.rule, q] }
            : {}),
          ...(cost
            ? {
                cost: [
                  { amount: cost.cost!.amount, ...(cost.cost!.each ? { each: true } : {}) },
                  cost.cost!.rule,
                  cost,
                ],
              }
            : {}),
        },
        'unneeded',
      ),
    );
  }
}

const unitOf = (q: Item): string | undefined => q.quantity?.unit;

/** Is this named cloth what was put in ("with the denim"), rather than what was mended? */
function usedCloth(items: Item[], s: { from: number }, action: Action | undefined): boolean {
  const lead = items.slice(Math.max(0, s.from - 5), s.from).map((x) => x.w);
  if (
    action === 'darn' ||
    action === 'clean' ||
    action === 'wash' ||
    action === 'press' ||
    action === 'remove' ||
    action === 'leave'
  )
    return false;
  return (
    lead.some((x) => /^(with|w|from|using|of|in|behind|new)$/.test(x)) &&
    !/^(the|that)$/.test(lead.slice(-2).join(' ') === 'in the' ? 'the' : '')
  );
}

function quantityFor(items: Item[], s: { from: number; to: number }): Item | undefined {
  for (let k = s.from - 1; k >= Math.max(0, s.from - 5); k--) {
    const x = items[k]!;
    if (x.quantity) return x;
    if (/^(,|and|\.|;|&)$/.test(x.w) || x.cost || x.material) break;
  }
  return undefined;
}

function pushMaterial(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  items: Item[],
  s: ReturnType<typeof findStuff>[number],
  use: string,
  used: Set<Item>,
): void {
  let q = quantityFor(items, s);
  if (q && used.has(q)) q = undefined;
  let after: Item | undefined;
  if (!q) {
    // "linen 3.5 m", "tulle, 30 cm"
    for (let k = s.to + 1; k < Math.min(items.length, s.to + 3); k++) {
      const x = items[k]!;
      if (x.quantity?.unit && !used.has(x) && x.quantity.unit !== 'piece') {
        const following = items.slice(k + 1, k + 4).find((y) => y.material);
        if (!following || items[k + 1]?.w === ',') after = x;
        break;
      }
      if (!/^[,:-]$/.test(x.w)) break;
    }
    q = after;
  }
  let unit = q ? unitOf(q) : undefined;
  let quantity = q?.quantity?.value;
  if (!q) {
    // a bare unit counts as one: "a pack of needles" is read as an amount; "spool of thread" here
    const unitWord = items
      .slice(Math.max(0, s.from - 3), s.from)
      .find((x) => /^(spool|reel|skein|ball|pack|packet|roll)$/.test(x.w));
    if (unitWord) {
      unit = {
        spool: 'spool',
        reel: 'spool',
        skein: 'skein',
        ball: 'ball',
        pack: 'pack',
        packet: 'pack',
        roll: 'roll',
      }[unitWord.w];
      quantity = 1;
    }
  }
  let cost: Item | undefined;
  for (let k = s.to + 1; k < items.length; k++) {
    const x = items[k]!;
    if (x.cost) {
      cost = x;
      break;
    }
    if (x.material && k > s.to + 1 && !['for', 'the', 'of', 'new'].includes(items[k - 1]?.w ?? '')) break;
    if (x.quantity && !x.cost) break;
  }
  if (cost && used.has(cost)) cost = undefined;
  if (!cost) {
    for (let k = s.from - 1; k >= Math.max(0, s.from - 3); k--)
      if (items[k]!.cost && /^(of|for|on)$/.test(items[k + 1]?.w ?? '') && !used.has(items[k]!))
        cost = items[k]!;
  }
  if (cost) used.add(cost);
  if (q) used.add(q);
  const draft = makeDraft(
    'material',
    v,
    {
      material: [s.material, `material.${s.material}`, s.items],
      use: [use, `use.${use}`, undefined],
      ...(quantity !== undefined
        ? { quantity: [quantity, 'amount', q], ...(unit ? { unit: [unit, 'amount', q] } : {}) }
        : {}),
      ...(cost
        ? {
            cost: [
              { amount: cost.cost!.amount, ...(cost.cost!.each ? { each: true } : {}) },
              cost.cost!.rule,
              cost,
            ],
          }
        : {}),
      name: [s.name, 'material.name', s.items],
    },
    'unneeded',
  );
  // the same material of the same treatment, said twice
  if (
    state.drafts.some((d) => d.clause === v.index && JSON.stringify(d.entry) === JSON.stringify(draft.entry))
  )
    return;
  state.drafts.push(draft);
}
