import type { JSX } from 'preact';
import type { Entry } from '../../../../shared/entry.ts';
import { BlockSeam } from '../../../charts/block-seam.tsx';
import { DamageMark } from '../../../charts/damage-mark.tsx';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { StitchMark } from '../../../charts/stitch-mark.tsx';

const SQUARE = [
  { x: 1, y: 1 },
  { x: 39, y: 1 },
  { x: 39, y: 39 },
  { x: 1, y: 39 },
];
const OTHERS: Partial<Record<Entry['kind'], string>> = {
  // a bolt of cloth, its end turned
  material: 'M7 10h26v16H7zM7 26c4 0 4 5 8 5h18v-5M12 10v16',
  // a tape with its ticks
  measurement: 'M4 14h32v12H4zM10 14v5M16 14v8M22 14v5M28 14v8',
  // a needle, threaded
  work: 'M8 32 32 8M32 8c1.5-1.5 3.5 .5 2 2L10 34zM29 11c-4-5-12-4-13 1s6 5 4 9',
  // a folded note
  remark: 'M8 6h18l6 6v22H8zM26 6v6h6M13 18h14M13 23h14M13 28h8',
};

/** The small drawing at the head of an entry: what it is about, in the seam of how it stands. */
export function EntryMark(props: { entry: Entry; size?: number }): JSX.Element {
  const { entry, size = 40 } = props;
  const ink =
    entry.kind !== 'condition'
      ? PAGE_PALETTE.indigo
      : entry.finding === 'sound'
        ? PAGE_PALETTE.moss
        : PAGE_PALETTE.madder;
  return (
    <svg class="entry-mark" width={size} height={size} viewBox="0 0 40 40" aria-hidden="true">
      {entry.kind === 'condition' ? (
        <DamageMark finding={entry.finding} x={7} y={7} size={26} ink={ink} />
      ) : entry.kind === 'treatment' ? (
        <>
          <BlockSeam
            standing={
              entry.state === 'done'
                ? entry.action === 'leave'
                  ? 'left'
                  : 'done'
                : entry.state === 'doing'
                  ? 'doing'
                  : entry.state === 'planned'
                    ? 'planned'
                    : entry.state === 'considering'
                      ? 'undecided'
                      : 'untouched'
            }
            corners={SQUARE}
            size={38}
            palette={PAGE_PALETTE}
          />
          {entry.action && !(entry.action === 'leave' && entry.state === 'done') ? (
            <StitchMark action={entry.action} x={10} y={10} size={20} ink={ink} />
          ) : null}
          {entry.state === 'dropped' ? (
            <path d="M5 35 35 5" stroke={PAGE_PALETTE.madder} stroke-width="2.5" />
          ) : null}
        </>
      ) : entry.kind === 'decision' ? (
        <BlockSeam
          standing={entry.status === 'open' ? 'undecided' : 'left'}
          corners={SQUARE}
          size={38}
          palette={PAGE_PALETTE}
        />
      ) : (
        <path
          d={OTHERS[entry.kind]}
          fill="none"
          stroke={ink}
          stroke-width="2.2"
          stroke-linejoin="round"
          stroke-linecap="round"
        />
      )}
    </svg>
  );
}
