import type { JSX } from 'preact';
import { TASKS, type Task } from '../../shared/vocabulary.ts';
import type { Palette } from './palette.ts';

/** Each task's filling: the dye of its ground, and the stitches on it, which tell it apart without colour. */
const FILLINGS: Record<
  Task,
  { dye: 'indigo' | 'madder' | 'weld' | 'moss' | 'muted'; w: number; h: number; d: string; width?: number }
> = {
  // dots, as of pins set out
  survey: { dye: 'muted', w: 10, h: 10, d: 'M2.5 2.5h.01M7.5 7.5h.01', width: 2.6 },
  // broken threads
  'taking-apart': { dye: 'madder', w: 14, h: 10, d: 'M1 3h4M8 3h1M3 8h1M8 8h4', width: 1.6 },
  // a darn: over and under
  mending: { dye: 'indigo', w: 12, h: 12, d: 'M0 3h5M9 3h3M3 9h5M3 0v1M3 5v7M9 0v7M9 11v1', width: 1.2 },
  // water
  cleaning: { dye: 'muted', w: 16, h: 8, d: 'M0 4c4-4 4 0 8 0s4-4 8 0', width: 1.6 },
  // long cuts
  cutting: { dye: 'weld', w: 12, h: 12, d: 'M-3 15 15-3M-3 3 3-3M9 15l6-6', width: 1.3 },
  // half squares
  piecing: { dye: 'weld', w: 12, h: 12, d: 'M0 12 12 0M0 0h12M0 0v12', width: 1.4 },
  // three layers
  layering: { dye: 'moss', w: 10, h: 9, d: 'M0 1.5h10M0 4.5h10M0 7.5h10', width: 1.2 },
  // knots
  tying: { dye: 'moss', w: 16, h: 12, d: 'M4 3l4 6M8 3 4 9M12 6h.01', width: 1.8 },
  // running lines
  quilting: { dye: 'indigo', w: 14, h: 8, d: 'M0 4h7', width: 2 },
  // whipstitches over an edge
  binding: { dye: 'madder', w: 8, h: 12, d: 'M1 11 6 1', width: 2 },
  // a price ticket's string
  shopping: { dye: 'weld', w: 12, h: 12, d: 'M6 3a3 3 0 1 1-.01 0', width: 1.4 },
  // ruled lines
  paperwork: { dye: 'muted', w: 12, h: 6, d: 'M0 3h12', width: 1 },
  other: { dye: 'muted', w: 20, h: 20, d: 'M7 10h6', width: 1.6 },
};

export const fillOf = (id: string, task: Task | undefined): string => `url(#${id}-${task ?? 'other'})`;
export const dyeOf = (task: Task | undefined, palette: Palette): string =>
  palette[FILLINGS[task ?? 'other'].dye];

/** The patterns of all tasks, to stand once in a drawing; `id` keeps two drawings on a page apart. */
export function TaskPatterns(props: { id: string; palette: Palette }): JSX.Element {
  return (
    <defs>
      {TASKS.map((task) => {
        const { dye, w, h, d, width } = FILLINGS[task];
        return (
          <pattern key={task} id={`${props.id}-${task}`} width={w} height={h} patternUnits="userSpaceOnUse">
            <rect width={w} height={h} fill={props.palette.paper} />
            <path d={d} fill="none" stroke={props.palette[dye]} stroke-width={width} stroke-linecap="round" />
          </pattern>
        );
      })}
    </defs>
  );
}
