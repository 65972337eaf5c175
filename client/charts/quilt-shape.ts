/** A point in the quilt's own unit, x to the right and y down. */
export type Point = { x: number; y: number };

/** The measured sides of a quilt, all in one unit; absent where not measured. */
export type MeasuredSides = {
  width?: number;
  length?: number;
  top?: number;
  right?: number;
  bottom?: number;
  left?: number;
  /** From the top left to the bottom right corner. */
  diagonal?: number;
};

/**
 * The four corners (top left, top right, bottom right, bottom left) of the quilt as measured. With
 * four sides and no diagonal the quilt is drawn with its left side upright; with a diagonal exactly.
 * Sides that fit no quadrilateral fall back to the rectangle of width and length.
 */
export function quiltCorners(sides: MeasuredSides, fallbackRatio: number): [Point, Point, Point, Point] {
  const width = sides.width ?? sides.top ?? sides.bottom;
  const length = sides.length ?? sides.left ?? sides.right;
  const w = width ?? (length ? length * fallbackRatio : fallbackRatio * 100);
  const h = length ?? w / fallbackRatio;
  const rectangle: [Point, Point, Point, Point] = [
    { x: 0, y: 0 },
    { x: w, y: 0 },
    { x: w, y: h },
    { x: 0, y: h },
  ];
  const { top, right, bottom, left } = sides;
  if (!top || !right || !bottom || !left) return rectangle;

  const topLeft = { x: 0, y: 0 };
  // With the diagonal known its two triangles give every corner; without, the left side stands upright.
  if (sides.diagonal) {
    const d = sides.diagonal;
    const topRightFrom = cornerAcross(d, top, right);
    const bottomLeftFrom = cornerAcross(d, left, bottom);
    if (!topRightFrom || !bottomLeftFrom) return rectangle;
    // The diagonal lies on the x axis first; then all is turned so that the top side is level.
    const turn = Math.atan2(-topRightFrom.y, topRightFrom.x);
    const rotate = (p: Point): Point => ({
      x: p.x * Math.cos(-turn) - p.y * Math.sin(-turn),
      y: p.x * Math.sin(-turn) + p.y * Math.cos(-turn),
    });
    return [
      topLeft,
      rotate({ x: topRightFrom.x, y: -topRightFrom.y }),
      rotate({ x: d, y: 0 }),
      rotate({ x: bottomLeftFrom.x, y: bottomLeftFrom.y }),
    ].map(clean) as [Point, Point, Point, Point];
  }
  const bottomLeft = { x: 0, y: left };
  const topRight = { x: top, y: 0 };
  const between = Math.hypot(topRight.x - bottomLeft.x, topRight.y - bottomLeft.y);
  const reach = cornerAcross(between, bottom, right);
  if (!reach) return rectangle;
  const ux = (topRight.x - bottomLeft.x) / between;
  const uy = (topRight.y - bottomLeft.y) / between;
  const bottomRight = {
    x: bottomLeft.x + reach.x * ux - reach.y * uy,
    y: bottomLeft.y + reach.x * uy + reach.y * ux,
  };
  return [topLeft, topRight, bottomRight, bottomLeft];
}

const clean = (p: Point): Point => ({ x: Math.round(p.x * 1e6) / 1e6, y: Math.round(p.y * 1e6) / 1e6 });

/** The third corner of a triangle on a base, at `a` from its start and `b` from its end, above the base. */
function cornerAcross(base: number, a: number, b: number): Point | null {
  const x = (base * base + a * a - b * b) / (2 * base);
  const square = a * a - x * x;
  return square > 0 ? { x, y: Math.sqrt(square) } : null;
}

/** The place in the quilt at fractions `u` across and `v` down, between its four corners. */
export function placeIn(corners: readonly [Point, Point, Point, Point], u: number, v: number): Point {
  const [tl, tr, br, bl] = corners;
  return {
    x: (1 - v) * ((1 - u) * tl.x + u * tr.x) + v * ((1 - u) * bl.x + u * br.x),
    y: (1 - v) * ((1 - u) * tl.y + u * tr.y) + v * ((1 - u) * bl.y + u * br.y),
  };
}
