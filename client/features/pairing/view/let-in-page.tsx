import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { goTo } from '../../shell/state/route.ts';
import { Field } from '../../shell/view/field.tsx';
import { askToBeLetIn, codeInAddress } from '../state/pairing.ts';
import './pairing.css';

/** What a phone or tablet shows until it is let in. */
export function LetInPage(props: { onLetIn: () => void }): JSX.Element {
  const [code, setCode] = useState(() => codeInAddress(location.hash));
  const [name, setName] = useState('');
  const [fault, setFault] = useState('');
  const [isAsking, setAsking] = useState(false);
  return (
    <main class="let-in">
      <h1>Quiltside</h1>
      <p>
        This device is not let in yet. The computer that keeps the quilts shows six digits: on its first page,
        and in its settings under “Phones and tablets”.
      </p>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          setAsking(true);
          askToBeLetIn(code.replace(/\s/g, ''), name.trim() || 'A device without a name')
            .then(
              () => {
                goTo('#/');
                props.onLetIn();
              },
              (why: unknown) => setFault(why instanceof Error ? why.message : String(why)),
            )
            .finally(() => setAsking(false));
        }}
      >
        <Field id="code" label="Six digits" fault={fault || undefined}>
          {(a) => (
            <input
              {...a}
              class="pairing-digits"
              inputMode="numeric"
              autocomplete="one-time-code"
              maxLength={7}
              required
              value={code}
              onInput={(event) => setCode(event.currentTarget.value)}
            />
          )}
        </Field>
        <Field id="device-name" label="Name of this device" hint="By which you know it in the list">
          {(a) => (
            <input
              {...a}
              maxLength={60}
              autocomplete="off"
              value={name}
              onInput={(event) => setName(event.currentTarget.value)}
            />
          )}
        </Field>
        <p class="row">
          <button type="submit" class="chief" disabled={isAsking}>
            Let this device in
          </button>
        </p>
      </form>
    </main>
  );
}
