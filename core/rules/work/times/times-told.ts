import type { Item } from '../../item.ts';
import type { Sentence } from '../../read-amounts.ts';
import type { ReaderState } from '../../reader-state.ts';
import type { DayFound } from '../../times/find-day.ts';
import type { Push } from '../bare-marks.ts';
import type { Timed } from '../rests.ts';
import type { Named } from '../task-near.ts';

/** One sentence while its time at work is read. */
export type TimesTold = {
  state: ReaderState;
  items: Item[];
  /** Its words, as they were before a verb was put in the past. */
  all: string;
  sentence: Sentence;
  preceding: Sentence | undefined;
  following: Sentence | undefined;
  days: DayFound[];
  /** Minutes on the wall's clock when the note was told. */
  now: number;
  /** The items whose words are taken. */
  used: Set<number>;
  /** Minutes of breaks told as stretches of their own. */
  broken: number;
  /** Makes the draft of a time, and takes its words. */
  push: Push;
};

export type TimedMark = Timed & { task: Named | undefined };
