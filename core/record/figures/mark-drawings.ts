import type { Action, Finding } from '../../../shared/vocabulary.ts';

/** A drawing on a 24 × 24 box: `line` strokes, `fine` thin strokes, `solid` fills, all in one ink. */
export type Drawing = { line?: string; fine?: string; solid?: string };

/** One small drawing per finding: what the eye sees in the cloth, told apart by shape alone. */
export const FINDING_DRAWINGS: Record<Finding, Drawing> = {
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

/** One small drawing per treatment: the stitch or the movement of the hand. */
export const ACTION_DRAWINGS: Record<Action, Drawing> = {
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
