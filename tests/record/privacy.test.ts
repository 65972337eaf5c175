import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { evolve } from '../../core/log/evolve.ts';
import { checklist } from '../../core/record/checklist.ts';
import { DOCUMENT_KINDS } from '../../core/record/document-model.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { isPrivateTalk, recordView } from '../../core/record/record-view.ts';
import { renderHtml } from '../../core/record/render-html.ts';
import { renderText } from '../../core/record/render-text.ts';
import type { Entry, Origin } from '../../shared/entry.ts';
import type { EstimateAnswer } from '../../shared/estimate-answer.ts';
import type { LogEvent } from '../../shared/event.ts';
import { demoLog } from './demo-log.ts';

const AT = '2026-03-14T13:00:00Z';

function papers(events: readonly LogEvent[], estimate?: EstimateAnswer): string {
  const { log } = demoLog(events);
  const hours = hoursFromLog(log, { idleMin: 30 });
  const given = { at: AT, hours, ...(estimate ? { estimate } : {}) };
  const documents = DOCUMENT_KINDS.map((kind) => recordDocument(log, kind, given));
  return [
    renderHtml(documents),
    ...documents.map(renderText),
    JSON.stringify(checklist(log, { hours })),
  ].join('\n');
}

function noted(
  text: string,
  entries: Entry[],
  more: { reason?: string; from?: number; to?: number; act?: 'log' | 'aside' } = {},
): LogEvent[] {
  const id = `private-${text.length}-${entries.length}`;
  return [
    { type: 'note-taken', note: { id, at: '2026-03-13T18:00:00+00:00', text, source: 'typed' } },
    {
      type: 'note-read',
      noteId: id,
      reading: {
        act: more.act ?? 'log',
        ask: null,
        reply: 'SECRETREPLY',
        rules: 'test',
        conversation: { secret: 'SECRETCONVERSATION' },
        entryIds: entries.map((_, i) => `${id}-${i}`),
        entries: entries.map((entry) => ({
          entry,
          origins: (more.to === undefined
            ? {}
            : { entry: { rule: 'test', how: 'said', from: more.from ?? 0, to: more.to } }) as Record<
            string,
            Origin
          >,
          ...(more.reason === undefined ? {} : { reason: more.reason }),
        })),
      },
    },
  ];
}

describe('what is private stays out of every paper', () => {
  test('asides, prices paid, settings, taught words, recordings, readings', () => {
    const text = papers([
      ...noted('SECRETASIDE the neighbour is a bore', [], { act: 'aside' }),
      ...noted('bought SECRETWORDS', [
        {
          kind: 'material',
          material: 'fabric',
          use: 'bought',
          quantity: 1,
          unit: 'yd',
          name: 'ticking',
          cost: { amount: 98765.43 },
        },
      ]),
      { type: 'estimate-set', path: 'price.hourly', value: 'SECRETRATE' },
      { type: 'word-taught', heard: 'SECRETHEARD', means: 'SECRETMEANS' },
      {
        type: 'recording-added',
        recording: {
          id: 'r1',
          file: 'SECRETFILE.wav',
          name: 'SECRETNAME',
          sha256: '0'.repeat(64),
          startAt: AT,
          durationS: 1,
        },
      },
      { type: 'span-set', spanId: 'SECRETSPAN', start: '2026-03-13T18:00', end: '2026-03-13T18:30' },
    ]);
    expect(text).not.toMatch(/SECRET/);
    expect(text).not.toMatch(/98,?765/);
    expect(text).toContain('icking');
  });

  test('the whole note of an entry never comes with it', () => {
    expect(
      papers(
        noted('patched 3-1 SECRET for that dreadful Mrs Vane next door', [
          { kind: 'treatment', action: 'patch', state: 'done', places: ['3-1'] },
        ]),
      ),
    ).not.toMatch(/SECRET|Vane/);
  });

  test('a remark goes in once it is confirmed, its own clause alone', () => {
    const text = 'SECRETBEFORE. There is a laundry mark in the corner. SECRETAFTER';
    const from = text.indexOf('There');
    const note = noted(text, [{ kind: 'remark' }], { from, to: text.indexOf(' SECRETAFTER') });
    const id = `private-${text.length}-1-0`;
    expect(papers(note)).not.toMatch(/laundry/);
    const { log } = demoLog(note);
    expect(recordView(log).heldBack).toContainEqual(
      expect.objectContaining({ entryId: id, why: 'not confirmed yet' }),
    );
    const { log: confirmed } = demoLog([...note, { type: 'entries-confirmed', entryIds: [id] }]);
    expect(recordView(confirmed).remarks.map((remark) => remark.words)).toContain(
      'There is a laundry mark in the corner.',
    );
    expect(JSON.stringify(recordView(confirmed))).not.toMatch(/SECRET/);
  });

  test('remarks and reasons about money or in confidence stay out even when confirmed', () => {
    const remark = noted('Between us, another client has the same one', [{ kind: 'remark' }]);
    const { log } = demoLog([...remark, { type: 'entries-confirmed', entryIds: ['private-43-1-0'] }]);
    expect(recordView(log).remarks.some((one) => one.words.includes('client'))).toBe(false);
    const text = papers(
      noted('left 2-1', [{ kind: 'treatment', action: 'leave', state: 'done', places: ['2-1'] }], {
        reason: 'because she only paid £40',
      }),
    );
    expect(text).not.toMatch(/only paid/);
  });

  // What counts as talk in confidence: common practice, no source.
  test.each([
    ['she pays late', true],
    ['I charge her 20 an hour', true],
    ['it cost £4', true],
    ["don't tell her", true],
    ['off the record it is a mess', true],
    ['the silk is splitting', false],
    ['her grandmother made it in 1931', false],
  ])('%s', (words, is) => {
    expect(isPrivateTalk(words)).toBe(is);
  });

  test('of the estimate only work and price come in, a mark-up hidden in the materials', () => {
    const total = { amount: '120.00', minor: 12000 };
    const estimate = {
      unit: 'in',
      assumptions: [{ field: 'SECRETFIELD', value: 'SECRETVALUE', why: 'SECRETWHY' }],
      price: {
        working: ['SECRETWORKING'],
        assumptions: [],
        warnings: ['SECRETWARNING'],
        currency: 'GBP',
        digits: 2,
        lines: [
          { name: 'labour', kind: 'labour', amount: '100.00', minor: 10000 },
          { name: 'SECRETCLOTH', kind: 'material', amount: '15.00', minor: 1500 },
          { name: 'SECRETMARKUP', kind: 'markup', amount: '5.00', minor: 500 },
        ],
        subtotal: total,
        tax: { amount: '0.00', minor: 0 },
        total,
        comparison: [{ name: 'SECRETCOMPARISON', quoted: total, actual: total, over: total }],
      },
    } as EstimateAnswer;
    const text = papers([], estimate);
    expect(text).not.toMatch(/SECRET/);
    expect(text).toContain('£20.00');
    expect(text).toContain('£120.00');
  });

  test('whatever an aside says, no paper says it', () => {
    const { log } = demoLog();
    fc.assert(
      fc.property(fc.string({ minLength: 6, maxLength: 60 }), (words) => {
        const secret = `zq${words}qz`;
        let next = log;
        for (const [i, event] of noted(secret, [], { act: 'aside' }).entries()) {
          next = evolve(next, { seq: log.seq + i + 1, at: AT, event });
        }
        const view = JSON.stringify(recordView(next));
        expect(view.includes(JSON.stringify(secret).slice(1, -1))).toBe(false);
      }),
      { numRuns: 60 },
    );
  });
});
