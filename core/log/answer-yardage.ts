import type { Topic } from '../../shared/vocabulary.ts';
import { estimate } from '../estimate/estimate.ts';
import { SpecError } from '../estimate/spec-error.ts';
import { specFromLog } from '../estimate/spec-from-log.ts';
import type { QuiltState } from './state.ts';

const PARTS = [
  'backing',
  'batting',
  'binding',
  'border',
  'patches',
  'interfacing',
  'overlay',
  'ties',
] as const;
type Part = (typeof PARTS)[number];
const PART_OF: Partial<Record<Topic, Part>> = {
  backing: 'backing',
  batting: 'batting',
  binding: 'binding',
  border: 'border',
  fabric: 'patches',
  tying: 'ties',
};

/** How much cloth a part takes, or every part that can be worked out, with the sums on paper as the working. */
export function answerYardage(
  state: QuiltState,
  about: Topic | undefined,
): { text: string; working: string[] } {
  const part = about === undefined ? undefined : PART_OF[about];
  if (about !== undefined && part === undefined) {
    return { text: 'No cloth is worked out for that.', working: [] };
  }
  try {
    const answer = estimate(specFromLog(state).spec);
    const wanted = part === undefined ? PARTS : [part];
    const said: string[] = [];
    const working: string[] = [];
    for (const name of wanted) {
      const found = answer[name] as
        | { yards?: number; metres?: number; question?: string; working: string[] }
        | undefined;
      if (!found) continue;
      if (found.yards !== undefined)
        said.push(`${found.yards} ${found.yards > 1 ? 'yards' : 'yard'} for the ${name}`);
      else if (found.metres !== undefined) said.push(`${found.metres} metres for the ${name}`);
      else if (found.question !== undefined && part !== undefined)
        said.push(found.question.replace(/[.?]$/, ''));
      else continue;
      working.push(...found.working);
    }
    if (said.length > 0) return { text: `${said.join('; ')}.`, working };
    return { text: 'No cloth can be worked out yet: measure the quilt first.', working: [] };
  } catch (error) {
    if (error instanceof SpecError)
      return { text: `No cloth can be worked out: ${error.message}`, working: [] };
    throw error;
  }
}
