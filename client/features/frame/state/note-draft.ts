import { signal } from '@preact/signals';

/** What stands in the note line, kept while she looks at another page. */
export const noteDraft = signal('');
