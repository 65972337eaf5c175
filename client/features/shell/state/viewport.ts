import { signal } from '@preact/signals';

const query = typeof matchMedia === 'undefined' ? null : matchMedia('(min-width: 54.01rem)');

/** True where the selvedge runs down the side; false where it lies along the foot of the screen. */
export const wide = signal(query?.matches ?? true);
query?.addEventListener('change', (event) => {
  wide.value = event.matches;
});
