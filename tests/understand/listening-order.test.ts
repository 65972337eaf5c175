import { describe, expect, it } from 'vitest';
import { findListeningOrder } from '../../core/conversation/listening-order.ts';
import { readNote, SILENCE } from '../../core/conversation/read-note.ts';

const LOCAL = '2026-03-14T14:30';
const heed = (said: string) => findListeningOrder(said, LOCAL);

describe('orders to listen or not', () => {
  it.each([
    ['Not listening for ten minutes.', { order: 'pause', minutes: 10 }],
    ["I'm not listening for an hour and a half", { order: 'pause', minutes: 90 }],
    ['Right, stop listening for a quarter of an hour, please.', { order: 'pause', minutes: 15 }],
    ['Thimble, stop listening for the next hour.', { order: 'pause', minutes: 60 }],
    ["Don't listen for a couple of minutes.", { order: 'pause', minutes: 2 }],
    ['Pause for 10 minutes. Thank you.', { order: 'pause', minutes: 10 }],
    ['Stop listening until half past three.', { order: 'pause', until: '2026-03-14T15:30' }],
    ['Stop listening till two.', { order: 'pause', until: '2026-03-15T02:00' }],
    ['Stop listening till I say so.', { order: 'pause' }],
    ["Don't listen to this.", { order: 'pause' }],
    ['Microphone off, please.', { order: 'pause' }],
    ['Listen again.', { order: 'resume' }],
    ['Okay, you can start listening again now.', { order: 'resume' }],
    ['Back on.', { order: 'resume' }],
    ['Listen only when I call you.', { order: 'way', way: 'on-call' }],
    ['Always listen.', { order: 'way', way: 'always' }],
    ['Only listen while I hold the pedal down.', { order: 'way', way: 'held' }],
  ])('%s', (said, order) => {
    expect(heed(said)).toEqual({ order, rest: '' });
  });

  it('at the end of a note, whose other words stay a note', () => {
    expect(heed('Row two, block one is stained. Not listening for five minutes.')).toEqual({
      order: { order: 'pause', minutes: 5 },
      rest: 'Row two, block one is stained.',
    });
    expect(heed('Patched row one, now stop listening till I call you')?.rest).toBe('Patched row one');
  });

  it.each([
    'He is not listening.',
    "The kids don't listen to me for ten minutes together.",
    'Listen to that!',
    'Stop.',
    'Not listening.',
    'Pause',
    'Pause the binding for ten minutes.',
    'Back on the binding.',
    'The batting goes back on.',
    'I stopped listening to the radio for an hour.',
    'Put the binding back on, ten minutes.',
  ])('no order: %s', (said) => {
    expect(heed(said)).toBeUndefined();
  });

  it('by itself it is kept beside the work: ten minutes of not listening are no ten minutes of work', () => {
    const { reading } = readNote('Not listening for ten minutes.', {
      at: '2026-03-14T14:30:00Z',
      quilt: { rows: 4, blocks: 4 },
      conversation: SILENCE,
    });
    expect(reading).toMatchObject({ act: 'aside', entries: [], ask: null });
  });
});
