import { isStop } from './clause/joints.ts';
import type { Item } from './item.ts';

/** What is put on, in or behind a block, as a label or a list names it. */
const PUT = /^(?:patch|net|netting|overlay|piece|cloth|interfacing|lining|square|scrap|backing cloth)$/;
const LED = /^(?:an?|the|new|small|large|big|support|backing|one|single|second|another)$/;
const DONE =
  /^(?:sewn|stitched|laid|put|set|let|pieced|ironed|fused|bonded|stuck|glued|tacked|basted|pinned|slipped|worked)$/;
const WHERE = /^(?:in|into|on|onto|over|behind|under|underneath|down|across|to|round)$/;
/** No name of a cloth is longer. */
const LONGEST = 3;

const isPlain = (x: Item | undefined): boolean =>
  x !== undefined &&
  x.token.kind === 'word' &&
  !x.place &&
  !x.finding &&
  !x.fail &&
  !x.seam &&
  !x.duration &&
  !WHERE.test(x.w) &&
  x.action?.form !== 'past' &&
  !/^(?:and|or|is|'s|are|was|has|have|i|we|it|not|no|maybe)$/.test(x.w);

/**
 * "Support cloth, domette, sewn in behind 1-4", "new piece, wool felt, let in to 3-2": of what it is, told between commas behind the
 * thing, is put before it as it would be said ("domette support cloth sewn in …").
 */
export function stuffToldBehind(items: Item[]): Item[] {
  if (!items.some((x) => PUT.test(x.w))) return items;
  const out = [...items];
  for (let k = 0; k < out.length; k++) {
    if (!PUT.test(out[k]!.w) || out[k + 1]?.w !== ',') continue;
    let from = k;
    while (from > 0 && LED.test(out[from - 1]!.w)) from--;
    if (from > 0 && !isStop(out[from - 1]!)) continue;
    let end = k + 2;
    while (end < k + 2 + LONGEST && isPlain(out[end])) end++;
    const verb = out[end + 1];
    if (end === k + 2 || out[end]?.w !== ',' || !verb) continue;
    if (!DONE.test(verb.w) && !(verb.stitch && verb.action?.form === 'past')) continue;
    if (!out.slice(end + 2, end + 4).some((x) => WHERE.test(x.w))) continue;
    // before "support cloth", but behind "a new"
    const at = /^(?:support|backing)$/.test(out[k - 1]?.w ?? '') ? k - 1 : k;
    const stuff = out.slice(k + 2, end);
    // "interfacing, fusible, ironed on": the same thing twice
    const thing = out[k]!.material && stuff.at(-1)!.material === out[k]!.material ? [] : out.slice(at, k + 1);
    out.splice(at, end + 1 - at, ...stuff, ...thing);
  }
  return out;
}
