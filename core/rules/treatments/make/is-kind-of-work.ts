import type { Action, TreatmentState } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';
import type { Making } from './making.ts';

/** "doing the mending", "starting the cutting": only a kind of work is told, and no treatment of anything. */
export function isKindOfWork(
  { state, clause: { items }, way, placed, stitch }: Making,
  action: Action,
  status: TreatmentState,
): boolean {
  const verb = items[way.at]!;
  return (
    Boolean(verb.task) &&
    !verb.deed &&
    status !== 'dropped' &&
    !stitch &&
    verb.action?.form === 'ing' &&
    way.rule.startsWith('treatment.verb') &&
    placed.kind === 'none' &&
    // "the gingham that was torn | wants darning"
    !(state.carried.length && /^(wants|needs|gets|requires)$/.test(items[0]!.w)) &&
    !items.some(
      (x) =>
        x !== verb &&
        // "pinning the layers now"
        ((x.object && !x.task) ||
          x.w === 'layers' ||
          x.fabric ||
          x.finding ||
          x.seam ||
          x.material === 'fabric' ||
          // "cutting the binding strips"
          ((action === 'cut' || action === 'piece') && (x.measure === 'strip' || /\bstrips$/.test(x.w)))),
    ) &&
    !finishedTask(items, way.at) &&
    // "the hole in 3-3 needs darning": the hole stands before
    !/^(needs?|wants?|need|want|requires?)$/.test(items[way.at - 1]?.w ?? '') &&
    // "darning won", of two ways that stood open
    !(status === 'planned' && state.memory.open.some((o) => !o.passed && o.action === action)) &&
    !/\b(it|them)\b/.test(
      items
        .slice(way.at + 1, way.at + 3)
        .map((x) => x.w)
        .join(' '),
    ) &&
    !['soaking', 'drying', 'washing'].includes(verb.w)
  );
}

/** "did the basting", "finished the layering": the whole of it is done, where no time is told with it. */
const finishedTask = (items: Item[], at: number): boolean =>
  /^(baste|layer|wash|bind|label|press)$/.test(items[at]!.action?.v ?? '') &&
  items[at - 1]?.w === 'the' &&
  /^(did|done|finished|completed)$/.test(items[at - 2]?.w ?? '') &&
  !items.some((x) => x.span || x.clock || x.duration);
