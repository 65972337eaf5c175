import type { NoteAudio } from '../../../../shared/note.ts';

/** Where the server serves a note's sound, cut to its moment by a media fragment. */
export function audioAddress(quiltId: string, audio: NoteAudio): string {
  const file = audio.file.split('/').map(encodeURIComponent).join('/');
  const from = Math.max(0, audio.startS - 0.15).toFixed(2);
  return `/api/quilts/${encodeURIComponent(quiltId)}/audio/${file}#t=${from},${(audio.endS + 0.2).toFixed(2)}`;
}
