import type { QuiltState } from '../../core/log/state.ts';

/** The words of one recording as WebVTT (W3C), to be shown while it plays. Empty of cues where nothing was heard. */
export function recordingCaptions(state: QuiltState, recordingId: string): string {
  const recording = state.recordings.find((one) => one.id === recordingId);
  const cues = state.notes
    .flatMap(({ note }) =>
      note.audio?.recordingId === recordingId
        ? [
            {
              startS: note.audio.startS,
              endS: Math.max(note.audio.endS, note.audio.startS + 0.2),
              text: note.text,
            },
          ]
        : [],
    )
    .sort((a, b) => a.startS - b.startS || a.endS - b.endS);
  const head = recording ? ` ${payload(recording.name)}` : '';
  return `WEBVTT${head}\n\n${cues
    .map((cue, i) => `${i + 1}\n${stamp(cue.startS)} --> ${stamp(cue.endS)}\n${payload(cue.text)}\n`)
    .join('\n')}`;
}

/** One line of text: a blank line would end the cue, and `<`, `&` and `-->` mean something to the format. */
function payload(text: string): string {
  return (
    text
      .replace(/[\s\u2028\u2029\u0000-\u001f\u007f]+/g, ' ')
      .trim()
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;') || '…'
  );
}

function stamp(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  return `${two(ms / 3_600_000)}:${two((ms / 60_000) % 60)}:${two((ms / 1000) % 60)}.${String(ms % 1000).padStart(3, '0')}`;
}
