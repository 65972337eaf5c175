// biome-ignore-all lint/a11y/noAriaHiddenOnFocusable: a <g> takes no focus unless it is given a tabindex
// biome-ignore-all lint/a11y/useAriaPropsSupportedByRole: the role stands beside, and is there when the props are
// biome-ignore-all lint/a11y/noStaticElementInteractions: the role stands beside, and is there when the handlers are
import { scaleLinear } from 'd3-scale';
import type { JSX } from 'preact';
import type { Hours, Span } from '../../core/hours/hours.ts';
import { ZoneClock } from '../../core/hours/zone-clock.ts';
import { dateWords, spanWords } from '../words/figure-words.ts';
import { tradeLabels } from '../words/trade-labels.ts';
import { type Palette, PRINT_PALETTE } from './palette.ts';
import { dyeOf, fillOf, TaskPatterns } from './task-pattern.tsx';

const ROW = 58;
const BAR = 44;
const TOP = 34;

export const HOW_WORDS = {
  hand: 'set by hand',
  said: 'said',
  length: 'length said, place on the clock guessed',
  inferred: 'inferred from the notes',
} as const;

/** A piece of a span on one day, in minutes of that day's clock. */
export type DayBar = { span: Span; date: string; from: number; to: number; first: boolean; last: boolean };

/** Cuts the counted parts of every span at midnight. */
export function dayBars(hours: Pick<Hours, 'spans'>, zone: string): DayBar[] {
  const clock = new ZoneClock(zone);
  const bars: DayBar[] = [];
  for (const span of hours.spans) {
    const pieces: Omit<DayBar, 'first' | 'last'>[] = [];
    for (const [from, to] of span.parts) {
      for (let at = from; at < to; ) {
        const date = clock.dateOf(at);
        const until = Math.min(to, clock.dayStart(clock.nextDate(date)));
        const start = minuteOfDay(clock.localOf(at));
        pieces.push({ span, date, from: start, to: start + (until - at) });
        at = until;
      }
    }
    pieces.forEach((piece, i) => {
      bars.push({ ...piece, first: i === 0, last: i === pieces.length - 1 });
    });
  }
  return bars;
}

const minuteOfDay = (local: string): number => Number(local.slice(11, 13)) * 60 + Number(local.slice(14, 16));
const clockWords = (minute: number): string =>
  `${String(Math.floor(minute / 60) % 24).padStart(2, '0')}:${String(Math.round(minute) % 60).padStart(2, '0')}`;

export type TimelineProps = {
  hours: Pick<Hours, 'spans' | 'byDay'>;
  zone: string;
  width: number;
  title: string;
  spelling?: 'british' | 'american';
  palette?: Palette;
  /** The days to draw, in order; left out: all that have hours. */
  dates?: string[];
  id?: string;
  picked?: string | null;
  onPick?: (span: Span) => void;
  onBarKey?: (event: KeyboardEvent, span: Span) => void;
  onBarPointer?: (event: PointerEvent, bar: DayBar, minutesAPixel: number) => void;
  /** A span being moved, in minutes of its day. */
  draft?: { spanId: string; from: number; to: number } | null;
  dayAddress?: (date: string) => string;
};

/** Days down, hours across; each stretch by the stitches of its task, its name, and its dye. */
export function HoursTimeline(props: TimelineProps): JSX.Element {
  const { hours, zone, width, palette = PRINT_PALETTE, id = 'timeline', onPick, draft } = props;
  const say = tradeLabels(props.spelling ?? 'british');
  const dates = props.dates ?? hours.byDay.map((day) => day.date);
  const bars = dayBars(hours, zone).filter((bar) => dates.includes(bar.date));
  const narrow = width < 560;
  const left = narrow ? 66 : 112;
  const right = narrow ? 50 : 82;
  const first = Math.max(0, Math.floor(Math.min(540, ...bars.map((bar) => bar.from)) / 60) * 60);
  const last = Math.min(1440, Math.ceil(Math.max(first + 240, ...bars.map((bar) => bar.to)) / 60) * 60);
  const x = scaleLinear()
    .domain([first, last])
    .range([left, width - right]);
  const hourPx = x(60) - x(0);
  const step = hourPx > 42 ? 60 : hourPx > 21 ? 120 : 240;
  const ticks: number[] = [];
  for (let minute = Math.ceil(first / step) * step; minute <= last; minute += step) ticks.push(minute);
  const height = TOP + dates.length * ROW + 8;
  const live = Boolean(onPick);

  return (
    <svg
      class="hours-timeline"
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role={live ? 'group' : 'img'}
      aria-label={props.title}
      font-family="'Atkinson Next', Verdana, sans-serif"
      font-size="15"
    >
      {live ? null : <title>{props.title}</title>}
      <TaskPatterns id={id} palette={palette} />
      <g aria-hidden="true">
        {ticks.map((minute) => (
          <g key={minute}>
            <path
              d={`M${r(x(minute))} ${TOP - 4}V${height - 6}`}
              stroke={palette.thread}
              stroke-width="1.2"
              stroke-dasharray="1 7"
              stroke-linecap="round"
            />
            <text x={r(x(minute))} y={TOP - 12} text-anchor="middle" fill={palette.muted}>
              {narrow ? Math.floor(minute / 60) : clockWords(minute)}
            </text>
          </g>
        ))}
      </g>
      {dates.map((date, i) => {
        const y = TOP + i * ROW;
        const day = hours.byDay.find((one) => one.date === date);
        const label = dateWords(date, narrow ? 'day' : 'short');
        return (
          <g key={date}>
            <path
              d={`M0 ${y + ROW - 2}H${width}`}
              stroke={palette.thread}
              stroke-width="1"
              stroke-dasharray="9 7"
              aria-hidden="true"
            />
            {props.dayAddress ? (
              <a href={props.dayAddress(date)} aria-label={`${label}, ${spanWords(day?.minutes ?? 0)}`}>
                <rect x="0" y={y} width={left - 8} height={BAR + 6} fill="transparent" />
                <text x="0" y={y + 31} fill={palette.indigo} font-weight="600" text-decoration="underline">
                  {label}
                </text>
              </a>
            ) : (
              <text x="0" y={y + 31} fill={palette.ink} font-weight="600">
                {label}
              </text>
            )}
            <text
              x={width}
              y={y + 31}
              text-anchor="end"
              fill={palette.ink}
              font-weight="700"
              aria-hidden="true"
            >
              {shortSpan(day?.minutes ?? 0, narrow)}
            </text>
            {bars
              .filter((bar) => bar.date === date)
              .map((bar) => {
                const moved = draft?.spanId === bar.span.id && bar.span.parts.length === 1;
                const from = moved ? draft.from : bar.from;
                const to = moved ? draft.to : bar.to;
                const w = Math.max(4, x(to) - x(from));
                const name = bar.span.task ? say.task(bar.span.task) : 'no task said';
                const ink = dyeOf(bar.span.task, palette);
                const words = `${name}, ${clockWords(from)} to ${clockWords(to)}, ${spanWords(bar.span.minutes)}, ${HOW_WORDS[bar.span.how]}${bar.span.running ? ', still running' : ''}`;
                const chosen = props.picked === bar.span.id;
                return (
                  <g
                    key={`${bar.span.id}-${bar.from}`}
                    class={live ? 'bar' : undefined}
                    role={live ? 'button' : undefined}
                    tabindex={live ? 0 : undefined}
                    aria-label={live ? words : undefined}
                    aria-pressed={live ? chosen : undefined}
                    data-span={bar.span.id}
                    onClick={onPick ? () => onPick(bar.span) : undefined}
                    onKeyDown={props.onBarKey ? (event) => props.onBarKey!(event, bar.span) : undefined}
                    onPointerDown={
                      props.onBarPointer
                        ? (event) => props.onBarPointer!(event, bar, (last - first) / (width - left - right))
                        : undefined
                    }
                  >
                    {live ? null : <title>{words}</title>}
                    <rect
                      x={r(x(from))}
                      y={y + 2}
                      width={r(w)}
                      height={BAR}
                      rx="2"
                      fill={fillOf(id, bar.span.task)}
                      stroke={ink}
                      stroke-width="2"
                      stroke-dasharray={
                        bar.span.how === 'inferred' || bar.span.how === 'length' ? '6 4' : undefined
                      }
                    />
                    {w > name.length * 8.4 + 18 ? (
                      <>
                        <rect
                          x={r(x(from) + 6)}
                          y={y + 12}
                          width={r(name.length * 8.1 + 10)}
                          height="24"
                          fill={palette.paper}
                        />
                        <text x={r(x(from) + 11)} y={y + 29.5} fill={palette.ink} font-weight="600">
                          {name}
                        </text>
                      </>
                    ) : null}
                    <rect
                      class="bar-ring"
                      x={r(x(from) - 4)}
                      y={y - 2}
                      width={r(w + 8)}
                      height={BAR + 8}
                      fill="none"
                      stroke={chosen ? palette.ink : 'none'}
                      stroke-width="3.5"
                    />
                  </g>
                );
              })}
          </g>
        );
      })}
    </svg>
  );
}

const r = (n: number): number => Math.round(n * 10) / 10;
const shortSpan = (minutes: number, narrow: boolean): string => {
  const whole = Math.round(minutes);
  return narrow
    ? `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
    : spanWords(minutes)
        .replace(' min', '')
        .replace(/^(\d+)$/, '$1 min');
};
