import { wordsOf } from '../text/words-of.ts';
import type { Draft } from './draft.ts';
import type { Item } from './item.ts';
import type { ReaderState } from './reader-state.ts';
import { objectOfRepair } from './treatments/object-of-repair.ts';
import { wordsBetween } from './words-between.ts';

/** The words that tell of an old repair, with what stands behind it in its sentence of how it was made ("…, interfacing glued on behind"). */
const repairTold = ({ clauses }: ReaderState, index: number): string => {
  const own = clauses[index]!;
  const next = clauses[index + 1];
  const behind =
    next?.sentence === own.sentence &&
    /^(|,|-|--|with)$/.test(next.joint) &&
    !next.items.some((x) => /^(i|we|it|that|is|'s|took|unpicked|picked|peeled)$/.test(x.w) || x.place)
      ? next.items
      : [];
  return wordsBetween([...own.items, ...behind]);
};

/** "the binding's frayed all round", "backing is stained": the part that the last note found so, and that "took it off" speaks of. */
function partFound({ memory }: ReaderState): string | undefined {
  if (memory.lastKind !== 'condition' || !memory.last) return undefined;
  for (const { entry: e } of [...memory.last.entries].reverse()) {
    if (e.kind === 'treatment') return undefined;
    const place = e.kind === 'condition' ? e.places?.[0] : undefined;
    if (!place) continue;
    if (/^(?:backing|batting|binding)$/.test(place)) return place;
    if (place.startsWith('border')) return 'border';
    if (place.startsWith('edge') && /\bbinding\b/i.test(memory.last.said)) return 'binding';
  }
  return undefined;
}

/** What can be taken off, and stands before the finding as what has it: not "a stain round the label". */
const subjectOf = (items: Item[]): string | undefined => {
  const found = items.findIndex((x) => x.finding);
  const at = items.findIndex((x, k) => x.object && !x.finding && k < found);
  return at < 0 ||
    /(?:^| )(?:round|around|by|near|under|beneath|behind|beside|along|where|from|with|of|at) (?:the |that |its )?$/.test(
      wordsBetween(items, Math.max(0, at - 3), at),
    )
    ? undefined
    : items[at]!.object;
};

/** What it was that gave way: ties, the quilting, or stitching of another kind ("the blanket stitch has gone along the edge"). */
function stitchedThing(state: ReaderState, { clause, origins }: Draft): string {
  const at = origins['finding'];
  const told = at ? wordsOf(state.tokens.filter((t) => t.from >= at.from && t.to <= at.to)) : '';
  if (/tie/.test(told) || state.clauses[clause]?.items.some((x) => x.object === 'ties')) return 'ties';
  return /blanket|buttonhole|herringbone|feather|briar|fancy|embroider/.test(told) ? 'stitching' : 'quilting';
}

/** What "it" and "them" are when something is taken off: the thing last spoken of in the note, else before it. */
export function thingSpokenOf(state: ReaderState, index: number): string | undefined {
  // "someone had left pins in the top border, and I have taken them out": told of in the clause before, as nothing found or done
  const before = state.clauses[index - 1];
  const left = before?.items.find((x) => /^(pins|label|interfacing)$/.test(x.object ?? ''));
  if (left && !state.drafts.some((d) => d.clause === index - 1 && d.entry.kind !== 'material'))
    return left.object;
  for (const d of [...state.drafts].reverse()) {
    const e = d.entry;
    if (e.kind === 'treatment' && e.object) return e.object;
    if (e.kind === 'treatment' && e.action === 'resew') return 'seam';
    // "cut the border strips, pieced them and sewed them on"
    if (e.kind === 'treatment' && /^(cut|piece)$/.test(e.action ?? '')) {
      const of = /^(border|binding)/.exec(e.places?.[0] ?? '')?.[1];
      if (of) return of;
    }
    if (e.kind === 'treatment' && e.action === 'bind') return 'binding';
    // "started on the binding at eleven. The top and the left side are on"
    if (e.kind === 'work' && e.task === 'binding') return 'binding';
    // "do I leave the batting or pull it out"
    if (e.kind === 'treatment' && e.action === 'leave') {
      const told = state.clauses[d.clause]?.items.find((x) => x.object || x.finding === 'old-repair');
      if (told) return told.finding === 'old-repair' ? 'old-patch' : told.object;
    }
    if (e.kind === 'condition') {
      if (e.finding === 'lumpy-batting') return 'batting';
      if (e.finding === 'old-repair') return objectOfRepair(repairTold(state, d.clause));
      if (e.finding === 'split-seam') return 'seam';
      if (e.finding === 'broken-stitching') return stitchedThing(state, d);
      // "the gingham piece at 5-3 is frayed; unpicked it", "that label's stained, took it off"
      const told = subjectOf(state.clauses[d.clause]?.items ?? []);
      if (told) return told;
      // "the binding is frayed along the bottom, so off it came"
      if (
        state.clauses[d.clause]?.items.some(
          (x) => x.part === 'binding' || (x.place && x.w.startsWith('binding ')),
        )
      )
        return 'binding';
      const part = e.places?.[0];
      if (part === 'backing' || part === 'batting' || part === 'binding') return part;
      if (part?.startsWith('border')) return 'border';
    }
  }
  const { treatment } = state.memory;
  // "the ties are out", "the shirting is gone in 2-2", then "cut out what was left": of the cloth
  if (
    /^(?:ties|pins|quilting|stitching)$/.test(treatment?.object ?? '') &&
    state.memory.lastKind === 'condition' &&
    /^(?:missing|shattered|thin|fraying|hole|tear|stain|burn|insect-damage|mildew)$/.test(
      state.memory.condition?.finding ?? '',
    ) &&
    / cut (?:out |away )?(?:what|it|the (?:rest|remains|last))(?! (?:(?:was|were|is|'s) left )?of (?:them|those|the ties)) /.test(
      wordsBetween(state.clauses[index]?.items ?? []),
    )
  )
    return undefined;
  return (
    treatment?.object ??
    (treatment?.action === 'bind' ? 'binding' : state.memory.thing) ??
    // "that seam's gone again", then "redid it"
    (state.memory.condition?.finding === 'split-seam' && state.memory.lastKind === 'condition'
      ? 'seam'
      : (partFound(state) ?? (state.memory.running === 'binding' ? 'binding' : undefined)))
  );
}
