import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { api } from '../../link/state/api.ts';
import { machineSettings } from '../../settings/state/machine-settings.ts';

type SoundList = {
  recordMade: boolean;
  files: { file: string; bytes: number; what: string }[];
  bytes: number;
};

/** Sound that goes by the setting: what would go is shown first, and only what was shown goes. */
export function SoundToDelete(props: { quiltId: string }): JSX.Element | null {
  const [list, setList] = useState<SoundList | null>(null);
  const [word, setWord] = useState('');
  const address = `/api/quilts/${encodeURIComponent(props.quiltId)}/audio-to-delete`;
  const keep = machineSettings.value?.keepAudio ?? 'all';
  if (keep === 'all') return null;
  const tell = (why: unknown) => setWord(why instanceof Error ? why.message : String(why));
  const look = () => {
    setWord('');
    api<SoundList>(address).then(setList, tell);
  };
  const remove = (files: SoundList['files']) => {
    api<{ deleted: number }>(address, { json: { files: files.map(({ file }) => file) } })
      .then(({ deleted }) => {
        setList(null);
        setWord(`${pieces(deleted)} of sound deleted. The words are in the log.`);
      })
      .catch(tell);
  };
  return (
    <section aria-labelledby="sound-head">
      <h2 id="sound-head">Sound that can go</h2>
      <p class="quiet">
        {keep === 'until-record'
          ? 'By your settings sound is kept until the record is made. Say so on the page of the record, or by word, and what was said before then can go here.'
          : 'By your settings no sound is kept once it is written down. What is left from before goes here.'}{' '}
        Sound whose words are not all in the log is never deleted; copies in your backups stay.
      </p>
      {list === null ? (
        <p class="row">
          <button type="button" onClick={look}>
            Show what would go
          </button>
        </p>
      ) : list.files.length === 0 ? (
        <p>
          {keep === 'until-record' && !list.recordMade
            ? 'The record is not made yet, so all sound is kept.'
            : 'There is no sound that could go.'}
        </p>
      ) : (
        <>
          <details>
            <summary>
              {pieces(list.files.length)} of sound, {megabytes(list.bytes)}
            </summary>
            <ul class="plain">
              {list.files.map(({ file, bytes, what }) => (
                <li key={file}>
                  {what}, {megabytes(bytes)}
                </li>
              ))}
            </ul>
          </details>
          <p class="row">
            <button type="button" class="warn" onClick={() => remove(list.files)}>
              Delete {pieces(list.files.length)} of sound for good
            </button>
            <button type="button" onClick={() => setList(null)}>
              Keep all
            </button>
          </p>
        </>
      )}
      <p role="status">{word}</p>
    </section>
  );
}

const pieces = (count: number): string => `${count} ${count === 1 ? 'piece' : 'pieces'}`;
const megabytes = (bytes: number): string =>
  `${(bytes / 1e6).toLocaleString(undefined, { maximumFractionDigits: 1 })} MB`;
