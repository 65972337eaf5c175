/** Colours of a drawing. The page passes its own custom properties, so that a drawing follows the theme. */
export type Palette = {
  ground: string;
  paper: string;
  ink: string;
  muted: string;
  thread: string;
  indigo: string;
  indigoWash: string;
  madder: string;
  madderWash: string;
  weld: string;
  weldWash: string;
  moss: string;
};

/** For paper, PDF and pictures that stand alone: the light dyes as plain figures. */
export const PRINT_PALETTE: Palette = {
  ground: '#ffffff',
  paper: '#fcf9f3',
  ink: '#1b2136',
  muted: '#594838',
  thread: '#857458',
  indigo: '#24366f',
  indigoWash: '#dde1ea',
  madder: '#9b2f25',
  madderWash: '#f3ddd2',
  weld: '#6d5200',
  weldWash: '#f3e4b5',
  moss: '#35593a',
};

export const PAGE_PALETTE: Palette = {
  ground: 'var(--linen)',
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  muted: 'var(--walnut)',
  thread: 'var(--thread-strong)',
  indigo: 'var(--indigo)',
  indigoWash: 'var(--indigo-wash)',
  madder: 'var(--madder)',
  madderWash: 'var(--madder-wash)',
  weld: 'var(--weld)',
  weldWash: 'var(--weld-wash)',
  moss: 'var(--moss)',
};
