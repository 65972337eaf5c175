import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import { splitBlock } from '../places/grid.ts';
import type { ReaderState } from '../reader-state.ts';
import { isTreatment, type TreatmentDraft } from './is-treatment.ts';

/**
 * "a darn or a new piece cut in", "net or a patch", "crepeline, or cut out and pieced anew": of two ways with an "or" between
 * them neither is decided, whatever their verbs say. What is told as done in so many words ("I darned or patched") stays so.
 */
export function askBetween(state: ReaderState, clause: Clause, made: Draft[]): void {
  const here = made.filter(isTreatment);
  if (!here.length) return;
  // "2-2's thin: cut it out or net over?": what is cut out of a block is replaced
  for (const { entry: e } of here)
    if (
      e.action === 'cut' &&
      e.state === 'considering' &&
      e.places?.length &&
      e.places.every((p) => splitBlock(p)) &&
      clause.items.some((x) => x.w === 'out' || / out$/.test(x.w))
    )
      e.action = 'replace';
  let before: TreatmentDraft[];
  let after = here;
  if (clause.joint === 'or' || clause.items[0]?.w === 'or') {
    const told = state.drafts.filter(isTreatment);
    before = told.filter((d) => d.sentence === here[0]!.sentence);
    // "I'll net it. Or maybe back it": an afterthought of its own
    if (!before.length) before = told.filter((d) => d.sentence === here[0]!.sentence - 1);
  } else {
    const or = clause.items.find((x) => x.w === 'or')?.token.from;
    if (or === undefined) return;
    before = here.filter((d) => verbOf(d) < or);
    after = here.filter((d) => verbOf(d) > or);
  }
  const first = before.at(-1);
  if (!first || !after.length || first.entry.action === after[0]!.entry.action) return;
  // "net over it, a darn, or nothing at all": the things listed before it as well
  // "I am removing the right border at the moment, whether the others are left or replaced …": in hand, and no way in question
  const listed = before.filter(
    (d) =>
      d === first ||
      (d.entry.state !== 'doing' &&
        !d.origins['action']!.rule.startsWith('treatment.verb') &&
        // "I'll put calico behind 2-2, and for 3-3 darn it or patch it": of another place, and decided
        !(d.entry.state === 'planned' && isElsewhere(d, first))),
  );
  // "might patch or darn 2-2": the place told last is that of both
  const place = after.find((d) => d.placed === 'said' && d.entry.places?.length);
  for (const d of new Set([...before, ...after])) {
    if (
      place &&
      d.entry.state === 'considering' &&
      d.placed === 'none' &&
      !d.outside &&
      !d.entry.places?.length
    ) {
      d.entry.places = [...place.entry.places!];
      d.placed = 'said';
      if (place.origins['places']) d.origins['places'] = { ...place.origins['places'], how: 'implied' };
    }
  }
  const doubted = [...listed, ...after].filter(
    (d) => !/^(dropped|considering)$/.test(d.entry.state) && !isTold(state, d),
  );
  for (const d of doubted) d.entry.state = 'considering';
  // "2-3: cut it out and piece new in or patch": the cutting is the beginning of the replacing
  if (first.entry.action === 'replace')
    state.drafts = state.drafts.filter(
      (d) =>
        !(
          isTreatment(d) &&
          d.entry.action === 'cut' &&
          d.clause === first.clause - 1 &&
          d.sentence === first.sentence &&
          d.entry.places?.join() === first.entry.places?.join()
        ),
    );
  // "net over it, or cut it out?": no net has been used
  const clauses = new Set(doubted.filter((d) => !made.includes(d)).map((d) => d.clause));
  state.drafts = state.drafts.filter(
    (d) => !(d.entry.kind === 'material' && d.entry.use === 'used' && clauses.has(d.clause)),
  );
}

/** Was each told of a place of its own? */
const isElsewhere = (
  { entry: { places: a } }: TreatmentDraft,
  { entry: { places: b } }: TreatmentDraft,
): boolean => Boolean(a?.length && b?.length) && !a!.some((p) => b!.includes(p));

/** Where the word stands that the state hangs on. */
const verbOf = (d: Draft): number => d.origins['state']!.from;

/** Is it told of somebody, as a thing that was done? */
function isTold(state: ReaderState, d: TreatmentDraft): boolean {
  if (d.entry.state !== 'done') return false;
  const before = state.tokens
    .filter((t) => t.to <= verbOf(d))
    .slice(-4)
    .map((t) => t.w);
  return / (i|we|she|he|'ve|have|has|had|was|were|been|got)( \S+)? $/.test(` ${before.join(' ')} `);
}
