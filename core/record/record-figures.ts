import type { EstimateAnswer, PriceAnswer } from '../../shared/estimate-answer.ts';
import type { Task } from '../../shared/vocabulary.ts';
import type { Hours } from '../hours/hours.ts';

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

/** The hours of a log, down to what the record tells. A length without clock times keeps its day alone. */
export function recordHours(hours: Hours): RecordHours {
  return {
    totalMin: hours.totalMin,
    byTask: hours.byTask.map(({ task, minutes }) => ({ ...(task ? { task } : {}), minutes })),
    byDay: hours.byDay.map(({ date, minutes }) => ({ date, minutes })),
    spans: hours.spans.map(({ id, task, how, start, end, minutes }) => ({
      id,
      ...(task ? { task } : {}),
      ...(how === 'length' ? {} : { start, end }),
      date: start.slice(0, 10),
      minutes,
      inferred: how === 'inferred',
    })),
  };
}

/** The parts of an estimate that may stand in a client's paper; everything else of it stays out. */
export type RecordEstimate = Pick<EstimateAnswer, 'work' | 'price'> & {
  /** The price of what was done, where it is charged by the hour. */
  cameOut?: PriceAnswer;
};

/** A price that lacks the labour is no price to put before an owner: it is left out. */
export const withWholePrice = ({ work, price, cameOut }: RecordEstimate): RecordEstimate => ({
  ...(work ? { work } : {}),
  ...(price && !price.lacksLabour ? { price, ...(cameOut ? { cameOut } : {}) } : {}),
});
