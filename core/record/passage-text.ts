import type { Block } from './document-model.ts';
import { cleanText } from './wording/clean-text.ts';

/**
 * A passage as plain text that a person can edit: paragraphs apart by an empty line, list items after
 * "- ", cautions after "! ", names and values as "Name: value", tables as rows between bars.
 */
export function passageText(body: readonly Block[]): string {
  return body
    .map((block) => {
      switch (block.type) {
        case 'paragraph':
          return block.text;
        case 'caution':
          return `! ${block.text}`;
        case 'list':
          return block.items.map((item) => `- ${item}`).join('\n');
        case 'terms':
          return block.rows.map(([name, value]) => `${name}: ${value}`).join('\n');
        case 'table':
          return [block.columns.map((column) => column.title), ...block.rows]
            .map((row) => `| ${row.map((cell) => cell.replaceAll('|', '¦')).join(' | ')} |`)
            .join('\n');
        default:
          return '';
      }
    })
    .filter(Boolean)
    .join('\n\n');
}

/**
 * Her text back into blocks. `written` is the body it stands for: its tables lend their columns, its
 * drawings and photographs stay, after the words. Nothing in the text is markup beyond what
 * `passageText` writes, so nothing she types is lost.
 */
export function bodyFromText(text: string, written: readonly Block[]): Block[] {
  const blocks: Block[] = [];
  const names = new Set(
    written.flatMap((block) => (block.type === 'terms' ? block.rows.map((r) => r[0]) : [])),
  );
  const tables = written.filter((block) => block.type === 'table');
  for (const chunk of text.split(/(?:\r\n|\n|\r){2,}/)) {
    const lines = chunk
      .split(/\r\n|\n|\r/)
      .map(cleanText)
      .filter(Boolean);
    if (lines.length === 0) continue;
    if (lines.every((line) => line.startsWith('- '))) {
      blocks.push({ type: 'list', items: lines.map((line) => line.slice(2)) });
    } else if (lines.every((line) => line.startsWith('|')) && lines.length > 1) {
      const rows = lines.map((line) =>
        line
          .replace(/^\|\s?/, '')
          .replace(/\s?\|$/, '')
          .split(/\s?\|\s?/),
      );
      const like = tables.shift();
      const columns = rows[0]!.map((title, i) => ({ ...like?.columns[i], title }));
      const width = columns.length;
      blocks.push({
        type: 'table',
        columns,
        rows: rows.slice(1).map((row) => Array.from({ length: width }, (_, i) => row[i] ?? '')),
        ...(like?.sum ? { sum: true as const } : {}),
      });
    } else if (names.size > 0 && lines.every((line) => /^[^:]{1,80}: ?/.test(line))) {
      blocks.push({
        type: 'terms',
        rows: lines.map((line) => {
          const at = line.indexOf(':');
          return [line.slice(0, at).trim(), line.slice(at + 1).trim()];
        }),
      });
    } else if (lines[0]!.startsWith('! ')) {
      blocks.push({ type: 'caution', text: lines.join(' ').slice(2) });
    } else blocks.push({ type: 'paragraph', text: lines.join(' ') });
  }
  return [
    ...blocks,
    ...written.filter(
      (block) => block.type === 'figure' || block.type === 'photograph' || block.type === 'signatures',
    ),
  ];
}
