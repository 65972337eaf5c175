/**
 * Short tones that can be told apart without looking: rising when it begins to listen, falling when
 * it stops, one soft note when something is written down, a question that ends high, a low knock
 * when something went wrong. [Hz, start s, length s]
 */
const TONES = {
  on: [
    [392, 0, 0.11],
    [587.3, 0.12, 0.16],
  ],
  off: [
    [587.3, 0, 0.11],
    [392, 0.12, 0.2],
  ],
  noted: [[523.3, 0, 0.14]],
  ask: [
    [440, 0, 0.1],
    [440, 0.14, 0.1],
    [659.3, 0.28, 0.24],
  ],
  trouble: [
    [174.6, 0, 0.16],
    [164.8, 0.2, 0.26],
  ],
} as const;
export type Tone = keyof typeof TONES;

let context: AudioContext | null = null;

/** Plays a tone; silently nothing where the browser has no sound yet (before the first touch). */
export function playTone(tone: Tone): void {
  try {
    context ??= new AudioContext();
    void context.resume();
    const now = context.currentTime + 0.01;
    for (const [hz, start, length] of TONES[tone]) {
      const oscillator = context.createOscillator();
      const gain = context.createGain();
      oscillator.type = tone === 'trouble' ? 'triangle' : 'sine';
      oscillator.frequency.value = hz;
      gain.gain.setValueAtTime(0, now + start);
      gain.gain.linearRampToValueAtTime(0.16, now + start + 0.015);
      gain.gain.exponentialRampToValueAtTime(0.0008, now + start + length);
      oscillator.connect(gain).connect(context.destination);
      oscillator.start(now + start);
      oscillator.stop(now + start + length + 0.02);
    }
  } catch {
    // A page without sound is still a page.
  }
}
