declare module 'svg-to-pdfkit' {
  /** Draws an SVG string into the current page at (x, y). */
  const drawSvg: (
    document: PDFKit.PDFDocument,
    svg: string,
    x: number,
    y: number,
    options?: {
      width?: number;
      height?: number;
      assumePt?: boolean;
      fontCallback?: (family: string, bold: boolean, italic: boolean) => string;
      warningCallback?: (warning: string) => void;
    },
  ) => void;
  // The package is CommonJS and has nothing but its default.
  // biome-ignore lint/style/noDefaultExport: it is not ours
  export default drawSvg;
}
