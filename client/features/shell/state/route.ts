import { computed, signal } from '@preact/signals';

export const PAGES = [
  'frame',
  'quilt',
  'days',
  'open',
  'estimate',
  'record',
  'find',
  'recordings',
  'help',
  'settings',
] as const;
export type Page = (typeof PAGES)[number];

export type Route =
  | { at: 'quilts' }
  | { at: 'new' }
  | { at: 'quilt'; quiltId: string; page: Page; rest: string };

const hash = signal(typeof location === 'undefined' ? '' : location.hash);
if (typeof addEventListener !== 'undefined') {
  addEventListener('hashchange', () => {
    hash.value = location.hash;
  });
}

/** Reads an address such as `#/q/abc/days/2026-03-14`. Anything else is the list of quilts. */
export function readRoute(text: string): Route {
  const parts = text.replace(/^#\/?/, '').split('/').map(decode);
  if (parts[0] === 'new') return { at: 'new' };
  if (parts[0] === 'q' && parts[1]) {
    const page = PAGES.find((name) => name === parts[2]) ?? 'frame';
    return { at: 'quilt', quiltId: parts[1], page, rest: parts.slice(3).join('/') };
  }
  return { at: 'quilts' };
}

const decode = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
};

export const route = computed(() => readRoute(hash.value));

export function pageAddress(quiltId: string, page: Page, rest = ''): string {
  return `#/q/${encodeURIComponent(quiltId)}/${page}${rest ? `/${encodeURIComponent(rest)}` : ''}`;
}

export function goTo(address: string): void {
  location.hash = address;
}
