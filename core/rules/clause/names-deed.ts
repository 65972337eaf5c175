import { WORK_THINGS } from '../../lexicon/deed-frames.ts';
import type { Item } from '../item.ts';
import { isNet } from '../treatments/is-cloth.ts';

/** Taking off, as it is named where nothing is said to be done yet. */
export const REMOVING =
  /^(?:taking|removing|unpicking|stripping|lifting|pulling|removal|unstitching|getting|peeling|ripping)$/;
const TO_REMOVE = /^(?:take|remove|unpick|strip|lift|pull|unstitch|get|peel|rip|pick)$/;

/** "net", "a patch", "pressing", "new piece", "take the backing (off)": what names a deed without saying that it was done. */
export function namesDeed(items: Item[], k: number): boolean {
  const x = items[k]!;
  if (Object.hasOwn(WORK_THINGS, x.w)) return true;
  if (x.finding || (x.part && !x.deed) || x.place) return false;
  if (x.stitch) return x.action?.form === 'base' && x.deed === true;
  return (
    isNet(x) ||
    x.material === 'interfacing' ||
    /^(?:patches|patching|darns|replacement|overlays|supports)$/.test(x.w) ||
    (x.action !== undefined && x.action.form !== 'past' && x.action.v !== 'leave' && x.w !== 'piece') ||
    (/^(?:piece|block|square)$/.test(x.w) && /^(?:new|fresh|replacement)$/.test(items[k - 1]?.w ?? '')) ||
    ((REMOVING.test(x.w) || TO_REMOVE.test(x.w)) && items.slice(k + 1, k + 5).some((y) => y.object || y.part))
  );
}
