import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import type { NoteAudio } from '../../../../shared/note.ts';
import { audioAddress } from '../state/audio-address.ts';
import { wordMoments } from '../state/word-moments.ts';
import './play-button.css';

const playing = signal<string | null>(null);
/** Where in its file the sound is, s. */
const playedS = signal(0);
let player: HTMLAudioElement | null = null;
let stopAt = Number.POSITIVE_INFINITY;

/** Plays the moment a note was heard in; pressed again it stops. One sound at a time. */
export function PlayButton(props: {
  quiltId: string;
  audio: NoteAudio;
  removed: readonly string[];
}): JSX.Element {
  const { quiltId, audio, removed } = props;
  const address = audioAddress(quiltId, audio);
  const on = playing.value === address;
  if (removed.includes(audio.file)) return <span class="small quiet">(sound not kept)</span>;
  return (
    <>
      <button
        type="button"
        class="slight play no-print"
        aria-pressed={on}
        onClick={() => play(address, audio)}
      >
        <svg width="20" height="20" viewBox="0 0 24 24" aria-hidden="true">
          {on ? (
            <path d="M6 5h4v14H6zM14 5h4v14h-4z" fill="currentColor" />
          ) : (
            <path d="M6 4l14 8-14 8z" fill="currentColor" />
          )}
        </svg>
        {on ? 'Stop' : 'Play'}
      </button>
      {on ? <Caption audio={audio} /> : null}
    </>
  );
}

/** The words along the foot of the page while they are said. What is said now is marked by more than colour. */
function Caption(props: { audio: NoteAudio }): JSX.Element | null {
  const moments = wordMoments(props.audio);
  if (moments.length === 0) return null;
  const now = moments.findLastIndex(({ atS }) => atS <= playedS.value);
  return (
    <span class="caption no-print" role="note" aria-label="Words of what is played">
      {moments.map(({ text, atS }, i) => (
        <span key={atS} class={i === now ? 'now' : undefined}>
          {`${text} `}
        </span>
      ))}
    </span>
  );
}

function play(address: string, { startS, endS }: NoteAudio): void {
  if (playing.peek() === address) {
    player?.pause();
    playing.value = null;
    return;
  }
  player ??= new Audio();
  player.pause();
  player.src = address;
  stopAt = endS + 0.2;
  playedS.value = startS;
  player.ontimeupdate = () => {
    if (!player) return;
    playedS.value = player.currentTime;
    if (player.currentTime >= stopAt) player.pause();
  };
  player.onpause = () => {
    playing.value = null;
  };
  player.onended = player.onpause;
  player.onerror = () => {
    playing.value = null;
  };
  playing.value = address;
  void player.play().catch(() => {
    playing.value = null;
  });
}
