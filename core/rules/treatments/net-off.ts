import { removalAt } from '../clause/removal-at.ts';
import type { Item } from '../item.ts';
import { isNet } from './is-cloth.ts';
import { found, type WayFound, type WordAt } from './way.ts';

/** What stands between the verb and the net: "took that old bit of net off". */
const BEFORE_NET = /^(?:the|that|this|some|my|old|bit|piece|layer|of|all|both|off|out|away)$/;
/** From these net is cut or taken to be used. */
const STORE = /^(?:bolt|roll|shelf|reel|pile|line|table|stack|cupboard|drawer|hook|frame)$/;

/** "took the tulle off 2-3", "unpicked the net from 2-2", "net off 3-5": taken off the face, and not laid on it. The vocabulary has no object for it. */
export function netOff({ items, k, item, choosing }: WordAt): WayFound {
  const bare = isNet(item);
  const net = bare ? k : netBehindVerb(items, k);
  if (net < 0 || choosing) return undefined;
  let off = net + 1;
  while (/^(?:has|have|had|come|came|comes|all|now|back)$/.test(items[off]?.w ?? '') && off < net + 4) off++;
  if (items.slice(net, net + 5).some((x) => STORE.test(x.w))) return undefined;
  if (bare) {
    // "the net's off": a way that stood open, and given up
    if (items[off]?.w !== 'off' || !tellsWhere(items, off + 1)) return undefined;
    return found({ action: 'remove', form: 'past', at: k, items: [item], rule: 'treatment.net-off' }, k, off);
  }
  const removal = removalAt(items, k);
  // "took the net" takes it up; off or out is said, unless the verb tells it
  if (
    !removal ||
    (removal.particle === undefined && !/^(?:remov|unpick|peel|strip|detach|unstitch)/.test(item.w))
  )
    return undefined;
  return found(
    { action: 'remove', form: removal.form, at: k, items: [item, items[net]!], rule: 'treatment.net-off' },
    k,
    net,
    ...(removal.particle === undefined ? [] : [removal.particle]),
  );
}

function netBehindVerb(items: Item[], k: number): number {
  let m = k + 1;
  while (m < k + 6 && BEFORE_NET.test(items[m]?.w ?? '')) m++;
  return m > k + 1 && isNet(items[m]) ? m : -1;
}

/** "off 2-1", "off it", "off the gingham ones": a block, or what stands for one. */
function tellsWhere(items: Item[], at: number): boolean {
  const from = /^(?:of|from)$/.test(items[at]?.w ?? '') ? at + 1 : at;
  const x = /^(?:the|all|both|those|these)$/.test(items[from]?.w ?? '') ? items[from + 1] : items[from];
  return (
    x !== undefined &&
    (x.place?.kind === 'blocks' || x.fabric !== undefined || /^(?:it|that|them|ones?)$/.test(x.w))
  );
}
