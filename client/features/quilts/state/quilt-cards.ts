import { signal } from '@preact/signals';
import type { QuiltCard } from '../../../../shared/settings.ts';
import { api } from '../../link/state/api.ts';

export const quiltCards = signal<QuiltCard[] | null>(null);
export const cardsFault = signal<string | null>(null);

export async function loadQuiltCards(): Promise<void> {
  try {
    const answer = await api<QuiltCard[] | { quilts: QuiltCard[] }>('/api/quilts');
    quiltCards.value = Array.isArray(answer) ? answer : answer.quilts;
    cardsFault.value = null;
  } catch (why) {
    cardsFault.value = why instanceof Error ? why.message : String(why);
  }
}
