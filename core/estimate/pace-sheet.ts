/** A starting guess of the minutes that one of an action takes, before there is a log. */
export interface Pace {
  minutes: number;
  /** What "one" is. */
  unit: string;
  source: string;
  /** Length of seam in one, inches, where work may be told by its length. */
  lengthIn?: number;
}

const GUESS = 'our own starting guess; no published figure';

/**
 * The starting pace sheet. There is hardly a published time for mending by hand: these are guesses to
 * begin with, and the maker's own log draws them toward her pace.
 */
export const PACE_SHEET: Readonly<Record<string, Pace>> = {
  replace: { minutes: 45, unit: 'piece', source: GUESS },
  patch: { minutes: 30, unit: 'patch', source: GUESS },
  stabilize: { minutes: 20, unit: 'place', source: GUESS },
  overlay: { minutes: 40, unit: 'place', source: GUESS },
  resew: { minutes: 15, unit: 'seam', source: GUESS, lengthIn: 12 },
  darn: { minutes: 25, unit: 'place', source: GUESS },
  remove: { minutes: 15, unit: 'place', source: GUESS },
  clean: { minutes: 10, unit: 'place', source: GUESS },
  wash: { minutes: 90, unit: 'quilt', source: GUESS },
  dry: { minutes: 20, unit: 'quilt', source: GUESS },
  press: { minutes: 3, unit: 'piece', source: GUESS },
  leave: { minutes: 1, unit: 'place', source: GUESS },
  cut: { minutes: 4, unit: 'piece', source: GUESS },
  piece: { minutes: 8, unit: 'seam', source: GUESS, lengthIn: 12 },
  'add-border': { minutes: 45, unit: 'side', source: GUESS, lengthIn: 70 },
  layer: {
    minutes: 60,
    unit: 'quilt',
    source: 'one page: layer and pin 2 1/2 h, parted by us; as excerpted',
  },
  baste: {
    minutes: 90,
    unit: 'quilt',
    source: 'one page: layer and pin 2 1/2 h, parted by us; as excerpted',
  },
  tie: { minutes: 2, unit: 'tie', source: GUESS },
  quilt: { minutes: 60, unit: 'block', source: GUESS },
  bind: {
    minutes: 300,
    unit: 'quilt',
    source: 'one page: 300 in by hand, billed 3 h, really about 5; as excerpted',
    lengthIn: 300,
  },
  trim: { minutes: 20, unit: 'quilt', source: GUESS },
  'square-up': { minutes: 30, unit: 'quilt', source: GUESS },
  label: { minutes: 30, unit: 'label', source: GUESS },
  measure: { minutes: 10, unit: 'time', source: GUESS },
  photograph: { minutes: 3, unit: 'picture', source: GUESS },
};

/** For an action that the sheet does not know. */
export const UNKNOWN_PACE: Pace = { minutes: 20, unit: 'one', source: 'not on the sheet; a bare guess' };
