import { generate } from 'lean-qr';
import { toSvgPath } from 'lean-qr/extras/svg';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Pairing } from '../../../../shared/settings.ts';
import { loadPairing, pairing, renewCode } from '../state/pairing.ts';
import './pairing.css';

const CLOSED: Record<Exclude<NonNullable<Pairing['state']>, 'open'>, string> = {
  used: 'The code was used. Another lets the next device in.',
  locked: 'A wrong code was given five times, so the code is locked.',
  expired: 'The code has run out.',
};
const LOOK_AGAIN_MS = 5000;

/** The code that lets a device in, where this is the machine itself and it listens on the network; else nothing. */
export function PairingCode(): JSX.Element | null {
  useEffect(() => {
    void loadPairing();
    const timer = setInterval(() => {
      if (pairing.peek()?.on) void loadPairing();
    }, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, []);
  const now = pairing.value;
  if (!now?.on) return null;
  const [link = ''] = now.links ?? [];
  return (
    <section class="pairing-code patch" aria-label="Let a phone or tablet in">
      {now.code ? (
        <>
          <Qr text={`${link}/#pair-${now.code}`} />
          <div>
            <p>
              Open <strong>{now.links?.join(' or ')}</strong> on the phone or tablet and enter
            </p>
            <p class="pairing-digits">
              {now.code.slice(0, 3)} {now.code.slice(3)}
            </p>
            <p class="small quiet">
              It works once, for ten minutes. The browser there warns of a certificate it does not know: it
              was made on this machine.
            </p>
          </div>
        </>
      ) : (
        <p role="status">{now.state && now.state !== 'open' ? CLOSED[now.state] : ''}</p>
      )}
      <p class="row">
        <button type="button" class="slight" onClick={() => void renewCode()}>
          New code
        </button>
      </p>
    </section>
  );
}

/** Dark on light in either theme, with the quiet zone of four modules (ISO/IEC 18004), so that every camera reads it. */
function Qr(props: { text: string }): JSX.Element {
  const code = generate(props.text);
  const side = code.size + 8;
  return (
    <svg
      class="pairing-qr"
      viewBox={`-4 -4 ${side} ${side}`}
      role="img"
      aria-label="The same address and code, to be read by a camera"
    >
      <rect x="-4" y="-4" width={side} height={side} fill="#fff" />
      <path d={toSvgPath(code)} fill="#000" />
    </svg>
  );
}
