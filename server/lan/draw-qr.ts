import { generate } from 'lean-qr';

/** A QR code for a terminal, two rows to a line, black on white whatever the terminal's own colours are. */
export function drawQr(text: string): string {
  const code = generate(text);
  const edge = 2;
  const lines: string[] = [];
  for (let y = -edge; y < code.size + edge; y += 2) {
    let line = '';
    for (let x = -edge; x < code.size + edge; x++) {
      line += [' ', '▄', '▀', '█'][(code.get(x, y) ? 2 : 0) + (code.get(x, y + 1) ? 1 : 0)];
    }
    lines.push(`\u001b[30;107m${line}\u001b[0m`);
  }
  return lines.join('\n');
}
