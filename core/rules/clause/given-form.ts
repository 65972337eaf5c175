import type { Item } from '../item.ts';

/** "2-3: patch or darn?", "patch 1-1, replace 1-6", "4-1 darn or patch": a noun that stands alone tells what to do. */
export function isTerseVerb(items: Item[], k: number): boolean {
  const item = items[k]!;
  const before = items[k - 1];
  const next = items[k + 1];
  // "1-1 replace, 1-2 patch, 1-3 leave"
  if (
    before?.place &&
    before.place.kind !== 'part' &&
    item.action?.form === 'base' &&
    !item.object &&
    !item.seam &&
    !item.stitch &&
    (!next ||
      next.token.kind === 'mark' ||
      /^(or|and|&|tomorrow|tmrw|next|later|then|but|only|w|with|using)$/.test(next.w))
  )
    return true;
  if (!/^(patch|darn|mend)$/.test(item.w)) return false;
  // "patch on top, or cut out"
  if (
    /^(on top|on)$/.test(next?.w ?? '') &&
    /^(on top|top)$/.test((next!.w === 'on' ? items[k + 2] : next)?.w ?? '')
  )
    return !before || Boolean(before.place) || /^(:|,|-|--|or|either|maybe)$/.test(before.w);
  if (
    before &&
    !before.place &&
    !/^(:|,|-|--|\/|\(|or|maybe|then|either|perhaps|and|&|just|to)$/.test(before.w)
  )
    return false;
  if (
    next &&
    !next.place &&
    !next.fabric &&
    !next.duration &&
    // "patch for 2-4?"
    !(next.w === 'for' && items[k + 2]?.place?.kind === 'blocks') &&
    !/^(:|,|-|--|\/|\)|\?|or|w|with|it|them|using|by|and|&|tomorrow|tmrw|next|later|over|there|then|instead|that|those|the)$/.test(
      next.w,
    )
  )
    return false;
  return !items
    .slice(k + 1, k + 5)
    .some((x) => x.fail || /^(off|is|was|are|has|'s|came|coming|looks)$/.test(x.w));
}

/** "gave the backing a good vacuum", "gets a little spot cleaning", "needs a press": the work as a thing given. */
export function isGiven(items: Item[], k: number): boolean {
  const item = items[k]!;
  if (!/^(clean|wash|press|dry|measure|trim|stabilize|quilt)$/.test(item.action?.v ?? '')) return false;
  // "has had a lining": a thing
  if (item.w === 'lining') return false;
  // "has its quilting gone"
  if (items[k + 1]?.fail) return false;
  let m = k - 1;
  while (
    m >= 0 &&
    /^(good|quick|light|gentle|little|bit|of|proper|thorough|careful|quick|spot|final|hand|cool|warm|second|nice|damp|another|light)$/.test(
      items[m]!.w,
    )
  )
    m--;
  const article = items[m]?.w ?? '';
  // "it gets the vacuum"
  if (article === 'the' && /^(vacuum|brush|iron|hoover|sponge|bath|steamer)$/.test(item.w))
    return isGiving(items, /^(it|them)$/.test(items[m - 1]?.w ?? '') ? m - 2 : m - 1);
  if (!/^(a|an|another|its|one more)$/.test(article) && !(article === 'another' || items[m]?.quantity))
    return false;
  // "a quick vacuum of the backing"
  if (m <= 1 && m < k - 1 && /^(of|over|for|all|on)$/.test(items[k + 1]?.w ?? '')) return true;
  return (
    items.slice(Math.max(0, m - 6), m + 1).some(
      (x, n) =>
        /^(had|having|has|use|do|stand|due)$/.test(x.w) ||
        // "will have a support of silk": a thing
        ((x.w !== 'have' || item.action?.v !== 'stabilize') && isGiving(items, Math.max(0, m - 6) + n)),
    ) || isDownFor(items, m - 1)
  );
}

/** "gets", "needs", and "will have", "is to have"; what somebody has is not given. */
const isGiving = (items: Item[], at: number): boolean =>
  /^(give|gave|given|giving|gets|get|got|needs|need|wants|want)$/.test(items[at]?.w ?? '') ||
  (items[at]?.w === 'have' &&
    items
      .slice(Math.max(0, at - 3), at)
      .some((x) => /^('ll|will|shall|to|should|can|must|may|let|ought)$/.test(x.w)));

/** "was down for a wash", "in line for a press": it was to have it. */
const isDownFor = (items: Item[], at: number): boolean =>
  items[at]?.w === 'for' && /^(down|line|up|booked|set|marked|earmarked)$/.test(items[at - 1]?.w ?? '');

/** The form that the verb of giving lends to such a noun. */
export function givenForm(items: Item[], k: number): 'past' | 'ing' | 'base' | 'noun' {
  const verb = items
    .slice(Math.max(0, k - 10), k)
    .findLast((x) =>
      /^(give|gave|given|giving|gets|get|got|needs|need|wants|want|have|had|having|has|use|do|stand|due)$/.test(
        x.w,
      ),
    );
  if (!verb) return 'noun';
  if (/^(gave|given|had|got|has)$/.test(verb.w)) return 'past';
  return verb && /^(giving|having)$/.test(verb.w) ? 'ing' : 'base';
}
