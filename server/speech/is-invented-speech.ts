/** Courtesies and captions that the recogniser makes up when there is nothing to hear (common observation, and seen with this model). */
const INVENTED = new Set([
  'you',
  'thank you',
  'thank you very much',
  'thank you so much',
  'thanks',
  'thanks for watching',
  'thank you for watching',
  'bye',
  'bye bye',
  'okay',
  'ok',
  'oh',
  'so',
  'uh',
  'um',
  'hmm',
  'mm',
  'ah',
  'yeah',
  'the end',
  'please subscribe',
  'subtitles by the amara org community',
  'the',
  'i',
  'a',
  'and',
  'music',
  'applause',
  'silence',
]);

const plain = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** Loudness of the loudest 200 ms, in dB below full scale; −Infinity for digital silence. */
export function loudestDb(pcm: Float32Array): number {
  const width = 3200;
  let loudest = 0;
  for (let start = 0; start < pcm.length; start += width) {
    let sum = 0;
    const end = Math.min(pcm.length, start + width);
    for (let i = start; i < end; i++) sum += pcm[i]! * pcm[i]!;
    loudest = Math.max(loudest, sum / (end - start));
  }
  return 10 * Math.log10(loudest);
}

/**
 * True when the words should be taken for the recogniser's own invention over silence or noise.
 * @param figures noSpeech 0–1 at the start token; meanLogProb per token; both as the recogniser gives them
 */
export function isInventedSpeech(text: string, figures: { noSpeech: number; meanLogProb: number }): boolean {
  const words = plain(text);
  if (words === '') return true;
  // The two figures of the model's authors, together.
  if (figures.noSpeech > 0.6 && figures.meanLogProb < -1) return true;
  // A stock courtesy needs less doubt to be dropped: nothing of the work is lost with it.
  if (INVENTED.has(words) && (figures.noSpeech > 0.3 || figures.meanLogProb < -0.7)) return true;
  return false;
}

/**
 * True when the text says again a run of words of the prompt, so that it must be checked by listening once more without the
 * prompt: on silence and noise a prompted recogniser may hand its prompt back.
 */
export function echoesPrompt(text: string, prompt: string): boolean {
  const said = plain(text);
  if (said === '') return false;
  return plain(prompt).includes(said) && said.split(' ').length >= 2;
}
