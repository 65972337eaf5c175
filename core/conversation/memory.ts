import type {
  Action,
  Finding,
  Material,
  RemovedObject,
  Stitch,
  Task,
  Topic,
  TreatmentState,
} from '../../shared/vocabulary.ts';
import type { Asked } from '../rules/acts/find-query.ts';
import type { Mention } from '../rules/places/find-mention.ts';
import type { LastNote } from './standing.ts';

/** Work that was decided on at places. */
export type Plan = { action: Action; places: string[]; object?: RemovedObject };

/** What later words may stand on. A plain value, so that the log can carry it from note to note. */
export type Memory = {
  /** Blocks or parts last spoken of, and the groups before them, newest last. */
  focus: string[];
  earlier: string[][];
  /** Blocks of the cloth spoken of since: what "those" are. */
  cloth?: string[];
  /** The neighbours told last, and what they were counted from: "no, the ones under it" is counted from there as well. */
  counted?: { from: string[]; to: string[] };
  /** Blocks told one by one in a note, while nothing but them is spoken of. */
  list?: string[];
  /** The last note that logged something, for corrections and answers; null after it was taken back. */
  last: LastNote | null;
  treatment?: {
    action?: Action;
    state: TreatmentState;
    stitch?: Stitch;
    object?: RemovedObject;
    places: string[];
    fabric?: string;
  };
  /** The stitch last told of that kind of treatment: what "same stitch" is, where one note between named none. */
  stitch?: { action: Action; stitch: Stitch };
  condition?: { finding: Finding; places: string[] };
  /** Which of the two was said last. */
  lastKind?: 'treatment' | 'condition';
  running?: Task;
  /** The kind of work last told, running or not: what "back at it" goes on with. */
  ran?: Task;
  /** What things called by a name turned out to be: the "felt" that was for the backing. */
  goods?: Record<string, Material>;
  /** The cloth that was decided on for a part, by its noun: what "calico" is when it is bought. */
  chosen?: Record<string, Material>;
  /** Where each kind of damage was last found. */
  found: Partial<Record<Finding, string[]>>;
  /** What was told of places, newest last: what "the tear" or "the worn ones" can mean. */
  mentions?: Mention[];
  /** Ways that stand as undecided; `passed` where another was taken at the place, so that only "no patch, then" can still speak of them. */
  open: { action: Action; places: string[]; object?: RemovedObject; passed?: true }[];
  /** What is planned and not yet told as done: what "done as planned" and "did 3-2" carry out. */
  plans?: Plan[];
  material?: { material: Material; name?: string };
  /** The part of the quilt or thing last named: what "it" is, when it is taken off. */
  thing?: string;
  topic?: string;
  /** The question to the log that the note before asked: what "and the whole quilt?" goes on with. */
  asked?: Asked;
  /** Matters that stand open, with the words they were told in: what "the brown sheet, settled" settles. */
  matters?: { about: Topic; words: string }[];
  /** The memory as it was before the last logged note, for taking it back or mending it; one level only. */
  before?: Omit<Memory, 'before' | 'last'>;
};

export const EMPTY_MEMORY: Memory = { focus: [], earlier: [], last: null, found: {}, open: [] };

/** The memory after the last note was taken back. A note to be mended stands no longer: what follows is told anew. */
export function takenBack(memory: Memory): Memory {
  const { before, ...now } = memory;
  return { ...(before ?? now), last: null };
}

/** The memory that the log carries, or an empty one for a conversation that has not begun. */
export function recall(conversation: Record<string, unknown>): Memory {
  const memory = conversation['memory'] as Memory | undefined;
  return memory ?? EMPTY_MEMORY;
}
