/** Shapes of an estimate's answer. Lengths are in the spec's unit unless the name says otherwise. */

/** A figure that was filled in because the spec left it out. */
export interface Assumption {
  field: string;
  value: string;
  why: string;
}

/** What every part of an answer carries: the sums on paper, the assumptions, warnings and questions. */
export interface Worked {
  working: string[];
  assumptions: Assumption[];
  warnings?: string[];
  /** What must be known before the rest can be answered. */
  question?: string;
}

/** Cloth to buy: yards up to the next eighth, or metres up to the next tenth, with the exact figure. */
export type ClothLength =
  | { yards: number; exact: number; exactFraction: string }
  | { metres: number; exact: number; exactFraction: string };

export interface Estimated {
  low: number;
  likely: number;
  high: number;
}

export interface PlacedPiece {
  /** From the left selvedge. */
  x: number;
  /** From the cut end. */
  y: number;
  /** Across the cloth, as laid. */
  width: number;
  /** Along the cloth, as laid. */
  length: number;
  /** Index into the spec's pieces, from 0. */
  piece: number;
  turned: boolean;
  name?: string;
}

/** One cut from edge to edge of the cloth in hand. */
export interface Cut {
  number: number;
  /** `across` runs from side to side, `along` runs down the length. */
  direction: 'across' | 'along';
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  /** Measure from the left or near edge of the cloth in hand to the cut. */
  measure: number;
  /** How many cuts went before it through the same cloth. */
  depth: number;
}

/** A sheet of cloth with what is cut from it, to draw and to take to the table. */
export interface CuttingPlan {
  /** Name of the scrap, or of the cloth. */
  sheet: string;
  width: number;
  length: number;
  layout: PlacedPiece[];
  cuts: Cut[];
  waste: { x: number; y: number; width: number; length: number }[];
}

export type SidesAnswer = Worked & {
  /** Where all four sides are known. */
  perimeter?: number;
  /** Difference of the diagonals. */
  skew?: number;
  /** How far the worst corner is from a right angle, in degrees. */
  squareness?: number;
  diagonalDifference?: number;
  /** Largest difference of opposite sides. */
  oppositeDifference?: number;
  worstCorner?: { corner: string; angle: number; offSquare: number };
  corners?: { corner: string; angle: number; offSquare: number }[];
};

export interface BackingOption {
  seams: 'vertical' | 'horizontal';
  panels: number;
  /** Panels less one. */
  joins: number;
  panelLength: number;
  /** Cut widths from side to side (or from the top down). */
  panelWidths: number[];
  /** Where the joins fall, from the edge of the made-up back. */
  joinsAt: number[];
  yards?: number;
  metres?: number;
  exact: number;
  exactFraction: string;
}
export type BackingAnswer = Worked &
  Partial<BackingOption> & { width?: number; length?: number; options?: BackingOption[]; fabric?: string };

export type BattingAnswer = Worked & {
  width?: number;
  length?: number;
  package?: { name: string; width: number; length: number } | null;
  reason?: string;
  maxSpacing?: number;
  roll?: ClothLength;
};

export type BindingAnswer = Worked & {
  cut: 'straight' | 'bias';
  strips?: number;
  yards?: number;
  metres?: number;
  exact?: number;
  exactFraction?: string;
  joined?: number;
  needed?: number;
  folded: number;
  front: number;
  /** Side of the square of cloth, bias only, rounded up to a whole unit. */
  side?: number;
  sideExact?: number;
  textbook?: number;
  squares?: number;
  joinsAt?: number[];
  corners?: { at: number; nearestJoin: number | null }[];
  stopBeforeCorner?: number;
  fabric?: string;
};

export type BorderAnswer = Worked & {
  corner: 'butted' | 'mitred' | 'cornerstones';
  lengths?: { side: string; length: number; count: number }[];
  strip?: number;
  strips?: number;
  yards?: number;
  metres?: number;
  exact?: number;
  exactFraction?: string;
  /** Strips where all sides are cut from one long joined strip. */
  stripsEndToEnd?: number;
  /** Strips where each side is made up alone and nothing left over is used again. */
  stripsEachAlone?: number;
  finished?: { width: number; length: number };
  cornerstones?: { count: number; side: number };
  units?: { side: string; count: number; leftOver: number }[];
  fabric?: string;
};

export type TiesAnswer = Worked & {
  count?: number;
  /** Total length of yarn, in the spec's unit. */
  yarn?: number;
  yarnLength?: ClothLength;
  perTie: number;
  skeins?: number;
  rows?: number;
  columns?: number;
  spacing?: { across: number; down: number };
  positions?: { x: number; y: number }[];
};

export type CuttingAnswer = Worked & {
  yards?: number;
  metres?: number;
  exact: number;
  exactFraction: string;
  /** Area of the pieces over the cloth they are cut from, straight ends and scraps included. */
  used: number;
  layout: PlacedPiece[];
  cuts: Cut[];
  plans: CuttingPlan[];
  width: number;
  length: number;
  fabric?: string;
};

export interface ThreadLine {
  stitch: string;
  iso4915?: string;
  ratio: number;
  source: string;
  /** With waste, in yards or metres. */
  exact: number;
  top: number;
  bobbin: number;
}
export type ThreadAnswer = Worked & {
  yards?: number;
  metres?: number;
  exact: number;
  exactFraction: string;
  top: number;
  bobbin: number;
  seams: ThreadLine[];
  spools?: number;
};

export type WorkAction = Estimated & {
  action: string;
  damage?: string;
  /** How many are planned, done and still to do. */
  planned: number;
  done: number;
  left: number;
  /** Minutes for one. */
  each: Estimated;
  /** Minutes for what is left. */
  remaining: Estimated;
  unit: string;
  logged: number;
  startingGuess: number;
};
export type WorkAnswer = Worked & {
  method: string;
  actions: WorkAction[];
  /** Minutes for one of what was logged and is not planned. */
  paces?: { action: string; damage?: string; each: Estimated }[];
  /** Minutes for all that is planned. */
  total: Estimated;
  /** Minutes for what is planned and not yet done. */
  left: Estimated;
  hours: Estimated;
  hoursLeft: Estimated;
  spentMin: number;
  finish?: { early: string; likely: string; late: string };
};

export interface PriceLine {
  name: string;
  kind: 'labour' | 'charge' | 'material' | 'markup' | 'contingency' | 'tax';
  amount: string;
  minor: number;
}
export interface PriceTotal {
  amount: string;
  minor: number;
}
export type PriceAnswer = Worked & {
  currency: string;
  digits: number;
  lines: PriceLine[];
  subtotal: PriceTotal;
  tax: PriceTotal;
  total: PriceTotal;
  range?: { low: PriceTotal; likely: PriceTotal; high: PriceTotal };
  /** Hours are known and neither a rate for them nor any charge: the total is not the whole price. */
  lacksLabour?: true;
  labour?: { low: PriceTotal; likely: PriceTotal; high: PriceTotal };
  deposit?: PriceTotal;
  agreed?: PriceTotal;
  paid?: PriceTotal;
  due?: PriceTotal;
  comparison?: { name: string; quoted: PriceTotal; actual: PriceTotal; over: PriceTotal }[];
};

export interface ShoppingLine {
  name: string;
  for: string[];
  needed: number;
  onHand: number;
  buy: number;
  unit: string;
  leftOver: number;
}
export type ShoppingAnswer = Worked & { lines: ShoppingLine[] };

export interface EstimateAnswer {
  unit: 'in' | 'cm';
  assumptions: Assumption[];
  /** What holds for the spec as a whole, such as a field that was passed over. */
  warnings?: string[];
  sides?: SidesAnswer;
  backing?: BackingAnswer;
  batting?: BattingAnswer;
  binding?: BindingAnswer;
  border?: BorderAnswer;
  sashing?: CuttingAnswer;
  ties?: TiesAnswer;
  quilting?: Worked & { runningLength?: number; thread?: ClothLength };
  patches?: CuttingAnswer;
  interfacing?: CuttingAnswer;
  overlay?: CuttingAnswer;
  label?: CuttingAnswer;
  thread?: ThreadAnswer;
  work?: WorkAnswer;
  price?: PriceAnswer;
  shopping?: ShoppingAnswer;
}
