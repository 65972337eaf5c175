import type { JSX } from 'preact';

type Attributes = { id: string; 'aria-invalid': boolean; 'aria-describedby': string | undefined };

/** A labelled field with its hint, and its fault beside it. */
export function Field(props: {
  id: string;
  label: string;
  hint?: string;
  fault?: string | undefined;
  children: (attributes: Attributes) => JSX.Element;
}): JSX.Element {
  const { id, label, hint, fault } = props;
  const described = [hint ? `${id}-hint` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {props.children({ id, 'aria-invalid': Boolean(fault), 'aria-describedby': described || undefined })}
      {hint ? (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      ) : null}
      {fault ? (
        <span class="fault" id={`${id}-fault`}>
          {fault}
        </span>
      ) : null}
    </div>
  );
}
