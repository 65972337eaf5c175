import type { EstimateAnswer } from '../../shared/estimate-answer.ts';
import type { Task } from '../../shared/vocabulary.ts';

/** Worked time, as the record tells it. Times are local minutes of the quilt's zone. */
export type RecordHours = {
  totalMin: number;
  byTask: { task?: Task; minutes: number }[];
  byDay: { date: string; minutes: number }[];
  spans: {
    id: string;
    task?: Task;
    /** `2026-03-14T09:00`; absent where only a length was said. */
    start?: string;
    end?: string;
    date: string;
    minutes: number;
    inferred: boolean;
  }[];
};

/** The parts of an estimate that may stand in a client's paper; everything else of it stays out. */
export type RecordEstimate = Pick<EstimateAnswer, 'work' | 'price' | 'shopping'>;
