import type { Overlap } from '../../../../core/hours/hours.ts';
import { spanWords } from '../../../words/figure-words.ts';
import type { TradeLabels } from '../../../words/trade-labels.ts';

/** "10:00 to 11:00 was told for mending and for tying: 1 h, counted once, as tying." */
export const overlapWords =
  (say: TradeLabels) =>
  ({ task, byTask, start, end, minutes }: Overlap): string => {
    const name = (one: Overlap['task']): string => (one ? say.task(one) : 'work');
    const when = `${start.slice(11)} to ${end.slice(11)}`;
    if (task === byTask)
      return `${when} was told twice for ${name(task)}: ${spanWords(minutes)}, counted once.`;
    return `${when} was told for ${name(task)} and for ${name(byTask)}: ${spanWords(minutes)}, counted once, as ${name(byTask)}.`;
  };
