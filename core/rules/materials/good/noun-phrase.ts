import type { Item } from '../../item.ts';
import { itemWord as w } from '../../item-word.ts';
import { type GoodInHand, isFigure } from './good-in-hand.ts';

/** "used eight yards of binding label's gotta go on", "three skeins of floss backing needs a press": the next thing has a verb of its own. */
const beginsAnew = (items: Item[], head: number, k: number): boolean =>
  (items[k]!.object === 'label' || (items[k]!.part !== undefined && items[head]!.material !== 'fabric')) &&
  VERB_BEHIND.test(w(items, k + 1));
const VERB_BEHIND = /^(?:'s|is|has|still|needs?|wants?|goes|gotta|will|'ll|looks|next)$/;

/** A noun phrase for a thing bought ends before any of these. */
const STOP_WORDS = new Set(
  ", . ; : - -- ( ) / and & + plus or but so then for f at @ in on to from with w off out over under behind was were is are cost costs came left still i we she he they it that which because if when now already each apiece ea per worth have has had gone 've 's need needs needed bought got buy get order ordered used took there here at by into onto if as until the a an my this these those what where both all total together not n't no did do will would could should paid spent today tonight yesterday morning afternoon evening monday tuesday wednesday thursday friday saturday sunday went comes come gets be been just too also".split(
    ' ',
  ),
);

/** The noun phrase from `m` on: the noun that names the thing, and where the phrase ends. Nothing where the thing has a verb of its own. */
export function readNounPhrase(g: GoodInHand, m: number): number | undefined {
  const { items } = g;
  // the noun phrase
  let n = m;
  for (; n < Math.min(items.length, m + 6); n++) {
    const x = items[n]!;
    if (x.cost || x.duration || x.clock || x.span || (x.task && !x.material && !x.action)) break;
    if (
      isFigure(x) &&
      !(x.w.startsWith('size') || w(items, n - 1) === 'size' || w(items, n - 1) === 'number')
    )
      break;
    if (x.material || x.fabric) {
      if (x.action?.form === 'past' && !x.fabric) break;
      if (g.head >= 0 && g.figure && beginsAnew(items, g.head, n)) break;
      // "…, and the label goes on tomorrow"
      if (g.head < 0 && !g.figure && x.object === 'label' && VERB_BEHIND.test(w(items, n + 1)))
        return undefined;
      g.head = n;
      if (g.first < 0) g.first = n;
      continue;
    }
    if (x.token.kind === 'mark' && x.w !== '-') break;
    // "I've got a couple put back already": where they are, and no name
    if (
      g.head < 0 &&
      /^(?:put|set|laid|kept|saved|tucked|stashed)$/.test(x.w) &&
      /^(?:by|aside|away|back|over|up|)$/.test(w(items, n + 1))
    )
      break;
    if (g.head >= 0) {
      // "cotton tape", "jeans thread": a known noun later in the phrase decides
      if (STOP_WORDS.has(x.w) || x.place || x.action || x.finding) break;
      const later = items.slice(n + 1, n + 3).findIndex((y) => y.material);
      if (later < 0 || items.slice(n, n + 1 + later).some((y) => STOP_WORDS.has(y.w) || isFigure(y))) break;
      continue;
    }
    // "tailor's chalk"
    if (x.w === "'s" && n > m && items[n + 1]?.material && !items[n - 1]!.place) continue;
    if (STOP_WORDS.has(x.w) && !(x.w === 'of' || x.w === 'that' || x.w === 'the')) break;
    if (x.w === 'that' || x.w === 'the') continue;
    if (x.place && !x.part && !x.place.rule.startsWith('place.it')) break;
    if (x.action && x.action.form !== 'base') break;
    if (g.first < 0) g.first = n;
  }
  return g.head >= 0 ? g.head + 1 : n;
}
