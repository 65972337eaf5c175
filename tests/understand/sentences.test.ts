import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import type { Conversation } from '../../shared/note.ts';
import type { QuiltGrid } from '../../shared/quilt.ts';
// @ts-expect-error the contract's own scorer is plain JavaScript
import { compare } from '../contract/score.mjs';
import { AFTERNOON, QUILT } from './two-cloths.ts';

type Sentence = {
  text: string;
  quilt: QuiltGrid;
  goesOn: boolean;
  act: string;
  ask?: string;
  entries: Record<string, unknown>[];
};

const FILE = fileURLToPath(new URL('../corpus/sentences.txt', import.meta.url));
const NUMBERS = new Set(['minutes', 'quantity', 'value']);

/** `material material=thread quantity=2 cost=3.5,each` as an entry of the contract. */
function readEntry(line: string): Record<string, unknown> {
  const [kind, ...slots] = line.trim().split(' ');
  const entry: Record<string, unknown> = { kind };
  for (const slot of slots) {
    const [name, value] = slot.split('=') as [string, string];
    if (name === 'places') entry[name] = value ? value.split(',') : [];
    else if (name === 'cost')
      entry[name] = { amount: Number.parseFloat(value), ...(value.endsWith(',each') ? { each: true } : {}) };
    else entry[name] = NUMBERS.has(name) ? Number(value) : value;
  }
  return entry;
}

/** The file's sections, each a heading and its sentences. */
function readSections(text: string): { heading: string; sentences: Sentence[] }[] {
  const sections: { heading: string; sentences: Sentence[] }[] = [];
  let quilt: QuiltGrid = QUILT;
  for (const line of text.split('\n')) {
    if (line.startsWith('## ')) {
      quilt = QUILT;
      sections.push({ heading: line.slice(3), sentences: [] });
    } else if (line.startsWith('{')) quilt = JSON.parse(line) as QuiltGrid;
    else if (!line.trim() || line.startsWith('#')) continue;
    else if (line.startsWith('  act ')) sections.at(-1)!.sentences.at(-1)!.act = line.slice(6).trim();
    else if (line.startsWith('  ask ')) sections.at(-1)!.sentences.at(-1)!.ask = line.slice(6).trim();
    else if (line.startsWith('  ')) sections.at(-1)!.sentences.at(-1)!.entries.push(readEntry(line));
    else
      sections.at(-1)!.sentences.push({
        text: line.replace(/^\+ /, ''),
        quilt,
        goesOn: line.startsWith('+ '),
        act: 'log',
        entries: [],
      });
  }
  return sections;
}

/** The sentences that are not understood as they were meant, with what is missing and what is too much. */
function misread(sentences: Sentence[]): string[] {
  let before: Conversation = SILENCE;
  return sentences.flatMap(({ text, quilt, goesOn, act, ask, entries }) => {
    const { reading, conversation } = readNote(text, {
      at: AFTERNOON,
      quilt,
      conversation: goesOn ? before : SILENCE,
    });
    before = conversation;
    if (act !== reading.act) return [`${text}: ${reading.act} instead of ${act}`];
    if (ask !== undefined && ask !== (reading.ask?.slot ?? 'nothing'))
      return [`${text}: asks for ${reading.ask?.slot ?? 'nothing'} instead of ${ask}`];
    const { miss, extra } = compare(
      entries,
      reading.entries.map(({ entry }) => entry),
    ) as { miss: string[]; extra: string[] };
    return miss.length + extra.length
      ? [`${text}: missing ${miss.join(' ')}; too much ${extra.join(' ')}`]
      : [];
  });
}

describe('sentences of ordinary talk', () => {
  it.each(readSections(readFileSync(FILE, 'utf8')))('$heading', ({ sentences }) => {
    expect(sentences.length).toBeGreaterThan(5);
    expect(misread(sentences)).toEqual([]);
  });
});
