import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import { findMention } from './find-mention.ts';
import type { PlaceContext } from './place-found.ts';

const HERE =
  /^ (?:right |just |down |in |from )?(?:there|here|underneath|beneath|below|inside|(?:under|underneath|beneath|below|behind|round|around|beside|inside|in) (?:it|that|there|them|that one)) /;
/** What is told of the cloth: damage, or a word before it. */
const TELLS =
  /^(?:|[.,;:!)]|is|'s|are|'re|was|were|has|have|had|'d|looks?|seems?|feels?|went|gone|gave|had|came|all|and|but|too|badly|just|still|quite|very|anyhow)$/;
/** With these the cloth is stuff to work with. */
const PUTS =
  /^(?:put|with|w|used|using|use|from|sewed|sewn|stitched|slipped|fused|ironed|glued|laid|some|a|an|piece|bit|scrap|strip|lining|let|set|goes|go|got|gets|get|more|new|fresh)$/;
const FEW = 6;

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
  if (!said) return undefined;
  const next = item.j + said.trim().split(' ').length;
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
  if (items.at(items.at(-2)?.w === 'the' ? -3 : -2)?.place) return undefined;
  const own = item.fabric!.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const here = (spokenOfHere(items, ctx) ?? focus).filter((p) => own.includes(p));
  if (!here.length || here.length === own.length) return undefined;
  item.j = next;
  item.place = { next, places: here, how: 'implied', rule: 'place.cloth-here', kind: 'blocks' };
  return next;
}

/** "took that patch off the poplin under it": where no place is told before, the place of the thing that is pointed at. */
const spokenOfHere = (items: Item[], { mentions }: PlaceContext): string[] | undefined =>
  mentions?.length && !items.some((x) => x.place) ? findMention(items.slice(0, -1), mentions) : undefined;
