import type { ReaderState } from '../rules/reader-state.ts';

/** Damage as a thing: "hole", "the tears", "stain", and no "torn". */
const THING =
  /^(?:(?:split|open|burst|popped|loose|gaping) seam|tear|rip|hole|split|slit|gap|stain|mark|spot|blotch|ring|mildew|mould|mold|pucker|fray|fraying|staining|wear|moth|(?:(?:moth|insect|mouse|water|light|beetle) )?(?:hole|damage))s?$/;
const ANOTHER =
  /^(?:a|an|another|new|fresh|second|more|some|other|has|got|found|is|are|was|were|been|still)$/;
const TOLD = /^(?:is|'s|has|got|found|too|also|as)$/;

/**
 * "3-3 tear closed, whipstitch", "5-3's tear I sewed back together", "both stains spotted": in the same breath as the work, the
 * damage of a place where just that was found before is only pointed at, with or without an article, and is not found anew.
 */
export function withoutKnown(state: ReaderState): void {
  const mentions = state.memory.mentions ?? [];
  if (!mentions.length) return;
  state.drafts = state.drafts.filter((d) => {
    const e = d.entry;
    const at = d.origins['finding'];
    if (e.kind !== 'condition' || !at || !e.places?.length) return true;
    const known = new Set(mentions.filter((m) => m.finding === e.finding).flatMap((m) => m.places));
    if (!e.places.every((p) => known.has(p))) return true;
    const worked = state.drafts.some(
      ({ entry: t, sentence, clause }) =>
        t.kind === 'treatment' &&
        t.state !== 'considering' &&
        t.action !== 'leave' &&
        sentence === d.sentence &&
        Math.abs(clause - d.clause) <= 1 &&
        e.places!.every((p) => t.places?.includes(p)),
    );
    if (!worked) return true;
    const items = state.clauses[d.clause]?.items ?? [];
    const k = items.findIndex((x) => x.token.from === at.from);
    return (
      k < 0 ||
      !THING.test(items[k]!.w) ||
      ANOTHER.test(items[k - 1]?.w ?? '') ||
      TOLD.test(items[k + 1]?.w ?? '')
    );
  });
}
