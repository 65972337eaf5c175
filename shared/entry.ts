import { z } from 'zod';
import {
  ACTIONS,
  DECISION_STATUSES,
  FINDINGS,
  LENGTH_UNITS,
  MARKS,
  MATERIAL_UNITS,
  MATERIALS,
  MEASURES,
  OBJECTS,
  PARTS,
  STATES,
  STITCHES,
  TASKS,
  TOPICS,
  USES,
} from './vocabulary.ts';

/** `ROW-BLOCK` counted from 1 (row from the top, block from the left), or a named part. */
export const Place = z.union([
  z.enum(PARTS),
  z.string().regex(/^[1-9]\d{0,3}-[1-9]\d{0,3}$/, 'a place is ROW-BLOCK (for example 3-2) or a named part'),
]);
export type Place = z.infer<typeof Place>;

/** A local minute of the quilt's own zone, `2026-03-14T09:00`. */
export const LocalMinute = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d$/, 'a local minute is written 2026-03-14T09:00');

const places = z.array(Place).max(20_000);
const words = z.string().max(500);
const positive = z.number().finite().positive();

export const ConditionEntry = z.strictObject({
  kind: z.literal('condition'),
  finding: z.enum(FINDINGS),
  places: places.optional(),
  /** The name of the cloth, or the words for it. */
  fabric: words.optional(),
});
export const TreatmentEntry = z.strictObject({
  kind: z.literal('treatment'),
  action: z.enum(ACTIONS).optional(),
  state: z.enum(STATES),
  places: places.optional(),
  object: z.enum(OBJECTS).optional(),
  stitch: z.enum(STITCHES).optional(),
  /** Working time of this treatment alone, in minutes. */
  minutes: positive.optional(),
  fabric: words.optional(),
});
export const MaterialEntry = z.strictObject({
  kind: z.literal('material'),
  material: z.enum(MATERIALS).optional(),
  use: z.enum(USES),
  quantity: positive.optional(),
  unit: z.enum(MATERIAL_UNITS).optional(),
  /** Amount as said, in the quilt's currency; `each` where the price is by the unit. */
  cost: z.strictObject({ amount: z.number().finite(), each: z.literal(true).optional() }).optional(),
  name: words.optional(),
});
export const MeasurementEntry = z.strictObject({
  kind: z.literal('measurement'),
  of: z.enum(MEASURES),
  value: positive.optional(),
  unit: z.enum(LENGTH_UNITS).optional(),
  places: places.optional(),
});
export const WorkEntry = z.strictObject({
  kind: z.literal('work'),
  task: z.enum(TASKS).optional(),
  mark: z.enum(MARKS).optional(),
  time: LocalMinute.optional(),
  start: LocalMinute.optional(),
  end: LocalMinute.optional(),
  /** Minutes worked, any break taken off. */
  minutes: positive.optional(),
});
export const DecisionEntry = z.strictObject({
  kind: z.literal('decision'),
  about: z.enum(TOPICS),
  status: z.enum(DECISION_STATUSES),
});
export const RemarkEntry = z.strictObject({
  kind: z.literal('remark'),
  places: places.optional(),
});

/** What one clause of a note says, in the terms of the trade. */
export const Entry = z.discriminatedUnion('kind', [
  ConditionEntry,
  TreatmentEntry,
  MaterialEntry,
  MeasurementEntry,
  WorkEntry,
  DecisionEntry,
  RemarkEntry,
]);
export type ConditionEntry = z.infer<typeof ConditionEntry>;
export type TreatmentEntry = z.infer<typeof TreatmentEntry>;
export type MaterialEntry = z.infer<typeof MaterialEntry>;
export type MeasurementEntry = z.infer<typeof MeasurementEntry>;
export type WorkEntry = z.infer<typeof WorkEntry>;
export type DecisionEntry = z.infer<typeof DecisionEntry>;
export type RemarkEntry = z.infer<typeof RemarkEntry>;
export type Entry = z.infer<typeof Entry>;

/**
 * Where one slot of an entry came from: the rule that gave it and the words it stands on.
 * `from` and `to` are UTF-16 offsets into the note's text, half open. `said` means that the
 * words themselves give the value, `implied` that it follows from the conversation or the quilt.
 */
export const Origin = z.strictObject({
  rule: z.string(),
  how: z.enum(['said', 'implied']),
  from: z.number().int().nonnegative(),
  to: z.number().int().nonnegative(),
  /** The words themselves, where they stand in an earlier note that this one mends; the offsets are then that note's. */
  words: z.string().max(500).optional(),
});
export type Origin = z.infer<typeof Origin>;

/** An entry together with the origin of each of its slots; key `entry` is the clause itself. */
export const ReadEntry = z.strictObject({
  entry: Entry,
  origins: z.record(z.string(), Origin),
  /** The reason as she said it, where she said one ("because the silk is splitting"). */
  reason: z.string().max(2000).optional(),
});
export type ReadEntry = z.infer<typeof ReadEntry>;
