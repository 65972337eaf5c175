import type { Block, RecordDocument } from './document-model.ts';

const WIDTH = 76;

/** The document as plain text of lines no longer than 76 letters, tables set out with spaces. */
export function renderText(document: RecordDocument): string {
  const out: string[] = [document.title.toUpperCase(), document.subject, ''];
  for (const section of document.sections) {
    if (section.title) out.push('', section.title, '-'.repeat(Math.min(WIDTH, section.title.length)));
    for (const { body } of section.passages) for (const block of body) out.push(...linesOf(block));
  }
  return `${out
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim()}\n`;
}

function linesOf(block: Block): string[] {
  switch (block.type) {
    case 'paragraph':
      return [...wrap(block.text, ''), ''];
    case 'caution':
      return [...wrap(block.text, '! ', '  '), ''];
    case 'list':
      return [...block.items.flatMap((item) => wrap(item, '- ', '  ')), ''];
    case 'terms':
      return [...block.rows.flatMap(([name, value]) => wrap(`${name}: ${value}`, '', '    ')), ''];
    case 'table':
      return [...tableLines(block), ''];
    case 'figure':
      return [...wrap(`[${block.caption}. ${block.alt}]`, ''), ''];
    case 'photograph':
      return [...wrap(`[${block.caption}]`, ''), ''];
    case 'signatures':
      return block.lines.flatMap((line) => ['', '_'.repeat(44), line, '']);
  }
}

function wrap(text: string, first: string, next = first): string[] {
  const lines: string[] = [];
  for (const part of text.split('\n')) {
    let line = lines.length ? next : first;
    let empty = true;
    for (const word of part.split(/\s+/).filter(Boolean)) {
      if (!empty && line.length + word.length + 1 > WIDTH) {
        lines.push(line);
        line = next;
        empty = true;
      }
      line += empty ? word : ` ${word}`;
      empty = false;
    }
    lines.push(line);
  }
  return lines;
}

function tableLines(table: Extract<Block, { type: 'table' }>): string[] {
  const all = [table.columns.map((column) => column.title), ...table.rows];
  const count = table.columns.length;
  const natural = table.columns.map((_, i) => Math.max(...all.map((row) => (row[i] ?? '').length)));
  const room = WIDTH - 2 * (count - 1);
  let widths = natural;
  const total = natural.reduce((sum, width) => sum + width, 0);
  if (total > room) {
    const fair = Math.floor(room / count);
    const spare = natural.reduce((sum, width) => sum + Math.max(0, fair - width), 0);
    const wide = natural.filter((width) => width > fair).length;
    widths = natural.map((width) => (width <= fair ? width : fair + Math.floor(spare / wide)));
  }
  const lines: string[] = [];
  all.forEach((row, at) => {
    const cells = widths.map((width, i) => wrapCell(row[i] ?? '', width));
    const tall = Math.max(...cells.map((cell) => cell.length));
    if (table.sum && at === all.length - 1) lines.push(widths.map((width) => '-'.repeat(width)).join('  '));
    for (let i = 0; i < tall; i++) {
      lines.push(
        cells
          .map((cell, c) => {
            const text = cell[i] ?? '';
            return table.columns[c]?.align === 'right' ? text.padStart(widths[c]!) : text.padEnd(widths[c]!);
          })
          .join('  ')
          .trimEnd(),
      );
    }
    if (at === 0) lines.push(widths.map((width) => '-'.repeat(width)).join('  '));
  });
  return lines;
}

function wrapCell(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    let rest = word;
    if (line && line.length + 1 + rest.length > width) {
      lines.push(line);
      line = '';
    }
    while (rest.length > width) {
      lines.push(rest.slice(0, width));
      rest = rest.slice(width);
    }
    line = line ? `${line} ${rest}` : rest;
  }
  lines.push(line);
  return lines;
}
