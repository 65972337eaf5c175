import type { Item } from '../../rules/item.ts';
import { placesOf, put, type Standing } from '../standing.ts';
import { POINTERS } from './items.ts';

/** Words that tell nothing of their own in such a mend. */
const SMALL =
  /^(?:the|that|a|an|some|was|is|'s|it|i|we|'d|'ve|no|oh|sorry|actually|wait|hang|hold|on|well|and|but|used|put|took|had|sewed|went|gone|what|which|one|cloth|fabric|stuff|patch|piece|for|in|into|at|over|onto|to|there|here|on it|in it|not|,|\.|!|-|--)$/;
/** `#` is the cloth and `@` the place. */
const LEAD = String.raw`^ (?:(?:no|oh|sorry|actually|wait|hang on|hold on|well|and|but|,|-|\.) )*`;
const USED = String.raw`(?:i|we) (?:'d |'ve )?(?:used|put|took|had|sewed)`;
const WENT = String.raw`(?:that |which )?(?:went|was put|was used|is|'s)`;
const AT = String.raw`(?: (?:for|in|into|at|over|onto|on|to))* @`;
const TELLS = [
  // "no wait, the ginger stripe's what I used for 4-2", "the ginger stripe is what went into 4-2"
  String.raw`(?:the |that )?# (?:'s|is|was) (?:what|the one|the cloth|the stuff|that) (?:that |which )?(?:${USED}|went|was put|was used)${AT}`,
  // "it was the ginger stripe I used in four two", "it was the ginger stripe that went into 4-2"
  String.raw`(?:it|that) (?:was|'s|is) (?:the )?# (?:(?:that |which )?${USED}|${WENT})${AT}`,
].map((p) => new RegExp(`${LEAD}${p}(?: [.,!]| sorry)* $`));
/** Where it begins as a mend: "no, I used the ginger stripe for 4-2". */
const DENIED = new RegExp(
  String.raw`^ (?:(?:oh|sorry|actually|wait|hang on|,|\.) )*(?:no|sorry|actually|wait|hang on|hold on) (?:, )?${USED} (?:the )?#${AT}(?: [.,!]| sorry)* $`,
);
const TAKES_CLOTH = /^(?:patch|replace|stabilize|overlay|piece)$/;

/** Another cloth for what was put in at the place that is named again; every entry keeps its places. */
export function clothForPlace(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 18 || !/ (?:used|put|took|had|sewed|went) /.test(words)) return false;
  const cloth = items.find((x) => x.fabric?.names.length === 1);
  const at = items.findLast((x) => x.place?.places.length && !x.fabric);
  if (!cloth || !at || items.some((x) => x !== cloth && x !== at && !SMALL.test(x.w))) return false;
  const said = ` ${items.map((x) => (x === cloth ? '#' : x === at ? '@' : x.w)).join(' ')} `;
  if (!TELLS.some((r) => r.test(said)) && !DENIED.test(said)) return false;
  const places = POINTERS.has(at.place!.rule) ? [] : at.place!.places;
  const [deed, more] = standing.filter(
    ({ was: e }) =>
      e.kind === 'treatment' &&
      TAKES_CLOTH.test(e.action ?? '') &&
      /^(?:done|doing)$/.test(e.state) &&
      places.every((p) => placesOf(e).includes(p)),
  );
  if (!deed || more) return false;
  const name = cloth.fabric!.names[0]!;
  const used = standing.filter(
    ({ was: e }) => e.kind === 'material' && e.use === 'used' && e.material === 'fabric',
  );
  // the cloths were told in the order of the places
  const nth =
    used.length === placesOf(deed.was).length ? Math.max(0, placesOf(deed.was).indexOf(places[0] ?? '')) : 0;
  const stuff = used.length > 1 ? used[nth] : used[0];
  if (!stuff || (stuff.was.kind === 'material' && stuff.was.name === name)) return false;
  put(stuff.draft, 'name', name, 'amend.cloth-for-place', [cloth]);
  if (deed.was.kind === 'treatment' && deed.was.fabric && placesOf(deed.was).length === 1)
    put(deed.draft, 'fabric', name, 'amend.cloth-for-place', [cloth]);
  return true;
}
