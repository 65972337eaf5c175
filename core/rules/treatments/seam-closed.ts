import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** The edges of damage brought together. */
export function drawnTogether({ items, k, item, after }: WordAt): WayFound {
  // "drew the tear together", "brought the edges back together", "drew it shut with herringbone"
  if (
    /^(drew|drawn|pulled|brought|knit|knitted|eased|coaxed|draw|pull|bring|knitting|drawing|pulling|bringing|easing|nipped|nipping|gathered|ran|run)$/.test(
      item.w,
    ) &&
    / (?:together|shut) /.test(after) &&
    items.slice(k + 1, k + 9).some(
      (x) =>
        x.seam ||
        x.finding === 'tear' ||
        x.finding === 'hole' ||
        x.finding === 'split-seam' ||
        /^edges?$/.test(x.w) ||
        x.part === 'edge' ||
        // "drew it together with herringbone"
        (x.stitch !== undefined && !x.weakStitch),
    ) &&
    !items.some((x) => x.action && x.action.v === 'resew' && !x.stitch)
  ) {
    return found(
      {
        action: 'resew',
        form: /ing$/.test(item.w) ? 'ing' : /^(draw|pull|bring)$/.test(item.w) ? 'base' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.drawn-together',
      },
      k,
    );
  }
  return undefined;
}

/** A stitch gone over a seam. */
export function goneOver({ items, k, item }: WordAt): WayFound {
  // "went over the seam again with a backstitch", "I'll go over that by hand"
  if (
    ((/^(went|gone|go|going|run|ran)$/.test(item.w) &&
      /^(over|along|round|around)$/.test(items[k + 1]?.w ?? '')) ||
      /^(went|gone|go|going) over it$/.test(item.w)) &&
    items.slice(k + 1).some((x) => x.stitch) &&
    !items.some((x) => x.action && !x.stitch && isPredicate(items, items.indexOf(x)))
  ) {
    return found(
      {
        action: 'resew',
        form: /^go\b/.test(item.w) ? 'base' : /^going/.test(item.w) ? 'ing' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.gone-over',
      },
      k,
    );
  }
  return undefined;
}

/** "did the open seam at 2-4", "ran that seam again", "went back over the seam", "put the seam right": sewn, though the verb says nothing of its own. */
export function seamSeenTo({ items, k, item, before }: WordAt): WayFound {
  // asked at the seam, since no rule is asked at "did"
  // "I'll do the tear by hand": only a stitch tells that it is sewn
  const torn =
    /^(tear|split-seam)$/.test(item.finding ?? '') && items.some((x, m) => m > k && m < k + 7 && x.stitch);
  const did =
    (item.seam || torn) &&
    / (did|done|do|doing) (?:the|that|both|those|its|all the) (?:\S+ )?$/.exec(before)?.[1];
  if (did && !isTold(items, k))
    return found(
      {
        action: 'resew',
        form: did === 'do' ? 'base' : did === 'doing' ? 'ing' : 'past',
        at: k,
        items: [item, ...openSeam(items, k)],
        rule: 'treatment.seam-seen-to',
      },
      k,
    );
  const told = SEEN_TO[item.w];
  if (!told || !Object.hasOwn(SEEN_TO, item.w) || !told.test(wordsBetween(items, k + 1, k + 12)))
    return undefined;
  const seam = items.findIndex((x, m) => m > k && m < k + 7 && x.seam);
  if (seam < 0 || / (n't|not|never|nothing|no) (?:\S+ )?$/.test(before) || isTold(items, seam, k))
    return undefined;
  return found(
    {
      action: 'resew',
      form: item.w === 'put' && / (to|will|'ll|gonna|must|should) $/.test(before) ? 'base' : 'past',
      at: k,
      items: [item, ...openSeam(items, seam)],
      rule: 'treatment.seam-seen-to',
    },
    k,
  );
}
/** The word before the seam that says that it was open: it is what the work was on. */
const openSeam = (items: Item[], seam: number): Item[] =>
  items[seam - 1]?.fail || items[seam - 1]?.finding ? [items[seam - 1]!] : [];
/** Does another verb tell what was done to the seam, or is it told to have given way? */
const isTold = (items: Item[], seam: number, own = -1): boolean =>
  items.some(
    (x, m) =>
      m !== own &&
      m !== seam &&
      ((x.action && isPredicate(items, m)) || (x.fail && m > seam + 1) || x.w === '?'),
  );
const SEAM = '(?:the|that|both|this|those|its|two|three)(?: \\S+){0,2} (?:seams?|join)\\b';
const SEEN_TO: Record<string, RegExp> = {
  // "ran that seam again", "ran the seam between 6-1 and 6-2 through the machine"
  ran: new RegExp(`^ ${SEAM}.* (?:again|once more|twice|through (?:the|my) machine) `),
  went: new RegExp(`^ (?:back |again )?over ${SEAM}`),
  put: new RegExp(`^ ${SEAM}.* right `),
  // "machined all the seams in row six"
  machined: /^ (?:up )?(?:\S+ ){0,3}?(?:seams?|join)\b/,
};

/** A seam that asks to be gone over. */
export function wantsGoingOver({ items, k, item, before }: WordAt): WayFound {
  // "the binding wants its seams going over", "row two's seams need going over again"
  if (
    (item.w === 'going over' || (item.w === 'going' && items[k + 1]?.w === 'over')) &&
    / (wants?|needs?|'ll want|will want|could do with) /.test(before) &&
    items.slice(Math.max(0, k - 4), k).some((x) => x.seam || x.stitches) &&
    !items[k + 1]?.stitch
  )
    return found(
      { action: 'resew', form: 'base', at: k, items: [item], rule: 'treatment.wants-going-over' },
      k,
    );
  return undefined;
}

/** A seam told as whole again. */
export function backTogether({ items, k, item, all, ways }: WordAt): WayFound {
  // "the seam's back together"
  if (
    item.w === 'together' &&
    items[k - 1]?.w === 'back' &&
    items.some((x) => x.seam) &&
    !ways.length &&
    !items.some((x, m) => (x.action?.v === 'resew' || x.action?.v === 'piece') && isPredicate(items, m))
  ) {
    return found(
      {
        action: 'resew',
        form: /ing\b/.test(all) ? 'ing' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.back-together',
      },
      k,
    );
  }
  return undefined;
}

/** A seam or tear told as shut. */
export function shutWith({ items, k, item, thing }: WordAt): WayFound {
  if (item.w !== 'shut' || (k > 0 && !/^(i|and|then|so|,|-|'ve|have|to|now)$/.test(items[k - 1]!.w)))
    return undefined;
  const behind = items.slice(k + 1, k + 7);
  if (
    // "shut that seam with a ladder stitch"
    behind.some((x) => x.seam || x.finding === 'tear' || x.finding === 'split-seam') ||
    // "(seam gone at 3-3,) shut it w/ ladder stitch": "it" is told to be a seam, or the stitch tells
    (/^(it|them|that|those|both|these)$/.test(behind[0]?.w ?? '') &&
      (thing === 'seam' || behind.some((x) => x.stitch)))
  ) {
    return found(
      {
        action: 'resew',
        form: items[k - 1]?.w === 'to' ? 'base' : 'past',
        at: k,
        items: [item],
        rule: 'treatment.shut',
      },
      k,
    );
  }
  return undefined;
}

/** "those two seams now shut again", "seam's shut": told of the seam or tear that stood open. */
export function isShut({ items, k, item, ways }: WordAt): WayFound {
  if (
    item.w !== 'shut' ||
    ways.length ||
    items.some((x) => x.action && x !== item && x.action.v === 'resew' && !x.seam)
  )
    return undefined;
  let m = k - 1;
  while (
    m >= 0 &&
    (/^(is|'s|are|was|now|all|again|both|been|has|have|just|back|finally)$/.test(items[m]!.w) ||
      // "the seam at 2-4 is shut again"
      items[m]!.place ||
      /^(at|in|on|between|the|and|\/)$/.test(items[m]!.w))
  )
    m--;
  const thing = items[m];
  if (!thing || !(thing.seam || /^(tear|split-seam)$/.test(thing.finding ?? ''))) return undefined;
  return found({ action: 'resew', form: 'past', at: k, items: [item], rule: 'treatment.is-shut' }, k);
}

/** A line of stitching run along it. */
export function lineOfStitch({ items, k, item, before }: WordAt): WayFound {
  // "ran a line of backstitch along it", "ran a machine zigzag across the top of it"
  if (
    item.stitch &&
    !item.weakStitch &&
    (/ (line|row|run|seam|round) of( [a-z]+)? $/.test(before) ||
      (/ (ran|run|did|put|running|putting)( a| some)?( machine| hand)? $/.test(before) &&
        // "ran a straight stitch on the machine down the seam"
        /^(over|across|along|down|up|round|around)$/.test(
          items[
            /^(on|by|with|using) (the |a |my )?machine$|^by hand$/.test(items[k + 1]?.w ?? '') ? k + 2 : k + 1
          ]?.w ?? '',
        )))
  ) {
    const verb = items.findIndex(
      (x, m) => m < k && m > k - 8 && /^(ran|run|put|did|worked|sewed|running|putting)$/.test(x.w),
    );
    if (verb >= 0) {
      return found(
        {
          action: 'resew',
          form: /ing$/.test(items[verb]!.w) ? 'ing' : 'past',
          at: verb,
          items: [item],
          rule: 'treatment.line-of-stitch',
        },
        k,
        verb,
      );
    }
  }
  return undefined;
}

/** A seam run up. */
export function ranUp({ items, k, item, before, after, thing }: WordAt): WayFound {
  // "ran the seam up again on the machine"
  if (
    /^(ran|run|running)$/.test(item.w) &&
    / up /.test(` ${after}`) &&
    // "a tear running up from the seam"
    !(items[k - 1]?.finding && item.w === 'running') &&
    (items.slice(k + 1, k + 8).some((x) => x.seam || (x.w === 'it' && thing === 'seam')) ||
      // "(the seams have gone.) Ran them all up on the machine"
      (thing === 'seam' &&
        /^ (?:it|them|those|these|that|both|all)(?: all| both| two| three| of (?:them|those))? up /.test(
          after,
        )))
  ) {
    return found(
      {
        action: 'resew',
        form:
          item.w === 'ran'
            ? 'past'
            : item.w === 'running'
              ? 'ing'
              : / (i|have|'ve) $/.test(before)
                ? 'past'
                : 'base',
        at: k,
        items: [item],
        rule: 'treatment.ran-up',
      },
      k,
    );
  }
  return undefined;
}
