import { type Draft, makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment } from '../treatments/is-treatment.ts';
import { wordsBetween } from '../words-between.ts';

/** Before the cloth that was put in: "with the", "the cloth I used was the", "patches on them, the", "it's the". */
const PUT_IN =
  / (?:with|using|used|from|in|out of|bits? of|scraps? of|pieces? of|some of|one of|(?:cloth|fabric|stuff|material|one|it|patch|patches) (?:(?:that )?(?:i|we) (?:used|took|had|chose|put in) )?(?:was|were|is|'s)|(?:on|over) (?:it|them|both|em|those)(?: both| all| two| ,)*) (?:(?:the|that|those|these|my|a|an|one|some|of|bits?|piece|scrap|old|same) )*$/;

/**
 * "I put patches on them, the orange fabric", "with the orange one", of a quilt with an orange stripe and an orange spot: the
 * cloth put in, by a word that fits several of the quilt's. Asked of the last treatment that takes a cloth and has none.
 */
export function readDoubtfulCloth(state: ReaderState): void {
  const doubtful = (x: Item): boolean =>
    x.fabric !== undefined && x.fabric.names.length > 1 && !x.fabric.full && !x.place;
  const c = state.clauses.findLastIndex(({ items }) => items.some(doubtful));
  if (c < 0) return;
  const { items, sentence } = state.clauses[c]!;
  const owner = state.drafts.findLast(
    (d) =>
      isTreatment(d) &&
      /^(?:patch|replace|stabilize)$/.test(d.entry.action ?? '') &&
      /^(?:done|doing)$/.test(d.entry.state) &&
      d.entry.fabric === undefined &&
      d.clause <= c &&
      d.clause >= c - 2,
  );
  const k = items.findLastIndex(doubtful);
  if (!owner || items.some((x) => x.finding || x.fail || x.seam)) return;
  const told = state.clauses.slice(0, c + 1).filter((x) => x.sentence === sentence);
  const before = told.flatMap((x) => x.items);
  // "patched 5-5, the red fabric": the cloth is told by itself
  let lead = k - 1;
  while (lead >= 0 && /^(?:the|that|some)$/.test(items[lead]!.w)) lead--;
  const alone =
    (lead < 0 || items[lead]!.w === ',') &&
    items.slice(k + 1).every((x) => /^(?:fabric|cloth|material|stuff|one|,|\.)$/.test(x.w));
  if (!alone && !PUT_IN.test(wordsBetween(before, 0, before.indexOf(items[k]!)))) return;
  const name = items[k]!.fabric!.words;
  const known = state.drafts.find(
    (d) => d.entry.kind === 'material' && d.entry.use === 'used' && d.entry.material === 'fabric',
  );
  if (known?.entry.kind === 'material') {
    // "using orange fabric", read as fabric alone
    const said = known.entry.name;
    if (!said || GENERIC.test(said) || said.startsWith(`${name} `)) known.entry.name = name;
    return;
  }
  const said: Draft = makeDraft(
    'material',
    { index: c, sentence, items },
    {
      material: ['fabric', 'material.doubtful-cloth', items[k]],
      use: ['used', 'use.used', undefined],
      name: [name, 'material.name', items[k]],
    },
    'unneeded',
  );
  state.drafts.push(said);
}

const GENERIC = /^(?:(?:1|one) )?(?:fabrics?|cloth|material|stuff|ones?)$/;
