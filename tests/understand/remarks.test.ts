import { describe, expect, it } from 'vitest';
import { say } from './say.ts';

const remarks = (note: string) => say(note).entries.filter((e) => e.entry.kind === 'remark');

describe('remarks', () => {
  it.each([
    'her great aunt made it the winter she was snowed in',
    'this was on a bed in a boarding house for forty years',
    'it belonged to a lighthouse keeper',
    "fella that owns it says it went overseas in his daddy's foot locker",
    "this one here was somebody's grandma's out on a ranch",
    "she isn't bothered about the stains, only the holes",
    'looks like it was tied first and quilted later',
    'the owner says it went round the logging camps for thirty years',
    'her brother reckons it used to hang in the chapel porch',
    'the owner says it was rescued from a skip in 1974',
    'it crossed the atlantic in a sea chest',
    'made from feed sacks during the depression',
    'my client wants the old stains left alone',
    "he'd like it ready to hang in the hall",
    'the family asked that nothing be bleached',
    'the curator would prefer net to patching',
    'a lock of hair was sewn into the binding',
    "there's a date stitched in the corner, 1887",
    "Her great-grandfather's army blankets are the middle layer, apparently.",
    'This one spent the war in an air raid shelter.',
    "he'd hate for it to be washed",
    'she was very clear nothing gets thrown away',
  ])('%s is one remark', (note) => {
    expect(remarks(note)).toHaveLength(1);
    expect(say(note).entries).toHaveLength(1);
  });

  it('keeps what was found beside the story', () => {
    const reading = say('It came off a bed in a convent. 3-2 is torn.');
    expect(reading.entries.map((e) => e.entry.kind).sort()).toEqual(['condition', 'remark']);
  });

  it('says where a mark is', () => {
    expect(remarks('someone has pencilled a number on the back')[0]!.entry).toEqual({
      kind: 'remark',
      places: ['backing'],
    });
  });

  it.each([
    'seam sewn by hand on 2-2',
    '3-2 wants a patch',
    'patched 2-2 and it came out well',
    'the patch came off 3-2',
    'she wants it back by june 3',
    'sew a label with her name on the back',
    'took the patch off 2-2, it was sewn on by machine',
    '3-3 was torn along the edge and i made a patch for it from brown gingham',
  ])('%s has none', (note) => {
    expect(remarks(note)).toEqual([]);
  });
});
