import type { Entry } from '../../../shared/entry.ts';
import type { Action, Material } from '../../../shared/vocabulary.ts';
import { COLOURS } from '../../lexicon/colours.ts';
import { LENGTH_UNIT_SET } from '../../lexicon/units.ts';
import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { findGood, type GoodFound } from './find-good.ts';
import { someOfIt } from './some-of-it.ts';

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
]);
/** A material is what the work was done with after one of these. */
const DESCRIBING = new Set(
  'new fresh some a an bit of piece scrap little small old matching plain red blue green white black brown grey gray cream ivory pale dark light fine heavy unbleached bleached undyed dyed wide narrow remnant strip length can tin bottle tube jar bag drop dab stay layer layers couple few more'.split(
    ' ',
  ),
);
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
  'took',
]);
/** Things in use, not used up. */
const TOOLS =
  /\b(label|screen|brush|brushes|sponge|sponges|hoop|towel|towels|box|chalk|sleeve|buttons?|tape|thimble|gloves|blade|blades|pencil|blotting paper|braid|lace|fringe|hooks|oil|scissors|shears|snips|ripper|cutter|mat|ruler|threader|pincushion|measure|magnifier)$/;

const SEWN_WITH = /^(darn|resew|quilt|tie|baste|bind|patch|overlay|stabilize|piece)$/;
const LAYS_NET = new Set<Action>(['overlay', 'stabilize']);

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
  const doneAgain = here.some((d) => d.origins['action']?.rule === 'treatment.same-again');
  const bare = !made.length && !state.drafts.some((d) => d.clause === v.index);
  // "muslin eased in behind 4-4 and basted": the muslin is that of the support
  const owner =
    here.findLast((d) => (d.entry as { action?: Action }).action !== 'baste') ??
    here.at(-1) ??
    (bare ? before : undefined);
  if (!owner) return;
  const action = (owner.entry as { action?: Action }).action;
  for (let k = 0; k < items.length; k++) {
    const item = items[k]!;
    if (!item.material && !item.fabric && item.quantity?.value === undefined) continue;
    // an amount comes before its noun: begin at the amount
    const good = findGood(items, k, false);
    if (!good || (!item.material && !item.fabric && !item.quantity?.unit && good.head === undefined))
      continue;
    const head = good.head === undefined ? undefined : items[good.head]!;
    // "patched 1-5 and the other brown tweed block": a block of that cloth
    if (
      head?.fabric &&
      / the (?:other|remaining)(?: two| three| four| \d)? $/.test(
        wordsBetween(items, good.head! - 3, good.head),
      ) &&
      /^(?:blocks?|ones?|squares?)$/.test(items[good.head! + 1]?.w ?? '')
    ) {
      k = Math.max(k, good.next - 1);
      continue;
    }
    // "one of the buff sprigs has net over it": a block of that cloth, and no piece of it
    if (
      head?.fabric &&
      good.quantity !== undefined &&
      !good.unit &&
      / of (?:the|those|these|my|our) $/.test(wordsBetween(items, k, good.head))
    ) {
      k = Math.max(k, good.next - 1);
      continue;
    }
    // "the same with the other bombazine one": a block, and no stuff
    if (
      doneAgain &&
      [good.next - 1, good.next].some((n) => /^(ones?|blocks?|squares?)$/.test(items[n]?.w ?? ''))
    )
      continue;
    // "Thread: silk, cream": a heading
    if (items.length === 1 && good.name === 'thread' && state.clauses[v.index + 1]?.joint === ':') continue;
    if (amountOfNamed(state, v, good)) {
      k = Math.max(k, good.next - 1);
      continue;
    }
    // "laid the net over it, tacked it first": the net went on with the laying
    const laid =
      good.material === 'net' && here.find((d) => LAYS_NET.has((d.entry as { action?: Action }).action!));
    // "put fusible behind it and went over it in zigzag": what was fused on behind
    const fused =
      good.material === 'interfacing' &&
      here.some((d) => (d.entry as { action?: Action }).action === 'stabilize');
    const by = laid ? 'overlay' : fused ? 'stabilize' : action;
    // "put a bit of calico behind it and darned it": the calico is that of the first deed
    const first = ownerBefore(here, owner, items[k]!);
    if (first && isUsed(items, k, good, head, (first.entry as { action?: Action }).action, true, used))
      push(state, v, good, head, first);
    else if (
      isUsed(items, k, good, head, by, here.length > 0, used) ||
      isPutInElsewhere(state, items, k, owner, action)
    ) {
      push(state, v, good, head, owner);
    }
    k = Math.max(k, good.next - 1);
  }
  const some =
    here.length && !state.drafts.some((d) => d.clause === v.index && d.entry.kind === 'material')
      ? someOfIt(state.drafts, v, here)
      : undefined;
  if (some) state.drafts.push(some);
  const colour = here.length ? bareColour(items) : undefined;
  const stuff = action && OF_COLOUR[action];
  if (colour && stuff && !state.drafts.some((d) => d.clause === v.index && d.entry.kind === 'material'))
    state.drafts.push(
      makeDraft(
        'material',
        v,
        {
          material: [stuff, `material.${stuff}`, colour],
          use: ['used', 'use.used', undefined],
          name: [colour.map((x) => x.w).join(' '), 'material.name', colour],
        },
        'unneeded',
      ),
    );
}

/** Of several deeds told in one clause the one whose cloth this is: that last told before it, where the last of all comes only behind it. */
function ownerBefore(here: Draft[], owner: Draft, stuff: Item): Draft | undefined {
  if (here.length < 2 || (owner.origins['action']?.from ?? 0) < stuff.token.from) return undefined;
  return here.findLast(
    (d) =>
      d !== owner &&
      d.entry.kind === 'treatment' &&
      /^(?:patch|stabilize|overlay|replace)$/.test(d.entry.action ?? '') &&
      (d.origins['action']?.from ?? stuff.token.to) <= stuff.token.from,
  );
}

/** "put muslin behind 2-4, whipstitched round, half a yard of muslin": how much of what was just named. */
function amountOfNamed(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  good: GoodFound,
): boolean {
  if (good.head === undefined || good.quantity === undefined || !good.unit || good.unit === 'piece')
    return false;
  const noun = good.name.split(' ').at(-1);
  const named = state.drafts.findLast(
    ({ entry: e, sentence: n }) =>
      e.kind === 'material' &&
      e.use === 'used' &&
      e.quantity === undefined &&
      n === v.sentence &&
      e.material === good.material &&
      e.name?.split(' ').at(-1) === noun,
  );
  if (!named) return false;
  giveAmount(named, v, good);
  return true;
}

/** How much of a material was used, where it is told behind it; a gap left for a number is none. */
function giveAmount(
  to: Draft,
  v: { index: number; sentence: number; items: Item[] },
  { quantity, unit, items }: GoodFound,
): void {
  const { entry, origins } = makeDraft(
    'material',
    v,
    { quantity: [quantity, 'amount', items], unit: [unit, 'amount', items] },
    'unneeded',
  );
  to.entry = { ...to.entry, ...entry } as Entry;
  to.origins = { ...origins, ...to.origins };
}

const CUT_INTO =
  /^ (?:all |up |down )?in ?to (?:\S+ )?(?:strips|squares|patches|pieces|triangles|diamonds|hexagons|lengths|bits|rounds)(?: |$)/;

/** What it is that a colour alone tells of. */
const OF_COLOUR: Partial<Record<Action, Material>> = {
  bind: 'binding',
  tie: 'tie-thread',
  patch: 'fabric',
  replace: 'fabric',
  stabilize: 'fabric',
  darn: 'thread',
  resew: 'thread',
  quilt: 'thread',
};

/** "bound it with the navy", "darned 2-2 in grey": a colour alone, behind what was done. */
function bareColour(items: Item[]): Item[] | undefined {
  const at = items.findIndex((x, k) => {
    if (!COLOURS.has(x.w) || x.material || x.fabric || x.finding || /^(dark|light|pale)$/.test(x.w))
      return false;
    let m = k - 1;
    while (COLOURS.has(items[m]?.w ?? '') || /^(the|some|plain|bright)$/.test(items[m]?.w ?? '')) m--;
    return (
      /^(with|in|w)$/.test(items[m]?.w ?? '') &&
      (!items[k + 1] ||
        items[k + 1]!.token.kind === 'mark' ||
        /^(one|stuff|and|by|to|so|this|too|took)$/.test(items[k + 1]!.w) ||
        items[k + 1]!.duration !== undefined ||
        items[k + 1]!.stitch !== undefined)
    );
  });
  return at < 0 ? undefined : items.slice(COLOURS.has(items[at - 1]?.w ?? '') ? at - 1 : at, at + 1);
}

/** "patched 1-2 in the pinstripe", where 1-2 is no pinstripe block: the cloth put in, and not the block mended. */
function isPutInElsewhere(
  state: ReaderState,
  items: Item[],
  k: number,
  owner: Draft,
  action: Action | undefined,
): boolean {
  const name = items[k]!.fabric?.full ? items[k]!.fabric!.names[0] : undefined;
  if (!name || items[k]!.fabric!.names.length > 1) return false;
  if (!/^(patch|replace|stabilize)$/.test(action ?? '') || owner.placed !== 'said') return false;
  const inThe = items[k - 1]?.w === 'the' && items[k - 2]?.w === 'in';
  // "patched 3-4 barn drill zigzag"
  const behindPlace =
    items[k - 1]?.place?.kind === 'blocks' &&
    items[k - 2]?.action?.form === 'past' &&
    (isAtEnd(items, k + 1) || toldHow(items[k + 1]));
  if (!inThe && !behindPlace) return false;
  const blocks = state.fabrics.blocks[name] ?? [];
  const places = placesOf(owner);
  return blocks.length > 0 && places.length > 0 && !places.some((p) => blocks.includes(p) || !/^\d/.test(p));
}

/** "pieced the velvet in", "(4-3:) velvet let in". */
function isPiecedIn(items: Item[], lead: string[], next: number): boolean {
  const w = (k: number): string => items[k]?.w ?? '';
  return (
    (INSERTS.test(lead.join(' ')) && /^(in|into)$/.test(w(next))) ||
    (/^(pieced|let|set|sewn|sewed|put|inserted)$/.test(w(next)) && /^(in|into)$/.test(w(next + 1)))
  );
}
const INSERTS =
  /(?:^| )(?:pieced|piecing|let|letting|set|setting|put|sewed|sewn|stitched|inserted|slotted)(?: the| some| new)*$/;

/** "a bit of the gingham", "out of the green", "what was left of the ochre": some of a cloth is what was put in. */
const PART_OF =
  /(?:^| )(?:out|bits?|piece|scraps?|strips?|some|length|square|patch|left|last|remains|remnants?|leftovers?|offcuts?|snip|corner|end|more) of (?:the|that|this|my|her|our|those|their)(?: (?:old|same|other|last))?$/;
const PIECED_IN = /(?:set|let|put|pieced|sewed|sewn|stitched) in(?: (?:the|that|some|new|a|of|my))*$/;

const GRAMMAR = new Set(
  "the that this those these its his her their my our both all every each other an it them he she i we they you not no n't never and or but so then with w from using of in on at to for by as is was are were be been 's 've had has have did do got get put set laid used took over under behind beneath across along around round up down off out into onto now today again just only about after before while there here where when what which who if also too still by".split(
    ' ',
  ),
);
/** May the word be one that tells what kind of cloth or thread it is: "butterscotch", "rust proof", "waxed"? */
function describes(x: Item, head: Item | undefined): boolean {
  return (
    head !== undefined &&
    x.token.kind === 'word' &&
    !GRAMMAR.has(x.w) &&
    !(
      x.action ||
      x.place ||
      x.finding ||
      x.fail ||
      x.part ||
      x.object ||
      x.seam ||
      x.quantity ||
      x.duration ||
      x.clock ||
      x.span ||
      x.cost ||
      x.stitch ||
      x.measure
    )
  );
}

const placesOf = (d: Draft): readonly string[] => ('places' in d.entry ? (d.entry.places ?? []) : []);

const isDone = (d: Draft): boolean =>
  d.entry.kind === 'treatment' && (d.entry.state === 'done' || d.entry.state === 'doing');

const isAtEnd = (items: Item[], k: number): boolean =>
  !items[k] || /^(?:,|and|then|but|so|took|[.;)])$/.test(items[k]!.w);

/** "… same feed sack cloth same slip stitch" */
const isSameStitch = (items: Item[], k: number): boolean =>
  items[k]?.w === 'same' && Boolean(items[k + 1]?.stitch);

const isPast = (x: Item | undefined, action: Action | undefined): boolean =>
  x?.action?.form === 'past' && x.action.v === action;

/** "… patched barn drill zigzag", "… patched calico 22 min", "… patched calico by machine": how it was done, or how long it took. */
const toldHow = (x: Item | undefined): boolean =>
  x?.token.kind === 'mark' || Boolean(x?.stitch || x?.duration) || /^(?:by|using|with|w)$/.test(x?.w ?? '');

/** "layered with wool batting and a muslin backing": one "with" for all that is listed behind it, until a deed is told. */
function inWith(items: Item[], at: number): boolean {
  const lead = items.slice(0, at).findLastIndex((x) => /^(with|w|using|from)$/.test(x.w));
  return lead >= 0 && !items.slice(lead, at).some((x) => x.action && !x.material && !x.part);
}

/** "patched 2-3, it's the green twill", "the new piece is the twill": what was put in, told of it. */
const IS_CLOTH =
  /(?:^| )(?:it|that|this|piece|patch|bit|one|lining|support)(?: (?:in|on) \S+)? (?:'s|is)(?: (?:the|a|some|all|just))*$/;

/** The verb of a cutting that is done. */
const isCutUp = (x: Item | undefined): boolean => x?.action?.v === 'cut' && x.action.form !== 'base';

/** Is this stuff that a treatment in the clause, or the one before it, has used? */
function isUsed(
  items: Item[],
  k: number,
  good: GoodFound,
  head: Item | undefined,
  action: Action | undefined,
  inClause: boolean,
  used: Set<Item>,
): boolean {
  // "1-2 gingham torn, crepeline over": the cloth that is torn
  if (items[good.next]?.finding) return false;
  // the describing words belong to the thing: "in new muslin", "with a bit of the denim", "butterscotch print"
  let at = k;
  let strange = 0;
  while (at > 0) {
    const before = items[at - 1]!;
    // "blue #8 perle"
    if (DESCRIBING.has(before.w) || COLOURS.has(before.w) || before.w === '#') at--;
    else if (strange < 2 && describes(before, head)) {
      strange++;
      at--;
    } else break;
  }
  const described = at < k;
  const lead = items.slice(Math.max(0, at - 4), at).map((x) => x.w);
  const last = lead.at(-1) ?? ',';
  const told = good.quantity !== undefined && (good.unit !== undefined || head !== undefined);
  const withIt =
    lead.slice(-3).some((x) => /^(with|from|using|w)$/.test(x)) ||
    last === 'of' ||
    // "put a patch of blue lawn on 3-2", "sewed a piece of lawn over it"
    items.slice(at, good.unit === 'piece' ? good.head : k).some((x) => x.w === 'of') ||
    PART_OF.test(lead.join(' '));
  const listed = /^(,|and|&|\+|:|-|--)$/.test(last);
  // "washed it with soap flakes and the vinegar"
  const listedToo =
    /^(wash|clean)$/.test(action ?? '') &&
    /^(?:,|and|&|\+|plus) (?:the|some|that|my)$/.test(lead.slice(-2).join(' '));
  if (lead.some((x) => /^(no|not|without|n't)$/.test(x))) return false;
  // "30 cm", "450 mm of it": how much of what was just put on
  if (!head) return good.quantity !== undefined && good.unit !== undefined && good.unit !== 'piece';
  if (/^(piece|patch|bit|square)$/.test(head.w) && !head.fabric) return false;
  switch (good.material) {
    case 'backing':
    case 'batting':
    case 'binding':
      if (action === 'layer' && (withIt || (listed && inWith(items, at)))) return true;
      // "bound it with the red binding"
      if (withIt && action === 'bind') return true;
      // "six binding strips joined": how many were cut, and no goods
      if (/\bstrips?$/.test(head.w) && good.unit === undefined && /^(cut|piece|bind)$/.test(action ?? ''))
        return false;
      return told && !/^(the|old)$/.test(last);
    case 'fabric': {
      if (action === 'darn' || action === 'resew') {
        // "with gold silk" sews, "with the silk" in a darn is its thread
        return (
          (withIt ||
            last === 'in' ||
            (listed && at > 1) ||
            (at === 0 && !inClause) ||
            // "sewed up 2-3 ladder stitch black cotton"
            (items[at - 1]?.stitch !== undefined && !items[at - 1]!.weakStitch)) &&
          /(^| )(silk|cotton|wool|linen)$/.test(head.w)
        );
      }
      if (!action || NO_CLOTH.has(action)) return false;
      if (/^(patch|replace|stabilize)$/.test(action) && IS_CLOTH.test(lead.join(' '))) return true;
      // told last, with nothing to join it: "2-1's patched now blue shirting", "I put a patch on it grey flannel"
      if (
        /^(patch|replace|stabilize)$/.test(action) &&
        (described || head.fabric?.full) &&
        (isAtEnd(items, good.next) || toldHow(items[good.next]) || isSameStitch(items, good.next)) &&
        ((/^(it|that|them|'em|em|those|now|today|tonight|there)$/.test(last) &&
          !/^(?:behind|under|over|in|on|for|with|of)$/.test(lead.at(-2) ?? '')) ||
          /(?:^| )(?:on|over|in|behind) (?:it|that|them|that one|there)$/.test(lead.join(' ')))
      )
        return true;
      // "2-2 patched blue check, whipstitch": its place stands before the verb, so that the cloth is what went on
      if (
        /^(patch|replace|stabilize)$/.test(action) &&
        (isPast(items[at - 1], action)
          ? items.slice(0, at - 1).some((x) => x.place?.kind === 'blocks')
          : // "patched 3-4 calico, zigzag"
            items[at - 1]?.place?.kind === 'blocks' && isPast(items[at - 2], action) && !head.fabric) &&
        (isAtEnd(items, good.next) || toldHow(items[good.next]))
      )
        return true;
      if (/^(replace|patch)$/.test(action) && isPiecedIn(items, lead, good.next)) return true;
      // "put a scrap of the gingham over 3-4", "slipped some of the ochre in behind it"
      if (
        /^(put|laid|set|placed|popped|slapped|stuck|slipped|slipping|slid|sliding|tucked|tucking|laying|putting)$/.test(
          last,
        ) &&
        items
          .slice(good.next, good.next + 3)
          .some((x) => /^(over|on|onto|behind|underneath|beneath|under|in|across)$/.test(x.w.split(' ')[0]!))
      )
        return true;
      if (
        /^(fabric|material|cloth|print|check|stripe|dot|floral|solid)$/.test(good.name) &&
        !head.fabric &&
        !withIt &&
        !described
      )
        return false;
      // "cut squares out of the calico": a cutting uses what it is cut from
      if (action === 'cut')
        return (
          /(^| )(out of|from)( the| my| some| that| a)?$/.test(lead.join(' ')) ||
          // "cut a heap of calico into strips", "cut squares of calico"
          (CUT_INTO.test(wordsBetween(items, good.next, good.next + 4)) && !head.place) ||
          / (?:strips|squares|patches|pieces|triangles|diamonds|hexagons|lengths|rounds) of (?:the |some )?$/.test(
            ` ${lead.join(' ')} `,
          ) ||
          // "border strips cut, brown stripe"
          (listed && at > 1) ||
          // "cut poplin strips 9 cm", "cut the poplin into strips"
          (isCutUp(items[items[at - 1]?.w === 'the' ? at - 2 : at - 1]) &&
            /^(?:(?:strips?|squares?|pieces?|lengths?|triangles?|hexagons?|patches)$|into$|up$)/.test(
              items[good.next]?.w ?? '',
            )) ||
          (at === 0 && !inClause)
        );
      // "replaced in the new linen"
      if (/ in the$/.test(` ${lead.join(' ')}`) && items.slice(at, k).some((x) => /^(new|fresh)$/.test(x.w)))
        return true;
      // "patched 2-3 in the teal": the block was told, so that the cloth is what went on it; "the hole in the teal" is where
      if (
        /^(patch|replace)$/.test(action) &&
        / in the$/.test(` ${lead.join(' ')}`) &&
        (items.slice(0, at).some((x) => x.place?.kind === 'blocks') ||
          // "patched that in the grey", "put a patch over it in the calico"
          /^(,|it|that|this|them|those|one|both)$/.test(items[at - 3]?.w ?? '')) &&
        !items.slice(0, at).some((x) => (x.finding && x.w !== 'patch') || x.seam || x.fail)
      )
        return true;
      const after = items[good.next];
      if (/^(patch|piece|square|block|one)$/.test(after?.w ?? ''))
        return action === 'patch' || action === 'replace';
      if (action === 'stabilize' || action === 'overlay') {
        if (withIt || used.has(head) || (last === 'in' && action === 'stabilize')) return true;
        // "2-3 backed, silk, by hand": listed behind the deed, as for a patch
        if (
          listed &&
          isPast(items[at - 2], action) &&
          (isAtEnd(items, good.next) || toldHow(items[good.next]))
        )
          return true;
        if (/^(the|those|all|both|three|two|every|these)$/.test(last) && at - 1 <= 1) return false;
        return items
          .slice(good.next, good.next + 4)
          .some((x) => /^(behind|underneath|beneath|under|over)$/.test(x.w));
      }
      if (withIt) return true;
      // "set new pickle green in"
      if (
        action === 'replace' &&
        /^(in|into)$/.test(items[good.next]?.w ?? '') &&
        /^(set|let|put|pieced|sewed|sewn)$/.test(last)
      )
        return true;
      // the cloth that was mended stands after "the", "on", "in the"
      if (last === 'in') return true;
      if (action === 'replace' && PIECED_IN.test(lead.join(' '))) return true;
      if (/^(the|that|both|all|every|on|over)$/.test(last)) return false;
      if (action === 'quilt') return false;
      return listed && at > 0 ? true : at === 0 && !inClause;
    }
    case 'thread':
    case 'tie-thread':
      if (head.object === 'stitching' && used.has(head)) return false;
      if (action === 'remove' || last === 'old') return false;
      // "darned it after all number fifty cotton"
      if (/^(?:number|size|no|nr) | (?:weight|wt) /.test(head.w) && SEWN_WITH.test(action ?? '')) return true;
      // "3-4 darned white thread twelve minutes"
      if (
        described &&
        ((SEWN_WITH.test(items[at - 1]?.action?.v ?? '') && items[at - 1]!.action!.form === 'past') ||
          // "darned 4-2 running stitch tan thread"
          (items[at - 1]?.stitch && !items[at - 1]!.weakStitch))
      )
        return true;
      // "the thread was the grey upholstery stuff"
      if (at <= 1 && /^(was|is)$/.test(items[good.next]?.w ?? '')) return true;
      return withIt || listed || told || at === 0 || lead.some((x) => WITH.has(x));
    case 'net':
      return (
        action === 'overlay' ||
        action === 'stabilize' ||
        // "tacked the net down" fastens what is there
        (action === 'baste' && !/^(the|that|its)$/.test(last)) ||
        (withIt && told)
      );
    case 'interfacing':
      return action === 'stabilize' || (withIt && action !== 'remove');
    case 'pins':
    case 'needle':
      // "took out the last of the pins"
      return action !== 'remove' && (good.quantity !== undefined || withIt);
    case 'adhesive':
      return (
        action !== 'remove' &&
        (withIt ||
          told ||
          (listed && head.w !== 'spray') ||
          lead.includes('by') ||
          // "fused web behind 1-2"
          (action === 'stabilize' && last === 'fused'))
      );
    case 'detergent':
      if (listedToo) return true;
      return withIt || told || listed || last === 'in' || /^(tried|used|put|dabbed|applied)$/.test(last);
    case 'other':
      if (TOOLS.test(good.name) || /^(bag|bags)$/.test(head.w)) return false;
      if (listedToo) return true;
      // "tried vinegar on it"
      return withIt || told || last === 'in' || listed || /^(tried|used|put|dabbed|applied)$/.test(last);
    default:
      return false;
  }
}

/** "tied row two, a skein and a half", "bound it, nine yards": what the work is done with, where only the amount is told. */
function impliedBy(made: Action | undefined, { unit }: GoodFound): Material | undefined {
  if (!unit) return undefined;
  if (made === 'tie') return /^(skein|ball|spool)$/.test(unit) ? 'tie-thread' : undefined;
  if (unit === 'spool') return made && SEWN_WITH.test(made) ? 'thread' : undefined;
  return made === 'bind' && /^(yd|m|ft)$/.test(unit) ? 'binding' : undefined;
}

function push(
  state: ReaderState,
  v: { index: number; sentence: number; items: Item[] },
  good: GoodFound,
  head: Item | undefined,
  owner: Draft,
): void {
  let material: Material | undefined = good.material;
  const made = (owner.entry as { action?: Action }).action;
  if (material === 'fabric' && (made === 'darn' || made === 'resew')) material = 'thread';
  // "tacked round in silk", "quilted in cream cotton": what it was sewn with
  if (
    material === 'fabric' &&
    (made === 'baste' || made === 'quilt') &&
    /^(silk|cotton|linen)$/.test(head?.w ?? '') &&
    !head!.fabric?.full
  )
    material = 'thread';
  // "couched with silk", "whipped in cotton"
  const sewnWith = v.items[v.items.indexOf(good.items[0]!) - 2];
  if (
    material === 'fabric' &&
    sewnWith?.stitch &&
    /^(silk|cotton|linen|wool)$/.test(head?.w ?? '') &&
    !head!.fabric?.full
  )
    material = 'thread';
  // "darned with the red floss": yarn and floss are for tying where it is tied
  if (material === 'tie-thread' && made && SEWN_WITH.test(made) && made !== 'tie') material = 'thread';
  // "tied row one in the red wool"
  if ((material === 'fabric' || material === 'thread') && made === 'tie') material = 'tie-thread';
  // "bound it in black twill", "binding strips cut, white sateen"
  const of = made === 'cut' || made === 'piece' ? placesOf(owner)[0] : undefined;
  if ((material === 'fabric' || material === 'other') && (made === 'bind' || of === 'binding'))
    material = 'binding';
  // "layered it with the flannelette"
  if (material === 'fabric' && (of === 'backing' || made === 'layer')) material = 'backing';
  const said = head !== undefined;
  if (!said) {
    // a length alone is of the net or cloth just put on
    const last = state.drafts.findLast((d) => d.entry.kind === 'material' && d.entry.use === 'used');
    if (
      last?.entry.kind === 'material' &&
      last.entry.quantity === undefined &&
      good.unit &&
      LENGTH_UNIT_SET.has(good.unit) &&
      last.entry.material !== undefined &&
      /^(fabric|net|interfacing|backing|batting|binding)$/.test(last.entry.material) &&
      good.name === 'it'
    ) {
      giveAmount(last, v, good);
      return;
    }
    material ??= impliedBy(made, good);
    if (!material && good.name === 'it') return;
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
  // "a bit of the gingham", "darned one more, same thread"
  const vague =
    good.quantity === 1 &&
    (good.unit === 'piece' || (good.unit === undefined && good.items.some((x) => x.w === 'same')));
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
