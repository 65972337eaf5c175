import type { JSX } from 'preact';
import type { CuttingPlan } from '../../shared/estimate-answer.ts';
import { lengthWords } from '../words/figure-words.ts';
import { type Palette, PRINT_PALETTE } from './palette.ts';

/**
 * A cloth with what is cut from it, to scale: pieces with their size, cuts numbered in their order,
 * what is left over hatched. The cloth lies with its length across the drawing, so that a long cloth
 * is a wide picture.
 */
export function CuttingPlanDrawing(props: {
  plan: CuttingPlan;
  unit: 'in' | 'cm';
  palette?: Palette;
  id: string;
}): JSX.Element {
  const { plan, unit, palette = PRINT_PALETTE, id } = props;
  const scale = 900 / plan.length;
  const across = plan.width * scale;
  const pad = 46;
  const font = Math.max(12, Math.min(20, across / 16));
  return (
    <svg
      class="cutting-plan"
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${900 + pad * 2} ${r(across + pad * 2)}`}
      role="img"
      aria-label={`Cutting plan for ${plan.sheet}: ${plan.layout.length} pieces from ${lengthWords(round(plan.length))} by ${lengthWords(round(plan.width))} ${unit}, ${plan.cuts.length} cuts`}
      font-family="'Atkinson Next', Verdana, sans-serif"
      font-size={r(font)}
    >
      <defs>
        <pattern id={`${id}-waste`} width="9" height="9" patternUnits="userSpaceOnUse">
          <path d="M-2 11 11-2M-2 2 2-2M7 11l4-4" stroke={palette.thread} stroke-width="1" />
        </pattern>
      </defs>
      <g transform={`translate(${pad} ${pad})`}>
        <rect width="900" height={r(across)} fill={palette.paper} stroke={palette.ink} stroke-width="2" />
        {/* the selvedges, as their row of holes */}
        <path
          d={`M0 -7H900M0 ${r(across + 7)}H900`}
          stroke={palette.thread}
          stroke-width="4"
          stroke-dasharray="0.1 12"
          stroke-linecap="round"
        />
        {plan.waste.map((rest) => (
          <rect
            key={`${rest.x}-${rest.y}`}
            x={r(rest.y * scale)}
            y={r(rest.x * scale)}
            width={r(rest.length * scale)}
            height={r(rest.width * scale)}
            fill={`url(#${id}-waste)`}
          />
        ))}
        {plan.layout.map((piece) => {
          const w = piece.length * scale;
          const h = piece.width * scale;
          const label = `${lengthWords(round(piece.width))} × ${lengthWords(round(piece.length))}`;
          const turn = h > w * 1.5 && label.length * font * 0.55 > w;
          const fits = turn
            ? label.length * font * 0.55 < h - 6 && w > font
            : label.length * font * 0.55 < w - 6 && h > font;
          return (
            <g key={`${piece.x}-${piece.y}`}>
              <rect
                x={r(piece.y * scale)}
                y={r(piece.x * scale)}
                width={r(w)}
                height={r(h)}
                fill={palette.indigoWash}
                stroke={palette.indigo}
                stroke-width="1.6"
              />
              {fits ? (
                <text
                  x={r((piece.y + piece.length / 2) * scale)}
                  y={r((piece.x + piece.width / 2) * scale + font * 0.35)}
                  text-anchor="middle"
                  fill={palette.ink}
                  transform={
                    turn
                      ? `rotate(-90 ${r((piece.y + piece.length / 2) * scale)} ${r((piece.x + piece.width / 2) * scale)})`
                      : undefined
                  }
                >
                  {label}
                </text>
              ) : null}
            </g>
          );
        })}
        {plan.cuts.map((cut) => {
          const x = ((cut.y1 + cut.y2) / 2) * scale;
          const y = ((cut.x1 + cut.x2) / 2) * scale;
          return (
            <g key={cut.number}>
              <path
                d={`M${r(cut.y1 * scale)} ${r(cut.x1 * scale)}L${r(cut.y2 * scale)} ${r(cut.x2 * scale)}`}
                stroke={palette.madder}
                stroke-width={cut.depth === 0 ? 3 : 1.8}
                stroke-dasharray="9 6"
              />
              {plan.cuts.length <= 60 ? (
                <>
                  <circle
                    cx={r(x)}
                    cy={r(cut.direction === 'across' && cut.depth === 0 ? -20 : y)}
                    r={r(font * 0.78)}
                    fill={palette.paper}
                    stroke={palette.madder}
                  />
                  <text
                    x={r(x)}
                    y={r((cut.direction === 'across' && cut.depth === 0 ? -20 : y) + font * 0.34)}
                    text-anchor="middle"
                    font-weight="700"
                    font-size={r(font * 0.85)}
                    fill={palette.madder}
                  >
                    {cut.number}
                  </text>
                </>
              ) : null}
            </g>
          );
        })}
        <text x="450" y={r(across + 36)} text-anchor="middle" fill={palette.muted}>
          {lengthWords(round(plan.length))} {unit} along the cloth
        </text>
        <text
          x={-22}
          y={r(across / 2)}
          text-anchor="middle"
          fill={palette.muted}
          transform={`rotate(-90 -22 ${r(across / 2)})`}
        >
          {lengthWords(round(plan.width))} {unit}
        </text>
      </g>
    </svg>
  );
}

/** The back made up of its panels, with where the joins fall. */
export function BackingDrawing(props: {
  width: number;
  length: number;
  seams: 'vertical' | 'horizontal';
  joinsAt: number[];
  unit: 'in' | 'cm';
  palette?: Palette;
}): JSX.Element {
  const { width, length, seams, joinsAt, unit, palette = PRINT_PALETTE } = props;
  const scale = 260 / Math.max(width, length);
  const w = width * scale;
  const h = length * scale;
  return (
    <svg
      class="backing-drawing"
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${r(w + 70)} ${r(h + 60)}`}
      width={r(w + 70)}
      height={r(h + 60)}
      role="img"
      aria-label={`The back, ${lengthWords(round(width))} by ${lengthWords(round(length))} ${unit}, with ${joinsAt.length} ${joinsAt.length === 1 ? 'join' : 'joins'} ${seams === 'vertical' ? 'running down' : 'running across'}${joinsAt.length ? ` at ${joinsAt.map((at) => lengthWords(round(at))).join(', ')} ${unit}` : ''}`}
      font-family="'Atkinson Next', Verdana, sans-serif"
      font-size="14"
    >
      <g transform="translate(44 10)">
        <rect width={r(w)} height={r(h)} fill={palette.indigoWash} stroke={palette.indigo} stroke-width="2" />
        {joinsAt.map((at) => (
          <g key={at}>
            <path
              d={seams === 'vertical' ? `M${r(at * scale)} 0V${r(h)}` : `M0 ${r(at * scale)}H${r(w)}`}
              stroke={palette.madder}
              stroke-width="2.5"
              stroke-dasharray="9 6"
            />
            <text
              x={seams === 'vertical' ? r(at * scale) : -6}
              y={seams === 'vertical' ? r(h + 18) : r(at * scale + 5)}
              text-anchor={seams === 'vertical' ? 'middle' : 'end'}
              fill={palette.muted}
            >
              {lengthWords(round(at))}
            </text>
          </g>
        ))}
        <text x={r(w / 2)} y={r(h + 40)} text-anchor="middle" fill={palette.ink}>
          {lengthWords(round(width))} × {lengthWords(round(length))} {unit}
        </text>
      </g>
    </svg>
  );
}

const r = (n: number): number => Math.round(n * 10) / 10;
const round = (n: number): number => Math.round(n * 16) / 16;
