import type { Entry } from '../../shared/entry.ts';

/** Whether two entries say the same, whatever the order in which their slots were written down. */
export const sameEntry = (a: Entry, b: Entry): boolean => inOrder(a) === inOrder(b);

function inOrder(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
