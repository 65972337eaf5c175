/**
 * The development notes that nothing of the ears learns from: the last lot of the examples in other words, because the examples said
 * aloud are to tell how unseen notes are heard.
 */
export const LEFT_OUT_NOTES = 'zx.jsonl';
