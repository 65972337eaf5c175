import { STOP } from './corrections/earlier-of.ts';
import { sortsOf } from './corrections/sorts-of.ts';
import type { Item } from './item.ts';

const MARKER = /^(?:no|nope|sorry|wait|oops|well|,|-|--)$/;
const ARTICLE = /^(?:a|an|the|any|that|in|on|by|with)$/;
const LEADS_ON = /^(?:,|-|--|but|it|that|'s|is|was|rather|more|like|just|only|a|an|the|in|on|by|with)$/;

/**
 * "has a tear no not a tear a hole", "torn, sorry, not torn, frayed": the wrong word is said once more, denied, before the right one comes.
 * It falls out, so that what is left is a plain "no, a hole".
 */
export function deniedAgain(items: Item[]): Item[] {
  if (!items.some((x) => /^(?:not|n't)$/.test(x.w))) return items;
  const out = [...items];
  for (let k = 2; k < out.length - 2; k++) {
    if (!/^(?:not|n't)$/.test(out[k]!.w)) continue;
    // "no it isn't a tear it's a hole"
    const whole = /^(?:is|'s|was)$/.test(out[k - 1]!.w) && /^(?:it|that)$/.test(out[k - 2]!.w);
    const from = whole ? k - 2 : k;
    if (!MARKER.test(out[from - 1]?.w ?? '')) continue;
    const at = ARTICLE.test(out[k + 1]!.w) && !out[k + 1]!.place ? k + 2 : k + 1;
    const wrong = out[at];
    if (!wrong || !sortsOf(wrong).length || !saidBefore(out, from, wrong)) continue;
    let right = at + 1;
    while (right < at + 6 && LEADS_ON.test(out[right]?.w ?? '') && !sortsOf(out[right]!).length) right++;
    const next = out[right];
    if (!next || next.w === wrong.w || !sortsOf(next).some((sort) => sortsOf(wrong).includes(sort))) continue;
    // the pause behind it stays, or stands for it
    const pause = { ...out[k]!, w: ',', token: { ...out[k]!.token, w: ',', kind: 'mark' as const } };
    const led = /[a-z]/.test(out[from - 1]!.w) ? [] : [{ ...out[k]!, w: 'no' }];
    const behind = out[at + 1]!.w === ',' ? at + 2 : at + 1;
    out.splice(from, behind - from, ...led, pause);
  }
  return out;
}

/** Was the same word said in this sentence, a few words before? */
const saidBefore = (items: Item[], k: number, wrong: Item): boolean => {
  for (let m = k - 1; m >= Math.max(0, k - 9) && !STOP.test(items[m]!.w); m--)
    if (items[m]!.w === wrong.w) return true;
  return false;
};
