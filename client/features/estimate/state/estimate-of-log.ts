import { useEffect, useState } from 'preact/hooks';
import { settingOfHours } from '../../../../core/estimate/setting-of-hours.ts';
import { type SpecFromLog, specFromLog } from '../../../../core/estimate/spec-from-log.ts';
import type { QuiltState } from '../../../../core/log/state.ts';
import type { EstimateSpec } from '../../../../shared/estimate-spec.ts';
import { localTime } from '../../../words/local-time.ts';
import { hoursOf } from '../../days/state/hours-of-log.ts';
import type { Asked, Reckoned, Told } from './estimate-worker.ts';

const KEPT = 24;
const specs = new WeakMap<QuiltState, { idleMin: number; from: SpecFromLog }>();

/** The spec that the log and her own figures give, with where each figure came from. */
export function specOf(state: QuiltState, idleMin: number): SpecFromLog {
  const before = specs.get(state);
  if (before?.idleMin === idleMin) return before.from;
  const today = localTime(new Date(), state.quilt.zone).date;
  const from = specFromLog(state, settingOfHours(state, hoursOf(state, idleMin), today));
  specs.set(state, { idleMin, from });
  return from;
}

let worker: Worker | null = null;
let last = 0;
const waiting = new Map<number, (reckoned: Reckoned) => void>();
const answers = new Map<string, Promise<Reckoned>>();

function reckon(key: string, spec: EstimateSpec): Promise<Reckoned> {
  const before = answers.get(key);
  if (before) return before;
  if (!worker) {
    worker = new Worker(new URL('./estimate-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<Told>) => {
      waiting.get(data.id)?.(data.reckoned);
      waiting.delete(data.id);
    };
  }
  const id = ++last;
  const answer = new Promise<Reckoned>((resolve) => waiting.set(id, resolve));
  worker.postMessage({ id, spec } satisfies Asked);
  answers.set(key, answer);
  const oldest = answers.keys().next().value;
  if (answers.size > KEPT && oldest !== undefined) answers.delete(oldest);
  return answer;
}

/** What a spec comes to; while it is being worked out, what the one before came to. */
export function useReckoned(spec: EstimateSpec): { reckoned: Reckoned | null; busy: boolean } {
  const key = JSON.stringify(spec);
  const [state, setState] = useState<{ key: string; reckoned: Reckoned } | null>(null);
  useEffect(() => {
    let wanted = true;
    void reckon(key, spec).then((reckoned) => {
      if (wanted) setState({ key, reckoned });
    });
    return () => {
      wanted = false;
    };
  }, [key]);
  return { reckoned: state?.reckoned ?? null, busy: state?.key !== key };
}
