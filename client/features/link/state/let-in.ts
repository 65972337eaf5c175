import { signal } from '@preact/signals';

/** False once the server has said that this device is not let in, or no longer. */
export const isLetIn = signal(true);

/** Close code of the live socket for a device that was sent away; shared with the server's live socket. */
export const SENT_AWAY = 4401;
