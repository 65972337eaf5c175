import { describe, expect, it } from 'vitest';
import { entriesOf, say } from './say.ts';

const OPEN = '4-4: net or leave it, not sure';

describe('what the owner says of ways that stand open', () => {
  it.each([
    ['owner wants the net', 'overlay', 'planned'],
    ["she'd like it left", 'leave', 'done'],
    ['museum would rather leave it', 'leave', 'done'],
    ['the family went for net, not leaving it', 'overlay', 'planned'],
  ])('%s', (said, action, state) =>
    expect(entriesOf('treatment', [OPEN, said])).toMatchObject([{ action, state }]),
  );

  it('is a yes or a no where one way stands open', () => {
    expect(entriesOf('treatment', ['thinking of netting 4-4', 'client said no'])).toMatchObject([
      { action: 'overlay', state: 'dropped' },
    ]);
    expect(entriesOf('treatment', ['thinking of netting 4-4', 'the museum says go ahead'])).toMatchObject([
      { action: 'overlay', state: 'planned' },
    ]);
  });

  it('is a wish and a remark where it names none of them, or nothing stands open', () => {
    expect(say([OPEN, 'she wants it hung in the hall']).entries.map((e) => e.entry.kind)).toEqual(['remark']);
    expect(say(['owner wants the net kept']).entries.map((e) => e.entry.kind)).toEqual(['remark']);
  });
});
