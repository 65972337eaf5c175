import { UNIT_WORDS } from '../../lexicon/units.ts';
import type { Token } from '../../text/tokenise.ts';

const NOT_KNOWN =
  "do n't know|don't know|have n't counted|did n't count|not sure|forget|forgot|'ve forgotten|have forgotten|ca n't remember|can not remember|could n't tell you|could n't say|no idea|dunno|who knows|god knows|heaven knows|goodness knows|lord knows|dear knows";
const VAGUE = new RegExp(
  `(?:^| )((?:(?:i|we|honestly|really|just) )*(?:${NOT_KNOWN}) how many|so and so many|such and such a number of|some number of|how many (?:was|is|were) (?:it|that|they)|what (?:was|is|'s) (?:it|that)(?: again| now)?|whatever number of|whatever it was in|however many|so many|umpteen) $`,
);

/**
 * "used I don't know how many yards of binding", "so and so many metres of calico", "at so many inches": words in the place of the number.
 * They become a nought, which is no amount (`isNoAmount`), so that what is counted, and in what, is read as if the number stood there.
 */
export function withVagueCounts(tokens: Token[]): Token[] {
  if (!tokens.some((t) => /^(?:many|umpteen|number|in)$/.test(t.w))) return tokens;
  const out: Token[] = [];
  for (const t of tokens) {
    const unit = t.kind === 'word' && t.w.endsWith('s') && Object.hasOwn(UNIT_WORDS, t.w) && t.w !== 'yes';
    const told = unit
      ? VAGUE.exec(
          `${out
            .slice(-9)
            .map((x) => x.w)
            .join(' ')} `,
        )?.[1]
      : undefined;
    const words = told?.split(' ').length ?? 0;
    // "Batting to buy… so many yards": told of what stood before
    // and so is "need some backing, no idea how many yards"
    const before = out[out.length - words - 1]?.w;
    if (told && before !== '.' && !(before === ',' && told.endsWith(' how many'))) {
      const first = out[out.length - words]!;
      out.splice(-words, words, { ...first, w: '0', kind: 'number', value: 0, glued: false, to: t.from });
    }
    out.push(t);
  }
  return out;
}
