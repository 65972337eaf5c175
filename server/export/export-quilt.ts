import type { Readable } from 'node:stream';
import sharp from 'sharp';
import { hoursFromLog } from '../../core/hours/hours.ts';
import type { QuiltState } from '../../core/log/state.ts';
import { DOCUMENT_KINDS, type DocumentKind, type RecordDocument } from '../../core/record/document-model.ts';
import { hoursTimelineSvg } from '../../core/record/figures/hours-timeline-svg.ts';
import { type MapMoment, quiltMapSvg } from '../../core/record/figures/quilt-map-svg.ts';
import { recordDocument } from '../../core/record/record-document.ts';
import { recordHours } from '../../core/record/record-figures.ts';
import { recordView } from '../../core/record/record-view.ts';
import { renderHtml } from '../../core/record/render-html.ts';
import { renderText } from '../../core/record/render-text.ts';
import { cleanText } from '../../core/record/wording/clean-text.ts';
import { localClock } from '../../core/record/wording/local-clock.ts';
import type { NumberedEvent } from '../../shared/event.ts';
import { archiveReadme } from './archive/archive-readme.ts';
import { type ArchivePart, writeArchive } from './archive/write-archive.ts';
import { entriesCsv, hoursCsv, materialsCsv } from './csv-tables.ts';
import { estimateForPapers } from './estimate-for-papers.ts';
import { outlineText } from './outline-text.ts';
import { writePdf } from './pdf/write-pdf.ts';
import { pictureForPaper } from './picture-for-paper.ts';
import { notesLines, quiltJson, quiltJsonSchema } from './quilt-json.ts';
import { recordingCaptions } from './recording-captions.ts';
import { workCalendar } from './work-calendar.ts';

export const EXPORT_FORMATS = [
  'pdf',
  'txt',
  'html',
  'csv',
  'hours-csv',
  'materials-csv',
  'ics',
  'vtt',
  'map-svg',
  'map-png',
  'timeline-svg',
  'timeline-png',
  'json',
  'schema',
  'jsonl',
  'zip',
] as const;
export type ExportFormat = (typeof EXPORT_FORMATS)[number];

export type ExportSource = {
  state: QuiltState;
  events: readonly NumberedEvent[];
  /** The quilt's folder, with `audio` and `photos`. */
  folder: string;
  idleMin: number;
  /**
   * Moment that the papers are written for, ISO 8601. Left out, it is that of the last event: then the same
   * log always gives the same bytes.
   */
  at?: string;
};
export type ExportChoice = {
  /** For pdf, txt and html; html without it is the whole record for the owner. */
  document?: DocumentKind;
  /** For vtt. */
  recordingId?: string;
  /** For the maps. */
  moment?: MapMoment;
};
export type Exported = { fileName: string; contentType: string; body: Buffer | Readable };

/** What of a quilt the owner's own HTML file holds: all but the bill, which is a paper of its own. */
const OWNERS_PAPERS: readonly DocumentKind[] = ['letter', 'condition', 'proposal', 'treatment'];
/** The papers that tell what the estimate says. */
const PRICED: ReadonlySet<DocumentKind> = new Set(['proposal', 'bill']);
const PIXELS_ON_SCREEN = 1000;

/** Writes a quilt in one of the formats. Errors of a stream end the stream. */
export async function exportQuilt(
  format: ExportFormat,
  source: ExportSource,
  choice: ExportChoice = {},
): Promise<Exported> {
  const { state, folder, idleMin } = source;
  const at = source.at ?? source.events.at(-1)?.at ?? state.quilt.madeAt;
  // Counted only for what tells them: the table of entries and the drawing of the quilt need neither.
  const hours = once(() => hoursFromLog(state, { idleMin }));
  const figures = once(() => estimateForPapers(state, hours(), localClock(at, state.quilt.zone).date));
  const madeAt = new Date(at);
  const paper = (kind: DocumentKind): RecordDocument => {
    const estimate = PRICED.has(kind) ? figures() : undefined;
    return recordDocument(state, kind, { at, hours: hours(), ...(estimate ? { estimate } : {}) });
  };
  const pdf = (kind: DocumentKind): Readable =>
    writePdf(paper(kind), madeAt, ({ file }) => pictureForPaper(folder, file));
  const map = (moment: MapMoment): string => mapOf(state, moment);
  const timeline = (): string =>
    hoursTimelineSvg(recordView(state), recordHours(hours()), `${cleanText(state.quilt.name)}: hours worked`)
      .svg;
  const text = (name: string, contentType: string, content: string): Exported => ({
    fileName: fileName(state, name),
    contentType,
    body: Buffer.from(content, 'utf8'),
  });
  const kind = choice.document ?? 'treatment';
  const moment = choice.moment ?? 'now';

  switch (format) {
    case 'pdf':
      return { fileName: fileName(state, `${kind}.pdf`), contentType: 'application/pdf', body: pdf(kind) };
    case 'txt':
      return text(`${kind}.txt`, 'text/plain; charset=utf-8', renderText(paper(kind)));
    case 'html': {
      const papers = (choice.document ? [choice.document] : OWNERS_PAPERS).map(paper);
      const pictures = await dataAddresses(papers, folder);
      return text(
        `${choice.document ?? 'record'}.html`,
        'text/html; charset=utf-8',
        renderHtml(papers, (id) => pictures.get(id)),
      );
    }
    case 'csv':
      return { fileName: fileName(state, 'entries.csv'), contentType: CSV, body: entriesCsv(state) };
    case 'hours-csv':
      return { fileName: fileName(state, 'hours.csv'), contentType: CSV, body: hoursCsv(hours()) };
    case 'materials-csv':
      return { fileName: fileName(state, 'materials.csv'), contentType: CSV, body: materialsCsv(state) };
    case 'ics':
      return text('sessions.ics', 'text/calendar; charset=utf-8', workCalendar(state, hours(), madeAt));
    case 'vtt':
      return text(
        `captions.vtt`,
        'text/vtt; charset=utf-8',
        recordingCaptions(state, choice.recordingId ?? ''),
      );
    case 'map-svg':
      return text(`map-${moment}.svg`, 'image/svg+xml', map(moment));
    case 'map-png':
      return {
        fileName: fileName(state, `map-${moment}.png`),
        contentType: 'image/png',
        body: await picture(map(moment)),
      };
    case 'timeline-svg':
      return text('hours.svg', 'image/svg+xml', timeline());
    case 'timeline-png':
      return {
        fileName: fileName(state, 'hours.png'),
        contentType: 'image/png',
        body: await picture(timeline()),
      };
    case 'json':
      return text('quilt.json', 'application/json', quiltJson(state, hours()));
    case 'schema':
      return text('schema.json', 'application/schema+json', quiltJsonSchema());
    case 'jsonl':
      return text('notes.jsonl', 'application/jsonl', notesLines(state));
    case 'zip': {
      const photoFiles = new Map(state.photos.map((photo) => [photo.id, photo.file]));
      const parts: ArchivePart[] = [
        { path: 'README.txt', content: async () => archiveReadme(state) },
        ...DOCUMENT_KINDS.flatMap((one) => [
          { path: `papers/${one}.pdf`, content: async () => pdf(one) },
          { path: `papers/${one}.txt`, content: async () => renderText(paper(one)) },
        ]),
        {
          path: 'papers/record.html',
          content: async () =>
            renderHtml(DOCUMENT_KINDS.map(paper), (id) => {
              const file = photoFiles.get(id);
              return file === undefined ? undefined : `../photos/${encodeURIComponent(file)}`;
            }),
        },
        { path: 'drawings/as-found.svg', content: async () => map('found') },
        { path: 'drawings/as-proposed.svg', content: async () => map('proposed') },
        { path: 'drawings/as-it-is-now.svg', content: async () => map('now') },
        { path: 'drawings/hours.svg', content: async () => timeline() },
        { path: 'entries.csv', content: async () => entriesCsv(state) },
        { path: 'hours.csv', content: async () => hoursCsv(hours()) },
        { path: 'materials.csv', content: async () => materialsCsv(state) },
        { path: 'sessions.ics', content: async () => workCalendar(state, hours(), madeAt) },
        { path: 'notes.jsonl', content: async () => notesLines(state) },
        { path: 'quilt.json', content: async () => quiltJson(state, hours()) },
        { path: 'quilt.schema.json', content: async () => quiltJsonSchema() },
        ...state.recordings
          .filter((recording) => /^[A-Za-z0-9_-]{1,80}$/.test(recording.id))
          .map((recording) => ({
            path: `captions/${recording.id}.vtt`,
            content: async () => recordingCaptions(state, recording.id),
          })),
      ];
      return {
        fileName: fileName(state, 'archive.zip'),
        contentType: 'application/zip',
        body: writeArchive({ quilt: state.quilt, events: source.events, folder, parts, madeAt }),
      };
    }
  }
}

const CSV = 'text/csv; charset=utf-8; header=present';

function mapOf(state: QuiltState, moment: MapMoment): string {
  const said = { found: 'as found', proposed: 'as proposed', now: 'after treatment' }[moment];
  return quiltMapSvg(recordView(state), moment, `${cleanText(state.quilt.name)} ${said}`).svg;
}

/** A drawing as a PNG at twice its size; its text goes in as outlines, whatever fonts the machine has. */
async function picture(svg: string): Promise<Buffer> {
  return sharp(Buffer.from(outlineText(svg)), { density: 144 })
    .png()
    .toBuffer();
}

async function dataAddresses(
  papers: readonly RecordDocument[],
  folder: string,
): Promise<Map<string, string>> {
  const out = new Map<string, string>();
  for (const paper of papers) {
    for (const { passages } of paper.sections) {
      for (const { body } of passages) {
        for (const block of body) {
          if (block.type !== 'photograph' || out.has(block.photoId)) continue;
          const bytes = await pictureForPaper(folder, block.file, PIXELS_ON_SCREEN);
          if (bytes) out.set(block.photoId, `data:image/jpeg;base64,${bytes.toString('base64')}`);
        }
      }
    }
  }
  return out;
}

/** Plain letters only: a file name goes through headers and file systems of every kind. */
function fileName(state: QuiltState, what: string): string {
  const name = cleanText(state.quilt.name)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 60);
  return `${name || 'quilt'}-${what}`;
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
