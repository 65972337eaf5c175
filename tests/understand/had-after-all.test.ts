import { describe, expect, it } from 'vitest';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';
import { AFTERNOON, QUILT } from './two-cloths.ts';

const uses = (text: string): (string | undefined)[] =>
  readNote(text, { at: AFTERNOON, quilt: QUILT, conversation: SILENCE }).reading.entries.flatMap(
    ({ entry: e }) => (e.kind === 'material' ? [`${e.material} ${e.use} ${e.quantity ?? ''}`.trim()] : []),
  );

describe('what was to be got and is there after all', () => {
  it.each([
    ['to get a reel of white thread, hang on, I have one of those in the tin', ['thread on-hand 1']],
    [
      'need a spool of thread and two packs of needles, scrap the needles, I found some',
      ['thread needed 1', 'needle on-hand'],
    ],
    ['need calico and wadding, the wadding I have got', ['fabric needed', 'batting on-hand']],
  ])('%s', (text, told) => {
    expect(uses(text)).toEqual(told);
  });

  it('leaves a count that is told beside the want', () => {
    expect(uses('need five skeins of floss, I have two in the box')).toEqual([
      'tie-thread needed 5',
      'tie-thread on-hand 2',
    ]);
    expect(uses('need a spool of thread, but I have got the binding off')).toEqual(['thread needed 1']);
  });
});
