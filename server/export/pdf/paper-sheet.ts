import PDFDocument from 'pdfkit';
import drawSvg from 'svg-to-pdfkit';
import type { Column } from '../../../core/record/document-model.ts';
import { FACES, type Face, faceFont } from './type-faces.ts';

type Element = PDFKit.PDFStructureElement;

export const COLOUR = {
  ink: '#1b2136',
  soft: '#594838',
  rule: '#b9aa8d',
  caution: '#9b2f25',
} as const;

const MARGIN = { top: 62, bottom: 64, left: 68, right: 68 };

export type SheetDetails = {
  title: string;
  subject: string;
  author: string;
  language: 'en-GB' | 'en-US';
  /** Size of the text, in points. */
  bodySize?: number;
  /** Written into the file as the moment it was made, so that equal logs give equal bytes. */
  madeAt: Date;
};

/**
 * A PDF being set: tagged, with embedded type, in reading order. Each method sets one thing below the
 * last and goes on to a new page where there is no room. `missing` gathers the letters that no face has.
 */
export class PaperSheet {
  readonly pdf: PDFKit.PDFDocument;
  readonly missing = new Set<string>();
  readonly #root: Element;
  readonly #details: SheetDetails;
  readonly #covers = new Map<Face, (code: number) => boolean>();
  readonly #heights = new Map<string, number>();
  readonly #body: { face: Face; size: number; gap: number };
  #section: Element;

  constructor(details: SheetDetails) {
    this.#details = details;
    const size = details.bodySize ?? 10.5;
    this.#body = { face: 'serif', size, gap: (size - 10.5) * 1.2 + 3.2 };
    this.pdf = new PDFDocument({
      size: details.language === 'en-US' ? 'LETTER' : 'A4',
      margins: MARGIN,
      pdfVersion: '1.7',
      tagged: true,
      displayTitle: true,
      lang: details.language,
      bufferPages: true,
      compress: true,
      info: {
        Title: `${details.title}: ${details.subject}`,
        Author: details.author,
        Subject: details.subject,
        Creator: 'Quiltside',
        Producer: 'Quiltside',
        CreationDate: details.madeAt,
        ModDate: details.madeAt,
      },
    });
    for (const face of Object.keys(FACES) as Face[]) {
      this.pdf.registerFont(face, faceFont(face) as unknown as PDFKit.Mixins.PDFFontSource);
    }
    this.#root = this.pdf.struct('Document');
    this.pdf.addStructure(this.#root);
    this.#section = this.#root;
  }

  get #width(): number {
    return this.pdf.page.width - MARGIN.left - MARGIN.right;
  }
  get #bottom(): number {
    return this.pdf.page.height - MARGIN.bottom;
  }

  /** Goes to a new page unless so much room is left. */
  need(height: number): void {
    if (this.pdf.y + height > this.#bottom) this.pdf.addPage();
  }

  space(height: number): void {
    this.pdf.y += height;
  }

  /** The title over its running stitch. */
  title(): void {
    const { title, subject } = this.#details;
    this.#write(this.#section, 'P', subject, { face: 'sans', size: 10, colour: COLOUR.soft });
    this.space(2);
    this.#write(this.#section, 'H1', title, { face: 'bold', size: 22, gap: 0 });
    this.space(7);
    this.#artifact(() => {
      this.pdf
        .moveTo(MARGIN.left, this.pdf.y)
        .lineTo(MARGIN.left + this.#width, this.pdf.y)
        .lineWidth(1.4)
        .lineCap('round')
        .dash(9, { space: 6 })
        .stroke(COLOUR.ink)
        .undash()
        .lineCap('butt');
    });
    this.space(12);
  }

  /** Begins a section; what follows belongs to it. `room`: height of what must not be parted from its title. */
  section(title: string, room = 40): void {
    this.#section = this.pdf.struct('Sect', title ? { title } : {});
    this.#root.add(this.#section);
    if (!title) return;
    this.need(room + 34);
    this.space(11);
    this.#write(this.#section, 'H2', title, { face: 'label', size: 11.5, gap: 0 });
    this.space(5);
  }

  paragraph(text: string): void {
    this.need(30);
    this.#write(this.#section, 'P', text, this.#body);
    this.space(5);
  }

  caution(text: string, label: string): void {
    const width = this.#width - 14;
    const height = this.#measure(`${label} ${text}`, this.#body, width);
    this.need(height + 6);
    const top = this.pdf.y;
    this.#artifact(() => {
      for (const x of [MARGIN.left + 1, MARGIN.left + 4.5]) {
        this.pdf
          .moveTo(x, top + 1)
          .lineTo(x, top + height - 2)
          .lineWidth(1.1)
          .stroke(COLOUR.caution);
      }
    });
    this.#write(this.#section, 'P', `${label} ${text}`, {
      ...this.#body,
      x: MARGIN.left + 14,
      width,
      bold: label,
    });
    this.space(6);
  }

  list(items: readonly string[]): void {
    const list = this.pdf.struct('L');
    this.#section.add(list);
    for (const item of items) {
      this.need(Math.min(60, this.#measure(item, this.#body, this.#width - 16)));
      const entry = this.pdf.struct('LI');
      list.add(entry);
      const top = this.pdf.y;
      entry.add(
        this.pdf.struct('Lbl', {}, () => {
          this.pdf
            .font('serif')
            .fontSize(this.#body.size)
            .fillColor(COLOUR.soft)
            .text('•', MARGIN.left + 2, top, { lineBreak: false });
        }),
      );
      this.pdf.y = top;
      this.#write(entry, 'LBody', item, { ...this.#body, x: MARGIN.left + 16, width: this.#width - 16 });
      entry.end();
      this.space(2.5);
    }
    list.end();
    this.space(4);
  }

  /** Names at the left, values beside them. */
  terms(rows: readonly (readonly [string, string])[]): void {
    const left = Math.min(150, this.#width * 0.31);
    const value = { ...this.#body, x: MARGIN.left + left, width: this.#width - left };
    const list = this.pdf.struct('L');
    this.#section.add(list);
    for (const [name, text] of rows) {
      this.need(Math.max(18, Math.min(120, this.#measure(text, this.#body, value.width))));
      const entry = this.pdf.struct('LI');
      list.add(entry);
      const top = this.pdf.y;
      const page = this.pdf.page;
      this.pdf.y = top + 1.2;
      this.#write(entry, 'Lbl', name, {
        face: 'sans',
        size: 9.2,
        gap: 1.5,
        colour: COLOUR.soft,
        x: MARGIN.left,
        width: left - 12,
      });
      const under = this.pdf.y;
      this.pdf.y = top;
      this.#write(entry, 'LBody', text, value);
      entry.end();
      if (this.pdf.page === page) this.pdf.y = Math.max(this.pdf.y, under);
      this.space(2.5);
      this.#hair(this.pdf.y);
      this.space(3.5);
    }
    list.end();
    this.space(4);
  }

  table(columns: readonly Column[], rows: readonly (readonly string[])[], sum: boolean): void {
    const given = columns.map((column) => column.share ?? 0);
    const open = given.filter((share) => share === 0).length;
    const rest = Math.max(0, 1 - given.reduce((all, share) => all + share, 0));
    const widths = given.map((share) => (share || rest / open) * this.#width);
    const gutter = 9;
    const cell = { face: 'serif' as Face, size: 9.6, gap: 1.6 };
    const heading = { face: 'label' as Face, size: 8.6, gap: 1, colour: COLOUR.soft };
    const table = this.pdf.struct('Table');
    this.#section.add(table);
    const xOf = (i: number): number =>
      MARGIN.left + widths.slice(0, i).reduce((all, width) => all + width, 0);

    const header = (repeated: boolean): void => {
      const top = this.pdf.y;
      let height = 0;
      const row = repeated ? undefined : this.pdf.struct('TR');
      if (row) table.add(row);
      columns.forEach((column, i) => {
        const style = { ...heading, x: xOf(i), width: widths[i]! - gutter, align: column.align };
        height = Math.max(height, this.#measure(column.title, style, style.width));
        this.pdf.y = top;
        if (row) this.#write(row, 'TH', column.title, style);
        else this.#artifact(() => this.#set(column.title, style));
      });
      row?.end();
      this.pdf.y = top + height + 2;
      this.#artifact(() => {
        this.pdf
          .moveTo(MARGIN.left, this.pdf.y)
          .lineTo(MARGIN.left + this.#width, this.pdf.y)
          .lineWidth(0.9)
          .stroke(COLOUR.ink);
      });
      this.pdf.y += 3;
    };

    this.need(44);
    header(false);
    rows.forEach((row, at) => {
      const isSum = sum && at === rows.length - 1;
      const style = isSum ? { ...cell, face: 'bold' as Face } : cell;
      const heights = row.map((text, i) => this.#measure(text, style, widths[i]! - gutter));
      const height = Math.max(...heights, 12);
      if (this.pdf.y + height > this.#bottom) {
        this.pdf.addPage();
        header(true);
      }
      const top = this.pdf.y;
      if (isSum) this.#rule(top, COLOUR.ink, 0.9);
      const line = this.pdf.struct('TR');
      table.add(line);
      row.forEach((text, i) => {
        this.pdf.y = top + (isSum ? 3 : 0);
        this.#write(line, 'TD', text, {
          ...style,
          x: xOf(i),
          width: widths[i]! - gutter,
          align: columns[i]?.align,
        });
      });
      line.end();
      this.pdf.y = top + height + (isSum ? 5 : 1);
      if (!isSum && at < rows.length - 1) {
        this.#hair(this.pdf.y);
        this.pdf.y += 2.6;
      }
    });
    table.end();
    this.space(8);
  }

  figureSize(width: number, height: number): { w: number; h: number } {
    const scale = Math.min(this.#width / width, (this.#bottom - MARGIN.top - 80) / height);
    return { w: width * scale, h: height * scale };
  }

  get pages(): number {
    return this.pdf.bufferedPageRange().count;
  }

  /** A drawing as vectors, no wider than the page and no higher than most of it. */
  figure(svg: string, width: number, height: number, alt: string, caption: string): void {
    const { w, h } = this.figureSize(width, height);
    // The drawing's own size would win over the size it is to have here.
    const unsized = svg.replace(/^(<svg[^>]*?) width="[^"]*" height="[^"]*"/, '$1');
    this.need(h + 26);
    const top = this.pdf.y;
    const figure = this.pdf.struct('Figure', { alt }, () => {
      drawSvg(this.pdf, unsized, MARGIN.left, top, {
        width: w,
        height: h,
        assumePt: true,
        fontCallback: (_family, bold) => (bold ? 'label' : 'sans'),
      });
    });
    this.#section.add(figure);
    this.pdf.y = top + h + 3;
    this.#write(this.#section, 'Caption', caption, { face: 'sans', size: 9, gap: 1.5, colour: COLOUR.soft });
    this.space(8);
  }

  /** Photographs two in a row, each with its caption; one that cannot be read leaves its caption and a word. */
  photographs(
    photos: readonly { image: Buffer | undefined; alt: string; caption: string; problem?: string }[],
  ): void {
    const gap = 16;
    const width = (this.#width - gap) / 2;
    const most = 170;
    const style = { face: 'sans' as Face, size: 8.6, gap: 1.2, colour: COLOUR.soft };
    const opened = photos.map((photo) => ({ ...photo, open: photo.image && this.#open(photo.image) }));
    const boxOf = (photo: (typeof opened)[number]): { w: number; h: number } => {
      if (!photo.open) return { w: 0, h: 0 };
      const scale = Math.min(width / photo.open.width, most / photo.open.height);
      return { w: photo.open.width * scale, h: photo.open.height * scale };
    };
    const text = (photo: (typeof opened)[number]): string =>
      photo.open ? photo.caption : `${photo.caption} (${photo.problem ?? 'the picture could not be read'})`;
    const height = Math.max(
      ...opened.map((photo) => boxOf(photo).h + this.#measure(text(photo), style, width) + 6),
    );
    this.need(height + 8);
    const top = this.pdf.y;
    let bottom = top;
    opened.forEach((photo, i) => {
      const x = MARGIN.left + i * (width + gap);
      const box = boxOf(photo);
      if (photo.open) {
        this.#section.add(
          this.pdf.struct('Figure', { alt: photo.alt }, () => {
            this.pdf.image(photo.open as never, x, top, { width: box.w, height: box.h });
          }),
        );
      }
      this.pdf.y = top + box.h + (box.h ? 4 : 0);
      this.#write(this.#section, 'Caption', text(photo), { ...style, x, width });
      bottom = Math.max(bottom, this.pdf.y);
    });
    this.pdf.y = bottom + 9;
  }

  signatures(lines: readonly string[]): void {
    const gap = 28;
    const width = lines.length > 1 ? (this.#width - gap) / 2 : this.#width / 2;
    for (let i = 0; i < lines.length; i += 2) {
      this.need(70);
      this.space(38);
      const top = this.pdf.y;
      lines.slice(i, i + 2).forEach((line, k) => {
        const x = MARGIN.left + k * (width + gap);
        this.#artifact(() => {
          this.pdf
            .moveTo(x, top)
            .lineTo(x + width, top)
            .lineWidth(0.8)
            .stroke(COLOUR.ink);
        });
        this.pdf.y = top + 4;
        this.#write(this.#section, 'P', line, { face: 'sans', size: 9, colour: COLOUR.soft, x, width });
      });
      this.space(8);
    }
  }

  /** Numbers the pages and ends the file. */
  finish(): void {
    this.#root.end();
    const { start, count } = this.pdf.bufferedPageRange();
    for (let i = 0; i < count; i++) {
      this.pdf.switchToPage(start + i);
      const { page } = this.pdf;
      // Below the margin pdfkit would start a new page for the text; the margin steps aside for it.
      const { bottom } = page.margins;
      page.margins.bottom = 0;
      this.#artifact(() => {
        const y = page.height - 40;
        const { subject, title } = this.#details;
        this.pdf.font('sans').fontSize(8.4).fillColor(COLOUR.soft);
        this.pdf.text(this.#covered(`${subject}. ${title}`, 'sans'), MARGIN.left, y, {
          width: this.#width - 90,
          lineBreak: false,
          ellipsis: true,
          height: 12,
        });
        this.pdf.text(`Page ${i + 1} of ${count}`, MARGIN.left, y, {
          width: this.#width,
          align: 'right',
          lineBreak: false,
        });
      });
      page.margins.bottom = bottom;
    }
    this.pdf.end();
  }

  #open(image: Buffer): Size | undefined {
    try {
      return (this.pdf as unknown as { openImage: (from: Buffer) => Size }).openImage(image);
    } catch {
      return undefined;
    }
  }

  #hair(y: number): void {
    this.#rule(y, COLOUR.rule, 0.5, [0.8, 2]);
  }

  #rule(y: number, colour: string, width: number, dash?: [number, number]): void {
    this.#artifact(() => {
      if (dash) this.pdf.dash(dash[0], { space: dash[1] });
      this.pdf
        .moveTo(MARGIN.left, y)
        .lineTo(MARGIN.left + this.#width, y)
        .lineWidth(width)
        .stroke(colour);
      if (dash) this.pdf.undash();
    });
  }

  /** What is there for the eye alone and is no part of the text. */
  #artifact(draw: () => void): void {
    const { x, y } = this.pdf;
    this.pdf.markContent('Artifact', { type: 'Layout' });
    draw();
    this.pdf.endMarkedContent();
    this.pdf.x = x;
    this.pdf.y = y;
  }

  #write(parent: Element, tag: string, text: string, style: Style): void {
    const element = this.pdf.struct(tag as never, {}, () => this.#set(text, style));
    parent.add(element);
    element.end();
  }

  #set(text: string, style: Style): void {
    const options = this.#options(style);
    const x = style.x ?? MARGIN.left;
    const y = this.pdf.y;
    this.pdf.fontSize(style.size).fillColor(style.colour ?? COLOUR.ink);
    const runs = this.#runs(text, style);
    runs.forEach((run, i) => {
      const last = i === runs.length - 1;
      this.pdf.font(run.face);
      if (i === 0) this.pdf.text(run.text, x, y, { ...options, continued: !last });
      else this.pdf.text(run.text, { ...options, continued: !last });
    });
    this.pdf.x = MARGIN.left;
  }

  #options(style: Style): PDFKit.Mixins.TextOptions {
    return { width: style.width ?? this.#width, lineGap: style.gap ?? 2, align: style.align ?? 'left' };
  }

  #measure(text: string, style: Style, width: number): number {
    // A log says the same few things on every evening; measuring costs as much as setting.
    const key = `${style.face} ${style.size} ${style.gap} ${width} ${text}`;
    let height = this.#heights.get(key);
    if (height === undefined) {
      this.pdf.font(style.face).fontSize(style.size);
      height = this.pdf.heightOfString(text || ' ', { width, lineGap: style.gap ?? 2 });
      this.#heights.set(key, height);
    }
    return height;
  }

  /** Text in pieces that each face can set: the style's own face, else the sans, else a box. */
  #runs(text: string, style: Style): { face: Face; text: string }[] {
    const runs: { face: Face; text: string }[] = [];
    const put = (face: Face, piece: string): void => {
      const last = runs.at(-1);
      if (last?.face === face) last.text += piece;
      else runs.push({ face, text: piece });
    };
    let rest = text;
    if (style.bold && text.startsWith(style.bold)) {
      put('bold', style.bold);
      rest = text.slice(style.bold.length);
    }
    const has = this.#coverage(style.face);
    if ([...rest].every((letter) => has(letter.codePointAt(0)!))) put(style.face, rest);
    else {
      const sans = this.#coverage('sans');
      for (const letter of rest) {
        const code = letter.codePointAt(0)!;
        if (has(code)) put(style.face, letter);
        else if (sans(code)) put('sans', letter);
        else {
          this.missing.add(letter);
          put('sans', '□');
        }
      }
    }
    return runs.length ? runs : [{ face: style.face, text: ' ' }];
  }

  #covered(text: string, face: Face): string {
    const has = this.#coverage(face);
    return [...text].map((letter) => (has(letter.codePointAt(0)!) ? letter : '□')).join('');
  }

  #coverage(face: Face): (code: number) => boolean {
    let covers = this.#covers.get(face);
    if (!covers) {
      const font = faceFont(face);
      const known = new Map<number, boolean>();
      covers = (code) => {
        let is = known.get(code);
        if (is === undefined) {
          is = font.hasGlyphForCodePoint(code);
          known.set(code, is);
        }
        return is;
      };
      this.#covers.set(face, covers);
    }
    return covers;
  }
}

type Size = { width: number; height: number };
type Style = {
  face: Face;
  size: number;
  gap?: number;
  colour?: string;
  x?: number;
  width?: number;
  align?: 'right' | undefined;
  /** A first word or two set bold. */
  bold?: string;
};
