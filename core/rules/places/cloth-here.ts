import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { findMention } from './find-mention.ts';
import { splitBlock } from './grid.ts';
import type { PlaceContext } from './place-found.ts';

const HERE =
  /^ (?:right |just |down |in |from )?(?:(?:under|underneath|beneath|below|behind|round|around|beside|inside|in) (?:it|that|there|them|that one)|there|here|underneath|beneath|below|inside) /;
/** What is told of the cloth: damage, or a word before it. */
const TELLS =
  /^(?:|[.,;:!)]|is|'s|are|'re|was|were|has|have|had|'d|looks?|seems?|feels?|went|gone|gave|had|came|all|and|but|too|badly|just|simply|really|completely|still|quite|very|anyhow)$/;
/** With these the cloth is stuff to work with. */
const PUTS =
  /^(?:put|with|w|used|using|use|from|sewed|sewn|stitched|slipped|fused|ironed|glued|laid|some|a|an|piece|bit|scrap|strip|lining|let|set|goes|go|got|gets|get|more|new|fresh)$/;
const FEW = 6;
/** "(had the patch off 4-1,) and underneath it the polka is gone": the same words before the cloth. */
const HERE_FIRST =
  / (?:(?:right |just |down |in )?(?:underneath|beneath|under|behind|below)(?: (?:it|that|there|them|all that|the (?:old |iron on )?(?:patch|mend|darn|repair)))?|under there|in there|inside) ,? ?(?:(?:all )?the |most of the |half the )?$/;
/** What is told at last: "(the patch is off 4-1,) the polka has gone underneath". */
const HERE_LAST = / (?:(?:right |just |down )?(?:underneath|beneath)|under(?:neath)? (?:it|that|there)) $/;

/**
 * "(lifted the patch off 3-4,) the cocoa dot underneath has a tear", "the stripe there is tender": a cloth with such a word behind it is the
 * cloth of the block just spoken of, and not all its blocks. Gives the index behind those words; the item then is that place.
 */
export function clothHere(
  items: Item[],
  tokens: Token[],
  ctx: PlaceContext,
  fabrics: FabricIndex,
): number | undefined {
  const item = items.at(-1)!;
  const { focus } = ctx;
  if (item.place || !focus.length || focus.length > FEW) return undefined;
  const said = HERE.exec(wordsBetween(tokens, item.j, item.j + 4))?.[0];
  const elsewhere =
    !said && (HERE_FIRST.test(wordsBetween(tokens, item.i - 6, item.i)) || isToldLast(tokens, item.j));
  if (!said && !elsewhere) return undefined;
  const next = item.j + (said ? said.trim().split(' ').length : 0);
  const tells = TELLS.test(w(tokens, next)) || items.slice(-4, -1).some((x) => x.finding);
  if (
    !tells &&
    !/^(?:thin|torn|tender|worn|frayed|faded|stained|split|rotten|weak|sound|fine|good|damp|bad)$/.test(
      w(tokens, next),
    )
  )
    return undefined;
  const lead = items.slice(-4, -1).map((x) => x.w);
  if (lead.slice(-2).some((x) => PUTS.test(x))) return undefined;
  // "the one below that | the velvet in it": a block and what is told of it
  if (!elsewhere && items.at(items.at(-2)?.w === 'the' ? -3 : -2)?.place) return undefined;
  const own = item.fabric!.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const spoken = spokenOfHere(items, ctx) ?? focus;
  const inside = spoken.filter((p) => own.includes(p));
  // "(took the patch off 2-2.) the silk beneath it is gone", where 2-2 goes by no such cloth: what came to light there
  const here = inside.length || !(said && UNDER_IT.test(said)) ? inside : cameToLight(spoken, own, ctx);
  if (!here.length || here.length === own.length) return undefined;
  item.j = next;
  item.place = { next, places: here, how: 'implied', rule: 'place.cloth-here', kind: 'blocks' };
  return next;
}

const UNDER_IT =
  /^ (?:right |just |down |in |from )?(?:(?:under|underneath|beneath|behind) (?:it|that|there|them)|underneath|beneath) /;

/** The block that something was taken off; of one only told to be patched, not where the cloth lies in the block below it. */
function cameToLight(spoken: string[], own: string[], ctx: PlaceContext): string[] {
  const below = spoken.flatMap((p) => {
    const at = splitBlock(p);
    return at ? [`${at.row + 1}-${at.block}`] : [];
  });
  if (below.length !== spoken.length) return [];
  const last = ctx.mentions?.findLast((m) => spoken.every((p) => m.places.includes(p)));
  if (ctx.items?.some((x) => x.object) || last?.action === 'remove') return spoken;
  const patched = ctx.items?.some((x) => /^(?:patch|patches|patched)$/.test(x.w));
  return patched && !below.some((p) => own.includes(p)) ? spoken : [];
}

/** As few words as damage is told in. */
const CLAUSE = 7;

/** "has gone underneath", "is all torn under there": to the next mark. */
function isToldLast(tokens: Token[], from: number): boolean {
  if (!/^(?:is|'s|are|'re|was|were|has|have|had|'d|looks?|seems?|went)$/.test(w(tokens, from))) return false;
  let to = from + 1;
  while (tokens[to] && tokens[to]!.kind !== 'mark' && to - from <= CLAUSE) to++;
  return HERE_LAST.test(wordsBetween(tokens, from, to));
}

/** "took that patch off the poplin under it": where no place is told before, the place of the thing that is pointed at. */
const spokenOfHere = (items: Item[], { mentions }: PlaceContext): string[] | undefined =>
  mentions?.length && !items.some((x) => x.place) ? findMention(items.slice(0, -1), mentions) : undefined;
