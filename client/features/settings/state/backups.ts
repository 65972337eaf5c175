import { signal } from '@preact/signals';
import { api } from '../../link/state/api.ts';

/** What the server says of its backups: the folder, when each quilt was last backed up, what went wrong last. */
export type Backups = {
  folder?: string;
  last: Record<string, { file: string; at: string; seq: number }>;
  trouble?: string;
};

/** Null until it has come. */
export const backups = signal<Backups | null>(null);

export async function loadBackups(): Promise<void> {
  try {
    backups.value = (await api<{ backups: Backups }>('/api/health')).backups;
  } catch {
    backups.value = null;
  }
}
