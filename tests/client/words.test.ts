import { describe, expect, it } from 'vitest';
import { entryOfForm, formValues } from '../../client/features/entries/state/entry-form.ts';
import { readPlaces } from '../../client/features/quilts/state/read-places.ts';
import { entryWords } from '../../client/words/entry-words.ts';
import { lengthWords, spanWords } from '../../client/words/figure-words.ts';
import { instantInZone, localTime } from '../../client/words/local-time.ts';
import { placesWords } from '../../client/words/place-words.ts';
import { Entry } from '../../shared/entry.ts';
import { scenarioEvents } from './scenario.ts';

const grid = { rows: 6, blocks: 5 };
const quilt = { ...grid, spelling: 'british' as const, currency: 'GBP' };

describe('places in words', () => {
  it.each([
    [['3-2'], 'row 3, block 2'],
    [['6-1', '6-2', '6-3', '6-4', '6-5'], 'row 6'],
    [['1-1', '1-2'], 'row 1, blocks 1 and 2'],
    [['border-top'], 'top border'],
    [['4-1', '4-2', '4-3', '4-4', '4-5', '2-2'], 'row 4 and row 2, block 2'],
  ])('%j is %s', (places, words) => {
    expect(placesWords(places, grid)).toBe(words);
  });
});

describe('places typed into a form', () => {
  it('reads blocks, rows and columns', () => {
    expect(readPlaces('1-2, 4-4', grid)).toEqual(['1-2', '4-4']);
    expect(readPlaces('3-*', grid)).toHaveLength(5);
    expect(readPlaces('*-2', grid)).toHaveLength(6);
  });
  it('says what is wrong with a block that is not there, and with what is none', () => {
    expect(readPlaces('7-1', grid)).toMatchObject({ fault: expect.stringContaining('6 rows of 5 blocks') });
    expect(readPlaces('gingham', grid)).toMatchObject({ fault: expect.stringContaining('is no block') });
  });
});

describe('figures in words', () => {
  it('writes eighths as makers do', () => {
    expect([1.375, 0.5, 2, 5.75, 2.2].map(lengthWords)).toEqual(['1⅜', '½', '2', '5¾', '2.2']);
  });
  it('writes minutes as hours', () => {
    expect([40, 60, 155].map(spanWords)).toEqual(['40 min', '1 h', '2 h 35 min']);
  });
});

describe('entries in words', () => {
  it.each<[Entry, string, string]>([
    [
      {
        kind: 'treatment',
        action: 'resew',
        state: 'done',
        places: ['1-1', '1-2'],
        stitch: 'hand',
        minutes: 20,
      },
      'Re-sewn, by hand, 20 min',
      'row 1, blocks 1 and 2',
    ],
    [
      { kind: 'treatment', action: 'remove', object: 'ties', state: 'planned' },
      'To do: take off the ties',
      '',
    ],
    [
      { kind: 'material', material: 'batting', use: 'needed', quantity: 1.375, unit: 'yd', name: 'wool' },
      'To buy: wool, 1⅜ yd',
      '',
    ],
    [{ kind: 'condition', finding: 'lumpy-batting', places: ['6-1'] }, 'Lumpy wadding', 'row 6, block 1'],
  ])('%j', (entry, what, where) => {
    expect(entryWords(entry, quilt)).toEqual({ what, where });
  });
});

describe('the form of an entry', () => {
  it('gives back every entry of the scenario as it was', () => {
    for (const { event } of scenarioEvents()) {
      if (event.type !== 'note-read') continue;
      for (const { entry } of event.reading.entries) {
        const { places: _, ...bare } = entry as Entry & { places?: string[] };
        const read = entryOfForm(entry.kind, formValues(entry), grid);
        expect(read).toMatchObject({ entry: bare });
        if ('entry' in read) expect(Entry.safeParse(read.entry).success).toBe(true);
      }
    }
  });
  it('says beside the field what is wrong', () => {
    expect(entryOfForm('treatment', { state: '', minutes: 'ten', places: '9-9' }, grid)).toEqual({
      faults: {
        state: 'Choose one.',
        minutes: expect.any(String),
        places: expect.stringContaining('There is no 9-9'),
      },
    });
    expect(entryOfForm('work', { start: '2026-03-07T12:00', end: '2026-03-07T10:00' }, grid)).toMatchObject({
      faults: { end: 'It ends before it starts.' },
    });
  });
});

describe('moments in the zone of the quilt', () => {
  // Summer time in London began on 29 March 2026 at 01:00 UTC (IANA tz database, rule GB-Eire).
  it('writes the offset that the zone has then', () => {
    expect(instantInZone(new Date('2026-03-29T00:59:00Z'), 'Europe/London')).toBe(
      '2026-03-29T00:59:00+00:00',
    );
    expect(instantInZone(new Date('2026-03-29T01:00:00Z'), 'Europe/London')).toBe(
      '2026-03-29T02:00:00+01:00',
    );
    expect(instantInZone(new Date('2026-11-01T06:30:00Z'), 'America/New_York')).toBe(
      '2026-11-01T01:30:00-05:00',
    );
    expect(instantInZone(new Date('2026-01-01T00:00:00Z'), 'Asia/Kolkata')).toBe('2026-01-01T05:30:00+05:30');
  });
  it('reads the date that the clock on the wall shows', () => {
    expect(localTime('2026-03-10T23:30:00Z', 'Asia/Tokyo')).toMatchObject({
      date: '2026-03-11',
      time: '08:30',
    });
  });
});
