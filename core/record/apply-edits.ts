import type { QuiltState } from '../log/state.ts';
import type { RecordDocument } from './document-model.ts';
import { bodyFromText } from './passage-text.ts';

/**
 * Puts hand edits in place. An edit stands whatever the log does; it is `stale` once the facts under it
 * are others than those it was made on. An edit of a passage that the log no longer gives is kept too,
 * in a section at the end, so that no words of hers disappear.
 */
export function applyEdits(
  written: RecordDocument,
  edits: QuiltState['recordEdits'][string] | undefined,
): RecordDocument {
  if (!edits || Object.keys(edits).length === 0) return written;
  const used = new Set<string>();
  const sections = written.sections.map((section) => ({
    ...section,
    passages: section.passages.map((one) => {
      const edit = Object.hasOwn(edits, one.id) ? edits[one.id] : undefined;
      if (!edit || !one.editable) return one;
      used.add(one.id);
      return {
        ...one,
        body: bodyFromText(edit.text, one.body),
        edit: { stale: edit.facts !== one.facts, written: one.body },
      };
    }),
  }));
  const orphans = Object.entries(edits).filter(([id, edit]) => !used.has(id) && edit.text.trim());
  if (orphans.length > 0) {
    sections.push({
      id: 'kept-edits',
      title: 'Further notes',
      passages: orphans.map(([id, edit]) => ({
        id,
        facts: '',
        entryIds: [],
        noteIds: [],
        body: bodyFromText(edit.text, []),
        editable: true,
        edit: { stale: true, written: [] },
      })),
    });
  }
  return { ...written, sections };
}
