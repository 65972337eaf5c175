import { computed, signal } from '@preact/signals';
import { setPageLocale } from '../../../words/figure-words.ts';
import { openQuiltLink, type QuiltLink } from './quilt-link.ts';

const current = signal<QuiltLink | null>(null);

/** The link to the quilt that is open in this window; null on the list of quilts. */
export const openQuilt = computed(() => current.value);

/** The folded log of the open quilt; null until it has come. */
export const openLog = computed(() => {
  const log = current.value?.log.value ?? null;
  if (log) setPageLocale(log.quilt.spelling);
  return log;
});

/** Opens the link to a quilt, closing another; null closes. */
export function switchQuilt(quiltId: string | null): void {
  if (current.peek()?.quiltId === (quiltId ?? undefined)) return;
  current.peek()?.close();
  current.value = quiltId === null ? null : openQuiltLink(quiltId);
}
