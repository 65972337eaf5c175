import type { Draft } from './draft.ts';
import type { Mention } from './places/find-mention.ts';

/** What the drafts tell of places, in their order. */
export function mentionsOf(drafts: Draft[]): Mention[] {
  return drafts.flatMap(({ entry: e }): Mention[] => {
    if ((e.kind !== 'condition' && e.kind !== 'treatment') || !e.places?.length) return [];
    const places = [...e.places];
    if (e.kind === 'condition') return [{ places, finding: e.finding }];
    return [{ places, ...(e.action ? { action: e.action } : {}), ...(e.object ? { object: e.object } : {}) }];
  });
}
