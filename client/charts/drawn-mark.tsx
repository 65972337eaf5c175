import type { JSX } from 'preact';
import type { Drawing } from '../../core/record/figures/mark-drawings.ts';

/** Where and how large a mark is drawn: `size` wide with its top left at (`x`, `y`). */
export type MarkPlace = { x?: number; y?: number; size: number; ink: string };

/** A drawing of the marks' own hand as a group of paths; `fineWidth` is the width of its thin lines, in its own 24 units. */
export function DrawnMark(
  props: MarkPlace & { name: string; drawing: Drawing; fineWidth: number },
): JSX.Element {
  const { name, drawing, fineWidth, x = 0, y = 0, size, ink } = props;
  const stroke = (d: string, width: number): JSX.Element => (
    <path
      d={d}
      fill="none"
      stroke={ink}
      stroke-width={width}
      stroke-linecap="round"
      stroke-linejoin="round"
    />
  );
  return (
    <g transform={`translate(${x} ${y}) scale(${size / 24})`} data-mark={name}>
      {drawing.solid ? <path d={drawing.solid} fill={ink} /> : null}
      {drawing.line ? stroke(drawing.line, 2) : null}
      {drawing.fine ? stroke(drawing.fine, fineWidth) : null}
    </g>
  );
}
