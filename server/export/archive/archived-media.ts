/** Names of sound and photographs in an archive: those that this program itself gives. */
export const ARCHIVED_MEDIA = /^(?:audio|photos)\/[A-Za-z0-9_-]{1,80}(?:-small)?\.[a-z0-9]{2,4}$/;
