import { text } from 'node:stream/consumers';
import { estimate } from '../../core/estimate/estimate.ts';
import { readForeignSpec } from '../../core/estimate/read-foreign-spec.ts';
import { SpecError } from '../../core/estimate/spec-error.ts';

/** One JSON object in, one out; exit 2 and one line on standard error for a spec that makes no sense. */
const refuse = (message: string): never => {
  process.stderr.write(`${message.replace(/\s+/g, ' ')}\n`);
  process.exit(2);
};

const parse = (input: string): unknown => {
  try {
    return JSON.parse(input);
  } catch (error) {
    return refuse(
      `the spec: expected one JSON object, got ${input.trim() === '' ? 'nothing' : `text that is no JSON (${(error as Error).message})`}`,
    );
  }
};

const input = parse((await text(process.stdin)).replace(/^\uFEFF/, ''));
try {
  const { spec, passedOver } = readForeignSpec(input);
  const answer = estimate(spec);
  if (passedOver.length > 0)
    answer.warnings = passedOver.map((field) => `${field} is not a field of the estimate: passed over`);
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`);
} catch (error) {
  if (error instanceof SpecError) refuse(error.message);
  throw error;
}
