import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Entry } from '../../shared/entry.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
// @ts-expect-error the contract's own scorer is plain JavaScript
import { compare } from '../contract/score.mjs';

type Tally = { miss: string[]; extra: string[] };

/** A note of a corpus with its answer. The quilt stands on the first of a thread. */
export type GoldNote = {
  id: string;
  thread: string;
  at: string;
  text: string;
  quilt?: QuiltGrid;
  gold: { act?: string; query?: string; ask?: { slot: string }; entries: Entry[] };
};

const DEV = fileURLToPath(new URL('../corpus/dev', import.meta.url));

/** The development corpora by thread, each in the order in which it was said; `without` names a file to leave out. */
export function devThreads(without?: string): GoldNote[][] {
  const threads = new Map<string, GoldNote[]>();
  for (const name of readdirSync(DEV).filter((each) => each !== without))
    for (const line of readFileSync(`${DEV}/${name}`, 'utf8').split('\n').filter(Boolean)) {
      const note = JSON.parse(line) as GoldNote;
      threads.set(note.thread, [...(threads.get(note.thread) ?? []), note]);
    }
  return [...threads.values()];
}

/** The points of the contract that are missing, and those that are too much. */
export const tally = (gold: Entry[], found: Entry[]): Tally => compare(gold, found) as Tally;

/** How many points are wrong. */
export const wrongPoints = (gold: Entry[], found: Entry[]): number => {
  const { miss, extra } = tally(gold, found);
  return miss.length + extra.length;
};

/** The same found or done in two statements is one entry with the places of both. */
export function together(entries: Entry[]): Entry[] {
  const out = new Map<string, Entry>();
  for (const entry of entries) {
    const { places, name: _name, fabric: _fabric, ...slots } = entry as Entry & Record<string, unknown>;
    const key = JSON.stringify(slots);
    const one = out.get(key);
    if (one && /^(?:condition|treatment)$/.test(entry.kind) && slots['minutes'] === undefined)
      Object.assign(one, {
        places: [
          ...new Set([
            ...((one as { places?: string[] }).places ?? []),
            ...((places as string[] | undefined) ?? []),
          ]),
        ],
      });
    else out.set(one ? `${key}${out.size}` : key, { ...entry });
  }
  return [...out.values()];
}
