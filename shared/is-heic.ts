/** HEIC and HEIF by their first bytes: a box `ftyp` with one of their brands (ISO/IEC 23008-12), whatever the file is called. */
export const isHeic = (head: Uint8Array): boolean =>
  /^ftyp(hei[cmsx]|hev[cmsx]|mif1|msf1)/.test(String.fromCharCode(...head.subarray(4, 12)));
