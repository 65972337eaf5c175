import { boundaryBefore, type Item } from '../item.ts';
import { isStop } from './joints.ts';

const BE = /^(?:is|'s|are|'re|was|were|has|have|'ve|had)$/;
/** Words with which a reason begins, other than "because". */
const LEADS = /^(?:since|as|given|seeing)$/;
const ABOUT = 8;

/**
 * "net over the velvet since it's so frail", "patching 2-3, as the twill there is thin", "given that it has a hole": the reason is a
 * finding of its own, as behind "because". "As it is" and "since it was dry" tell none.
 */
export function withReasons(items: Item[]): Item[] {
  if (!items.some((x) => LEADS.test(x.w))) return items;
  return items.map((x, k) => (givesReason(items, k) ? { ...x, w: 'because' } : x));
}

function givesReason(items: Item[], k: number): boolean {
  const lead = items[k]!;
  if (k === 0 || !LEADS.test(lead.w) || isStop(items[k - 1]!)) return false;
  let at = k + 1;
  if (/^(?:given|seeing)$/.test(lead.w) && /^(?:that|as|how)$/.test(items[at]?.w ?? '')) at++;
  if (!/^(?:it|they|that|this|the|its|those|these|there)$/.test(items[at]?.w ?? '')) return false;
  // its subject, and what is said of it
  let be = at;
  while (be < at + 5 && items[be] && !BE.test(items[be]!.w) && !isStop(items[be]!)) be++;
  if (be === at || !BE.test(items[be]?.w ?? '')) return false;
  for (let m = be + 1; m < Math.min(items.length, be + ABOUT); m++) {
    const x = items[m]!;
    if (x.token.kind === 'mark' || /^(?:and|but|then)$/.test(x.w)) return false;
    if (x.action && x.action.form === 'past') return false;
    if (x.finding || x.fail) return true;
  }
  return false;
}

/** "backing fine, batting not", "1-1 is torn, 2-1 not, it's faded": of the second it is said that it is not so. */
export function withNotSo(items: Item[]): Item[] {
  const out: Item[] = [];
  items.forEach((x, k) => {
    out.push(x);
    if (x.w !== ',') return;
    let end = k + 1;
    while (/^(?:the|but|and|though)$/.test(items[end]?.w ?? '')) end++;
    const thing = items[end];
    if (!thing || !(thing.place || thing.fabric || thing.part)) return;
    if (items[end + 1]?.w !== 'not' || !ends(items[end + 2], items[end + 3])) return;
    if (!items.slice(Math.max(0, k - 6), k).some((y) => y.finding || y.fail)) return;
    out[out.length - 1] = boundaryBefore(items[k + 1]!, '--');
  });
  return out;
}

const ends = (x: Item | undefined, next?: Item): boolean =>
  !x ||
  (x.w === 'at' && next?.w === 'all') ||
  x.token.kind === 'mark' ||
  /^(?:so|yet|at all|but|and|quite|though)$/.test(x.w);
