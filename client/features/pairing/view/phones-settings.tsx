import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { dateWords } from '../../../words/figure-words.ts';
import { devices, devicesFault, loadDevices, pairing, sendAway } from '../state/pairing.ts';
import { PairingCode } from './pairing-code.tsx';

/** The devices that were let in, each to be sent away, and the code for another. */
export function PhonesSettings(): JSX.Element {
  // A device that has just been let in with the code is to stand in the list.
  const state = pairing.value?.state;
  useEffect(() => {
    void loadDevices();
  }, [state]);
  return (
    <section class="settings-group" aria-labelledby="phones-head">
      <h2 id="phones-head">Phones and tablets</h2>
      <PairingCode />
      {pairing.value && !pairing.value.on ? (
        <p class="quiet">
          No other device can come in. To use a phone or tablet as the microphone and the display, stop
          Quiltside and start it with <code>npm start -- --lan</code>.
        </p>
      ) : null}
      {devicesFault.value ? (
        <p class="notice bad" role="alert">
          {devicesFault.value}
        </p>
      ) : null}
      {devices.value.length > 0 ? (
        <ul class="plain named">
          {devices.value.map((device) => (
            <li key={device.id}>
              <span>
                <strong>{device.name}</strong>
                <span class="small quiet block">
                  let in {dateWords(device.pairedAt.slice(0, 10))}, last here{' '}
                  {dateWords(device.lastSeenAt.slice(0, 10))}
                </span>
              </span>
              <button type="button" class="warn" onClick={() => void sendAway(device.id)}>
                Send “{device.name}” away
              </button>
            </li>
          ))}
        </ul>
      ) : (
        <p class="quiet">No device was let in.</p>
      )}
    </section>
  );
}
