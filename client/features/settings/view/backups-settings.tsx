import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { dateWords } from '../../../words/figure-words.ts';
import { localTime } from '../../../words/local-time.ts';
import { Field } from '../../shell/view/field.tsx';
import { backups, loadBackups } from '../state/backups.ts';
import { changeSettings, machineSettings } from '../state/machine-settings.ts';

/** How often the age is asked for anew while the page is open, ms. */
const AGAIN_MS = 5_000;

/** The second folder, and how old the copy of this quilt in it is. */
export function BackupsSettings(props: { quiltId: string; zone: string }): JSX.Element {
  const kept = machineSettings.value?.backupFolder ?? '';
  const [folder, setFolder] = useState<string>();
  useEffect(() => {
    void loadBackups();
    const timer = setInterval(() => void loadBackups(), AGAIN_MS);
    return () => clearInterval(timer);
  }, []);
  const last = backups.value?.last[props.quiltId];
  const when = last && localTime(last.at, props.zone);
  return (
    <section class="settings-group" aria-labelledby="backups-head">
      <h2 id="backups-head">Backups</h2>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void changeSettings({ backupFolder: (folder ?? kept).trim() }).then(loadBackups);
        }}
      >
        <Field
          id="backup-folder"
          label="Folder for backups"
          hint="In full, best on another disk. Every ten minutes what has changed is copied there and restored on trial; empty: no backups"
        >
          {(a) => <input {...a} value={folder ?? kept} onInput={(e) => setFolder(e.currentTarget.value)} />}
        </Field>
        <p class="row">
          <button type="submit">Keep backups there</button>
        </p>
      </form>
      {backups.value?.trouble ? (
        <p class="notice bad" role="alert">
          {backups.value.trouble}
        </p>
      ) : null}
      <p class="quiet" role="status">
        {kept === ''
          ? 'No backups are made.'
          : when
            ? `This quilt was last backed up on ${dateWords(when.date)} at ${when.time}.`
            : 'This quilt has not been backed up yet.'}
      </p>
    </section>
  );
}
