import type { JSX } from 'preact';
import { FINDING_DRAWINGS } from '../../core/record/figures/mark-drawings.ts';
import type { Finding } from '../../shared/vocabulary.ts';

/** The drawing of a finding as a group of paths, `size` wide with its top left at (`x`, `y`). */
export function DamageMark(props: {
  finding: Finding;
  x?: number;
  y?: number;
  size: number;
  ink: string;
}): JSX.Element {
  const { finding, x = 0, y = 0, size, ink } = props;
  const drawing = FINDING_DRAWINGS[finding];
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
