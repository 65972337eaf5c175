import type { Token } from '../../text/tokenise.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';
import { wordsBetween } from '../words-between.ts';
import type { PlaceContext } from './place-found.ts';

/** "the strawberry print has faded", "about the sateen": the cloth's blocks, where it is spoken of and not put in. */
export function blocksOfSubject(items: Item[], fabrics: FabricIndex, next: Token | undefined): string[] {
  const at = items.length - 1;
  const names = items[at]!.fabric!.names;
  if (names.length !== 1) return [];
  if (
    OTHERS.test(wordsBetween(items, at - 3, at)) &&
    /^(?:ones|blocks|pieces|squares|are|were|have|look|need|get|stay)$/.test(next?.w ?? '')
  )
    return fabrics.blocks[names[0]!] ?? [];
  const lead = items.slice(Math.max(0, at - 4), at).map((x) => x.w);
  // "Stains, teal dot."
  const alone = lead.at(-1) === ',' && lead.length < 3 && (!next || /^[.;\n]$/.test(next.w));
  if (
    !alone &&
    !/^(the|your|all|every|both|each|those|that|two|three|four|five|six|[2-6]|)$/.test(lead.at(-1) ?? '') &&
    !/ (there 's|there is)$/.test(` ${lead.join(' ')}`)
  )
    return [];
  // "one of the checks is torn, the left-hand one"
  if (
    / (every|all|every bit|every scrap|rest|most|each|both|one|two|either|neither|third|half|quarter|part|much|corner|edge|middle|centre|center) of the $/.test(
      ` ${lead.join(' ')} `,
    )
  )
    return fabrics.blocks[names[0]!] ?? [];
  // "Of the olive twill, 2-2 and 2-5 have crepeline over them": what is told of
  if (lead.at(-2) === 'of' && /^(|[.;:\n])$/.test(items[at - 3]?.w ?? ''))
    return fabrics.blocks[names[0]!] ?? [];
  if (
    / (with|w|from|using|bought|of|in|into|onto|a|some|yards?|metres?|piece|scrap|bit|for|used) /.test(
      ` ${lead.slice(-2).join(' ')} `,
    )
  )
    return [];
  return fabrics.blocks[names[0]!] ?? [];
}

/** "the scarlet", "there's a hole in the scarlet one": the block of a cloth that is in but one, where it is not put in. */
export function onlyBlockOf(items: Item[], fabrics: FabricIndex): string | undefined {
  const at = items.length - 1;
  const blocks = items[at]!.fabric!.names.flatMap((name) => fabrics.blocks[name] ?? []);
  const lead = ` ${items
    .slice(Math.max(0, at - 3), at)
    .map((x) => x.w)
    .join(' ')} `;
  return blocks.length === 1 &&
    !/ (?:with|w|from|using|bought|a|an|some|yards?|metres?|piece|scrap|bit|for|used|into|onto) /.test(lead)
    ? blocks[0]
    : undefined;
}

const OTHERS = / (?:the|my) (?:other|remaining)(?: two| three| four| five| \d)? $/;

/** "the other two cocoa dot ones are fine, so they stay": of a cloth's blocks, those that were not just spoken of. */
export function othersOf(items: Item[], blocks: string[], { focus, earlier }: PlaceContext): string[] {
  if (blocks.length < 2 || !OTHERS.test(wordsBetween(items, items.length - 4, items.length - 1)))
    return blocks;
  const last = [...earlier, focus].findLast((g) => g.some((p) => blocks.includes(p)));
  const rest = last ? blocks.filter((p) => !last.includes(p)) : [];
  if (!rest.length) return blocks;
  // "five three gets the tulle and the other two …": of all of them
  earlier.push(blocks);
  return rest;
}
