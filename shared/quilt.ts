import { z } from 'zod';
import { Place } from './entry.ts';
import { LIMITS } from './limits.ts';
import { TASKS } from './vocabulary.ts';

export { LIMITS };

const zoneIsKnown = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};

const span = z.number().int().min(1).max(LIMITS.blocks);

/** How a top is made that is no plain grid. Left out, or empty: every row has the same blocks, one beside the other. */
export const QuiltShape = z.object({
  /** Blocks in each row from the top; a row that is not listed has as many as the grid. */
  rowLengths: z.array(span).max(LIMITS.rows).optional(),
  /** How a row with fewer blocks lies: over the whole width with wider blocks, or with blocks of one width. */
  shortRows: z.enum(['stretched', 'left', 'centred', 'right']).optional(),
  /** Blocks that take more than one place, by their upper left place. */
  wide: z.record(z.string().regex(/^\d+-\d+$/), z.object({ across: span, down: span })).optional(),
  /** Hexagons stand on a point, and each row lies in the notches of the one above. */
  outline: z.enum(['square', 'hexagon']).optional(),
});
export type QuiltShape = z.infer<typeof QuiltShape>;

/** What the reader of notes must know of the quilt: its grid and the fabrics and places named so far. */
export const QuiltGrid = z.object({
  rows: z.number().int().min(1).max(LIMITS.rows),
  /** Blocks in a row; where the rows are not alike, in the longest. */
  blocks: z.number().int().min(1).max(LIMITS.blocks),
  fabrics: z.record(z.string().min(1).max(100), z.array(Place).max(3600)).optional(),
  shape: QuiltShape.optional(),
  /** Names for places: "medallion", "star block" -> its blocks or parts. */
  placeNames: z.record(z.string().min(1).max(60), z.array(Place).min(1).max(3600)).optional(),
});
export type QuiltGrid = z.infer<typeof QuiltGrid>;

/** The details that a person fills in when she makes a quilt, and may change later. */
export const QuiltDetails = QuiltGrid.extend({
  name: z.string().trim().min(1, 'give the quilt a name').max(200),
  /** A number of her own, for the label and the papers. */
  number: z.string().max(60).optional(),
  owner: z.string().max(200).default(''),
  /** Who does the work and signs the papers. */
  mender: z.string().max(200).default(''),
  maker: z.string().max(400).optional(),
  origin: z.string().max(1000).optional(),
  madeWhen: z.string().max(200).optional(),
  inscriptions: z.string().max(2000).optional(),
  construction: z.string().max(2000).optional(),
  piecing: z.string().max(1000).optional(),
  /** Ties or quilting, and how closely. */
  fastening: z.string().max(1000).optional(),
  edgeFinish: z.string().max(1000).optional(),
  fibres: z.string().max(1000).optional(),
  /** What is known of earlier mending, also that there is none to be seen. */
  earlierRepairs: z.string().max(1000).optional(),
  /** Light, position and means of the examination. */
  examination: z.string().max(1000).optional(),
  /** Whether anybody beside the owner has a say. */
  authority: z.string().max(1000).optional(),
  /** What was taken out of the piece, also that nothing was. */
  takenOut: z.string().max(1000).optional(),
  aim: z.string().max(2000).optional(),
  unit: z.enum(['in', 'cm']).default('in'),
  /** IANA time zone of the work. */
  zone: z.string().refine(zoneIsKnown, 'an IANA time zone such as Europe/London').default('UTC'),
  /** Tasks whose hours are counted and not charged. */
  notBilled: z.array(z.enum(TASKS)).max(TASKS.length).optional(),
  /** ISO 4217. */
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'three letters of ISO 4217, such as GBP')
    .default('GBP'),
  spelling: z.enum(['british', 'american']).default('british'),
  /** Words taught by the user: what is heard or written -> what it means. */
  taught: z.record(z.string().min(1).max(60), z.string().min(1).max(60)).optional(),
});
export type QuiltDetails = z.infer<typeof QuiltDetails>;

export const Quilt = QuiltDetails.extend({ id: z.string(), madeAt: z.string() });
export type Quilt = z.infer<typeof Quilt>;
