/**
 * A short name for a set of facts: equal facts, equal fingerprint. 53 bits of a multiplicative hash,
 * enough to notice a change; no protection against someone who wants a collision.
 */
export function fingerprint(facts: unknown): string {
  const text = JSON.stringify(facts) ?? 'nothing';
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 2654435761);
    b = Math.imul(b ^ unit, 1597334677);
  }
  a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
  b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
  return (4294967296 * (2097151 & b) + (a >>> 0)).toString(36);
}
