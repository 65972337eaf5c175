import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import type { ReaderState } from '../reader-state.ts';
import type { stitchOf } from '../treatments/stitch-of.ts';
import { TAKES_STITCH } from '../treatments/stitch-of.ts';
import type { ClausePlaces } from './places-of-clause.ts';

const LIGHT =
  /^(,|and|&|\+|the|in|on|at|with|by|of|all|both|only|also|too|so|far|now|whole|full|red|white|cream|grey|gray|black|blue|green|brown|ecru|fine)$/;

/**
 * "ties are in, rows one and two, red wool", "label's on, bottom right corner, ladder stitch": where it was done is told behind the
 * deed, with the stitch and the goods of it.
 */
export function placesTrailing(
  state: ReaderState,
  clause: Clause,
  index: number,
  placed: ClausePlaces,
  stitch: ReturnType<typeof stitchOf>,
): Draft | undefined {
  if (
    clause.joint !== ',' ||
    !(placed.kind === 'specific' || (placed.kind === 'general' && placed.places[0] !== 'quilt'))
  )
    return undefined;
  if (state.drafts.some((d) => d.clause === index)) return undefined;
  const { items } = clause;
  if (!items[0]!.place && !/^(the|in|on|at|all|both)$/.test(items[0]!.w)) return undefined;
  if (!items.every((x) => x.place || x.stitch || x.material || x.duration || LIGHT.test(x.w)))
    return undefined;
  if (items.some((x) => x.finding || x.fail || (x.action && !x.stitch && !x.place && !x.material)))
    return undefined;
  const last = state.drafts.at(-1);
  const e = last?.entry;
  if (
    e?.kind !== 'treatment' ||
    !e.action ||
    last!.sentence !== clause.sentence ||
    last!.clause !== index - 1
  )
    return undefined;
  if (/^(dropped|considering)$/.test(e.state) || e.places?.some((p) => p !== 'quilt')) return undefined;
  // "washed it, the top border too": one of many, and no place of it
  if (items.some((x) => /^(too|also)$/.test(x.w)) || /^(wash|dry|measure|photograph|layer)$/.test(e.action))
    return undefined;
  e.places = placed.places;
  last!.placed = 'said';
  if (stitch && !e.stitch && TAKES_STITCH.has(e.action)) {
    e.stitch = stitch.stitch;
    last!.origins['stitch'] = {
      rule: `stitch.${stitch.stitch}`,
      how: 'said',
      from: stitch.item.token.from,
      to: stitch.item.end ?? stitch.item.token.to,
    };
  }
  return last;
}
