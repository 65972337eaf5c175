import { z } from 'zod';
import { QuiltShape } from './quilt.ts';
import { RECOGNISER_MODEL } from './recogniser-model.ts';

/** Settings of this machine, kept by lowdb. */
export const Settings = z.object({
  version: z.literal(1).default(1),
  /** Folder name under models/ of the recogniser. */
  model: z.string().default(RECOGNISER_MODEL),
  endPauseMs: z.number().int().min(300).max(3000).default(600),
  listening: z.enum(['always', 'held', 'on-call']).default('held'),
  callPhrase: z.string().max(60).default('thimble on'),
  dismissPhrase: z.string().max(60).default('thimble off'),
  tones: z.boolean().default(true),
  spokenReplies: z.boolean().default(true),
  keepAudio: z.enum(['all', 'until-record', 'none']).default('all'),
  theme: z.enum(['system', 'light', 'dark']).default('system'),
  /** Minutes without a note after which an inferred stretch of work is closed. */
  idleMin: z.number().int().min(5).max(240).default(30),
  backupFolder: z.string().optional(),
});
export type Settings = z.infer<typeof Settings>;

/** One line of the index of quilts. */
export const QuiltCard = z.object({
  id: z.string(),
  name: z.string(),
  owner: z.string(),
  rows: z.number(),
  blocks: z.number(),
  shape: QuiltShape.optional(),
  madeAt: z.string(),
  lastAt: z.string(),
  entries: z.number(),
});
export type QuiltCard = z.infer<typeof QuiltCard>;

/** A phone or tablet that was let in from the network. */
export const PairedDevice = z.object({
  id: z.string(),
  name: z.string(),
  pairedAt: z.string(),
  lastSeenAt: z.string(),
});
export type PairedDevice = z.infer<typeof PairedDevice>;

/** How another device is let in, as the machine itself is told. */
export const Pairing = z.object({
  /** False where the server does not listen on the network. */
  on: z.boolean(),
  links: z.array(z.string()).optional(),
  state: z.enum(['open', 'used', 'locked', 'expired']).optional(),
  code: z.string().optional(),
  expiresAt: z.string().optional(),
});
export type Pairing = z.infer<typeof Pairing>;
