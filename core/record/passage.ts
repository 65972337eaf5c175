import type { Block, Passage } from './document-model.ts';
import { fingerprint } from './fingerprint.ts';

type Source = { id: string; noteId?: string };

/**
 * A passage with its fingerprint and the entries behind it. `facts` is whatever the words were made
 * from, without ids: re-reading a note that says the same leaves the fingerprint as it was.
 */
export function passage(
  id: string,
  facts: unknown,
  from: readonly Source[],
  body: readonly Block[],
): Passage {
  return {
    id,
    facts: fingerprint(facts),
    entryIds: [...new Set(from.map((source) => source.id))],
    noteIds: noteIdsOf(from),
    body: [...body],
    editable: body.some(
      (block) => block.type !== 'figure' && block.type !== 'photograph' && block.type !== 'signatures',
    ),
  };
}
export const paragraph = (text: string): Block => ({ type: 'paragraph', text });

function noteIdsOf(from: readonly Source[]): string[] {
  const ids = new Set<string>();
  for (const { noteId } of from) if (noteId !== undefined) ids.add(noteId);
  return [...ids];
}
