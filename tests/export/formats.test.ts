import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Ajv2020 from 'ajv/dist/2020.js';
import ical from 'node-ical';
import Papa from 'papaparse';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebVTTParser } from 'webvtt-parser';
import { hoursFromLog } from '../../core/hours/hours.ts';
import {
  EXPORT_FORMATS,
  type ExportChoice,
  type ExportFormat,
  exportQuilt,
} from '../../server/export/export-quilt.ts';
import type { LogEvent } from '../../shared/event.ts';
import { QuiltExport } from '../../shared/quilt-export.ts';
import { demoLog } from '../record/demo-log.ts';
import { readBody } from './read-body.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quiltside-export-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const EVIL = '=HYPERLINK("http://x.invalid","a")\u2028<script>alert(1)</script>, "two"\r\nlines --> \u202e';
const MORE: LogEvent[] = [
  {
    type: 'note-taken',
    note: {
      id: 'evil',
      at: '2026-03-13T18:00:00+00:00',
      text: EVIL,
      source: 'recording',
      audio: { file: 'r1.wav', startS: 1.5, endS: 4, recordingId: 'r1' },
    },
  },
  {
    type: 'note-taken',
    note: {
      id: 'late',
      at: '2026-03-13T18:00:10+00:00',
      text: 'last words',
      source: 'recording',
      audio: { file: 'r1.wav', startS: 3661.25, endS: 3662, recordingId: 'r1' },
    },
  },
  {
    type: 'entry-added',
    entryId: 'evil-1',
    noteId: 'evil',
    entry: {
      kind: 'material',
      material: 'fabric',
      use: 'bought',
      quantity: 1,
      unit: 'yd',
      name: '+cmd|calc',
      cost: { amount: -3 },
    },
  },
  {
    type: 'recording-added',
    recording: {
      id: 'r1',
      file: 'r1.wav',
      name: 'evening <b>&.wav',
      sha256: 'a'.repeat(64),
      startAt: '2026-03-13T18:00:00Z',
      durationS: 3700,
    },
  },
  {
    type: 'photo-added',
    photo: { id: 'p1', file: 'p1.jpg', places: ['3-2'], stage: 'before', caption: 'A hole' },
  },
];
const { log, events } = demoLog(MORE);
const write = async (format: ExportFormat, choice: ExportChoice = {}): Promise<Buffer> =>
  readBody((await exportQuilt(format, { state: log, events, folder, idleMin: 30 }, choice)).body);
const text = async (format: ExportFormat, choice: ExportChoice = {}): Promise<string> =>
  (await write(format, choice)).toString('utf8');

test('the same log gives the same bytes in every format', async () => {
  for (const format of EXPORT_FORMATS) {
    const choice = { recordingId: 'r1' };
    expect((await write(format, choice)).equals(await write(format, choice)), format).toBe(true);
  }
}, 240_000);

test('file names hold plain letters only', async () => {
  const { log: odd, events: all } = demoLog([
    { type: 'quilt-changed', changes: { name: '../Ünder "the" <stairs>\n東' } },
  ]);
  const { fileName } = await exportQuilt('csv', { state: odd, events: all, folder, idleMin: 30 });
  expect(fileName).toBe('under-the-stairs-entries.csv');
});

describe('CSV, read by Papa Parse', () => {
  test('one row an entry, its words whole (RFC 4180)', async () => {
    const csv = await text('csv');
    const { data, errors } = Papa.parse<Record<string, string>>(csv.replace(/^\ufeff/, ''), { header: true });
    expect(errors).toEqual([
      { type: 'FieldMismatch', code: 'TooFewFields', message: expect.any(String), row: log.entries.length },
    ]);
    const rows = data.slice(0, -1);
    expect(rows).toHaveLength(log.entries.length);
    rows.forEach((row, i) => {
      expect(row.entry).toBe(log.entries[i]!.id);
    });
    expect(rows.find((row) => row.entry === 'evil-1')).toMatchObject({
      kind: 'material',
      quantity: '1',
      words: `'${EVIL}`,
    });
  });

  // OWASP, CSV injection: a cell must not begin with = + - @, tab or return (from memory).
  test('no cell is a formula', async () => {
    for (const format of ['csv', 'hours-csv', 'materials-csv'] as const) {
      const { data } = Papa.parse<string[]>((await text(format)).replace(/^\ufeff/, ''));
      for (const cell of data.flat()) {
        if (/^-?\d+(\.\d+)?$/.test(cell)) continue;
        expect(cell).not.toMatch(/^[=+\-@\t\r]/);
      }
    }
    expect(await text('materials-csv')).toContain("'+cmd|calc");
  });

  test('hours add up', async () => {
    const { data } = Papa.parse<Record<string, string>>((await text('hours-csv')).replace(/^\ufeff/, ''), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data.reduce((sum, row) => sum + Number(row.minutes), 0)).toBe(
      hoursFromLog(log, { idleMin: 30 }).totalMin,
    );
  });
});

describe('iCalendar, read by node-ical', () => {
  test('every session at its true instants (RFC 5545)', async () => {
    const source = await text('ics');
    const read = ical.sync.parseICS(source);
    const found = Object.values(read).filter((one) => one.type === 'VEVENT');
    const { spans } = hoursFromLog(log, { idleMin: 30 });
    expect(found).toHaveLength(spans.length);
    const starts = found.map((one) => (one as { start: Date }).start.getTime()).sort((a, b) => a - b);
    expect(starts).toEqual(spans.map((span) => span.startMin * 60_000).sort((a, b) => a - b));
    // 3.1: lines end in CRLF and are at most 75 octets.
    for (const line of source.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(source.replaceAll('\r\n', '')).not.toContain('\n');
  });
});

describe('WebVTT, read by the parser of the format’s editors', () => {
  test('cues at their times, words whole', async () => {
    const { cues, errors } = new WebVTTParser().parse(
      await text('vtt', { recordingId: 'r1' }),
      'subtitles/captions/descriptions',
    );
    expect(errors).toEqual([]);
    expect(cues.map(({ startTime, endTime }) => [startTime, endTime])).toEqual([
      [1.5, 4],
      [3661.25, 3662],
    ]);
    expect(cues[0]!.text).toContain('&lt;script&gt;');
    expect(cues[0]!.text).not.toContain('-->');
  });
  test('a recording in which nothing was heard', async () => {
    const { cues, errors } = new WebVTTParser().parse(
      await text('vtt', { recordingId: 'none' }),
      'subtitles/captions/descriptions',
    );
    expect([cues, errors]).toEqual([[], []]);
  });
});

describe('JSON, checked by Ajv against the published schema', () => {
  test('everything fits the schema, and the schema refuses what does not', async () => {
    const schema = JSON.parse(await text('schema'));
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    const whole = JSON.parse(await text('json'));
    expect(validate(whole), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    expect(QuiltExport.parse(whole).entries).toHaveLength(log.entries.length);
    expect(whole.notes.find((one: { note: { id: string } }) => one.note.id === 'evil').note.text).toBe(EVIL);
    whole.entries[0].entry.kind = 'nonsense';
    expect(validate(whole)).toBe(false);
  });
  test('JSON Lines: one note a line', async () => {
    const lines = (await text('jsonl')).split('\n');
    expect(lines.pop()).toBe('');
    expect(lines).toHaveLength(log.notes.length);
    expect(lines.map((line) => JSON.parse(line).note.id)).toEqual(log.notes.map(({ note }) => note.id));
  });
});

describe('drawings', () => {
  test('SVG that a renderer takes (librsvg in sharp), PNG at twice its size', async () => {
    for (const moment of ['found', 'proposed', 'now'] as const) {
      const svg = await write('map-svg', { moment });
      const { width, height, format } = await sharp(svg).metadata();
      expect(format).toBe('svg');
      const png = await sharp(await write('map-png', { moment })).metadata();
      expect([png.format, png.width, png.height]).toEqual(['png', width! * 2, height! * 2]);
    }
    expect((await sharp(await write('timeline-png')).metadata()).format).toBe('png');
  });

  test('the letters of a picture do not hang on the machine’s fonts', async () => {
    const svg = await text('map-svg', { moment: 'found' });
    expect(svg).toMatch(/<text /);
    const { outlineText } = await import('../../server/export/outline-text.ts');
    expect(outlineText(svg)).not.toMatch(/<text /);
  });

  test('marks are told apart by shape: no two drawings are alike', async () => {
    const { ACTION_DRAWINGS, FINDING_DRAWINGS } = await import('../../core/record/figures/mark-drawings.ts');
    const shapes = [...Object.values(ACTION_DRAWINGS), ...Object.values(FINDING_DRAWINGS)].map((drawing) =>
      JSON.stringify(drawing),
    );
    expect(new Set(shapes).size).toBe(shapes.length);
  });
});

test('the owner’s HTML stands alone: no script, nothing fetched', async () => {
  const html = await text('html');
  expect(html).not.toMatch(/<script|<link|src="(?!data:)|href="(?!#)|@import|url\(/i);
  expect(html).toContain('A letter to the owner');
  expect(html).not.toMatch(/Bill<\/h1>/);
});
