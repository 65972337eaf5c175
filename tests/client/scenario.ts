import type { Entry, Origin } from '../../shared/entry.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import type { Note, Reading } from '../../shared/note.ts';

/** An invented quilt of an invented owner, with every kind of entry in its log. */
export const SCENARIO_ID = 'larkrise-nine-patch';

type Said = {
  text: string;
  at: string;
  entries?: Entry[];
  reading?: Partial<Reading>;
  note?: Partial<Note>;
  reason?: string;
  words?: Record<string, string>;
};

const row = (r: number, blocks: number): string[] =>
  Array.from({ length: blocks }, (_, i) => `${r}-${i + 1}`);

const SAID: Said[] = [
  {
    at: '2026-03-02T18:32',
    text: 'Starting on the survey of the Larkrise quilt.',
    entries: [{ kind: 'work', task: 'survey', mark: 'start' }],
  },
  {
    at: '2026-03-02T18:36',
    text: 'It lay on a sick bed in the farmhouse, so the top left has seen the most sun.',
    entries: [{ kind: 'remark' }],
  },
  {
    at: '2026-03-02T18:41',
    text: 'Row one, blocks one and two are faded, and there is a split seam between them.',
    entries: [
      { kind: 'condition', finding: 'fading', places: ['1-1', '1-2'] },
      { kind: 'condition', finding: 'split-seam', places: ['1-1', '1-2'] },
    ],
    words: { places: 'Row one, blocks one and two', finding: 'faded' },
  },
  {
    at: '2026-03-02T18:47',
    text: 'Row two, block four: the brown silk is shattered.',
    entries: [{ kind: 'condition', finding: 'shattered', places: ['2-4'], fabric: 'brown silk' }],
    note: {
      source: 'spoken',
      audio: { file: '2026-03-02/a.wav', startS: 12.1, endS: 16.4, confidence: 0.83 },
    },
  },
  {
    at: '2026-03-02T18:50',
    text: 'a tear in three three and a hole in three four the size of a penny',
    entries: [
      { kind: 'condition', finding: 'tear', places: ['3-3'] },
      { kind: 'condition', finding: 'hole', places: ['3-4'] },
    ],
    note: {
      source: 'spoken',
      audio: { file: '2026-03-02/a.wav', startS: 20.2, endS: 25.4, confidence: 0.52 },
    },
  },
  {
    at: '2026-03-02T18:55',
    text: 'Somebody put an old patch on five one, and the bottom border has a tide line.',
    entries: [
      { kind: 'condition', finding: 'old-repair', places: ['5-1'] },
      { kind: 'condition', finding: 'stain', places: ['border-bottom'] },
    ],
  },
  {
    at: '2026-03-02T19:02',
    text: 'Batting is lumpy in the whole of row six.',
    entries: [{ kind: 'condition', finding: 'lumpy-batting', places: row(6, 5) }],
  },
  {
    at: '2026-03-02T19:04',
    text: 'The binding is frayed all along the top, the backing is sound.',
    entries: [
      { kind: 'condition', finding: 'fraying', places: ['edge-top'] },
      { kind: 'condition', finding: 'sound', places: ['backing'] },
    ],
  },
  {
    at: '2026-03-02T19:10',
    text: 'Sixty and a half across the top, sixty at the bottom, seventy-two down the left and seventy-one and a quarter down the right.',
    entries: [
      { kind: 'measurement', of: 'side-top', value: 60.5, unit: 'in' },
      { kind: 'measurement', of: 'side-bottom', value: 60, unit: 'in' },
      { kind: 'measurement', of: 'side-left', value: 72, unit: 'in' },
      { kind: 'measurement', of: 'side-right', value: 71.25, unit: 'in' },
    ],
  },
  {
    at: '2026-03-02T19:12',
    text: 'sixty by seventy two as near as makes no matter',
    entries: [
      { kind: 'measurement', of: 'width', value: 60, unit: 'in' },
      { kind: 'measurement', of: 'length', value: 72, unit: 'in' },
    ],
  },
  {
    at: '2026-03-02T19:20',
    text: 'Moth in four five.',
    entries: [{ kind: 'condition', finding: 'insect-damage', places: ['4-5'] }],
  },
  {
    at: '2026-03-02T19:31',
    text: 'Stopped for tonight.',
    entries: [{ kind: 'work', task: 'survey', mark: 'stop' }],
  },
  {
    at: '2026-03-03T19:01',
    text: 'For two four either net over it or a new piece, I am not sure.',
    entries: [
      { kind: 'treatment', action: 'overlay', state: 'considering', places: ['2-4'] },
      { kind: 'treatment', action: 'replace', state: 'considering', places: ['2-4'] },
    ],
  },
  {
    at: '2026-03-03T19:06',
    text: 'I will re-sew the seam in row one and patch the tear.',
    entries: [
      { kind: 'treatment', action: 'resew', state: 'planned', places: ['1-1', '1-2'] },
      { kind: 'treatment', action: 'patch', state: 'planned', places: ['3-3'] },
    ],
  },
  {
    at: '2026-03-03T19:09',
    text: 'The fading in one two stays as it is, because it is part of its story.',
    entries: [{ kind: 'treatment', action: 'leave', state: 'done', places: ['1-2'] }],
    reason: 'it is part of its story',
  },
  {
    at: '2026-03-03T19:12',
    text: 'Tie it or quilt it? Mrs Amberley wants to think.',
    entries: [{ kind: 'decision', about: 'tying', status: 'open' }],
  },
  {
    at: '2026-03-03T19:14',
    text: 'Wool or cotton batting, still open.',
    entries: [{ kind: 'decision', about: 'batting', status: 'open' }],
  },
  { at: '2026-03-03T19:15', text: 'that was the telephone', reading: { act: 'aside' } },
  {
    at: '2026-03-05T18:05',
    text: 'Taking apart now, ties first.',
    entries: [
      { kind: 'work', task: 'taking-apart', mark: 'start' },
      { kind: 'treatment', action: 'remove', state: 'doing', object: 'ties', places: ['quilt'] },
    ],
  },
  {
    at: '2026-03-05T19:10',
    text: 'All the ties are out.',
    entries: [{ kind: 'treatment', action: 'remove', state: 'done', object: 'ties', places: ['quilt'] }],
  },
  {
    at: '2026-03-05T19:48',
    text: 'Backing is off, stopping at quarter to eight.',
    entries: [
      { kind: 'treatment', action: 'remove', state: 'done', object: 'backing', places: ['backing'] },
      { kind: 'work', task: 'taking-apart', mark: 'stop', time: '2026-03-05T19:45' },
    ],
  },
  {
    at: '2026-03-07T10:02',
    text: 'Mending from now.',
    entries: [{ kind: 'work', task: 'mending', mark: 'start' }],
  },
  {
    at: '2026-03-07T10:25',
    text: 'Row one, blocks one and two, re-sewed the split seam by hand, twenty minutes.',
    entries: [
      {
        kind: 'treatment',
        action: 'resew',
        state: 'done',
        places: ['1-1', '1-2'],
        stitch: 'hand',
        minutes: 20,
      },
    ],
    words: {
      places: 'Row one, blocks one and two',
      action: 're-sewed',
      stitch: 'by hand',
      minutes: 'twenty minutes',
    },
  },
  {
    at: '2026-03-07T11:10',
    text: 'Patched three three with a scrap of the indigo print, forty minutes.',
    entries: [
      {
        kind: 'treatment',
        action: 'patch',
        state: 'done',
        places: ['3-3'],
        fabric: 'indigo print',
        minutes: 40,
      },
      { kind: 'material', material: 'fabric', use: 'used', name: 'indigo print' },
    ],
  },
  {
    at: '2026-03-07T11:40',
    text: 'Took the old patch off five one, there is a hole under it.',
    entries: [
      { kind: 'treatment', action: 'remove', state: 'done', object: 'old-patch', places: ['5-1'] },
      { kind: 'condition', finding: 'hole', places: ['5-1'] },
    ],
  },
  {
    at: '2026-03-07T12:20',
    text: 'New piece let in at three four, herringbone at the back.',
    entries: [
      { kind: 'treatment', action: 'replace', state: 'done', places: ['3-4'], stitch: 'herringbone' },
    ],
  },
  {
    at: '2026-03-07T12:45',
    text: 'From ten to quarter to one on that, less ten minutes for the door.',
    entries: [
      { kind: 'work', task: 'mending', start: '2026-03-07T10:00', end: '2026-03-07T12:45', minutes: 155 },
    ],
  },
  {
    at: '2026-03-07T14:10',
    text: 'Darning four five now.',
    entries: [{ kind: 'treatment', action: 'darn', state: 'doing', places: ['4-5'], stitch: 'running' }],
  },
  {
    at: '2026-03-09T17:30',
    text: 'Bought four yards of calico at six fifty the yard and two reels of grey thread.',
    entries: [
      {
        kind: 'material',
        material: 'backing',
        use: 'bought',
        quantity: 4,
        unit: 'yd',
        cost: { amount: 6.5, each: true },
        name: 'calico',
      },
      {
        kind: 'material',
        material: 'thread',
        use: 'bought',
        quantity: 2,
        unit: 'spool',
        name: 'grey thread',
      },
    ],
  },
  {
    at: '2026-03-09T17:34',
    text: 'I still need a yard and three eighths of wadding.',
    entries: [
      {
        kind: 'material',
        material: 'batting',
        use: 'needed',
        quantity: 1.375,
        unit: 'yd',
        name: 'wool wadding',
      },
    ],
  },
  {
    at: '2026-03-09T17:40',
    text: 'She says tie it. Settled.',
    entries: [{ kind: 'decision', about: 'tying', status: 'settled' }],
  },
  {
    at: '2026-03-10T18:00',
    text: 'Backed six one to six five with net? No, stabilise them, planned for tomorrow.',
    entries: [{ kind: 'treatment', action: 'stabilize', state: 'planned', places: row(6, 5) }],
  },
  {
    at: '2026-03-10T18:20',
    text: 'same again on the one below',
    entries: [{ kind: 'treatment', action: 'darn', state: 'done', places: [], stitch: 'running' }],
    reading: {
      ask: { slot: 'place', question: 'Which block did you darn?' },
      reply: 'Darned in running stitch.',
    },
  },
];

/** The journal of the scenario: numbered from one, without gaps. */
export function scenarioEvents(): NumberedEvent[] {
  const events: LogEvent[] = [
    {
      type: 'quilt-made',
      quilt: {
        id: SCENARIO_ID,
        madeAt: '2026-03-02T18:30:00.000Z',
        name: 'Larkrise nine patch',
        owner: 'Mrs Amberley',
        mender: 'Tamsin Reed',
        rows: 6,
        blocks: 5,
        fabrics: { 'indigo print': ['1-1', '3-3'], 'brown silk': ['2-4'] },
        unit: 'in',
        zone: 'Europe/London',
        currency: 'GBP',
        spelling: 'british',
      },
    },
  ];
  SAID.forEach((said, i) => {
    const noteId = `note-${i + 1}`;
    const entries = said.entries ?? [];
    const origin = (name: string): Origin => {
      const words = said.words?.[name];
      const from = words ? said.text.indexOf(words) : 0;
      return words
        ? { rule: `${name}/as-said`, how: 'said', from, to: from + words.length }
        : { rule: 'conversation/carried', how: 'implied', from: 0, to: 0 };
    };
    events.push({
      type: 'note-taken',
      note: { id: noteId, at: `${said.at}:00+00:00`, text: said.text, source: 'typed', ...said.note },
    });
    events.push({
      type: 'note-read',
      noteId,
      reading: {
        act: 'log',
        ask: null,
        reply: 'Noted.',
        ...said.reading,
        entries: entries.map((entry) => ({
          entry,
          origins: Object.fromEntries(
            Object.keys(entry)
              .filter((k) => k !== 'kind')
              .map((k) => [k, origin(k)]),
          ),
          ...(said.reason ? { reason: said.reason } : {}),
        })),
        entryIds: entries.map((_, n) => `${noteId}.${n}`),
        rules: 'scenario',
        conversation: {},
      },
    });
  });
  return events.map((event, i) => ({ seq: i + 1, at: '2026-03-10T20:00:00.000Z', event }));
}
