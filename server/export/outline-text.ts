import { faceFont } from './pdf/type-faces.ts';

const plainText = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

/**
 * Our own drawings with their text turned into outlines, so that a picture made of them does not hang on
 * the fonts of the machine. Knows the `<text>` that core/record/figures writes, and nothing else.
 */
export function outlineText(svg: string): string {
  return svg.replace(/<text ([^>]*)>([^<]*)<\/text>/g, (_whole, attributes: string, escaped: string) => {
    const attribute = (name: string): string | undefined =>
      new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1];
    const font = faceFont(attribute('font-weight') === '600' ? 'label' : 'sans');
    const size = Number(attribute('font-size') ?? 10);
    const scale = size / font.unitsPerEm;
    const { glyphs, positions } = font.layout(plainText(escaped));
    const width = positions.reduce((sum, position) => sum + position.xAdvance, 0) * scale;
    const anchor = attribute('text-anchor');
    const start = Number(attribute('x')) - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
    let along = 0;
    const paths = glyphs.map((glyph, i) => {
      const position = positions[i]!;
      const x = along + position.xOffset;
      along += position.xAdvance;
      const d = glyph.path.toSVG();
      return d ? `<path transform="translate(${x} ${position.yOffset})" d="${d}"/>` : '';
    });
    return `<g transform="translate(${start.toFixed(2)} ${attribute('y')}) scale(${scale.toFixed(6)} ${(-scale).toFixed(6)})" fill="${attribute('fill') ?? '#000'}">${paths.join('')}</g>`;
  });
}
