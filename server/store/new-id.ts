import { randomBytes } from 'node:crypto';

/** A new id: 16 characters of base64url, 96 random bits, so that ids made on two machines don't meet. */
export const newId = (): string => randomBytes(12).toString('base64url');
