import { describe, expect, it } from 'vitest';
import { entriesOf } from './say.ts';

describe('work told by its thing', () => {
  it.each([
    ['twenty five minutes on the patch at 2-3', 'patch', 'done', 25],
    ['the seam in 4-1 took me a quarter of an hour', 'resew', 'done', 15],
    ['that patch on 2-5 was an hour and five minutes start to finish', 'patch', 'done', 65],
    ['patch on 4-2 half done', 'patch', 'doing', undefined],
    ['darn in 3-3 done, 20 min', 'darn', 'done', 20],
  ])('%s', (said, action, state, minutes) =>
    expect(entriesOf('treatment', [said])).toMatchObject([
      { action, state, ...(minutes === undefined ? {} : { minutes }) },
    ]),
  );

  it.each([
    'the patch on 2-5 will take an hour',
    'the old patch on 2-5 is half off',
    'the seam in 4-1 is an inch long',
  ])('tells nothing done in “%s”', (said) =>
    expect(entriesOf('treatment', [said])).not.toContainEqual(expect.objectContaining({ state: 'done' })),
  );
});
