export type ImageKind = 'jpg' | 'png' | 'webp';

/**
 * Tells the kind of a picture by its first bytes: SOI and a marker (ITU-T T.81), the PNG signature
 * (ISO/IEC 15948), or RIFF/WEBP (RFC 9649). Undefined for all else.
 */
export function sniffImageKind(head: Uint8Array): ImageKind | undefined {
  const text = (at: number, length: number): string => String.fromCharCode(...head.subarray(at, at + length));
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'jpg';
  if (text(0, 8) === '\x89PNG\r\n\x1a\n') return 'png';
  if (text(0, 4) === 'RIFF' && text(8, 4) === 'WEBP') return 'webp';
  return undefined;
}
