import type { QuiltState, RecordAsking } from './state.ts';

/** A question is answered by what is said soon after it; later words are about the work. */
const OPEN_FOR_MS = 10 * 60_000;
/** The page's clock and the server's may differ. */
const CLOCKS_DIFFER_MS = 60_000;

/** The field that the record asks for at a moment, while its question is still fresh. */
export function openQuestion(log: Pick<QuiltState, 'recordAsking'>, at: string): RecordAsking | undefined {
  const asking = log.recordAsking;
  if (!asking) return undefined;
  const passedMs = Date.parse(at) - Date.parse(asking.at);
  return passedMs >= -CLOCKS_DIFFER_MS && passedMs <= OPEN_FOR_MS ? asking : undefined;
}
