import { signal } from '@preact/signals';
import { RECOGNISER_MODEL } from '../../../../shared/recogniser-model.ts';
import type { Settings } from '../../../../shared/settings.ts';
import { api } from '../../link/state/api.ts';

/** The settings of this machine as the server keeps them; null until they have come. */
export const machineSettings = signal<Settings | null>(null);
export const settingsFault = signal<string | null>(null);

/** The schema's own defaults, for the moment before the server has answered. */
export const UNTIL_KNOWN: Settings = {
  version: 1,
  model: RECOGNISER_MODEL,
  endPauseMs: 600,
  listening: 'held',
  callPhrase: 'thimble on',
  dismissPhrase: 'thimble off',
  tones: true,
  spokenReplies: true,
  keepAudio: 'all',
  theme: 'system',
  idleMin: 30,
};

export async function loadSettings(): Promise<void> {
  try {
    take(await api<unknown>('/api/settings'));
  } catch (why) {
    settingsFault.value = why instanceof Error ? why.message : String(why);
  }
}

/** Changes some settings; on refusal the old ones stay and the fault is shown. */
export async function changeSettings(changes: Partial<Settings>): Promise<void> {
  try {
    take(await api<unknown>('/api/settings', { method: 'PUT', json: changes }));
    settingsFault.value = null;
  } catch (why) {
    settingsFault.value = why instanceof Error ? why.message : String(why);
  }
}

function take(answer: unknown): void {
  const settings = ((answer as { settings?: Settings }).settings ?? answer) as Settings;
  machineSettings.value = settings;
  if (typeof document !== 'undefined') {
    if (settings.theme === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = settings.theme;
  }
}
