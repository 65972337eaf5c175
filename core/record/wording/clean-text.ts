/**
 * Text that came from a person, made safe to set: one line, no control characters, no marks that turn
 * the direction of the letters round (U+202A-202E, U+2066-2069 and U+200E/F could make a line read
 * otherwise than it is stored). Letters of every script stay.
 */
export function cleanText(text: string): string {
  return text
    .replace(/[\u202a-\u202e\u2066-\u2069\u200e\u200f\u061c\ufeff]/g, '')
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ')
    .replace(/ {2,}/g, ' ')
    .trim();
}

/** The same for text of several lines: line breaks stay, in one form. */
export function cleanLines(text: string): string {
  return text
    .split(/\r\n|[\n\r\u0085\u2028\u2029]/)
    .map(cleanText)
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
