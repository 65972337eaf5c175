import type { RecordEstimate, RecordHours } from '../record-figures.ts';
import type { RecordView } from '../record-view.ts';

/** What a paper is written from. `date` is the local date it is written for. */
export type Paper = {
  view: RecordView;
  date: string;
  hours?: RecordHours;
  estimate?: RecordEstimate;
};
