import { scaleLinear } from 'd3-scale';
import type { JSX } from 'preact';
import type { Palette } from './palette.ts';

/** Low, likely and high on one line: a thread from low to high, a knot at the likely. */
export function RangeBar(props: {
  low: number;
  likely: number;
  high: number;
  most: number;
  label: string;
  palette: Palette;
}): JSX.Element {
  const x = scaleLinear()
    .domain([0, Math.max(props.most, 1)])
    .range([8, 292]);
  return (
    <svg class="range-bar" viewBox="0 0 300 26" role="img" aria-label={props.label}>
      <path
        d="M4 13H296"
        stroke={props.palette.thread}
        stroke-width="1.5"
        stroke-dasharray="1 8"
        stroke-linecap="round"
      />
      <path
        d={`M${x(props.low).toFixed(1)} 13H${x(props.high).toFixed(1)}`}
        stroke={props.palette.indigo}
        stroke-width="5"
        stroke-dasharray="11 5"
      />
      <path
        d={`M${x(props.low).toFixed(1)} 6v14M${x(props.high).toFixed(1)} 6v14`}
        stroke={props.palette.indigo}
        stroke-width="2.5"
      />
      <circle
        cx={x(props.likely).toFixed(1)}
        cy="13"
        r="7.5"
        fill={props.palette.madder}
        stroke={props.palette.paper}
        stroke-width="2"
      />
    </svg>
  );
}
