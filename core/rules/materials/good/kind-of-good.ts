import { COLOURS } from '../../../lexicon/colours.ts';
import { LENGTH_UNIT_SET } from '../../../lexicon/units.ts';
import { itemWord as w } from '../../item-word.ts';
import { priceAfterPlace } from '../price-behind.ts';
import { purposeAt } from '../purpose-at.ts';
import type { GoodInHand } from './good-in-hand.ts';

/** Words that name no thing. */
const NAMELESS = /^(stuff|things?|same|kind|sort|whatever|something)$/;

const NO_CORDUROY =
  /^(gold|golden|silver|metallic|twisted|braided|plaited|waxed|thin|thick|round|silk|elastic|furnishing|upholstery|drawstring|pull)$/;

const FOR_A_PART = /^(backing|batting|binding|ties)$/;

/** Which material it is, or what was spoken of before that it points at; says whether it is goods at all. `m` to `phraseEnd` is its noun phrase. */
export function readKind(g: GoodInHand, m: number, phraseEnd: number): boolean {
  const { items, listed, start } = g;
  const words = items
    .slice(m, phraseEnd)
    .filter((x) => x.token.kind === 'word' && !/^(of|the|that)$/.test(x.w));
  if (g.head >= 0) {
    const named = items.slice(m, g.head + 1).filter((x) => x.material || x.fabric);
    g.material = named.at(-1)!.material ?? 'fabric';
    if (g.material === 'fabric')
      g.material =
        named.findLast((x) => x.material && x.material !== 'fabric' && x.material !== 'other')?.material ??
        'fabric';
    g.next = g.head + 1;
  } else if (
    /^(it|them|those|these|that|this)$/.test(w(items, m)) ||
    (w(items, m) === 'of' && /^(it|them|those|these|that)$/.test(w(items, m + 1)))
  ) {
    if (!g.figure) return false;
    g.points = /^(those|these|them)$/.test(w(items, m)) ? 'those' : 'it';
    g.next = m + 1;
    if (w(items, m) === 'of') g.next++;
    // "four metres of it there for thirty two euro"
    if (w(items, g.next) === 'there' && /^(for|at|,)$/.test(w(items, g.next + 1))) g.next++;
  } else if (g.figure && /^(those|these|them|that|this)$/.test(w(items, m - 1)) && w(items, m - 2) === 'of') {
    g.points = /^(those|these|them)$/.test(w(items, m - 1)) ? 'those' : 'it';
    // "five yards of that stuff they had on the table"
    g.next = w(items, m) === 'stuff' ? m + 1 : m;
  } else if (
    g.figure &&
    /^(in|cm|mm)$/.test(g.unit ?? '') &&
    /^(sq|square|squares|across|wide|long|each)$/.test(words[0]?.w ?? '')
  ) {
    // "cut 4 patches 3.5in sq": how large
    return false;
  } else if (g.figure && g.unit && words.length && NAMELESS.test(words[0]!.w)) {
    // "four and a half yards of that stuff on the sale table", "five yards of the same"
    g.points = words[0]!.w === 'same' ? 'more' : undefined;
    g.next = phraseEnd;
  } else if (g.figure && words.length && (g.unit || listed)) {
    g.material =
      g.unit &&
      (LENGTH_UNIT_SET.has(g.unit) || g.unit === 'fat-quarter') &&
      g.unit !== 'in' &&
      g.unit !== 'ft'
        ? 'fabric'
        : g.unit === 'spool'
          ? 'thread'
          : g.unit === 'skein'
            ? 'tie-thread'
            : g.unit === 'ball' && words.every((x) => COLOURS.has(x.w))
              ? 'tie-thread'
              : g.unit === 'pack' || g.unit === 'piece'
                ? undefined
                : 'other';
    // "three spools of ecru, one of black": of the same
    if (!g.unit)
      g.material = words.every((x) => COLOURS.has(x.w)) && w(items, m - 1) === 'of' ? undefined : 'other';
    g.next = phraseEnd;
  } else if (
    listed &&
    !g.figure &&
    words.length >= 1 &&
    words.length <= 3 &&
    words.every((x) => /^[a-z]+$/.test(x.w)) &&
    /^(,|\(|)$/.test(w(items, phraseEnd)) &&
    m > 0 &&
    w(items, start - 1) === ','
  ) {
    g.material = 'other';
    g.next = phraseEnd;
  } else if (
    g.figure &&
    (g.unit ||
      g.more ||
      // "… three metres for the backing and six for the binding"
      (listed && FOR_A_PART.test(purposeAt(items, m)?.for ?? '')) ||
      // "five at 3.80 each": what was bought is not told
      (listed && items.slice(m, m + 3).some((x) => x.cost) && /^(at|@|for|,|£|\$|€)/.test(w(items, m))) ||
      (listed && Boolean(items[m]?.cost)) ||
      // "got half a dozen at a dollar apiece", "bought 6 at the fair, 50p each"
      items[m]?.cost?.each ||
      (listed && priceAfterPlace(items, m)))
  ) {
    g.points = g.more ? 'more' : undefined;
    g.next = m;
  } else return false;
  // "three feet of cord", and not "two metres of brown cord", the cloth
  if (g.material === 'fabric' && words.length === 1 && words[0]!.w === 'cord' && !words[0]!.fabric)
    g.material = 'other';
  // "3 m gold cord": no corduroy
  if (
    g.material === 'fabric' &&
    words.length === 2 &&
    words[1]!.w === 'cord' &&
    NO_CORDUROY.test(words[0]!.w)
  )
    g.material = 'other';
  if (g.material === 'fabric' && g.unit === 'spool') g.material = 'thread';
  if (g.material === 'fabric' && (g.unit === 'skein' || g.unit === 'ball')) g.material = 'tie-thread';
  if (!g.material && g.unit === 'fat-quarter') {
    g.material = 'fabric';
    g.points = undefined;
  }
  return true;
}
