import type { Token } from '../../text/tokenise.ts';
import { wordAt as w } from '../../text/word-at.ts';

const BEFORE =
  /^(?:|[:,;.\n-]|--|to|will|'ll|and|then|just|only|could|might|may|must|should|i|we|or|gonna|tomorrow|today)$/;
const PATIENT =
  /^(?:it|them|that|those|these|both|the|stains?|marks?|lines?|on|in|out|row|block|all|\d+|-|tide|brown)$/;

/** "backing: spot w/ vinegar", "spot the stain in 2-2 with detergent": cleaned there; "a grease spot", "a spot with a hole" is a finding. */
export function isSpotting(tokens: Token[], i: number): boolean {
  if (!BEFORE.test(w(tokens, i - 1))) return false;
  let k = i + 1;
  while (k < i + 9 && PATIENT.test(w(tokens, k))) k++;
  return (
    /^(?:with|using)$/.test(w(tokens, k)) &&
    tokens
      .slice(k + 1, k + 7)
      .some((t) =>
        /^(?:vinegar|water|detergent|soap|solvent|peroxide|lemon|soda|borax|spirits?|swabs?|sponge|spit|wash|bleach|alcohol|buds?)$/.test(
          t.w,
        ),
      )
  );
}
