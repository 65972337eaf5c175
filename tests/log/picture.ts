import type { Log } from '../../core/log/log.ts';

/** Everything that a log says, as a plain value, to compare logs by. */
export function picture(log: Log) {
  return {
    seq: log.seq,
    quilt: log.quilt,
    notes: log.notes,
    entries: log.entries,
    conversation: log.conversation,
    confirmedDays: log.confirmedDays,
    handSpans: log.handSpans,
    removedSpans: log.removedSpans,
    estimateSettings: log.estimateSettings,
    settingNotes: log.settingNotes,
    plans: log.plans,
    recordMade: log.recordMade,
    recordEdits: log.recordEdits,
    recordAsking: log.recordAsking,
    detailNotes: log.detailNotes,
    agreements: log.agreements,
    photos: log.photos,
    recordings: log.recordings,
    removedAudio: log.removedAudio,
    events: log.eventsSince(0),
  };
}
