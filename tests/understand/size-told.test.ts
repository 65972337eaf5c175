import { describe, expect, it } from 'vitest';
import { withoutSize } from '../../core/rules/size-told.ts';
import { tokenise } from '../../core/text/tokenise.ts';

const read = (text: string): string =>
  withoutSize(tokenise(text), { rows: 4, blocks: 3 })
    .map((t) => t.w)
    .join(' ');

describe('the size of the quilt, told with its name', () => {
  it.each([
    [
      'right the crazy quilt four down three across the silk is torn',
      'right the crazy quilt , the silk is torn',
    ],
    ['the sampler, four rows of three. silk bald', 'the sampler . silk bald'],
    ['tied quilt three across by four down and a hole in 1-2', 'tied quilt , and a hole in 1 - 2'],
  ])('%s', (text, left) => expect(read(text)).toBe(left));

  it.each([
    'four down three across is torn',
    'the quilt four down two across is torn',
    'the quilt is 4 by 3 feet',
    'the quilt four by three',
  ])('leaves “%s”', (text) =>
    expect(read(text)).toBe(
      tokenise(text)
        .map((t) => t.w)
        .join(' '),
    ),
  );
});
