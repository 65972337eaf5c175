import fc from 'fast-check';
import { parse } from 'parse5';
import { describe, expect, test } from 'vitest';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { fold } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import { checklist } from '../../core/record/checklist.ts';
import { DOCUMENT_KINDS, type Passage, type RecordDocument } from '../../core/record/document-model.ts';
import { bodyFromText, passageText } from '../../core/record/passage-text.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { renderHtml } from '../../core/record/render-html.ts';
import { renderText } from '../../core/record/render-text.ts';
import type { LogEvent, NumberedEvent } from '../../shared/event.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { demoLog } from './demo-log.ts';
import { longLog } from './long-log.ts';

const AT = '2026-03-14T13:00:00Z';
const AGREED: LogEvent = {
  type: 'agreement-noted',
  how: 'word',
  by: 'Maud Tillinghay',
  at: '2026-03-03T20:00:00Z',
  note: '',
};
const CONFIRMED: LogEvent[] = ['2026-03-02', '2026-03-03', '2026-03-04'].map((date) => ({
  type: 'day-confirmed',
  date,
}));

const write = (log: Log, kind: (typeof DOCUMENT_KINDS)[number]): RecordDocument =>
  recordDocument(log, kind, { at: AT, hours: hoursFromLog(log, { idleMin: 30 }) });
const passages = (document: RecordDocument): Passage[] =>
  document.sections.flatMap((section) => section.passages);
const said = (document: RecordDocument): string =>
  passages(document)
    .map((one) => passageText(one.body))
    .join('\n');

function quiltOf(details: Record<string, unknown>, events: LogEvent[] = []): Log {
  const quilt = {
    ...QuiltDetails.parse({ name: 'A quilt', rows: 3, blocks: 3, ...details }),
    id: 'q',
    madeAt: AT,
  };
  const all: NumberedEvent[] = [{ type: 'quilt-made', quilt } as LogEvent, ...events].map((event, i) => ({
    seq: i + 1,
    at: AT,
    event,
  }));
  return fold(all);
}

describe('the papers of the demo quilt', () => {
  const { log } = demoLog([...CONFIRMED, AGREED]);

  test.each(DOCUMENT_KINDS)('%s reads as its golden file', async (kind) => {
    await expect(renderText(write(log, kind))).toMatchFileSnapshot(`golden/${kind}.txt`);
  });

  test('every passage has its own id, its facts, and the entries behind what was noted', () => {
    for (const kind of DOCUMENT_KINDS) {
      const all = passages(write(log, kind));
      expect(new Set(all.map((one) => one.id)).size).toBe(all.length);
      for (const one of all) {
        expect(one.facts).toMatch(/^[0-9a-z]+$/);
        for (const id of one.entryIds) expect(log.entry(id), `${one.id} ${id}`).toBeDefined();
        for (const id of one.noteIds) expect(log.note(id)).toBeDefined();
      }
    }
    const hole = passages(write(log, 'condition')).find((one) => one.id === 'finding.hole');
    expect(hole?.noteIds).toEqual(['n4']);
  });

  test('no sentence is said twice in one paper', () => {
    for (const kind of DOCUMENT_KINDS) {
      const paragraphs = passages(write(log, kind)).flatMap((one) =>
        one.body.flatMap((block) => (block.type === 'paragraph' ? [block.text] : [])),
      );
      expect(new Set(paragraphs).size, kind).toBe(paragraphs.length);
    }
  });

  test('the same log gives the same document', () => {
    expect(JSON.stringify(write(demoLog([...CONFIRMED, AGREED]).log, 'treatment'))).toBe(
      JSON.stringify(write(log, 'treatment')),
    );
  });

  test('observation is kept apart from interpretation (AIC Commentary 25-B, as excerpted)', () => {
    const sections = write(log, 'condition').sections;
    const observed = sections.find((section) => section.id === 'condition')!;
    expect(JSON.stringify(observed)).not.toMatch(/points? to|often|usually/);
    expect(sections.some((section) => section.id === 'interpretation')).toBe(true);
  });

  test('every action is in the log of the work with who did it (AIC Commentary 27-A, as excerpted)', () => {
    const rows = passages(write(log, 'treatment'))
      .filter((one) => one.id.startsWith('log.'))
      .flatMap((one) => one.body.flatMap((block) => (block.type === 'table' ? block.rows : [])));
    const done = log.entries.filter(
      (logged) =>
        logged.entry.kind === 'treatment' && ['done', 'doing', 'dropped'].includes(logged.entry.state),
    );
    expect(rows).toHaveLength(done.length);
    expect(rows.every((row) => row[3] === 'Ishbel Corrow')).toBe(true);
  });

  test('a change after the agreement makes an addendum, which a later agreement closes', () => {
    expect(said(write(log, 'proposal'))).toContain(
      'cover the shattered cloth in the plum silk blocks with crepeline',
    );
    const open = write(log, 'proposal').sections.filter((section) => section.id.startsWith('addendum'));
    expect(open).toHaveLength(1);
    expect(JSON.stringify(open)).toContain('signatures');
    const { log: closed } = demoLog([
      AGREED,
      { type: 'agreement-noted', how: 'signature', by: 'Maud Tillinghay', at: AT, note: '' },
    ]);
    const agreed = write(closed, 'proposal').sections.find((section) => section.id === 'addendum-1');
    expect(JSON.stringify(agreed)).toContain('Agreed and signed by Maud Tillinghay on 14 March 2026');
    const { log: before } = demoLog();
    expect(write(before, 'proposal').sections.some((section) => section.id.startsWith('addendum'))).toBe(
      false,
    );
  });
});

describe('spelling', () => {
  test('American words, dates and paper of the same log', () => {
    const { log } = demoLog([{ type: 'quilt-changed', changes: { spelling: 'american', currency: 'USD' } }]);
    const text = DOCUMENT_KINDS.map((kind) => said(write(log, kind))).join('\n');
    expect(text).not.toMatch(/wadding|mould|colour|fibre|tacked|labelled|stabilis/);
    expect(text).toContain('March 4, 2026');
    expect(text).toMatch(/batting/);
    expect(write(log, 'letter').language).toBe('en-US');
  });
});

describe('edits by hand', () => {
  test('an edit stands, and is stale once its facts have changed', () => {
    const { log } = demoLog();
    const hole = passages(write(log, 'condition')).find((one) => one.id === 'finding.hole')!;
    const edit: LogEvent = {
      type: 'record-edited',
      document: 'condition',
      passage: hole.id,
      text: 'A hole the size of a thumb in row 3.',
      facts: hole.facts,
    };
    const find = (more: LogEvent[]): Passage =>
      passages(write(demoLog(more).log, 'condition')).find((one) => one.id === hole.id)!;
    expect(passageText(find([edit]).body)).toBe('A hole the size of a thumb in row 3.');
    expect(find([edit]).edit?.stale).toBe(false);
    const more: LogEvent = {
      type: 'entry-added',
      entryId: 'x',
      noteId: 'n5',
      entry: { kind: 'condition', finding: 'hole', places: ['6-6'] },
    };
    expect(find([edit, more]).edit?.stale).toBe(true);
    expect(passageText(find([edit, more]).body)).toBe('A hole the size of a thumb in row 3.');
    expect(passageText(find([edit, more]).edit!.written)).toContain('Holes in');
    const undone: LogEvent = { ...edit, text: null } as LogEvent;
    expect(find([edit, undone]).edit).toBeUndefined();
  });

  test('an edit of a passage that is gone is kept at the end; an empty one takes the passage out', () => {
    const gone: LogEvent = {
      type: 'record-edited',
      document: 'condition',
      passage: 'finding.nowhere',
      text: 'Her own words.',
      facts: 'x',
    };
    const document = write(demoLog([gone]).log, 'condition');
    expect(document.sections.at(-1)).toMatchObject({
      id: 'kept-edits',
      passages: [{ edit: { stale: true } }],
    });
    const empty: LogEvent = {
      type: 'record-edited',
      document: 'condition',
      passage: 'finding.hole',
      text: '',
      facts: 'x',
    };
    expect(said(write(demoLog([empty]).log, 'condition'))).not.toMatch(/A hole in/);
  });

  test('every passage can be edited as text and comes back as it was', () => {
    const { log } = demoLog([AGREED]);
    for (const kind of DOCUMENT_KINDS) {
      for (const one of passages(write(log, kind))) {
        if (!one.editable) continue;
        const back = bodyFromText(passageText(one.body), one.body);
        expect(passageText(back), one.id).toBe(passageText(one.body));
      }
    }
  });

  test('whatever is typed, nothing breaks and no letter of a paragraph is lost', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const body = bodyFromText(text, []);
        const html = renderHtml([
          {
            ...EMPTY,
            sections: [
              {
                id: 's',
                title: 'S',
                passages: [{ id: 'p', facts: '', entryIds: [], noteIds: [], editable: true, body }],
              },
            ],
          },
        ]);
        expect(html).not.toMatch(/<script/i);
        const letters = (from: string): string => from.replace(/[^\p{L}\p{N}]/gu, '');
        expect(letters(passageText(body))).toBe(letters(text));
      }),
      { numRuns: 300 },
    );
  });
});

const EMPTY: RecordDocument = {
  kind: 'letter',
  title: 'T',
  subject: 'S',
  language: 'en-GB',
  date: '2026-03-14',
  author: '',
  sections: [],
  heldBack: [],
};

describe('bad input', () => {
  test('an empty log: no photographs, measurements, findings, names', () => {
    const log = quiltOf({});
    for (const kind of DOCUMENT_KINDS) {
      const text = said(write(log, kind));
      expect(text).not.toMatch(/undefined|NaN|null|\[object/);
      expect(write(log, kind).sections.length).toBeGreaterThan(0);
    }
    const open = checklist(log).filter((item) => !item.filled);
    expect(open.map((item) => item.id)).toEqual(
      expect.arrayContaining(['owner', 'size', 'condition', 'before-images', 'approval']),
    );
    for (const item of open) expect(item.question).toMatch(/[?.]$/);
  });

  test('markup, formulas, line separators and marks of direction are plain text', () => {
    const evil = '<script>alert(1)</script> =HYPERLINK("x") \u202eabc\u2028 & "quotes" \'too\'';
    const log = quiltOf(
      {
        name: evil,
        owner: evil,
        maker: evil,
        construction: evil,
        inscriptions: evil,
        fabrics: { [evil.slice(0, 90)]: ['1-1', '1-2'] },
      },
      [
        {
          type: 'entry-added',
          entryId: 'e',
          entry: { kind: 'condition', finding: 'stain', places: ['1-1'], fabric: evil },
        },
        {
          type: 'photo-added',
          photo: { id: 'p', file: 'p.jpg', places: [], stage: 'before', caption: evil },
        },
        { type: 'record-edited', document: 'letter', passage: 'close', text: evil, facts: '' },
      ],
    );
    const html = renderHtml(DOCUMENT_KINDS.map((kind) => write(log, kind)));
    // parse5 is the reference parser of the HTML standard in JavaScript.
    const tags = new Set<string>();
    const walk = (node: { nodeName: string; childNodes?: unknown[] }): void => {
      tags.add(node.nodeName);
      for (const child of node.childNodes ?? []) walk(child as never);
    };
    walk(parse(html) as never);
    expect(tags.has('script')).toBe(false);
    expect(html).not.toMatch(/[\u202a-\u202e\u2028]/);
    expect(html).toContain('&lt;script&gt;');
  });

  test('names in any script stay as they are', () => {
    const log = quiltOf({ name: 'Одеяло', owner: 'Ελένη Παππά', mender: 'שרה כהן', maker: '北村 さくら' });
    const html = renderHtml([write(log, 'condition')]);
    for (const name of ['Одеяло', 'Ελένη Παππά', '北村 さくら']) expect(html).toContain(name);
  });

  test('one block, and the largest grid', () => {
    for (const [rows, blocks] of [
      [1, 1],
      [60, 60],
    ] as const) {
      const log = quiltOf({ rows, blocks }, [
        {
          type: 'entry-added',
          entryId: 'e',
          entry: { kind: 'condition', finding: 'tear', places: ['1-1', `${rows}-${blocks}`] },
        },
        {
          type: 'entry-added',
          entryId: 'f',
          entry: { kind: 'treatment', action: 'patch', state: 'done', places: ['1-1'] },
        },
      ]);
      for (const kind of DOCUMENT_KINDS) expect(said(write(log, kind))).not.toMatch(/undefined|NaN/);
    }
  });

  test('an odd zone, an odd currency, lengths in every unit', () => {
    const units = ['yd', 'in', 'ft', 'm', 'cm', 'mm'] as const;
    const log = quiltOf(
      { zone: 'Pacific/Chatham', currency: 'XTS', unit: 'cm' },
      units.map(
        (unit, i) =>
          ({
            type: 'entry-added',
            entryId: `m${i}`,
            entry: { kind: 'measurement', of: 'width', value: 2, unit },
          }) as LogEvent,
      ),
    );
    expect(said(write(log, 'condition'))).toContain('0.2 cm');
  });

  test('3,000 entries', () => {
    const { log } = longLog(3000, 200);
    for (const kind of DOCUMENT_KINDS) expect(passages(write(log, kind)).length).toBeGreaterThan(3);
    expect(renderText(write(log, 'letter')).length).toBeLessThan(9_000);
  });
});
