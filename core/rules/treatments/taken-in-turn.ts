import type { RemovedObject } from '../../../shared/vocabulary.ts';
import type { Clause } from '../clause/clause.ts';
import type { ClauseView } from '../clause-view.ts';
import { makeDraft } from '../draft.ts';
import type { Item } from '../item.ts';
import type { ReaderState } from '../reader-state.ts';

const RULE = 'treatment.taken-in-turn';
const BESIDE =
  /^(the|all|old|its|and|then|first|next|go|goes|going|last|after|that|,|&|\+|to|will|'ll|start|starting|with|now|so)$/;
const LAYER = /^(backing|batting|binding|border)$/;

/**
 * "13:00 taking apart. binding first, then ties", "the ties go first and then the backing": in what order things come off, told while the
 * quilt is taken apart. Tells whether the clause was that.
 */
export function takenInTurn(state: ReaderState, clause: Clause, v: ClauseView): boolean {
  const { items } = clause;
  const told = state.drafts.some((d) => d.origins['action']?.rule === RULE && d.sentence === v.sentence);
  const turn = items.some((x) => x.w === 'first') || (told && /^(then|and|,|after)$/.test(clause.joint));
  if (!turn || items.some((x) => x.place?.kind === 'blocks')) return false;
  const apart =
    state.drafts.some(({ entry: e }) => e.kind === 'work' && e.task === 'taking-apart') ||
    state.memory.running === 'taking-apart' ||
    state.clauses.some((c) => c.items.some((x) => x.task === 'taking-apart'));
  if (!apart) return false;
  const things = items.filter((x) => objectOf(x));
  if (!things.length || !items.every((x) => objectOf(x) || BESIDE.test(x.w))) return false;
  for (const thing of things) {
    const object = objectOf(thing)!;
    state.drafts.push(
      makeDraft(
        'treatment',
        v,
        {
          action: ['remove', RULE, items, 'implied'],
          state: ['planned', RULE, items],
          object: [object, RULE, thing],
          ...(LAYER.test(object) ? { places: [[object], 'place.said', [thing]] } : {}),
        },
        LAYER.test(object) ? 'said' : 'unneeded',
      ),
    );
  }
  return true;
}

const objectOf = (x: Item): RemovedObject | undefined =>
  x.object && x.object !== 'piece' ? x.object : undefined;
