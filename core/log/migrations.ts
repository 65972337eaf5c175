import type { NumberedEvent } from '../../shared/event.ts';

/** Turns the events of journals written at version `from` into those of the version after it. */
export type Migration = {
  from: number;
  /** What changed, and why. */
  why: string;
  change: (event: NumberedEvent) => NumberedEvent;
};

/** In order, without gaps: the first is from version 1, the last to `LOG_VERSION`. */
export const MIGRATIONS: readonly Migration[] = [
  {
    from: 1,
    why: 'The journal may go on in further files, of which a program of version 1 would read the first only. No event changed.',
    change: (event) => event,
  },
];

/** Version of the events that this program writes. */
export const LOG_VERSION = 2;

/**
 * Brings the events of a journal up to the version of this program. Throws where the version is newer
 * than this program knows, or where the list of migrations has a gap.
 */
export function migrate(
  events: readonly NumberedEvent[],
  from: number,
  migrations: readonly Migration[] = MIGRATIONS,
  version: number = LOG_VERSION,
): NumberedEvent[] {
  checkMigrations(migrations, version);
  if (!Number.isInteger(from) || from < 1 || from > version) {
    throw new Error(
      `This log is of version ${from}; this program reads versions 1 to ${version}. Use a newer Quiltside to open it; nothing of it was changed.`,
    );
  }
  const steps = migrations.slice(from - 1);
  return events.map((event) => steps.reduce((sofar, step) => step.change(sofar), event));
}

/** Throws where the migrations don't lead from version 1 to `version` one by one. */
export function checkMigrations(migrations: readonly Migration[], version: number): void {
  for (const [i, { from }] of migrations.entries()) {
    if (from !== i + 1) throw new Error(`Migration ${i + 1} should be from version ${i + 1}, not ${from}.`);
  }
  if (migrations.length !== version - 1) {
    throw new Error(
      `${migrations.length} migrations lead to version ${migrations.length + 1}, not ${version}.`,
    );
  }
}
