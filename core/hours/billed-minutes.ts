import type { Task } from '../../shared/vocabulary.ts';
import type { Hours } from './hours.ts';

/** Minutes worked on tasks that are charged for; work whose task is not named counts among them. */
export const billedMinutes = (hours: Pick<Hours, 'byTask'>, notBilled: readonly Task[] = []): number =>
  hours.byTask.reduce(
    (sum, { task, minutes }) => sum + (task !== undefined && notBilled.includes(task) ? 0 : minutes),
    0,
  );
