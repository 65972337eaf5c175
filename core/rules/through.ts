/** A value through one stage after the other, in the order that they are written. */
export const through = <T>(value: T, ...stages: ((value: T) => T)[]): T =>
  stages.reduce((v, stage) => stage(v), value);
