import type { Assumption, Worked } from '../../shared/estimate-answer.ts';
import type { LengthUnit } from '../../shared/estimate-spec.ts';
import { type Exact, exact, written } from './exact.ts';

const CM_PER_INCH = exact('2.54');

/** The sheet of paper of one part: its sums, what it had to assume, what it warns of. */
export class Working {
  readonly lines: string[] = [];
  readonly assumptions: Assumption[] = [];
  readonly warnings: string[] = [];
  question: string | undefined;

  constructor(
    readonly part: string,
    readonly unit: LengthUnit,
  ) {}

  /** One sum, written so that it can be checked with a pencil. */
  line(text: string): void {
    this.lines.push(text);
  }

  warn(text: string): void {
    this.warnings.push(text);
    this.lines.push(`Warning: ${text}`);
  }

  ask(text: string): void {
    this.question = this.question ? `${this.question} ${text}` : text;
    this.lines.push(`Question: ${text}`);
  }

  assume(field: string, value: string, why: string): void {
    const path = `${this.part}.${field}`;
    this.assumptions.push({ field: path, value, why });
    this.lines.push(`Assumed ${path} = ${value} (${why})`);
  }

  /** The length given, or the stated default in inches, in the spec's own unit. */
  length(field: string, given: number | undefined, defaultIn: number | string, why: string): Exact {
    if (given !== undefined) return exact(given);
    const value = this.fromInches(defaultIn);
    this.assume(field, this.show(value), why);
    return value;
  }

  /** A choice or a bare number given, or its stated default. */
  choice<T extends string | number | boolean>(
    field: string,
    given: T | undefined,
    otherwise: T,
    why: string,
  ): T {
    if (given !== undefined) return given;
    this.assume(field, String(otherwise), why);
    return otherwise;
  }

  fromInches(inches: number | string): Exact {
    return this.unit === 'in' ? exact(inches) : exact(inches).mul(CM_PER_INCH);
  }

  show(length: Exact): string {
    return `${written(length)} ${this.unit}`;
  }

  /** The part of an answer that every part carries. */
  carried(): Worked {
    return {
      working: this.lines,
      assumptions: this.assumptions,
      ...(this.warnings.length > 0 ? { warnings: this.warnings } : {}),
      ...(this.question === undefined ? {} : { question: this.question }),
    };
  }
}
