import type { Log } from '../../../../core/log/log.ts';
import { type ChecklistItem, checklist } from '../../../../core/record/checklist.ts';
import { hoursOf } from '../../days/state/hours-of-log.ts';
import { machineSettings, UNTIL_KNOWN } from '../../settings/state/machine-settings.ts';

/** The fields of the record as this log fills them. */
export function fieldsOfLog(log: Log): ChecklistItem[] {
  return checklist(log, { hours: hoursOf(log, (machineSettings.peek() ?? UNTIL_KNOWN).idleMin) });
}
