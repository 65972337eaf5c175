import type { Readable } from 'node:stream';
import { setImmediate as breathe } from 'node:timers/promises';
import type { Block, RecordDocument } from '../../../core/record/document-model.ts';
import { PaperSheet } from './paper-sheet.ts';

/** The picture for a photograph in the document, JPEG or PNG; nothing where it can't be had. */
export type PictureOf = (photo: { photoId: string; file: string }) => Promise<Buffer | undefined>;

/**
 * Sets a document as a PDF: tagged, titled, with embedded type and its drawings as vectors. The same
 * document and `madeAt` give the same bytes. The stream is set as it is read; an error ends it.
 */
export function writePdf(document: RecordDocument, madeAt: Date, pictureOf: PictureOf): Readable {
  const sheet = sheetFor(
    document,
    madeAt,
    document.kind === 'letter' ? sizeThatFits(document, madeAt) : LARGEST,
  );
  const stream = sheet.pdf as unknown as Readable;
  setDocument(sheet, document, pictureOf, stream).catch((error: unknown) => {
    stream.destroy(error instanceof Error ? error : new Error(String(error)));
  });
  return stream;
}

const MOST_AT_ONCE_MS = 15;
const LARGEST = 10.5;
const SMALLEST = 9;
const LETTER_PAGES = 2;

function sheetFor(document: RecordDocument, madeAt: Date, bodySize: number): PaperSheet {
  return new PaperSheet({
    title: document.title,
    subject: document.subject,
    author: document.author,
    language: document.language,
    bodySize,
    madeAt,
  });
}

/** The letter is to be two pages: the largest type of three that lets it. */
function sizeThatFits(document: RecordDocument, madeAt: Date): number {
  for (const size of [LARGEST, 9.75]) {
    const trial = sheetFor(document, madeAt, size);
    trial.title();
    for (const section of document.sections) {
      trial.section(section.title);
      for (const { body } of section.passages) {
        for (const block of body) if (block.type !== 'photograph') setBlock(trial, block);
      }
    }
    if (trial.pages <= LETTER_PAGES) return size;
  }
  return SMALLEST;
}

type Picture = Extract<Block, { type: 'photograph' }>;

async function setDocument(
  sheet: PaperSheet,
  document: RecordDocument,
  pictureOf: PictureOf,
  stream: Readable,
): Promise<void> {
  // The caller gets its stream before anything is set.
  await breathe();
  sheet.title();
  let since = performance.now();
  for (const section of document.sections) {
    const blocks = section.passages.flatMap((one) => one.body);
    sheet.section(section.title, roomFor(sheet, blocks));
    let waiting: Picture[] = [];
    const flush = async (): Promise<void> => {
      if (!waiting.length) return;
      const pair = waiting;
      waiting = [];
      const photos = await Promise.all(
        pair.map(async ({ photoId, file, alt, caption }) => ({
          image: await pictureOf({ photoId, file }),
          alt,
          caption,
        })),
      );
      sheet.photographs(photos);
      // Pictures are what makes a file large: wait until the reader has taken what is there.
      while (stream.readableLength > 4_000_000 && !stream.destroyed) await breathe();
    };
    for (const [i, block] of blocks.entries()) {
      if (block.type === 'photograph') {
        waiting.push(block);
        if (waiting.length === 2) await flush();
        continue;
      }
      await flush();
      // A line over a table is its heading: they stay together.
      if (block.type === 'paragraph' && blocks[i + 1]?.type === 'table') sheet.need(88);
      setBlock(sheet, block);
      // The server has others to answer meanwhile.
      if (performance.now() - since > MOST_AT_ONCE_MS) {
        await breathe();
        since = performance.now();
      }
    }
    await flush();
  }
  if (sheet.missing.size > 0) {
    const letters = [...sheet.missing]
      .slice(0, 40)
      .map((letter) => `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`);
    sheet.section('Letters that could not be set');
    sheet.caution(
      `This file’s type has Latin, Greek and Cyrillic letters. Other letters are shown as □ here (${letters.join(', ')}). Print the paper from the page in the browser to have them.`,
      'Note.',
    );
  }
  sheet.finish();
}

function roomFor(sheet: PaperSheet, blocks: readonly Block[]): number {
  const [first, second] = blocks;
  if (first?.type === 'figure') return sheet.figureSize(first.width, first.height).h + 20;
  if (first?.type === 'photograph') return 200;
  if (first?.type === 'paragraph' && second?.type === 'table') return 90;
  return 40;
}

function setBlock(sheet: PaperSheet, block: Exclude<Block, Picture>): void {
  switch (block.type) {
    case 'paragraph':
      sheet.paragraph(block.text);
      return;
    case 'caution':
      sheet.caution(block.text, 'Caution.');
      return;
    case 'list':
      sheet.list(block.items);
      return;
    case 'terms':
      sheet.terms(block.rows);
      return;
    case 'table':
      sheet.table(block.columns, block.rows, block.sum === true);
      return;
    case 'figure':
      sheet.figure(block.svg, block.width, block.height, block.alt, block.caption);
      return;
    case 'signatures':
      sheet.signatures(block.lines);
      return;
  }
}
