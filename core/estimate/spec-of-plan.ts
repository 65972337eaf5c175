import type { EstimatePlan } from '../../shared/estimate-plan.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';

type Work = NonNullable<EstimateSpec['work']>;
type Planned = NonNullable<Work['planned']>[number];

/** What a plan does otherwise. */
export type Plan = Omit<EstimatePlan, 'name' | 'clothPrice'>;

const LINES_IN = 4;

/** How many of an action the log has as done, whatever the damage. */
const doneOf = (work: Work, action: string): number =>
  (work.log ?? [])
    .flatMap((entry) => ('items' in entry ? entry.items : [entry]))
    .reduce((sum, item) => sum + (item.action === action ? (item.count ?? 1) : 0), 0);

/** What is still to do of one action, planned as another instead, or not at all. What is done stays done. */
const instead = (work: Work, from: string, to: string | null): Work => {
  let done = doneOf(work, from);
  let moved = 0;
  const kept: Planned[] = [];
  for (const item of work.planned ?? []) {
    if (item.action !== from) {
      kept.push(item);
      continue;
    }
    const many = item.count ?? 1;
    const stays = Math.min(many, done);
    done -= stays;
    moved += many - stays;
    if (stays > 0) kept.push({ ...item, count: stays });
  }
  const planned = to !== null && moved > 0 ? [...kept, { action: to, count: moved }] : kept;
  return { ...work, planned };
};

/**
 * The spec as it is by a plan. Only work that is still to do is changed. Parts whose cutting has to be
 * searched for are left out: a plan is compared by hours, price, backing, batting and thread.
 */
export const specOfPlan = (spec: EstimateSpec, plan: Plan): EstimateSpec => {
  const { patches: _p, interfacing: _i, overlay: _o, sashing: _s, label: _l, shopping: _b, ...rest } = spec;
  const result: EstimateSpec = { ...rest };
  if (plan.backingUsable !== undefined)
    result.backing = { ...withoutWidth(result.backing), usable: plan.backingUsable };
  if (plan.battingRoll !== undefined) result.batting = { ...result.batting, roll: plan.battingRoll };
  if (plan.binding) result.binding = { ...result.binding, cut: plan.binding };
  let work: Work = result.work ?? {};
  if (plan.replace) work = instead(work, 'replace', plan.replace === 'patch' ? 'patch' : null);
  if (plan.hold) {
    const blocks =
      result.quilt?.rows !== undefined && result.quilt.blocks !== undefined
        ? result.quilt.rows * result.quilt.blocks
        : undefined;
    const other = plan.hold === 'tie' ? 'quilt' : 'tie';
    work = instead(work, other, plan.hold);
    const names = new Set(work.planned?.map(({ action }) => action));
    if (!names.has(plan.hold) && !names.has(other) && blocks !== undefined)
      work = { ...work, planned: [...(work.planned ?? []), { action: plan.hold, count: blocks }] };
    if (plan.hold === 'tie') {
      delete result.quilting;
      result.ties ??= {};
    } else {
      delete result.ties;
      const spacing =
        plan.lineSpacing ??
        result.quilting?.spacing ??
        result.batting?.maxSpacing ??
        (spec.unit === 'cm' ? 10 : LINES_IN);
      result.quilting = { ...result.quilting, spacing };
    }
  }
  if (spec.work || work.planned) result.work = work;
  return result;
};

const withoutWidth = (backing: EstimateSpec['backing']): EstimateSpec['backing'] => {
  const { fabricWidth: _width, selvedge: _selvedge, ...rest } = backing ?? {};
  return rest;
};
