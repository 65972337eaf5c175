import { isPredicate } from './clause/is-predicate.ts';
import type { Item } from './item.ts';

/** Words with which talk to the listener begins in the middle of a statement. */
const ASIDE_START =
  /^(if|as|i|i'm|now|well|mind|oddly|funnily|strangely|curiously|sadly|happily|luckily|unluckily|thankfully|surprisingly|thank|believe|bless|to|you|would|which|who|so|by|not|for|being|when|while|wherever|though|although|after|once|since|because|heaven|goodness|poor|like|unless|let|see)$/;
/** Words with which an aside of any kind ends. */
const ASIDE_END =
  /^(?:.* )?(if you please|if you like|mind you|of all things|believe it or not|alike|i suppose|i think|i expect|poor thing|bless (?:her|him|them))$/;
/** The verb that the subject before the aside was waiting for. */
const VERB =
  /^(is|'s|are|'re|was|were|has|have|had|does|do|needs?|wants?|will|'ll|got|gets?|looks?|turned|came|comes|went|goes|could|should|must|might)$/;
const LONGEST = 16;

/**
 * Takes out an aside between a subject and its verb: "the piece in row two, if I'm seeing this right, has a rip in it", "the
 * binding, which I'd been itching to see the back of, is off". One that tells of damage, work, goods or time stays.
 */
export function dropAsides(items: Item[]): Item[] {
  let out = withoutAmountAsked(withoutSelfAsked(withoutOthers(withoutGoodAnd(items))));
  for (let k = 1; k < out.length - 3; k++) {
    if (!isComma(out[k]!)) continue;
    const place = ASIDE_START.test(out[k + 1]!.w) ? placeBehind(out, k) : undefined;
    const end = ASIDE_START.test(out[k + 1]!.w) ? endOfAside(out, k) : endOfNaming(out, k);
    if (place !== undefined) out = [...out.slice(0, k), ...out.slice(place)];
    else if (end !== undefined && isSubject(out, k)) out = [...out.slice(0, k), ...out.slice(end + 1)];
  }
  return out;
}

/** "it's good and dry", "nice and flat": how dry. */
function withoutGoodAnd(items: Item[]): Item[] {
  const k = items.findIndex(
    (x, m) =>
      /^(?:good|nice|lovely)$/.test(x.w) &&
      items[m + 1]?.w === 'and' &&
      /^(?:dry|dried|clean|flat|straight|square|tight|snug|tidy|damp)$/.test(items[m + 2]?.w ?? ''),
  );
  return k < 0 ? items : [...items.slice(0, k), ...items.slice(k + 2)];
}

/** "the chambray in row four ran a little, none of the others did": what is said of the others is that nothing is. */
const OTHERS = /^(?:them|those|others?|rest|the others?|the rest)$/;
function withoutOthers(items: Item[]): Item[] {
  const k = items.findIndex((x, m) => /^(?:none|neither)$/.test(x.w) && items[m + 1]?.w === 'of' && m > 0);
  if (k < 1) return items;
  const at = items[k + 2]?.w === 'the' ? k + 3 : k + 2;
  const verb = items[at + 1]?.w ?? '';
  if (!OTHERS.test(items[at]?.w ?? '') || !/^(?:did|do|does|is|are|was|were|has|have)$/.test(verb))
    return items;
  const next = items[at + 2];
  if (next && next.token.kind !== 'mark' && !/^(?:and|but|so|though|thank|thankfully)$/.test(next.w))
    return items;
  const from = /^(?:but|and|,|--)$/.test(items[k - 1]!.w) ? k - 1 : k;
  return [...items.slice(0, from), ...items.slice(at + 2)];
}

/** "same again on, oh, which was it, the one to its left": asked of herself, and the preposition waits for its place. */
const SELF_ASKED =
  /^(?:, )?(?:(?:oh|um|er|uh|now|hang on|wait|let me see|let me think) (?:, )?)*(?:(?:which|what|where)(?: one| block| row)? (?:was|is) (?:it|that)(?: now| again)?|let me see|let me think|hang on|wait a minute)(?: ,| -| --| \?)? $/;
const WAITS = /^(on|in|at|to|of|from|with|for|under|over|the|by|between)$/;
function withoutSelfAsked(items: Item[]): Item[] {
  for (let k = 1; k < items.length - 3; k++) {
    if (!isComma(items[k]!) || !WAITS.test(items[k - 1]!.w)) continue;
    let said = '';
    for (let m = k; m < Math.min(items.length - 1, k + 12); m++) {
      said += `${items[m]!.w} `;
      if (m > k + 1 && SELF_ASKED.test(said) && !SELF_ASKED.test(`${said}${items[m + 1]!.w} `))
        return [...items.slice(0, k), ...items.slice(m + 1)];
    }
  }
  return items;
}

/** "I need what is it eight skeins", "strips at, oh what was it, two inches", "call it five yards": asked of herself before an amount. */
const AMOUNT_ASKED =
  /^(?:oh |um |now )?(?:(?:what|how (?:much|many|long|wide)) (?:is|was|were) (?:it|that|they|there)(?: now| again)?|what 's it|call it|let me see|let me think|let 's see|let 's say|i think it was|i reckon) $/;
function withoutAmountAsked(items: Item[]): Item[] {
  for (let k = 1; k < items.length; k++) {
    if (!/^(what|how|call|let|oh|um|now|i)$/.test(items[k]!.w)) continue;
    let said = '';
    for (let m = k; m < Math.min(items.length, k + 8); m++) {
      if (!isComma(items[m]!)) said += `${items[m]!.w} `;
      let next = m + 1;
      while (items[next] && isComma(items[next]!)) next++;
      if (!items[next] || !AMOUNT_ASKED.test(said)) continue;
      const from = isComma(items[k - 1]!) ? k - 1 : k;
      if (items[next]?.quantity) return [...items.slice(0, from), ...withoutAmountAsked(items.slice(next))];
    }
  }
  return items;
}

const isComma = (x: Item): boolean => x.w === ',' || x.w === '--' || x.w === '-';

/** The comma that ends the aside begun at `k`, where a verb follows it. */
function endOfAside(items: Item[], k: number): number | undefined {
  for (let m = k + 1; m < Math.min(items.length - 1, k + LONGEST); m++) {
    const x = items[m]!;
    if (isComma(x)) {
      if (VERB.test(items[m + 1]!.w)) return m;
      continue;
    }
    if (x.token.kind === 'mark' || x.w === 'and' || x.w === 'but' || tells(items, m)) return undefined;
  }
  return undefined;
}

/** What damage may be called where nothing of it but the place is still to come. */
const LIES = /^(in|on|at|along|near|by|under|across|down|right|over|just|halfway|up)$/;

/**
 * "there's a tear, which I'd missed until today, in the second block", "a stain, I'd swear it's jam, on 2-2": where the place begins
 * for which the damage before the comma at `k` still waits.
 */
function placeBehind(items: Item[], k: number): number | undefined {
  const thing = items[k - 1]!;
  if (!(thing.finding || thing.seam) || thing.place) return undefined;
  let start = k - 1;
  while (start > 0 && !isStop(items[start - 1]!) && items[start - 1]!.token.kind !== 'mark') start--;
  if (items.slice(start, k).some((x) => x.place || x.action?.form === 'past')) return undefined;
  for (let m = k + 1; m < Math.min(items.length - 1, k + LONGEST); m++) {
    const x = items[m]!;
    if (isComma(x)) {
      const at = items.slice(m + 1, m + 4).findIndex((y) => y.place);
      return LIES.test(items[m + 1]!.w) && at > 0 ? m + 1 : undefined;
    }
    if (x.token.kind === 'mark' || /^(and|but)$/.test(x.w) || tells(items, m)) return undefined;
  }
  return undefined;
}

const isStop = (x: Item): boolean => /^(and|but|so|then|&)$/.test(x.w);

/** "the ties, baler twine if you please, have snapped", "the ticking, blue and brown alike, has gone mouldy". */
function endOfNaming(items: Item[], k: number): number | undefined {
  const end = items.findIndex((x, m) => m > k + 1 && isComma(x));
  if (end < 0 || end > k + 8 || !VERB.test(items[end + 1]?.w ?? '')) return undefined;
  const run = items.slice(k + 1, end);
  const said = run.map((x) => x.w).join(' ');
  return ASIDE_END.test(said) &&
    !run.some((x) => x.finding || x.fail || x.place?.kind === 'blocks' || x.duration || x.cost)
    ? end
    : undefined;
}

const tells = (items: Item[], k: number): boolean => {
  const x = items[k]!;
  return Boolean(
    x.place?.kind === 'blocks' ||
      x.finding ||
      x.fail ||
      x.fabric ||
      x.quantity?.unit ||
      x.cost ||
      x.duration ||
      x.clock ||
      x.span ||
      (x.action && x.action.form !== 'base') ||
      (x.material && !x.part) ||
      isPredicate(items, k),
  );
};

/** Do the words before the comma name something of which nothing has been said yet? */
function isSubject(items: Item[], k: number): boolean {
  let named = false;
  for (let m = k - 1; m >= 0 && m >= k - 12; m--) {
    const x = items[m]!;
    if (isComma(x) || /^(and|but|so|&|though|then)$/.test(x.w) || x.token.kind === 'mark') return named;
    if (VERB.test(x.w) || x.action?.form === 'past' || x.w === 'i') return false;
    if (x.place || x.fabric || x.part || x.seam || x.object || x.material) named = true;
    if (/^(all|every|each|both)$/.test(x.w)) named = true;
  }
  return named;
}
