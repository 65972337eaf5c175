import type { NoteAudio } from '../../../../shared/note.ts';

export type WordMoment = { text: string; atS: number };

/**
 * When each word of a note is said, s into its file. The recogniser gives no times of words, so the span of the note is shared
 * out by their letters: right to about a word (common practice, no source).
 */
export function wordMoments(audio: NoteAudio): WordMoment[] {
  const words = (audio.words ?? []).map(({ text }) => text.trim()).filter(Boolean);
  const weights = words.map((word) => word.length + (/[.,!?;:]$/.test(word) ? 3 : 1));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let before = 0;
  return words.map((text, i) => {
    const atS = audio.startS + ((audio.endS - audio.startS) * before) / whole;
    before += weights[i]!;
    return { text, atS };
  });
}
