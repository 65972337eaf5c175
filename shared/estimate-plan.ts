import { z } from 'zod';

const width = z.number().positive().max(1000);

/** What is done otherwise in a plan to set beside others; what is left out stays as it is. */
export const EstimatePlan = z.strictObject({
  name: z.string().min(1).max(40),
  /** How the layers are held together. */
  hold: z.enum(['tie', 'quilt']).optional(),
  /** Distance of the lines of quilting, in the spec's unit. */
  lineSpacing: width.optional(),
  /** What is done with the blocks that are to be replaced. */
  replace: z.enum(['patch', 'leave']).optional(),
  /** Usable width of the backing's cloth. */
  backingUsable: width.optional(),
  /** Width of the roll that the batting comes from. */
  battingRoll: width.optional(),
  binding: z.enum(['straight', 'bias']).optional(),
  /** What the cloth of backing and binding costs by the yard (inches) or the metre (centimetres), in the quilt's currency. */
  clothPrice: z.number().nonnegative().max(100_000).optional(),
});
export type EstimatePlan = z.infer<typeof EstimatePlan>;

export const EstimatePlans = z.array(EstimatePlan).max(4);
