import type { ComponentChildren, JSX } from 'preact';

/** Room for a table that may be wider than the page: scrolled by finger, or by keys once it has the focus. */
export function TableWrap(props: { name: string; children: ComponentChildren; class?: string }): JSX.Element {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset groups controls, a section would be one landmark too many
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled has to be reached by keyboard too
    <div class={`table-wrap ${props.class ?? ''}`} role="group" aria-label={props.name} tabIndex={0}>
      {props.children}
    </div>
  );
}
