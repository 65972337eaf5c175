import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { api, Refusal } from '../../link/state/api.ts';
import { goTo, pageAddress } from '../../shell/state/route.ts';

/** `leftOut`: photographs that could not be read as pictures. */
type Taken = { id: string; leftOut: { file: string; why: string }[] };

/** Brings in an archive that this or another machine has written; as a copy where the quilt is here already. */
export function BringIn(): JSX.Element {
  const [file, setFile] = useState<File | null>(null);
  const [fault, setFault] = useState<{ message: string; twin: boolean } | null>(null);
  const [busy, setBusy] = useState(false);
  const [short, setShort] = useState<Taken | null>(null);
  const take = async (archive: File, as: 'itself' | 'copy') => {
    setBusy(true);
    setFault(null);
    setShort(null);
    try {
      const body = new FormData();
      body.append('as', as);
      body.append('file', archive, archive.name);
      const taken = await api<Taken>('/api/quilts/import', { body });
      if (taken.leftOut.length === 0) goTo(pageAddress(taken.id, 'frame'));
      else setShort(taken);
    } catch (why) {
      setFault({
        message: why instanceof Error ? why.message : String(why),
        twin: why instanceof Refusal && why.status === 409,
      });
    } finally {
      setBusy(false);
    }
  };
  return (
    <details class="bring-in">
      <summary>Bring in an archive from another machine</summary>
      <div class="field">
        <label for="archive">The archive (a .zip that Quiltside wrote)</label>
        <input
          id="archive"
          type="file"
          accept=".zip,application/zip"
          disabled={busy}
          onChange={(event) => {
            const chosen = event.currentTarget.files?.[0] ?? null;
            setFile(chosen);
            if (chosen) void take(chosen, 'itself');
          }}
        />
      </div>
      {busy ? <p role="status">Looking through it…</p> : null}
      {short ? (
        <div class="notice" role="status">
          <p>
            The quilt is here, with all its notes.{' '}
            {short.leftOut.length === 1 ? 'One photograph' : `${short.leftOut.length} photographs`} in the
            archive could not be read and {short.leftOut.length === 1 ? 'was' : 'were'} left out. Keep the
            archive.
          </p>
          <ul>
            {short.leftOut.map(({ file, why }) => (
              <li key={file}>
                {file}: {why}
              </li>
            ))}
          </ul>
          <a href={pageAddress(short.id, 'frame')}>Open the quilt</a>
        </div>
      ) : null}
      {fault ? (
        <p class="notice bad" role="alert">
          {fault.message}{' '}
          {fault.twin && file ? (
            <button type="button" onClick={() => void take(file, 'copy')}>
              Bring it in as a copy
            </button>
          ) : null}
        </p>
      ) : null}
    </details>
  );
}
