import type { DecisionStatus } from '../../../../shared/vocabulary.ts';
import { CHOICE_CUE, DOING } from '../../../lexicon/matters.ts';
import { isAskedMatter } from './asked-matter.ts';
import { BLOCKS, type Part } from './part.ts';
import { sharedStatus } from './shared-status.ts';

const NEITHER = / neither (?:the|my|its) /;

/**
 * Gives each part that names a matter the word that was said of it: its own, the list's, or the next one that stands alone.
 * `earlier` is what was said of the matter of the sentence before.
 */
export function spread(
  parts: Part[],
  headed: DecisionStatus | undefined,
  after: DecisionStatus | undefined,
  asked: boolean,
  earlier?: DecisionStatus,
): void {
  for (let k = 0; k < parts.length; k++) {
    const part = parts[k]!;
    // "neither the binding nor the thread's settled"
    const neither =
      parts[k + 1]?.joint === 'nor' && NEITHER.test(part.words)
        ? parts[k + 1]!.cue
        : part.joint === 'nor' && NEITHER.test(parts[k - 1]?.words ?? '')
          ? part.cue
          : undefined;
    if (neither === 'settled' && part.topic) {
      part.status = 'open';
      continue;
    }
    const shared = headed ? undefined : sharedStatus(parts, k);
    if (shared) {
      part.status = shared;
      continue;
    }
    // "wondering cold or warm for the wash and what colour the binding must be": asked in the same breath
    if (
      part.topic &&
      part.cue !== 'open' &&
      parts[k - 1]?.status === 'open' &&
      /^(?:and|&|\+|,|or)$/.test(part.joint) &&
      ASKS.test(part.words)
    ) {
      part.status = 'open';
      continue;
    }
    if (part.cue) {
      part.status = part.cue;
      continue;
    }
    if (headed) {
      part.status = headed;
      continue;
    }
    // "don't know if I'm tying it or what colour the back ought to be"
    if (part.topic && part.joint === 'or' && parts[k - 1]?.status === 'open') {
      part.status = 'open';
      continue;
    }
    if (part.topic && isEcho(part)) {
      // "not settled what thread, nor if it gets a border"
      // "Border or not, still open. Same with the colour of the binding."
      const told =
        parts.slice(0, k).findLast((p) => (p.topic ?? isAskedMatter(p)) && p.status)?.status ??
        (k === 0 ? earlier : undefined);
      if (told) {
        part.status = told;
        continue;
      }
    }
    // "is it navy or brown for the binding?"
    if (part.topic && asked && parts.length === 1 && / or /.test(part.words)) {
      part.status = 'open';
      continue;
    }
    if (!part.topic || CHOICE_CUE.test(part.words)) {
      if (!part.topic) continue;
      // "cotton batting it is, and the backing is open": the choice stands; "it gets tied, that's settled" is settled
      const next = parts[k + 1];
      if (next && !next.topic && next.cue) part.status = next.cue;
      continue;
    }
    // "binding colour + price still open", "calico or the brown sheet, open", "…, that's settled"
    for (let q = k + 1; q < parts.length; q++) {
      const next = parts[q]!;
      // "six fat quarters, and the seam in 2-3 is open"
      if (!next.topic && next.items.some((x) => x.seam || BLOCKS(x))) break;
      if (next.cue && (!next.topic || /^(and|&|\+|,|nor)$/.test(next.joint))) {
        if (next.topic && next.cue === 'settled') break;
        part.status = next.cue;
        break;
      }
      if (next.topic && !/^(and|&|\+|,)$/.test(next.joint)) break;
      if (next.topic && q > k + 1) break;
    }
    const before = parts[k - 1];
    // "it's settled then, cotton batting"
    if (
      !part.status &&
      k === 1 &&
      before?.cue &&
      !before.topic &&
      before.items.length <= 6 &&
      /^[,:]$/.test(part.joint) &&
      part.items.length <= 6
    )
      part.status = before.cue;
    if (!part.status && before?.status && /^(as|ditto|or)$/.test(part.joint)) part.status = before.status;
    // "settled on the grey backing and a cotton batting"
    if (
      !part.status &&
      before?.status === 'settled' &&
      /\b(?:(?:settled|decided|agreed) on|(?:going|go|went|gone|sticking) with|plumped for|opted for|chose|chosen|picked)\b/.test(
        before.words,
      ) &&
      /^(and|&|\+|,)$/.test(part.joint) &&
      part.items.length <= 5 &&
      !DOING.test(part.words)
    )
      part.status = 'settled';
    if (!part.status && after && (k === parts.length - 1 || (after === 'settled' && isShort(parts))))
      part.status = after;
    // "thread colour: ecru or grey?", "thread colour?"
    if (!part.status && asked) {
      const told = [part.words];
      for (let q = k + 1; q < parts.length && !parts[q]!.topic; q++) told.push(parts[q]!.words);
      if (
        /\b(?:or|which|what|how|whether|vs|versus)\b| \/ /.test(told.join(' ')) ||
        (parts.length === 1 && part.items.length <= 3)
      )
        part.status = 'open';
    }
    // "changed my mind about the backing: it's going to be the blue"
    const said = parts[k + 1];
    if (!part.status && said && !said.topic && /\bmind\b/.test(part.words) && CHOICE_CUE.test(said.words))
      part.status = 'settled';
  }
}

/** "what colour the binding must be", "how wide the border is to be", where no word says that it stands. */
const ASKS =
  /^ (?:and |or )*(?:what|which|how|whether|who|when)(?! (?:a|an) )(?!.* (?:settled|decided|agreed|chosen|picked|fixed|sorted|know|done|went|gone|did|was|were|has|have|had) ) /;

/** "The price is open, and so is the backing", "neither have I the thread", "same goes for the border": as was said of the one before. */
const isEcho = ({ words, joint, items }: Part): boolean =>
  joint === 'so is' ||
  joint === 'nor' ||
  (ECHO_BEHIND.test(words) && !items.some((x) => BLOCKS(x) || x.finding || (x.action && !x.topic))) ||
  /^ (?:neither|nor|likewise|(?:and )?also about|same (?:goes |thing )?(?:for|with)|the same (?:goes |is true )?(?:for|with|of)) /.test(
    words,
  );

/** "… and the colour for the binding neither", "the thread too", "which batting likewise". */
const ECHO_BEHIND =
  /^ (?:(?:and|or|nor|but) )*(?:the|my|its|what|which|how|who|when|where) (?:\S+ ){1,6}(?:neither|likewise|ditto|too|as well|same) $/;

/** "Tying it, no quilting. Settled.": so few words that what is said of them holds for all. */
const isShort = (parts: Part[]): boolean => parts.reduce((n, p) => n + p.items.length, 0) <= 8;
