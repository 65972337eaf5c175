/**
 * The disk refused something. `message` is for the person at the frame: what could not be kept, why,
 * what to do, and that what came before stands.
 */
export class DiskTrouble extends Error {
  readonly statusCode = 507;
  constructor(what: string, why: unknown) {
    super(`${what} ${reason(why)}`, { cause: why });
    this.name = 'DiskTrouble';
  }
}

function reason(cause: unknown): string {
  const code = (cause as NodeJS.ErrnoException | undefined)?.code;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return 'The disk is full. Make room and say or send it again; everything acknowledged before is safe.';
    case 'EFBIG':
      return 'The file has reached the largest size this disk allows. Everything acknowledged before is safe.';
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return 'The folder may not be written to. Check its permissions; everything acknowledged before is safe.';
    case 'EMFILE':
    case 'ENFILE':
      return 'Too many files are open on this machine. Close some programs and try again; everything acknowledged before is safe.';
    default:
      return `The disk answered with an error (${code ?? (cause as Error | undefined)?.message ?? 'unknown'}). Check the disk and try again; everything acknowledged before is safe.`;
  }
}
