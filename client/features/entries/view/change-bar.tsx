import type { JSX } from 'preact';
import { changeFault, lastChange, undoLastChange } from '../state/change-log.ts';
import './entries.css';

/** What was just changed, with the way back; and what could not be changed. */
export function ChangeBar(): JSX.Element {
  return (
    <div class="change-bar no-print" role="status">
      {changeFault.value ? (
        <p class="notice bad">
          {changeFault.value}{' '}
          <button
            type="button"
            class="slight"
            onClick={() => {
              changeFault.value = null;
            }}
          >
            Put away
          </button>
        </p>
      ) : lastChange.value ? (
        <p class="changed">
          <span>{lastChange.value.words}</span>
          <button type="button" onClick={() => void undoLastChange()}>
            Take back
          </button>
          <button
            type="button"
            class="slight"
            onClick={() => {
              lastChange.value = null;
            }}
          >
            Fine
          </button>
        </p>
      ) : null}
    </div>
  );
}
