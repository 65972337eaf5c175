import type { JSX } from 'preact';
import type { Action } from '../../shared/vocabulary.ts';

/**
 * One small drawing per treatment, on a 24 × 24 box: the stitch or the movement of the hand that the
 * trade would use for it.
 */
const DRAWINGS: Record<Action, { line?: string; fine?: string; solid?: string }> = {
  // a new piece let in, its four seams showing
  replace: { solid: 'M6.5 6.5h11v11h-11z', line: 'M1.5 6.5h21M1.5 17.5h21M6.5 1.5v21M17.5 1.5v21' },
  // applied cloth with running stitches inside its edge
  patch: {
    line: 'M3 3h18v18H3z',
    fine: 'M6.5 6.5h2.5M11 6.5h2.5M15.5 6.5h2M17.5 10v2.5M17.5 15v2.5M14.5 17.5H12M9.5 17.5H7M6.5 15v-2.5M6.5 10.5V9',
  },
  // a cloth behind, seen as hatching past the edge
  stabilize: {
    line: 'M7 7h10v10H7z',
    fine: 'M2 7l5-5M2 12.5 12.5 2M2 18 7 13M17 3l-4 4M22 2.5 17 7.5M22 8l-5 5M22 13.5 13.5 22M22 19l-3 3M11 17l-5 5M7 16l-5 5',
  },
  // net over the face
  overlay: {
    fine: 'M2 8l6-6M2 15 15 2M2 22 22 2M9 22 22 9M16 22l6-6M2 16l6 6M2 9l13 13M2 2l20 20M9 2l13 13M16 2l6 6',
  },
  // whipstitches closing a line
  resew: { line: 'M2 12h20M4 16.5l3-9M9.3 16.5l3-9M14.7 16.5l3-9' },
  // weaving in new yarn
  darn: { line: 'M4 6h4M11 6h9M4 12h9M16 12h4M4 18h4M11 18h9', fine: 'M6.5 2.5v19M12 2.5v19M17.5 2.5v19' },
  // a stitch drawn out by its thread
  remove: { line: 'M1.5 17.5H6M18 17.5h4.5M9 17.5c-1-9 1-13 4-13s3.5 4.5 0 6.5-3 4-1 6.5' },
  // strokes of a soft brush
  clean: {
    line: 'M3.5 20.5 9 15M8 10.5l5.5 5.5',
    fine: 'M8 10.5c1-4 4-6 9-8M10 12.5c2-3.5 5-5.5 9.5-7M12 14.5c2.5-2.5 5.5-4 9.5-4.8',
  },
  // water
  wash: {
    line: 'M2 7c2.5-3 4.5-3 7 0s4.5 3 7 0 4-3 6-1M2 13c2.5-3 4.5-3 7 0s4.5 3 7 0 4-3 6-1M2 19c2.5-3 4.5-3 7 0s4.5 3 7 0 4-3 6-1',
  },
  // laid flat on slats
  dry: { line: 'M3 8h18M3 20.5h18', fine: 'M6 8v12.5M10 8v12.5M14 8v12.5M18 8v12.5M8 2v3M12 2v3M16 2v3' },
  // weight from above
  press: { line: 'M4 16c0-6 5-8 16-8v8zM2 20.5h20' },
  // a knot tied off and let be
  leave: { line: 'M12 5a7 7 0 1 1-.1 0M12 9a3 3 0 1 1-.1 0' },
  // two blades' path through cloth
  cut: { line: 'M3 21 21 3', fine: 'M3 14v7h7M14 3h7v7' },
  // two triangles joined on their long side
  piece: { solid: 'M3 3h18L3 21z', line: 'M3 3h18v18H3z' },
  // a strip round the middle
  'add-border': {
    line: 'M2.5 2.5h19v19h-19zM8 8h8v8H8z',
    fine: 'M2.5 2.5 8 8M21.5 2.5 16 8M21.5 21.5 16 16M2.5 21.5 8 16',
  },
  // three layers
  layer: { line: 'M3 6.5h18M3 12c3-2.5 6 2.5 9 0s6-2.5 9 0M3 17.5h18' },
  // long loose stitches
  baste: {
    line: 'M2 6.5h7.5M14 6.5h8M2 17.5h3.5M9.5 17.5h7.5M20.5 17.5H22',
    fine: 'M2 12h2M8 12h2M14 12h2M20 12h2',
  },
  // a square knot with its tails
  tie: { line: 'M12 11c-4-7-10-4-6 .5 2 2 4 1 6-.5 4-7 10-4 6 .5-2 2-4 1-6-.5M12 11 7 21M12 11l5 10' },
  // echoing running lines
  quilt: {
    line: 'M2 8c2 0 1.5-4 4.5-4M10 4c2.5 0 2 4 4 4M17.5 8c2 0 1.5-4 4.5-4M2 14.5c2 0 1.5-4 4.5-4M10 10.5c2.5 0 2 4 4 4M17.5 14.5c2 0 1.5-4 4.5-4M2 21c2 0 1.5-4 4.5-4M10 17c2.5 0 2 4 4 4M17.5 21c2 0 1.5-4 4.5-4',
  },
  // an edge folded over
  bind: { line: 'M3 21V3h18M8.5 21V8.5H21', fine: 'M3 14l5.5 2M3 9.5l5.5 2M9.5 3l2 5.5M14.5 3l2 5.5' },
  // edge taken back to a line
  trim: {
    line: 'M17 2v20',
    fine: 'M3 5h11M3 12h11M3 19h11M20.5 4l2-1.5M20.5 9l2-1.5M20.5 14l2-1.5M20.5 19l2-1.5',
  },
  // a true corner
  'square-up': { line: 'M4 2.5V20h17.5', fine: 'M4 13.5h6.5V20' },
  // a cloth label
  label: {
    line: 'M3 6h18v12H3z',
    fine: 'M6.5 10.5h11M6.5 14h6.5M1.5 4.5l3 3M22.5 4.5l-3 3M1.5 19.5l3-3M22.5 19.5l-3-3',
  },
  // a tape
  measure: { line: 'M2 8.5h20v7H2z', fine: 'M5.5 8.5v3M9 8.5v4.5M12.5 8.5v3M16 8.5v4.5M19.5 8.5v3' },
  // photograph corners
  photograph: { line: 'M3 8V3h5M16 3h5v5M21 16v5h-5M8 21H3v-5', fine: 'M7 15.5l3.5-4 2.5 2.5 2-2 2.5 3.5' },
};

/** The drawing of a treatment as a group of paths, `size` wide with its top left at (`x`, `y`). */
export function StitchMark(props: {
  action: Action;
  x?: number;
  y?: number;
  size: number;
  ink: string;
}): JSX.Element {
  const { action, x = 0, y = 0, size, ink } = props;
  const drawing = DRAWINGS[action];
  return (
    <g transform={`translate(${x} ${y}) scale(${size / 24})`} data-mark={action}>
      {drawing.solid ? <path d={drawing.solid} fill={ink} /> : null}
      {drawing.line ? (
        <path
          d={drawing.line}
          fill="none"
          stroke={ink}
          stroke-width="2"
          stroke-linecap="round"
          stroke-linejoin="round"
        />
      ) : null}
      {drawing.fine ? (
        <path
          d={drawing.fine}
          fill="none"
          stroke={ink}
          stroke-width="1.3"
          stroke-linecap="round"
          stroke-linejoin="round"
        />
      ) : null}
    </g>
  );
}
