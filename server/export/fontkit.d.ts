declare module 'fontkit' {
  /** Opens a font from its bytes. */
  export function create(bytes: Uint8Array): unknown;
}
