/** A spec that makes no sense: which field, what was expected of it, what it held. */
export class SpecError extends Error {
  constructor(
    readonly field: string,
    readonly expected: string,
    readonly got: string,
  ) {
    super(`${field}: expected ${expected}, got ${got}`);
    this.name = 'SpecError';
  }
}
