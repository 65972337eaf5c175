import type { ComponentChildren, JSX } from 'preact';

/** Room for a table that may be wider than the page: scrolled by finger, or by keys once it has the focus. */
export function TableWrap(props: { name: string; children: ComponentChildren; class?: string }): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled has to be reached by keyboard too
    <section class={`table-wrap ${props.class ?? ''}`} aria-label={props.name} tabIndex={0}>
      {props.children}
    </section>
  );
}
