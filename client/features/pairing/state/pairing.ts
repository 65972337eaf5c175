import { signal } from '@preact/signals';
import type { PairedDevice, Pairing } from '../../../../shared/settings.ts';
import { api, Refusal } from '../../link/state/api.ts';
import { isLetIn } from '../../link/state/let-in.ts';

/** How another device comes in, as this machine is told; null on a device that is not the machine itself. */
export const pairing = signal<Pairing | null>(null);
export const devices = signal<PairedDevice[]>([]);
export const devicesFault = signal<string | null>(null);

/** A code that came with the address, as a QR code carries it: `#pair-123456`. */
export function codeInAddress(hash: string): string {
  return /^#\/?pair-(\d{6})$/.exec(hash)?.[1] ?? '';
}

export async function loadPairing(): Promise<void> {
  try {
    pairing.value = await api<Pairing>('/api/pairing');
  } catch (why) {
    // Only the machine itself is shown the code; to all others this is no fault.
    pairing.value = null;
    if (!(why instanceof Refusal && why.status === 403)) devicesFault.value = wordsOf(why);
  }
}

export async function loadDevices(): Promise<void> {
  await change(() => api<PairedDevice[]>('/api/devices'));
}

export async function sendAway(id: string): Promise<void> {
  await change(() => api<PairedDevice[]>(`/api/devices/${encodeURIComponent(id)}`, { method: 'DELETE' }));
}

export async function renewCode(): Promise<void> {
  try {
    pairing.value = await api<Pairing>('/api/pairing/renew', { json: {} });
  } catch (why) {
    devicesFault.value = wordsOf(why);
  }
}

/** Asks to be let in; throws `Refusal` with the server's words. */
export async function askToBeLetIn(code: string, name: string): Promise<void> {
  await api<PairedDevice>('/api/pairing', { json: { code, name } });
  isLetIn.value = true;
}

async function change(work: () => Promise<PairedDevice[]>): Promise<void> {
  try {
    devices.value = await work();
    devicesFault.value = null;
  } catch (why) {
    devicesFault.value = wordsOf(why);
  }
}

const wordsOf = (why: unknown): string => (why instanceof Error ? why.message : String(why));
