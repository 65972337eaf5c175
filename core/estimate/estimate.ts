import type { Assumption, EstimateAnswer } from '../../shared/estimate-answer.ts';
import type { EstimateSpec } from '../../shared/estimate-spec.ts';
import { estimateBacking } from './backing.ts';
import { estimateBatting } from './batting.ts';
import { estimateBinding } from './binding.ts';
import { estimateBorder } from './border.ts';
import { estimateInterfacing } from './interfacing.ts';
import { estimateLabel } from './label.ts';
import { estimateOverlay } from './overlay.ts';
import { estimatePatches } from './patches.ts';
import { estimatePrice } from './price.ts';
import { quiltSizeOf } from './quilt-size.ts';
import { estimateQuilting } from './quilting.ts';
import { estimateSashing } from './sashing.ts';
import { listShopping } from './shopping-list.ts';
import { measureSides } from './sides.ts';
import { keepInReason } from './sizes-in-reason.ts';
import { estimateThread } from './thread.ts';
import { estimateTies } from './ties.ts';
import { estimateWork } from './work.ts';
import { Working } from './working.ts';

/**
 * Answers every part of the spec under its own name. Throws SpecError, which names the field, for a spec
 * that makes no sense; a part that lacks a figure asks for it instead. The same spec always gets the same
 * answer.
 */
export const estimate = (spec: EstimateSpec): EstimateAnswer => {
  const unit = spec.unit ?? 'in';
  const assumptions: Assumption[] =
    spec.unit === undefined ? [{ field: 'unit', value: 'in', why: 'inches unless said' }] : [];
  const at = (part: string): Working => new Working(part, unit);
  keepInReason(spec);
  const quilt = quiltSizeOf(spec);
  const maxSpacing = spec.batting?.maxSpacing;
  const answer: EstimateAnswer = { unit, assumptions };
  if (spec.sides) answer.sides = measureSides(spec.sides, spec.quilt, at('sides'));
  if (spec.backing) answer.backing = estimateBacking(spec.backing, quilt, at('backing'));
  if (spec.batting) answer.batting = estimateBatting(spec.batting, quilt, at('batting'));
  if (spec.binding) answer.binding = estimateBinding(spec.binding, quilt, at('binding'));
  if (spec.border) answer.border = estimateBorder(spec.border, quilt, at('border'));
  if (spec.sashing) answer.sashing = estimateSashing(spec.sashing, at('sashing'));
  if (spec.ties) {
    answer.ties = estimateTies(
      spec.ties,
      quilt,
      { rows: spec.quilt?.rows, blocks: spec.quilt?.blocks },
      maxSpacing,
      at('ties'),
    );
  }
  if (spec.quilting) answer.quilting = estimateQuilting(spec.quilting, quilt, maxSpacing, at('quilting'));
  if (spec.patches) answer.patches = estimatePatches(spec.patches, at('patches'));
  if (spec.interfacing) answer.interfacing = estimateInterfacing(spec.interfacing, at('interfacing'));
  if (spec.overlay) answer.overlay = estimateOverlay(spec.overlay, at('overlay'));
  if (spec.label) answer.label = estimateLabel(spec.label, at('label'));
  if (spec.thread) answer.thread = estimateThread(spec.thread, at('thread'));
  if (spec.work) answer.work = estimateWork(spec.work, at('work'));
  if (spec.price) answer.price = estimatePrice(spec.price, answer.work, at('price'));
  if (spec.shopping) answer.shopping = listShopping(spec.shopping, answer, spec, at('shopping'));
  return answer;
};
