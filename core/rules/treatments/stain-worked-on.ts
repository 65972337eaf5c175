import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** What only ever goes on a stain. */
const ON_STAINS =
  /\b(vinegar|peroxide|borax|solvent|lemon juice|bicarb|bicarbonate|soda|saliva|spit|stain remover|detergent|soap|shampoo|white spirit|spirits)\b/;
const CLEANS =
  /\b(swab|swabs|cotton bud|cotton buds|q tip|q tips|vinegar|brush|sponge|solvent|detergent|soap|peroxide|lemon|damp|water|blotting|spit|saliva|eraser|rubber|cloth|soda|borax|spirit|spirits)\b/;

/**
 * "got most of the stain out of 2-2", "see if I can get that mark out", "that tide line I'd like to shift": the stain is what
 * the work is on. What did not move ("won't shift", "couldn't get it out") is no work told.
 */
export function stainLifted({ items, k, item, before, after, all }: WordAt): WayFound {
  // "spot on 2-5 came out with a bit of vinegar"
  if (
    /^(?:came|come|lifted|shifted) (?:out|off|away|up)$|^(?:came|lifted|shifted)$/.test(item.w) &&
    / (?:with|using|w) (?:\S+ ){0,4}/.test(after) &&
    ON_STAINS.test(wordsBetween(items, k + 1, k + 9)) &&
    items.slice(0, k).some((x) => x.finding === 'stain' || /^(?:spot|mark|stain)$/.test(x.w)) &&
    !/ (?:n't|not|never) /.test(before)
  )
    return found({ action: 'clean', form: 'past', at: k, items: [item], rule: 'treatment.stain-lifted' }, k);
  // "got most of it out with cold water and a little soap"
  if (
    /^(?:got|get|getting)$/.test(item.w) &&
    /^ (?:(?:nearly|almost) )?(?:most|all|some|the worst|a lot|a fair bit|a bit)(?: of)?(?: it| that| them)? (?:out|off) (?:with|using|w) /.test(
      wordsBetween(items, k + 1, k + 9),
    ) &&
    / (?:water|soap|soda|vinegar|detergent|peroxide|borax|spirit|damp|brush|cloth) /.test(all) &&
    !/ (?:n't|not|never) /.test(before)
  )
    return found(
      { action: 'clean', form: LIFTS.get(item.w)!, at: k, items: [item], rule: 'treatment.stain-lifted' },
      k,
    );
  const form = LIFTS.get(item.w);
  if (!form || / (?:not|n't|never|cannot|no|wo|refuses) (?:\S+ ){0,2}$/.test(before)) return undefined;
  // "lifted the binding at the corner and there's mould underneath": something else was lifted
  const lifted = items.slice(k + 1, k + 4).find((x) => !/^(?:the|that|this|an?|old|its)$/.test(x.w));
  if (
    /^lift/.test(item.w) &&
    (lifted?.part || lifted?.object || /^(?:patch|corner|edge)$/.test(lifted?.w ?? ''))
  )
    return undefined;
  const stain = items.findIndex(
    (x, m) => x.finding === 'stain' || x.finding === 'mildew' || (x.w === 'mark' && items[m - 1]?.w !== 'a'),
  );
  if (stain < 0 || Math.abs(stain - k) > 9) return undefined;
  const out = items.findIndex((x, m) => m > k && m < k + 9 && /^(out|up|off|out of)$/.test(x.w));
  if (/^(g[eo]t|dr[ae]w)/.test(item.w) && (out < 0 || (stain > k && stain > out))) return undefined;
  // "the stain lifted a bit" tells what it did; "I lifted the stain" what she did
  if (stain < k && !/ (i|we|to|'ll|will|could|can|might|'d|get) (\S+ )?$/.test(before)) return undefined;
  if (/^ (it|them)? ?(on|over|back) /.test(after)) return undefined;
  return found({ action: 'clean', form, at: k, items: [item], rule: 'treatment.stain-lifted' }, k);
}

/** Verbs that take a stain out, with the form that they stand in. "get" wants its "out". */
const LIFTS = new Map<string, Way['form']>([
  ['get', 'base'],
  ['got', 'past'],
  ['getting', 'ing'],
  ['shift', 'base'],
  ['shifting', 'ing'],
  ['lift', 'base'],
  ['lifted', 'past'],
  ['lifting', 'ing'],
  ['budge', 'base'],
  ['draw', 'base'],
  ['drew', 'past'],
]);

/** "worked on the stain with a cotton bud", "going to try some vinegar on the mark", "tried vinegar on it". */
export function stainWorkedOn({ items, k, item, all }: WordAt): WayFound {
  // "lemon juice on that tomorrow"
  const cleaned =
    k <= 3 &&
    /^(vinegar|peroxide|borax|soda|juice|bicarb)$/.test(item.w) &&
    /^(on|onto)$/.test(items[k + 1]?.w ?? '') &&
    /^(it|that|them|those|this|the)$/.test(items[k + 2]?.w ?? '') &&
    !/ (bought|need|got|spilt|spilled|spilling) /.test(all)
      ? ('noun' as const)
      : workOnStain(items, k, all);
  return (
    cleaned &&
    found({ action: 'clean', form: cleaned, at: k, items: [item], rule: 'treatment.worked-on-stain' }, k)
  );
}

/** "both stains spotted", "spotted it with vinegar"; "spotted a stain" saw it. */
function spottedOut(items: Item[], k: number): Way['form'] | undefined {
  const after = wordsBetween(items, k + 1, k + 4);
  const marked = items.slice(Math.max(0, k - 7), k).some((x) => x.finding === 'stain');
  if (marked)
    return /^ {2}$|^ (?:--|out|with|w|again|and|,|using|today|now|[.]) /.test(after) ? 'past' : undefined;
  return /^ (?:it|them|that|those|both|the (?:stains?|marks?)) (?:out |again )?(?:with|w|using) /.test(
    wordsBetween(items, k + 1, k + 6),
  )
    ? 'past'
    : undefined;
}

function workOnStain(items: Item[], k: number, all: string): Way['form'] | undefined {
  const w = items[k]!.w;
  if (w === 'spotted') return spottedOut(items, k);
  if (
    !/^(worked|working|work|tackled|tackle|tackling|treated|treat|treating|tried|try|trying|used|use|using|attacked|went|had|have|having|been|dabbed|put|applied)$/.test(
      w,
    )
  )
    return undefined;
  if (/^(had|have|having)$/.test(w) && !/^(a|another) go at$/.test(wordsBetween(items, k + 1, k + 4).trim()))
    return undefined;
  if (/^(went|been)$/.test(w) && !/^(at|over)$/.test(items[k + 1]?.w ?? '')) return undefined;
  const stained = items.some((x) => x.finding === 'stain' || x.finding === 'mildew');
  // "tried vinegar on it"
  const dabbed = / (on|to|onto) (it|them|that|those|this|the|both) /.test(all) && ON_STAINS.test(all);
  // "worked on the stain in 2-4", "treated both marks"
  const onIt =
    /^(worked|working|work|tackled|tackling|tackle|treated|treating|treat)$/.test(w) &&
    /^ (?:away )?(?:on |at )?(?:the|that|those|both|this|all the) (?:\S+ )?$/.test(
      wordsBetween(
        items,
        k + 1,
        Math.max(
          k + 1,
          items.findIndex((x, m) => m > k && x.finding === 'stain'),
        ),
      ),
    );
  if (!dabbed && !onIt && !(stained && CLEANS.test(all) && !/^(put|have|use|using)$/.test(w)))
    return undefined;
  if (items.some((x) => x.action?.v === 'clean' && x.action.form === 'past')) return undefined;
  if (/ing$/.test(w)) return 'ing';
  const modal = / (to|will|'ll|gonna|could|might|should|must) $/.test(wordsBetween(items, k - 1, k));
  return /^(work|tackle|treat|try|use|have)$/.test(w) || (w === 'put' && modal) ? 'base' : 'past';
}
