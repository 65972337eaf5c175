/** Sizes that batting is sold in, inches. Retail tables, as excerpted; they disagree, so they can be replaced. */
export const BATTING_PACKAGES_IN = [
  { name: 'crib', width: 45, length: 60 },
  { name: 'throw', width: 60, length: 60 },
  { name: 'twin', width: 72, length: 90 },
  { name: 'full', width: 81, length: 96 },
  { name: 'queen', width: 90, length: 108 },
  { name: 'king', width: 120, length: 120 },
] as const;
