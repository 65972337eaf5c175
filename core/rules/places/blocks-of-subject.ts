import type { Token } from '../../text/tokenise.ts';
import type { FabricIndex } from '../fabrics/find-fabric.ts';
import type { Item } from '../item.ts';

/** "the strawberry print has faded", "about the sateen": the cloth's blocks, where it is spoken of and not put in. */
export function blocksOfSubject(items: Item[], fabrics: FabricIndex, next: Token | undefined): string[] {
  const at = items.length - 1;
  const names = items[at]!.fabric!.names;
  if (names.length !== 1) return [];
  const lead = items.slice(Math.max(0, at - 4), at).map((x) => x.w);
  // "Stains, teal dot."
  const alone = lead.at(-1) === ',' && lead.length < 3 && (!next || /^[.;\n]$/.test(next.w));
  if (
    !alone &&
    !/^(the|all|every|both|each|those|that|two|three|four|five|six|[2-6]|)$/.test(lead.at(-1) ?? '') &&
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
