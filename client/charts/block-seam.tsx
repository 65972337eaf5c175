import type { JSX } from 'preact';
import type { Palette } from './palette.ts';
import type { Standing } from './quilt-picture.ts';

/**
 * The seam round a block tells how it stands, by its stitches alone: nothing sewn (untouched), a thin
 * line (found), long loose basting (planned), half sewn with the needle in (in hand), a close double
 * line (done), a pin left in the corner (undecided), a knot (left as found on purpose).
 * `size` is the block's shorter side; the corners go round clockwise from the top left,
 * four of a square or six of a hexagon.
 */
export function BlockSeam(props: {
  standing: Standing;
  corners: readonly { x: number; y: number }[];
  size: number;
  palette: Palette;
}): JSX.Element | null {
  const { standing, corners, size, palette } = props;
  const centre = {
    x: corners.reduce((sum, p) => sum + p.x, 0) / corners.length,
    y: corners.reduce((sum, p) => sum + p.y, 0) / corners.length,
  };
  const inset = (by: number) =>
    `M${corners
      .map((p) => {
        const length = Math.hypot(centre.x - p.x, centre.y - p.y) || 1;
        const step = (by * Math.SQRT2) / length;
        return `${round(p.x + (centre.x - p.x) * step)} ${round(p.y + (centre.y - p.y) * step)}`;
      })
      .join('L')}Z`;
  const line = Math.max(1.2, size * 0.045);
  const edge = size * 0.075;
  switch (standing) {
    case 'untouched':
      return null;
    case 'found':
      return <path d={inset(edge)} fill="none" stroke={palette.madder} stroke-width={line * 0.55} />;
    case 'planned':
      return (
        <path
          d={inset(edge)}
          fill="none"
          stroke={palette.weld}
          stroke-width={line}
          stroke-linecap="round"
          stroke-dasharray={`${size * 0.2} ${size * 0.13}`}
        />
      );
    case 'doing': {
      const half = `M${[...corners.slice(1 - corners.length / 2), corners[0]!, corners[1]!]
        .map((p) => {
          const length = Math.hypot(centre.x - p.x, centre.y - p.y) || 1;
          const step = (edge * Math.SQRT2) / length;
          return `${round(p.x + (centre.x - p.x) * step)} ${round(p.y + (centre.y - p.y) * step)}`;
        })
        .join('L')}`;
      const p = corners[1]!;
      const q = corners[2]!;
      const at = (f: number) => `${round(p.x + (q.x - p.x) * f - edge)} ${round(p.y + (q.y - p.y) * f)}`;
      return (
        <g fill="none" stroke={palette.indigo} stroke-linecap="round">
          <path d={half} stroke-width={line} stroke-dasharray={`${size * 0.1} ${size * 0.07}`} />
          <path d={`M${at(0.12)}L${at(0.62)}`} stroke-width={line * 1.5} />
        </g>
      );
    }
    case 'done':
      return (
        <g fill="none" stroke={palette.moss}>
          <path d={inset(edge * 0.8)} stroke-width={line * 0.8} />
          <path
            d={inset(edge * 1.9)}
            stroke-width={line * 0.8}
            stroke-dasharray={`${size * 0.055} ${size * 0.04}`}
          />
        </g>
      );
    case 'left': {
      const p = {
        x: corners[1]!.x + (centre.x - corners[1]!.x) * 0.3,
        y: corners[1]!.y + (centre.y - corners[1]!.y) * 0.3,
      };
      return (
        <g fill="none" stroke={palette.ink}>
          <path d={inset(edge)} stroke-width={line * 0.45} />
          <circle cx={round(p.x)} cy={round(p.y)} r={size * 0.1} stroke-width={line} fill={palette.paper} />
          <circle cx={round(p.x)} cy={round(p.y)} r={size * 0.03} fill={palette.ink} stroke="none" />
        </g>
      );
    }
    case 'undecided': {
      const head = {
        x: corners[1]!.x + (centre.x - corners[1]!.x) * 0.28,
        y: corners[1]!.y + (centre.y - corners[1]!.y) * 0.28,
      };
      const tip = { x: head.x - size * 0.34, y: head.y + size * 0.34 };
      return (
        <g>
          <path
            d={inset(edge)}
            fill="none"
            stroke={palette.madder}
            stroke-width={line * 0.8}
            stroke-dasharray={`${line * 0.2} ${size * 0.085}`}
            stroke-linecap="round"
          />
          <path
            d={`M${round(head.x)} ${round(head.y)}L${round(tip.x)} ${round(tip.y)}`}
            stroke={palette.paper}
            stroke-width={line * 2.4}
          />
          <path
            d={`M${round(head.x)} ${round(head.y)}L${round(tip.x)} ${round(tip.y)}`}
            stroke={palette.ink}
            stroke-width={line}
            stroke-linecap="round"
          />
          <circle
            cx={round(head.x)}
            cy={round(head.y)}
            r={size * 0.105}
            fill={palette.madder}
            stroke={palette.paper}
            stroke-width={line * 0.6}
          />
        </g>
      );
    }
  }
}

const round = (n: number): number => Math.round(n * 100) / 100;
