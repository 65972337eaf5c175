import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

const read = (text: string): string[] => {
  const { reading } = readNote(text, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE });
  return [
    reading.act,
    ...reading.entries.map(({ entry: e }) => (e.kind === 'decision' ? `${e.about} ${e.status}` : e.kind)),
  ];
};

describe('a list of matters told in a whole sentence', () => {
  it('is read under the heading that it begins with', () => {
    expect(
      read(
        "what's settled is it only gets washed in cold and what's still open is the thread and the border",
      ),
    ).toEqual(['log', 'washing settled', 'thread open', 'border open']);
    expect(read('not decided yet are the thread the batting and whether to quilt it by hand').sort()).toEqual(
      ['batting open', 'log', 'quilting open', 'thread open'],
    );
  });

  it('is no question, and one matter alone is no list', () => {
    expect(read("what's still open?")[0]).toBe('query');
    expect(read("I haven't decided on the binding")).toEqual(['log', 'binding open']);
    expect(read("haven't decided if 2-3 gets a patch or a darn").slice(1)).toEqual([
      'treatment',
      'treatment',
    ]);
  });
});
