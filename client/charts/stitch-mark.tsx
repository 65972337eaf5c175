import type { JSX } from 'preact';
import { ACTION_DRAWINGS } from '../../core/record/figures/mark-drawings.ts';
import type { Action } from '../../shared/vocabulary.ts';

/** The drawing of a treatment as a group of paths, `size` wide with its top left at (`x`, `y`). */
export function StitchMark(props: {
  action: Action;
  x?: number;
  y?: number;
  size: number;
  ink: string;
}): JSX.Element {
  const { action, x = 0, y = 0, size, ink } = props;
  const drawing = ACTION_DRAWINGS[action];
  return (
    <g transform={`translate(${x} ${y}) scale(${size / 24})`} data-mark={action}>
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
          stroke-width="1.3"
          stroke-linecap="round"
          stroke-linejoin="round"
        />
      ) : null}
    </g>
  );
}
