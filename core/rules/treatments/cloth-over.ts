import { isPredicate } from '../clause/is-predicate.ts';
import type { Item } from '../item.ts';
import { isNet } from './is-cloth.ts';
import { plainVerbNear } from './plain-verb-near.ts';
import { verbNear } from './verb-near.ts';
import { found, type Way, type WayFound, type WordAt } from './way.ts';

/** "calico over the hole", "covered the hole with a bit of calico", "a square of lawn stitched over the worn spot". */
export function clothOver({ items, k, item, ways, used }: WordAt): WayFound {
  const over = overDamage(items, k, ways, used);
  return (
    over &&
    found(
      {
        action: 'patch',
        form: over.form,
        at: over.at,
        items: [item],
        stuff: item,
        rule: 'treatment.cloth-over',
      },
      k,
      ...(over.at === k ? [] : [over.at]),
    )
  );
}

function overDamage(
  items: Item[],
  k: number,
  ways: Way[],
  used: Set<number>,
): { form: Way['form']; at: number } | undefined {
  const item = items[k]!;
  const cloth =
    item.fabric !== undefined ||
    item.material === 'fabric' ||
    /^(?:a|another) piece$/.test(item.w) ||
    (/^(piece|bit|scrap|square)$/.test(item.w) &&
      (items[k + 1]?.w === 'of' || /^(a|another|new|fresh)$/.test(items[k - 1]?.w ?? '')));
  if (!cloth || isNet(item) || item.seam || ways.length) return undefined;
  if (
    item.material === 'backing' ||
    items.some((x) => isNet(x) || x.object === 'label' || x.part === 'batting' || x.part === 'binding')
  )
    return undefined;
  // "has an old patch of curtain stuff on it": what was found
  if (items.slice(Math.max(0, k - 3), k).some((x) => x.finding === 'old-repair')) return undefined;
  const after = items.slice(k + 1, k + 6);
  const n = after.findIndex((x) => /^(over|across|onto|on top|on)$/.test(x.w));
  const cover = items.findIndex((x) => /^(cover|covered|covering|hid|hide|faced)$/.test(x.w));
  if (cover >= 0 && cover < k && items.slice(cover, k).some((x) => /^(with|by|using|in|w)$/.test(x.w)))
    return {
      form: /^(cover|hide)$/.test(items[cover]!.w) ? 'base' : items[cover]!.w === 'covering' ? 'ing' : 'past',
      at: cover,
    };
  if (n < 0) return undefined;
  // "the brown print over in the left column"
  if (/^(in|by|at|near|there|here)$/.test(after[n + 1]?.w ?? '')) return undefined;
  const target = after.slice(n + 1).concat(items.slice(k + 6, k + 9));
  const verb =
    verbNear(items, k, ['resew', 'baste', 'patch', 'piece'], used) ??
    plainVerbNear(items, k) ??
    appliedNear(items, k);
  const damage = target.slice(0, 5).some((x) => x.finding || /^(gap|spot|place|bit|area)$/.test(x.w));
  const block = target
    .slice(0, 3)
    .some(
      (x) =>
        x.place?.kind === 'blocks' ||
        /^place\.(it|that-one|them|both)$/.test(x.place?.rule ?? '') ||
        x.w === 'it',
    );
  if (!damage && !block) return undefined;
  if (!verb)
    return /^(over|across)$/.test(after[n]!.w) &&
      // "hole in 5-2, calico over it, blanket stitch"
      ((n === 0 && items[k - 1]?.token.kind === 'mark' && target[0]?.w === 'it') ||
        !items.some((x, m) => x.finding && isPredicate(items, m) && m < k)) &&
      (damage || n === 0) &&
      !items.some((x) => x.fail)
      ? { form: 'noun', at: k }
      : undefined;
  // "on" alone says little: only where the cloth is sewn on a place or damage
  if (after[n]!.w === 'on' && verb.form === 'noun') return undefined;
  return { form: verb.form, at: verb.k };
}

function appliedNear(items: Item[], k: number): { k: number; form: Way['form'] } | undefined {
  for (let m = Math.max(0, k - 6); m < Math.min(items.length, k + 5); m++)
    if (/^(applied|apply|applying|hemmed|slapped)$/.test(items[m]!.w))
      return { k: m, form: items[m]!.w === 'apply' ? 'base' : items[m]!.w === 'applying' ? 'ing' : 'past' };
  return undefined;
}
