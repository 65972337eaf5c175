import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import { wordsBetween } from '../words-between.ts';

/** "…, though in the last of the three it's only thin", "but 3-2 is sound": some of what was just told is told apart. */
const BUT = /^(but|though|although|whereas|while|except)$/;
/** It is less, or other, than what was said of the rest. */
const LESS =
  / (?:only|just|merely|no more than|fine|sound|ok|okay|good|all right|alright|perfect|solid|clean|escaped|simply|barely|nothing worse than|at worst) /;
const AS_WELL = / (?:too|also|as well|well|on top|even|besides|moreover|worse|worst) /;

const ONLY = /^ (?:(?:it 's|it is|it was|there 's|and|but) )*(?:only|just) /;

/** Takes out of a finding the places that the same sentence then tells apart from it. */
export function tellApart(drafts: Draft[], clauses: Clause[]): void {
  leaveOut(drafts);
  for (let n = 1; n < drafts.length; n++) {
    const apart = drafts[n]!;
    const whole = drafts[n - 1]!;
    const a = apart.entry;
    const e = whole.entry;
    if (a.kind !== 'condition' || e.kind !== 'condition' || a.finding === e.finding) continue;
    if (apart.sentence !== whole.sentence || !a.places?.length || !e.places) continue;
    const left = e.places.filter((p) => !a.places!.includes(p));
    if (!left.length || left.length + a.places.length !== e.places.length) continue;
    const clause = clauses[apart.clause];
    const words = wordsBetween(clause?.items ?? []);
    const turned = BUT.test(clause?.joint ?? '') || BUT.test(clause?.items[0]?.w ?? '');
    // "the rest of row two is fine, it's only 2-3 that's torn", "row two is torn, only 2-3 is sound"
    const alone = ONLY.test(words) && (a.finding === 'sound') !== (e.finding === 'sound');
    if ((turned || alone) && !AS_WELL.test(words) && (alone || LESS.test(words) || a.finding === 'sound'))
      e.places = left;
  }
}

/** "netted row four but left 4-3 alone": what was left is not among what the deed just told was done to. */
function leaveOut(drafts: Draft[]): void {
  for (let n = 1; n < drafts.length; n++) {
    const a = drafts[n]!;
    if (a.entry.kind !== 'treatment' || a.entry.action !== 'leave' || a.placed !== 'said') continue;
    const whole = drafts.slice(0, n).findLast((d) => d.entry.kind === 'treatment');
    const e = whole?.entry;
    if (e?.kind !== 'treatment' || whole!.sentence !== a.sentence || !e.places || e.state === 'dropped')
      continue;
    const out = a.entry.places ?? [];
    const left = e.places.filter((p) => !out.includes(p));
    if (out.length && left.length && left.length + out.length === e.places.length) e.places = left;
  }
}
