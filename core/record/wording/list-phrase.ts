/**
 * "a", "a and b", "a, b and c" (British) or "a, b, and c" (American). Where an item holds an "and" or
 * a comma of its own, the last is set off by a comma so that the list can be read.
 */
export function listPhrase(items: readonly string[], spelling: 'british' | 'american', word = 'and'): string {
  if (items.length <= 1) return items[0] ?? '';
  const last = items.at(-1)!;
  const rest = items.slice(0, -1);
  const nested = items.some((item) => / and |, /.test(item));
  const comma = nested || (spelling === 'american' && items.length > 2) ? ',' : '';
  return `${rest.join(', ')}${comma} ${word} ${last}`;
}
