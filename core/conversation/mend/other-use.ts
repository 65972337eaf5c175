import type { MaterialUse } from '../../../shared/vocabulary.ts';
import type { Item } from '../../rules/item.ts';
import { put, type Standing } from '../standing.ts';

const LEAD =
  "^ (?:(?:no|nope|oh|ah|sorry|wait|well|actually|but|and|hang on|i tell a lie|not bought|not buying|i|we|did n't (?:actually )?(?:buy|need to buy)(?: it| that| them| those)?|,|-|\\.|;) )*";
const IT = '(?:it|that|them|those|these|one|some|both|all of (?:it|them|that))';
const STORE =
  '(?:the |my )?(?:stash|drawer|drawers|cupboard|shelf|shelves|box|tin|basket|bag|cabinet|house|workroom|studio|store|stock|chest|press|dresser|attic|loft)';
const TAIL = `(?: (?:already|all along|before|anyway|here|now|at home|by me|to hand|in hand|in|on|from|${STORE}|in fact|actually|sorry|,|[.!]))* ?$`;

const USES: [MaterialUse, RegExp][] = [
  // "not bought, had it already", "no, I already had that", "it was in the drawer"
  ['on-hand', new RegExp(`${LEAD}(?:already had|had|already have|have) ${IT}${TAIL}`)],
  [
    'on-hand',
    new RegExp(
      `${LEAD}(?:${IT} (?:was|were|is|are|'s|'re|came) )(?:already )?(?:(?:in|on|from|out of) ${STORE}|in stock|on hand|to hand|mine already|here already|left over)${TAIL}`,
    ),
  ],
  // "haven't bought it yet", "no, still to buy", "to buy, not bought"
  ['needed', new RegExp(`${LEAD}have n't (?:actually )?(?:bought|got|ordered) ${IT}(?: yet)?${TAIL}`)],
  [
    'needed',
    new RegExp(
      `${LEAD}(?:that 's |it 's |those are |they 're |it is )?(?:still |only )?(?:to (?:buy|get|be bought)|to be got|need to buy ${IT}|wanted, not bought)(?: , not bought| yet| not bought)*${TAIL}`,
    ),
  ],
  // "I've bought it, actually", "bought already"
  ['bought', new RegExp(`${LEAD}(?:'ve |have )?(?:already )?bought ${IT}(?: already)?${TAIL}`)],
];

/** "bought a spool of grey thread", then "not bought, had it already": the goods told last, otherwise come by. */
export function otherUse(standing: Standing[], items: Item[], words: string): boolean {
  if (items.length > 14 || items.some((x) => x.cost || x.finding || x.place?.kind === 'blocks')) return false;
  const use = USES.find(([, said]) => said.test(words))?.[0];
  if (!use) return false;
  const goods = standing.filter(
    ({ was }) => was.kind === 'material' && was.use !== 'used' && was.use !== use,
  );
  const all = / (?:them|those|both|these|all) /.test(words);
  const meant = all ? goods : goods.length === 1 ? goods : [];
  for (const s of meant) put(s.draft, 'use', use, 'amend.use', items);
  return meant.length > 0;
}
