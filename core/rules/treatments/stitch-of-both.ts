import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import { wordsBetween } from '../words-between.ts';
import { TAKES_STITCH } from './stitch-of.ts';

/** "running stitch both", "ladder stitch the both of them", "both in whipstitch", "whipstitched both". */
const BEHIND =
  /^ (?:(?:on|for|,) )?(?:the )?(?:both|pair|two)(?: of (?:them|em|'em|those|these))? (?:$|[,.;!] )/;
const BEFORE =
  / (?:both|both of (?:them|em|'em|those)|them both) (?:(?:in|with|by|using|done) )?(?:a |the )?$/;

/** "the top border's quilted and the bottom one too, running stitch both": the stitch is that of the deed before as well. */
export function giveStitchOfBoth({ drafts, tokens }: ReaderState): void {
  drafts.forEach((d, k) => {
    const e = d.entry;
    const said = d.origins['stitch'];
    if (e.kind !== 'treatment' || !e.stitch || !said || said.how !== 'said') return;
    const from = tokens.findIndex((t) => t.from >= said.from);
    const next = tokens.findIndex((t) => t.from >= said.to);
    const behind = next < 0 ? ' ' : `${wordsBetween(tokens, next, next + 7)} `;
    if (
      !BEHIND.test(behind.replace(/ +/g, ' ')) &&
      !BEFORE.test(wordsBetween(tokens, Math.max(0, from - 6), from))
    )
      return;
    const before = drafts.slice(0, k).findLast((o: Draft) => o.entry.kind === 'treatment');
    const o = before?.entry;
    if (
      o?.kind !== 'treatment' ||
      o.stitch ||
      o.state !== e.state ||
      before!.sentence !== d.sentence ||
      !TAKES_STITCH.has(o.action!) ||
      (o.places ?? []).some((p) => e.places?.includes(p))
    )
      return;
    before!.entry = { ...o, stitch: e.stitch };
    before!.origins['stitch'] = said;
  });
}
