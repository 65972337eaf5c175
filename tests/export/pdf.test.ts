import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hoursFromLog } from '../../core/hours/hours.ts';
import { fold } from '../../core/log/evolve.ts';
import { DOCUMENT_KINDS, type DocumentKind, type RecordDocument } from '../../core/record/document-model.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { writePdf } from '../../server/export/pdf/write-pdf.ts';
import { pictureForPaper } from '../../server/export/picture-for-paper.ts';
import type { LogEvent } from '../../shared/event.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { demoLog } from '../record/demo-log.ts';
import { readBody } from './read-body.ts';

const AT = '2026-03-14T13:00:00Z';
const has = (tool: string): boolean => !spawnSync(tool, ['--version']).error;
const poppler = has('pdftotext');
const qpdf = has('qpdf');
if (!poppler) console.info('skipped: reading PDF files back (pdftotext of poppler-utils is not installed)');
if (!qpdf) console.info('skipped: checking PDF files (qpdf is not installed)');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'quiltside-pdf-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const { log } = demoLog();
const given = { at: AT, hours: hoursFromLog(log, { idleMin: 30 }) };
const bytesOf = (document: RecordDocument, picture?: Buffer): Promise<Buffer> =>
  readBody(writePdf(document, new Date(AT), async () => picture));
async function fileOf(document: RecordDocument, picture?: Buffer): Promise<string> {
  const path = join(folder, `${document.kind}.pdf`);
  writeFileSync(path, await bytesOf(document, picture));
  return path;
}
const textOf = (path: string): string =>
  execFileSync('pdftotext', ['-layout', '-enc', 'UTF-8', path, '-'], { encoding: 'utf8' });
const flowOf = (path: string): string =>
  execFileSync('pdftotext', ['-enc', 'UTF-8', path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');

function named(
  details: Record<string, unknown>,
  events: LogEvent[] = [],
  kind: DocumentKind = 'condition',
): RecordDocument {
  const quilt = {
    ...QuiltDetails.parse({ name: 'A quilt', rows: 2, blocks: 2, ...details }),
    id: 'q',
    madeAt: AT,
  };
  const state = fold(
    [{ type: 'quilt-made', quilt } as LogEvent, ...events].map((event, i) => ({ seq: i + 1, at: AT, event })),
  );
  return recordDocument(state, kind, { at: AT, hours: hoursFromLog(state, { idleMin: 30 }) });
}

test('the same document gives the same bytes; another moment gives others', async () => {
  const document = recordDocument(log, 'bill', given);
  expect((await bytesOf(document)).equals(await bytesOf(document))).toBe(true);
  expect(
    (await readBody(writePdf(document, new Date(0), async () => undefined))).equals(await bytesOf(document)),
  ).toBe(false);
});

describe.skipIf(!qpdf)('checked by qpdf', () => {
  test.each(DOCUMENT_KINDS)('%s has no errors', async (kind) => {
    const path = await fileOf(recordDocument(log, kind, given));
    const { status, stdout, stderr } = spawnSync('qpdf', ['--check', path], { encoding: 'utf8' });
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('No syntax or stream encoding errors found');
  });

  test('tagged, titled, with its language, its type embedded (ISO 32000-1, 14.8 and 14.9)', async () => {
    const path = await fileOf(recordDocument(log, 'condition', given));
    const raw = execFileSync('qpdf', ['--qdf', '--object-streams=disable', path, '-'], {
      maxBuffer: 64_000_000,
    }).toString('latin1');
    // One line of the answer at most, or a failure would print the whole file.
    const found = (pattern: RegExp): boolean => pattern.test(raw);
    expect(found(/\/Marked true/), 'marked').toBe(true);
    expect(found(/\/Lang [(<]/), 'language').toBe(true);
    expect(found(/\/DisplayDocTitle true/), 'title shown').toBe(true);
    for (const tag of [
      'Document',
      'Sect',
      'H1',
      'H2',
      'P',
      'L',
      'LI',
      'Table',
      'TR',
      'TH',
      'TD',
      'Figure',
      'Caption',
    ]) {
      expect(found(new RegExp(`/S /${tag}\\b`)), tag).toBe(true);
    }
    expect(found(/\/Alt [(<]/), 'words for the map').toBe(true);
    const fonts = new Set([...raw.matchAll(/\/FontName \/(\S+)/g)].map((match) => match[1]));
    expect(fonts.size).toBeGreaterThan(2);
    // Six letters and a plus: a subset that is in the file (9.6.4).
    for (const font of fonts) expect(font).toMatch(/^[A-Z]{6}\+/);
    expect([...raw.matchAll(/\/FontFile[23] /g)]).toHaveLength(fonts.size);
    // The map is drawn, not photographed.
    expect(found(/\/Subtype \/Image/), 'no bitmap').toBe(false);
  });
});

describe.skipIf(!poppler)('read back by poppler', () => {
  test('text in reading order, each page numbered', async () => {
    const document = recordDocument(log, 'treatment', given);
    const path = await fileOf(document);
    const text = flowOf(path);
    let at = 0;
    for (const section of document.sections.filter((one) => one.title)) {
      const found = text.indexOf(section.title, at);
      expect(found, section.title).toBeGreaterThanOrEqual(at);
      at = found;
    }
    expect(text).toContain('The split seams between the first and second blocks of row 5');
    expect(text).toMatch(/Page 2 of \d+/);
    const pages = Number(/Pages:\s+(\d+)/.exec(execFileSync('pdfinfo', [path], { encoding: 'utf8' }))![1]);
    expect(text.match(/Page \d+ of \d+/g)).toHaveLength(pages);
  });

  test('rows of a table keep together', async () => {
    const text = textOf(await fileOf(recordDocument(log, 'condition', given)));
    expect(text).toMatch(/Right side\s+75¾ in\s+2 March 2026/);
  });

  test('the owner’s letter is two pages, on A4 or US Letter', async () => {
    for (const [state, size] of [
      [log, /A4/],
      [demoLog([{ type: 'quilt-changed', changes: { spelling: 'american' } }]).log, /letter/],
    ] as const) {
      const info = execFileSync('pdfinfo', [await fileOf(recordDocument(state, 'letter', given))], {
        encoding: 'utf8',
      });
      expect(info).toMatch(/Pages:\s+2\n/);
      expect(info).toMatch(size);
    }
  });

  test('Latin, Greek and Cyrillic names are set; other letters are shown as boxes and said', async () => {
    const path = await fileOf(
      named({ name: 'Ţesătură Żółć', owner: 'Ελένη Παππά', mender: 'Ольга Ђурић', maker: 'שרה 北村' }),
    );
    const text = flowOf(path);
    for (const name of ['Ţesătură Żółć', 'Ελένη Παππά', 'Ольга Ђурић']) expect(text).toContain(name);
    expect(text).toContain('Letters that could not be set');
    expect(text).toContain('U+05E9');
    expect(text).toContain('□');
  });

  test('markup and formulas are letters like others; marks of direction are gone', async () => {
    const evil = '<script>alert(1)</script> =HYPERLINK("x") \u202egnp.exe';
    const text = flowOf(await fileOf(named({ owner: evil, construction: evil })));
    expect(text).toContain('<script>alert(1)</script> =HYPERLINK("x") gnp.exe');
    expect(text).not.toMatch(/[\u202a-\u202e]/);
  });

  test('a word wider than the page, a paragraph longer than one', async () => {
    const long = `${'x'.repeat(1900)} ${'word '.repeat(10)}`;
    const edit: LogEvent = {
      type: 'record-edited',
      document: 'condition',
      passage: 'examination',
      text: 'many words '.repeat(1500),
      facts: '',
    };
    const text = flowOf(await fileOf(named({ construction: long.slice(0, 2000) }, [edit])));
    expect(text.match(/many/g)).toHaveLength(1500);
  });
});

describe('photographs', () => {
  const photo = (id: string): LogEvent => ({
    type: 'photo-added',
    photo: { id, file: `${id}.jpg`, places: ['1-1'], stage: 'before', caption: `Front ${id}`, takenAt: AT },
  });

  test('JPEG, PNG and WebP are set; a broken or missing one leaves its caption', async () => {
    mkdirSync(join(folder, 'photos'), { recursive: true });
    const picture = sharp({ create: { width: 400, height: 300, channels: 3, background: '#a33' } });
    writeFileSync(join(folder, 'photos/a.jpg'), await picture.clone().jpeg().toBuffer());
    writeFileSync(join(folder, 'photos/b.png'), await picture.clone().png().toBuffer());
    writeFileSync(join(folder, 'photos/c.webp'), await picture.clone().webp().toBuffer());
    writeFileSync(join(folder, 'photos/d.jpg'), 'this is no picture');
    for (const name of ['a.jpg', 'b.png', 'c.webp']) {
      expect((await sharp(await pictureForPaper(folder, name)).metadata()).format).toBe('jpeg');
    }
    expect(await pictureForPaper(folder, '../photos/a.jpg')).toBeUndefined();
    expect(await pictureForPaper(folder, 'missing.jpg')).toBeUndefined();
    expect(
      await pictureForPaper(folder, 'd.jpg').then(
        (bytes) =>
          bytes &&
          sharp(bytes)
            .metadata()
            .catch(() => undefined),
      ),
    ).toBeUndefined();
    const document = named({}, [photo('a'), photo('b'), photo('d')]);
    const bytes = await readBody(
      writePdf(document, new Date(AT), ({ file }) =>
        pictureForPaper(folder, file === 'b.jpg' ? 'b.png' : file),
      ),
    );
    expect(bytes.toString('latin1').match(/\/Subtype \/Image/g)).toHaveLength(2);
    if (!poppler) return;
    writeFileSync(join(folder, 'photos.pdf'), bytes);
    const text = flowOf(join(folder, 'photos.pdf'));
    expect(text).toContain('Front a');
    expect(text).toContain('the picture could not be read');
  });
});
