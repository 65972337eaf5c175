import type { RemovedObject } from '../../../shared/vocabulary.ts';

/**
 * What an old repair is when it is taken out, by the words that told of it: a darn and a seam sewn up are old stitching, what was
 * fused on behind is interfacing, and everything else is a patch. "an old darn in 2-3", then "unpicked it".
 */
export function objectOfRepair(words: string): RemovedObject {
  // "somebody had something fused on behind", "a piece ironed on at the back"
  if (
    !/\bpatch/.test(words) &&
    /\b(?:fused|bonded|ironed)\b.{0,30}\b(?:behind|back|underneath)\b/.test(words)
  )
    return 'interfacing';
  if (/\b(?:patch(?:ed|es)?|plaster|tape|felt|appliqu[eé]d?|curtain|piece|square|scrap)\b/.test(words))
    return 'old-patch';
  if (/\b(?:interfacing|fusible|iron(?:ed)?[ -]on|vilene|web|fused|bonded|ironed)\b/.test(words))
    return 'interfacing';
  if (/\bpins?\b/.test(words)) return 'pins';
  if (
    /\b(?:re)?darn(?:s|ed|ing)?\b|\b(?:thread|string|twine|yarn|fishing line|zigzag\w*|stitch\w*|whip\w*|overcast|oversewn)\b/.test(
      words,
    )
  )
    return 'stitching';
  return /\bseams?\b.*\b(?:re)?sewn\b/.test(words) ? 'stitching' : 'old-patch';
}
