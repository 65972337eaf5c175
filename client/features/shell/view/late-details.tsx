import type { ComponentChildren, JSX } from 'preact';
import { useState } from 'preact/hooks';

/** A part that opens, whose content is made when it is first opened: a long table costs nothing until it is asked for. */
export function LateDetails(props: { summary: string; children: () => ComponentChildren }): JSX.Element {
  const [opened, setOpened] = useState(false);
  return (
    <details onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{props.summary}</summary>
      {opened ? props.children() : null}
    </details>
  );
}
