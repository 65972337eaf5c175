import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { api, Refusal } from '../../link/state/api.ts';
import { goTo, pageAddress } from '../../shell/state/route.ts';

/** Brings in an archive that this or another machine has written; as a copy where the quilt is here already. */
export function BringIn(): JSX.Element {
  const [file, setFile] = useState<File | null>(null);
  const [fault, setFault] = useState<{ message: string; twin: boolean } | null>(null);
  const [busy, setBusy] = useState(false);
  const take = async (archive: File, as: 'itself' | 'copy') => {
    setBusy(true);
    setFault(null);
    try {
      const body = new FormData();
      body.append('as', as);
      body.append('file', archive, archive.name);
      const taken = await api<{ id: string }>('/api/quilts/import', { body });
      goTo(pageAddress(taken.id, 'frame'));
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
