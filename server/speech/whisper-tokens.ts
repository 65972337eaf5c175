/** Whisper's special tokens and limits, multilingual models. */
export const START = 50258;
export const END = 50257;
export const NO_SPEECH = 50362;
export const PREVIOUS = 50361;
/** Start, English, transcribe, no timestamps. */
export const PREFIX = [START, 50259, 50359, 50363];
export const SPACE = 220;
export const MOST_PROMPT_TOKENS = 223;
export const MOST_POSITIONS = 448;
export const LONGEST_FRAMES = 1500;
export const SHORTEST_FRAMES = 500;

/** How much the encoder is given of so many seconds of sound: frames of 20 ms, with room behind the last word. */
export const framesFor = (seconds: number): number =>
  Math.min(LONGEST_FRAMES, Math.max(SHORTEST_FRAMES, Math.ceil(50 * seconds + 64)));
