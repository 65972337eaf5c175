/** Text made safe inside an SVG or HTML element or a quoted attribute. */
export function escapeMarkup(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** A coordinate with as many places as can be seen. */
export const at = (n: number): string => String(Math.round(n * 100) / 100);

export const SANS = "'Source Sans 3', 'Atkinson Next', Verdana, sans-serif";

/** Colours of drawings that go on paper; every meaning they carry is carried by shape as well. */
export const INK = {
  ink: '#1b2136',
  soft: '#594838',
  rule: '#857458',
  ground: '#ffffff',
  cloth: '#fbf8f1',
  found: '#9b2f25',
  foundWash: '#f8e6dd',
  work: '#24366f',
  workWash: '#e4e8f1',
  plan: '#6d5200',
  planWash: '#f7ecc9',
} as const;

/** Anchored text on one line. `size` in the drawing's units. */
export function svgText(
  text: string,
  x: number,
  y: number,
  size: number,
  more: { anchor?: 'middle' | 'end'; bold?: boolean; ink?: string } = {},
): string {
  const anchor = more.anchor ? ` text-anchor="${more.anchor}"` : '';
  const bold = more.bold ? ' font-weight="600"' : '';
  return `<text x="${at(x)}" y="${at(y)}" font-family="${SANS}" font-size="${at(size)}"${bold}${anchor} fill="${more.ink ?? INK.ink}">${escapeMarkup(text)}</text>`;
}
