/** First letter large, a full stop at the end unless there is a mark already. Empty stays empty. */
export function sentence(text: string): string {
  const trimmed = text.replace(/\s+/g, ' ').trim();
  if (!trimmed) return '';
  const first = trimmed.replace(/^\p{Ll}/u, (letter) => letter.toLocaleUpperCase('en'));
  return /[.!?…]["'’”)\]]?$/u.test(first) ? first : `${first}.`;
}
