/** What speech in the on-call way comes to. */
export type Called = { awake: boolean; text: string };

/**
 * Listens for the phrase that begins the taking of notes, and the one that ends it. While asleep all
 * else is left out; words said in the same breath after the call, or before the dismissal, are a note.
 */
export function heedCallPhrase(
  text: string,
  awake: boolean,
  phrases: { call: string; dismiss: string },
): Called {
  if (!awake) {
    const call = findPhrase(text, phrases.call);
    return call ? heedCallPhrase(text.slice(call.to), true, phrases) : { awake: false, text: '' };
  }
  const dismiss = findPhrase(text, phrases.dismiss);
  if (!dismiss) return { awake: true, text: trim(text) };
  return { awake: false, text: trim(text.slice(0, dismiss.from)) };
}

const trim = (text: string): string => text.replace(/^[\s.,!?;:–-]+/, '').replace(/[\s,;:–-]+$/, '');

/** Finds a phrase by its words, whatever stands between them. */
function findPhrase(text: string, phrase: string): { from: number; to: number } | undefined {
  const words = phrase.toLowerCase().match(/[\p{L}\p{N}']+/gu) ?? [];
  if (words.length === 0) return undefined;
  const pattern = words.map((word) => word.replace(/'/g, "['’]")).join("[^\\p{L}\\p{N}']+");
  const found = new RegExp(`(?<![\\p{L}\\p{N}])${pattern}(?![\\p{L}\\p{N}])`, 'iu').exec(text);
  return found ? { from: found.index, to: found.index + found[0].length } : undefined;
}
