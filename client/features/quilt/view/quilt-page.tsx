import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Log } from '../../../../core/log/log.ts';
import { blocksBeside, type Side } from '../../../../core/shape/blocks-beside.ts';
import { shapeOf } from '../../../../core/shape/shape-of.ts';
import type { Entry, Place } from '../../../../shared/entry.ts';
import type { QuiltGrid } from '../../../../shared/quilt.ts';
import { FINDINGS } from '../../../../shared/vocabulary.ts';
import { BlockSeam } from '../../../charts/block-seam.tsx';
import { DamageMark } from '../../../charts/damage-mark.tsx';
import { PAGE_PALETTE } from '../../../charts/palette.ts';
import { QuiltMap } from '../../../charts/quilt-map.tsx';
import {
  MOMENTS,
  type Moment,
  type PlacePicture,
  quiltPicture,
  STANDINGS,
} from '../../../charts/quilt-picture.ts';
import { StitchMark } from '../../../charts/stitch-mark.tsx';
import { dateWords, lengthWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { blockOf, onePlaceWords } from '../../../words/place-words.ts';
import { tradeLabels } from '../../../words/trade-labels.ts';
import { ChangeBar } from '../../entries/view/change-bar.tsx';
import { EntryLine } from '../../entries/view/entry-line.tsx';
import { Photographs } from '../../entries/view/photographs.tsx';
import { PlayButton } from '../../entries/view/play-button.tsx';
import { openLog } from '../../link/state/open-quilt.ts';
import { goTo, pageAddress, route } from '../../shell/state/route.ts';
import { wide } from '../../shell/state/viewport.ts';
import { isLost, lostPlaces } from '../state/lost-places.ts';
import { placeStory } from '../state/place-story.ts';
import { LostBlock } from './lost-block.tsx';
import './quilt.css';

const MOMENT_WORDS: Record<Moment, string> = {
  found: 'As found',
  now: 'As it is now',
  planned: 'As planned',
};
const STANDING_WORDS = {
  untouched: 'nothing noted',
  found: 'found damaged, not yet decided on',
  undecided: 'undecided: a pin left in',
  planned: 'planned: basted round',
  doing: 'in hand: half sewn, needle in',
  done: 'done: sewn twice round',
  left: 'left as found, on purpose: tied off',
} as const;
const LAYERS: Place[] = ['quilt', 'top', 'batting', 'backing', 'binding', 'border', 'edge', 'sashing'];

export function QuiltPage(): JSX.Element {
  const log = openLog.value!;
  const at = route.value;
  const picked = at.at === 'quilt' && at.rest ? at.rest : null;
  const [moment, setMoment] = useState<Moment>('now');
  const [beside, setBeside] = useState(false);
  const [kinds, setKinds] = useState<ReadonlySet<Entry['kind']>>(
    new Set<Entry['kind']>(['condition', 'treatment']),
  );
  const pick = (place: Place | null) => goTo(pageAddress(log.quilt.id, 'quilt', place ?? ''));
  const toggle = (kind: Entry['kind']) => {
    const next = new Set(kinds);
    if (!next.delete(kind)) next.add(kind);
    setKinds(next);
  };
  return (
    <div class="quilt-page">
      <header class="page-head">
        <h1>The quilt</h1>
        <div class="row no-print">
          <fieldset class="row bare">
            <legend class="sr-only">Which picture</legend>
            {MOMENTS.map((name) => (
              <button
                key={name}
                type="button"
                aria-pressed={!beside && moment === name}
                onClick={() => {
                  setBeside(false);
                  setMoment(name);
                }}
              >
                {MOMENT_WORDS[name]}
              </button>
            ))}
            <button type="button" aria-pressed={beside} onClick={() => setBeside(!beside)}>
              Side by side
            </button>
          </fieldset>
        </div>
      </header>
      <fieldset class="row no-print kinds bare">
        <legend class="sr-only">Show</legend>
        <label class="tick">
          <input type="checkbox" checked={kinds.has('condition')} onChange={() => toggle('condition')} />
          What was found
        </label>
        <label class="tick">
          <input type="checkbox" checked={kinds.has('treatment')} onChange={() => toggle('treatment')} />
          What is done or planned
        </label>
      </fieldset>
      {beside ? (
        <div class="three-quilts">
          {MOMENTS.map((name) => (
            <figure key={name}>
              <figcaption>{MOMENT_WORDS[name]}</figcaption>
              <QuiltMap
                picture={quiltPicture(log, name, kinds)}
                moment={name}
                title={`${log.quilt.name}, ${MOMENT_WORDS[name].toLowerCase()}`}
                palette={PAGE_PALETTE}
                spelling={log.quilt.spelling}
                picked={picked}
                onPick={pick}
                id={`quilt-${name}`}
              />
            </figure>
          ))}
        </div>
      ) : null}
      <div class={beside ? 'quilt-below' : 'quilt-and-story'}>
        {beside ? null : <OneQuilt log={log} moment={moment} kinds={kinds} picked={picked} onPick={pick} />}
        <Story log={log} place={picked} onPick={pick} />
      </div>
      <Legend log={log} />
      <ChangeBar />
    </div>
  );
}

function OneQuilt(props: {
  log: Log;
  moment: Moment;
  kinds: ReadonlySet<Entry['kind']>;
  picked: Place | null;
  onPick: (place: Place) => void;
}): JSX.Element {
  const { log, moment, kinds, picked, onPick } = props;
  const picture = useMemo(() => quiltPicture(log, moment, kinds), [log, moment, kinds]);
  const [current, setCurrent] = useState<Place>(picked && blockOf(picked) ? picked : '1-1');
  const box = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent, place: Place) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onPick(place);
      return;
    }
    const next = neighbour(place, event.key, log.quilt);
    if (!next) return;
    event.preventDefault();
    setCurrent(next);
    box.current?.querySelector<SVGGElement>(`[data-place="${next}"]`)?.focus();
  };
  const { sides } = picture;
  return (
    <div ref={box}>
      <QuiltMap
        picture={picture}
        moment={moment}
        title={`${log.quilt.name}, ${MOMENT_WORDS[moment].toLowerCase()}. Arrow keys move, Enter opens a place.`}
        palette={PAGE_PALETTE}
        spelling={log.quilt.spelling}
        picked={picked}
        current={current}
        onPick={(place) => {
          setCurrent(place);
          onPick(place);
        }}
        onKey={move}
      />
      <ul class="plain layers" aria-label="Layers and parts">
        {LAYERS.filter((place) => place !== 'sashing' || picture.sashed).map((place) => {
          const shown = picture.places.get(place);
          return (
            <li key={place}>
              <button type="button" aria-pressed={picked === place} onClick={() => onPick(place)}>
                <PartMark shown={shown} />
                {onePlaceWords(place, log.quilt.spelling, log.quilt)}
              </button>
            </li>
          );
        })}
      </ul>
      <LostList log={log} onPick={onPick} />
      <p class="small quiet">
        {sides.width && sides.length
          ? `Drawn to its measure: ${lengthWords(round(sides.width))} × ${lengthWords(round(sides.length))} ${log.quilt.unit}.`
          : 'Not measured yet, so every block is drawn with equal sides. Say “sixty by seventy-two inches” and it takes its own shape.'}
        {sides.top && sides.bottom && sides.left && sides.right
          ? ' All four sides are measured: it is drawn out of square where it is.'
          : ''}
      </p>
    </div>
  );
}

/** Blocks that were spoken of and that the quilt has not got, since its grid was changed. */
function LostList(props: { log: Log; onPick: (place: Place) => void }): JSX.Element | null {
  const lost = useMemo(() => lostPlaces(props.log), [props.log]);
  if (!lost.length) return null;
  return (
    <div class="notice">
      <p>
        Something was said of {lost.length === 1 ? 'a block' : 'blocks'} that this quilt has not got now. It
        is kept; which block is meant?
      </p>
      <ul class="plain row">
        {lost.map((place) => (
          <li key={place}>
            <button type="button" onClick={() => props.onPick(place)}>
              {onePlaceWords(place, props.log.quilt.spelling)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function PartMark(props: { shown: PlacePicture | undefined }): JSX.Element {
  const { shown } = props;
  return (
    <svg width="26" height="26" viewBox="0 0 40 40" aria-hidden="true">
      <rect x="1" y="1" width="38" height="38" fill="var(--linen)" stroke="var(--thread-strong)" />
      <BlockSeam
        standing={shown?.standing ?? 'untouched'}
        corners={CORNERS}
        size={38}
        palette={PAGE_PALETTE}
      />
      {shown?.findings[0] && shown.standing !== 'done' ? (
        <DamageMark finding={shown.findings[0]} x={9} y={9} size={22} ink={PAGE_PALETTE.madder} />
      ) : shown?.done[0] ? (
        <StitchMark action={shown.done[0]} x={10} y={10} size={20} ink={PAGE_PALETTE.indigo} />
      ) : null}
    </svg>
  );
}
const CORNERS = [
  { x: 1, y: 1 },
  { x: 39, y: 1 },
  { x: 39, y: 39 },
  { x: 1, y: 39 },
];
const round = (n: number) => Math.round(n * 8) / 8;

const SIDES: Record<string, Side> = {
  ArrowUp: 'above',
  ArrowDown: 'below',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/**
 * Where an arrow key leads from a block: to the block that touches it there, the middle one of several. The edges stop it;
 * Home and End go along the row.
 */
export function neighbour(place: Place, key: string, grid: QuiltGrid): Place | null {
  const side = SIDES[key];
  const block = blockOf(place);
  if (!side && key !== 'Home' && key !== 'End') return null;
  if (!block) return '1-1';
  if (!side)
    return (
      shapeOf(grid)
        .row(block[0])
        .at(key === 'Home' ? 0 : -1) ?? null
    );
  const beside = blocksBeside(grid, place, side);
  return beside[Math.floor((beside.length - 1) / 2)] ?? null;
}

function Story(props: { log: Log; place: Place | null; onPick: (place: Place | null) => void }): JSX.Element {
  const { log, place } = props;
  const lines = useMemo(() => (place ? placeStory(log, place) : []), [log, place]);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    if (place && !wide.peek()) box.current?.scrollIntoView({ block: 'start', behavior: 'smooth' });
  }, [place]);
  if (!place) {
    return (
      <aside class="story">
        <h2>Pick a block</h2>
        <p class="quiet">
          Touch a block, a side, a corner or a layer and its whole story stands here: what was found, what was
          considered, what was done, and when it was said.
        </p>
        <Fabrics log={log} />
      </aside>
    );
  }
  const name = onePlaceWords(place, log.quilt.spelling, log.quilt);
  const outside = isLost(log.quilt, place);
  const fabrics = Object.entries(log.quilt.fabrics ?? {}).filter(([, places]) => places.includes(place));
  let day = '';
  return (
    <aside class="story" aria-live="polite" ref={box}>
      <div class="page-head">
        <h2>{name.charAt(0).toUpperCase() + name.slice(1)}</h2>
        <button type="button" class="slight no-print" onClick={() => props.onPick(null)}>
          Put back
        </button>
      </div>
      {outside ? (
        <LostBlock log={log} place={place} entries={lines.map(({ entry }) => entry)} onMoved={props.onPick} />
      ) : null}
      {fabrics.length ? <p class="quiet">{fabrics.map(([fabric]) => fabric).join(', ')}</p> : null}
      {lines.length ? (
        <ol class="plain story-lines">
          {lines.map(({ entry, note }) => {
            const { date, time } = localTime(entry.at, log.quilt.zone);
            const newDay = date !== day;
            day = date;
            return (
              <li key={entry.id}>
                {newDay ? (
                  <h3>
                    <a href={pageAddress(log.quilt.id, 'days', date)}>{dateWords(date)}</a>
                  </h3>
                ) : null}
                <EntryLine
                  entry={entry.entry}
                  quilt={log.quilt}
                  {...(entry.reason ? { reason: entry.reason } : {})}
                />
                {note ? (
                  <p class="small quiet said-line">
                    {time} “
                    {note.note.text.length > 220 ? `${note.note.text.slice(0, 220)}…` : note.note.text}”{' '}
                    {note.note.audio ? (
                      <PlayButton quiltId={log.quilt.id} audio={note.note.audio} removed={log.removedAudio} />
                    ) : null}
                  </p>
                ) : null}
              </li>
            );
          })}
        </ol>
      ) : (
        <p class="quiet">Nothing has been said of it yet.</p>
      )}
      <Photographs log={log} place={place} />
    </aside>
  );
}

function Fabrics(props: { log: Log }): JSX.Element | null {
  const fabrics = Object.entries(props.log.quilt.fabrics ?? {});
  if (!fabrics.length) return null;
  return (
    <>
      <h3>Fabrics named</h3>
      <ul>
        {fabrics.map(([name, places]) => (
          <li key={name}>
            {name}: {places.length ? places.join(', ') : 'no block named yet'}
          </li>
        ))}
      </ul>
    </>
  );
}

/** What the drawings mean; those that this quilt has come first. */
function Legend(props: { log: Log }): JSX.Element {
  const { log } = props;
  const say = tradeLabels(log.quilt.spelling);
  const findings = FINDINGS.filter((finding) =>
    log.entries.some(({ entry }) => entry.kind === 'condition' && entry.finding === finding),
  );
  const actions = [
    ...new Set(
      log.entries.flatMap(({ entry }) => (entry.kind === 'treatment' && entry.action ? [entry.action] : [])),
    ),
  ];
  return (
    <section class="legend" aria-labelledby="legend-head">
      <h2 id="legend-head">How to read it</h2>
      <ul class="plain">
        {STANDINGS.filter((standing) => standing !== 'untouched').map((standing) => (
          <li key={standing}>
            <svg width="44" height="44" viewBox="0 0 40 40" aria-hidden="true">
              <rect x="1" y="1" width="38" height="38" fill="var(--paper)" stroke="var(--thread-strong)" />
              <BlockSeam standing={standing} corners={CORNERS} size={38} palette={PAGE_PALETTE} />
            </svg>
            {STANDING_WORDS[standing]}
          </li>
        ))}
      </ul>
      {findings.length ? <h3>Found in the cloth</h3> : null}
      <ul class="plain">
        {findings.map((finding) => (
          <li key={finding}>
            <svg width="32" height="32" viewBox="0 0 24 24" aria-hidden="true">
              <DamageMark
                finding={finding}
                size={24}
                ink={finding === 'sound' ? PAGE_PALETTE.moss : PAGE_PALETTE.madder}
              />
            </svg>
            {say.finding(finding)}
          </li>
        ))}
      </ul>
      {actions.length ? <h3>Done by hand</h3> : null}
      <ul class="plain">
        {actions.map((action) => (
          <li key={action}>
            <svg width="32" height="32" viewBox="0 0 24 24" aria-hidden="true">
              <StitchMark action={action} size={24} ink={PAGE_PALETTE.indigo} />
            </svg>
            {say.did(action)}
          </li>
        ))}
      </ul>
    </section>
  );
}
