import type { JSX } from 'preact';
import type { Finding } from '../../shared/vocabulary.ts';

/**
 * One small drawing per finding, on a 24 × 24 box: each shows what the eye sees in the cloth, so it
 * can be told apart by shape alone. `line` strokes, `solid` fills; both in the drawing's own ink.
 */
const DRAWINGS: Record<Finding, { line?: string; fine?: string; solid?: string }> = {
  // a slit with jagged lips
  tear: { line: 'M2 13 6 9l3 2.5 3-5 3 4 3-3.5 4 1M2 13l5 2.5 3 2.5 3-3.5 3 3 6-9.5' },
  // a dark opening with broken yarns round it
  hole: {
    solid: 'M12 6.5c3.4-.4 5.8 2.2 5.4 5.6-.3 3.6-3 5.7-6.2 5.1-3.1-.5-5-3-4.5-6 .4-2.7 2.5-4.4 5.3-4.7z',
    line: 'M12 6.5V2.6M17 9.6l3.6-2M17 14.8l3.4 2.4M10.6 17.2 9.8 21M6.9 14 3.2 15.4M7.6 9 4.4 6.4',
  },
  // a seam gaping between its last two good stitches
  'split-seam': {
    line: 'M12 1.5v3.6M12 18.9v3.6M12 5.1C6.6 9 6.6 15 12 18.9 17.4 15 17.4 9 12 5.1',
    fine: 'M8 9.5h2M8 14.5h2M14 9.5h2M14 14.5h2',
  },
  // an edge that ravels
  fraying: {
    line: 'M2.5 7h19',
    fine: 'M5 7c-1 4 1.4 5-.4 10M8.5 7c1 4-1 6 .4 13M12 7c-1 4 1.2 4 0 9M15.5 7c1 5-1 7 .3 12M19 7c-1 4 1 5 0 9',
  },
  // silk in strips
  shattered: { line: 'M4 2.5v8M4 14v7.5M8 5v14M12 2.5v5M12 11v10.5M16 4v11M16 18.5v3M20 2.5v7M20 13v6' },
  // a weave that has lost every other yarn
  thin: { fine: 'M3 5h18M3 12h5M16 12h5M3 19h18M5 3v18M12 3v5M12 16v5M19 3v18' },
  // a tide line
  stain: {
    line: 'M4 11c-.6-4 3.4-4.4 5.4-6.2C12 2.4 16 4 17.6 6.2c1.5 2 4 2.4 3 6-.9 3-1.6 5.8-5 6.4-2.8.5-4 2.4-7 1C5.4 18.2 4.5 14.5 4 11z',
    fine: 'M8 11.5c0-2.4 2.3-2.6 3.6-3.6 1.9-1.3 4.4.1 4.6 2.2.2 1.6 0 3.7-2 4.2-1.7.5-3.3 1.3-4.7.3-1-.7-1.5-1.7-1.5-3.1z',
  },
  // a print going out
  fading: {
    solid: 'M3 3.5h18v4.2H3zM3 10.4h18v2.2H3z',
    fine: 'M3 16h18M3 20.5h2.5M8.2 20.5h2.5M13.4 20.5h2.5M18.5 20.5H21',
  },
  // colour running out of its shape
  'dye-bleed': {
    solid: 'M12 2.5c3.2 4 5 6.2 5 8.7a5 5 0 0 1-10 0c0-2.5 1.8-4.7 5-8.7z',
    line: 'M8.5 18.2v3.3M12 18.8v3.7M15.5 18.2v3.3',
  },
  // cloth gone: an outline with nothing in it
  missing: { line: 'M4 4h4M11 4h3M17.5 4H20v3M20 10.5v3M20 17v3h-3M13 20h-3M6.5 20H4v-3M4 13.5v-3M4 7V4' },
  // somebody's patch, sewn on askew
  'old-repair': {
    line: 'M7 5.5l12 2.3-2.3 11.7-12-2.3z',
    fine: 'M9 3.8l-.8 3.4M13.6 4.6l-.5 3.2M19.9 11l-3 .2M19 16l-2.8-.8M13.2 20.5l.2-3M8.6 19.7l.8-3M3.6 13.7l3 .2M4.6 9l2.8.9',
  },
  // filling in clumps
  'lumpy-batting': { line: 'M2.5 17.5c0-5 6-5 6 0M8 17.5c0-8.5 8-8.5 8 0M15.5 17.5c0-5 6-5 6 0M2 20.5h20' },
  // gathers that pull to one line
  puckering: {
    line: 'M2.5 12h19',
    fine: 'M5 12c-.6-3-1.5-5-3-7M9 12c-.3-3-.9-6-2-8.5M15 12c.3-3 .9-6 2-8.5M19 12c.6-3 1.5-5 3-7M5 12c-.6 3-1.5 5-3 7M9 12c-.3 3-.9 6-2 8.5M15 12c.3 3 .9 6 2 8.5M19 12c.6 3 1.5 5 3 7',
  },
  // specks
  mildew: {
    solid:
      'M8 7.5a2.5 2.5 0 1 1-5 0 2.5 2.5 0 0 1 5 0zM15.2 5a1.7 1.7 0 1 1-3.4 0 1.7 1.7 0 0 1 3.4 0zM20.8 9.5a2.1 2.1 0 1 1-4.2 0 2.1 2.1 0 0 1 4.2 0zM14.3 13a2.8 2.8 0 1 1-5.6 0 2.8 2.8 0 0 1 5.6 0zM7 17.5a1.6 1.6 0 1 1-3.2 0 1.6 1.6 0 0 1 3.2 0zM20 17.5a2.3 2.3 0 1 1-4.6 0 2.3 2.3 0 0 1 4.6 0zM12.3 20.5a1.3 1.3 0 1 1-2.6 0 1.3 1.3 0 0 1 2.6 0z',
  },
  // three bites out of one cloth
  'insect-damage': { line: 'M3 4.5h4a3 3 0 0 0 6 0h8v6a3.5 3.5 0 0 0 0 7v3h-6.5a3 3 0 0 0-6 0H3z' },
  // stitches that end in a loose thread
  'broken-stitching': { line: 'M2 8h3.5M8 8h3.5M14 8c4 0 6.5 2 5 5s-5.5 2.5-5 5.5c.3 2 3 2.5 5 1.5' },
  // a square that is none, against a true corner
  'out-of-square': { line: 'M7.5 5 21 7.5 16.5 19.5 3.5 17z', fine: 'M3 2.5v19h18.5' },
  // over, under: whole cloth
  sound: { line: 'M3 8h4M11 8h10M3 16h10M17 16h4M8 3v10M8 17v4M16 3v4M16 11v10' },
};

/** The drawing of a finding as a group of paths, `size` wide with its top left at (`x`, `y`). */
export function DamageMark(props: {
  finding: Finding;
  x?: number;
  y?: number;
  size: number;
  ink: string;
}): JSX.Element {
  const { finding, x = 0, y = 0, size, ink } = props;
  const drawing = DRAWINGS[finding];
  return (
    <g transform={`translate(${x} ${y}) scale(${size / 24})`} data-mark={finding}>
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
          stroke-width="1.4"
          stroke-linecap="round"
          stroke-linejoin="round"
        />
      ) : null}
    </g>
  );
}
