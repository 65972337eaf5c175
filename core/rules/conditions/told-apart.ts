import type { Clause } from '../clause/clause.ts';
import type { Draft } from '../draft.ts';
import { wordsBetween } from '../words-between.ts';

/** "…, though in the last of the three it's only thin", "but 3-2 is sound": some of what was just told is told apart. */
const BUT = /^(but|though|although|whereas|while|except)$/;
/** It is less, or other, than what was said of the rest. */
const LESS =
  / (?:only|just|merely|no more than|fine|sound|ok|okay|good|all right|alright|perfect|solid|clean|escaped|simply|barely|nothing worse than|at worst) /;
const AS_WELL = / (?:too|also|as well|well|on top|even|besides|moreover|worse|worst) /;

/** Takes out of a finding the places that the same sentence then tells apart from it. */
export function tellApart(drafts: Draft[], clauses: Clause[]): void {
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
    if (turned && !AS_WELL.test(words) && (LESS.test(words) || a.finding === 'sound')) e.places = left;
  }
}
