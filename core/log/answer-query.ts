import type { Reading } from '../../shared/note.ts';
import type { QuiltState } from './state.ts';

export function answerQuery(
  _state: QuiltState,
  reading: Reading,
  _at: string,
  _given: { idleMin: number },
): { text: string; working: string[] } {
  return { text: reading.reply, working: [] };
}
