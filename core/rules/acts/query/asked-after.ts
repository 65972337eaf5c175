import { TASK_OF_ACTION } from '../../../../shared/task-of-action.ts';
import type { Task, Topic } from '../../../../shared/vocabulary.ts';
import type { Item } from '../../item.ts';

/** The kind of work asked after; a part of the quilt ("the backing") is none by itself. */
export function taskOf(items: Item[]): Task | undefined {
  const found = items.findLast((x, k) => {
    if (!x.task || x.part === 'backing') return false;
    // "on this quilt", "on the log"
    if (x.task === 'quilting' && x.w === 'quilt') return false;
    return (
      !(x.task === 'paperwork' && /^(?:the )?(?:notes|writing|log)$/.test(x.w)) || items[k - 1]?.w === 'on'
    );
  });
  return found?.task;
}

/** "how long did it take to tie": the kind of work that a deed belongs to. */
export function taskOfDeed(items: Item[]): Task | undefined {
  const action = items.findLast((x) => x.action?.form === 'base')?.action;
  return action && TASK_OF_ACTION[action.v];
}

export function yardageTopic(items: Item[]): Topic {
  const topicOf = (x: Item): Topic | undefined => {
    for (const topic of ['backing', 'batting', 'binding', 'border'] as const)
      if (x.part === topic || x.topic === topic || x.material === topic || x.part?.startsWith(`${topic}-`))
        return topic;
    if (x.material === 'tie-thread' || x.w === 'ties') return 'tie-thread';
    return undefined;
  };
  const after = items.findIndex((x) => x.w === 'for');
  const named =
    items
      .slice(after + 1)
      .map(topicOf)
      .find(Boolean) ?? items.map(topicOf).find(Boolean);
  return named ?? 'fabric';
}
