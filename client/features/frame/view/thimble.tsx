import type { JSX } from 'preact';

/** The sign for listening: a thimble, worn (solid) or put down (outline). */
export function Thimble(props: { worn: boolean }): JSX.Element {
  const dimples = [
    [13, 12],
    [18, 12],
    [23, 12],
    [11, 17],
    [16, 17],
    [20.5, 17],
    [25, 17],
    [12, 22],
    [18, 22],
    [24, 22],
  ] as const;
  return (
    <svg class="thimble" viewBox="0 0 36 36" aria-hidden="true">
      <path
        d="M11 7.5C12.5 4.5 23.5 4.5 25 7.5L29 27H7z"
        fill={props.worn ? 'currentColor' : 'none'}
        stroke="currentColor"
        stroke-width="2.4"
        stroke-linejoin="round"
      />
      <path
        d="M5.5 27h25v4h-25z"
        fill={props.worn ? 'currentColor' : 'none'}
        stroke="currentColor"
        stroke-width="2.4"
        stroke-linejoin="round"
      />
      {dimples.map(([cx, cy]) => (
        <circle key={`${cx}-${cy}`} cx={cx} cy={cy} r="1.25" class={props.worn ? 'dimple-worn' : 'dimple'} />
      ))}
    </svg>
  );
}
