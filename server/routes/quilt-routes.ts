import { isAbsolute, join, relative } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { faultOfShape } from '../../core/shape/fault-of-shape.ts';
import { QuiltDetails } from '../../shared/quilt.ts';
import { Settings } from '../../shared/settings.ts';
import { Command } from '../../shared/wire.ts';
import { isThisMachine } from '../lan/lan-door.ts';
import { parseInput } from '../plugins/answer-errors.ts';
import { runCommand } from '../run-command.ts';
import type { BackupRounds, Stay } from '../store/backup-rounds.ts';
import type { Library } from '../store/library.ts';
import { Refusal } from '../store/quilt-store.ts';
import { writeWholeFile } from '../store/write-whole-file.ts';

/** Settings as a page may change them; what it leaves out stays. */
export const SettingsChanges = z.strictObject(
  Object.fromEntries(
    Object.entries(Settings.shape)
      .filter(([name]) => name !== 'version')
      .map(([name, field]) => [name, withoutDefault(field).optional()]),
  ) as Record<string, z.ZodType>,
);

/** A folder for backups is tried before it is taken: a wrong one would be found out when it is needed. */
async function checkBackupFolder(library: Library, folder: string): Promise<void> {
  const field = 'backupFolder';
  if (!isAbsolute(folder)) {
    throw new Refusal(
      'The folder for backups has to be given in full, from the root or the drive.',
      422,
      field,
    );
  }
  const inside = relative(library.folder, folder);
  if (inside === '' || !(inside.startsWith('..') || isAbsolute(inside))) {
    throw new Refusal(
      'The folder for backups has to lie outside the data folder, best on another disk.',
      422,
      field,
    );
  }
  try {
    await library.fs.makeFolder(folder);
    await writeWholeFile(
      library.fs,
      join(folder, 'quiltside-backups.txt'),
      Buffer.from('Backups of Quiltside are kept here.\n'),
    );
  } catch (error) {
    throw new Refusal(
      `The folder for backups can not be written to: ${(error as Error).message}.`,
      422,
      field,
    );
  }
}

/** Absent must mean "as it was" here, not "as usual". */
function withoutDefault(field: z.ZodType): z.ZodType {
  return field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : field;
}

/** `good`: the quilt, for good; `owner`: all quilts of its owner, for good. */
const Removal = z.object({ for: z.enum(['trash', 'good', 'owner']).default('trash') });

function saysWhatStays(count: number, backups: Stay | undefined): string {
  const what = `${count === 1 ? 'The quilt was' : `${count} quilts were`} removed for good: log, sound and photographs, in the trash as well.`;
  const copies = 'Papers and archives that were taken away are yours to delete.';
  if (!backups) return `${what} No folder for backups is set here. ${copies}`;
  const until = backups.until.slice(0, 10);
  const away =
    backups.away.length === 0
      ? ''
      : ` Backups may also be in ${backups.away.join(' and ')}, which is not here now: what it holds goes when it is here again after ${until}.`;
  if (backups.folders.length === 0)
    return `${what} The folder for backups has nothing of it.${away} ${copies}`;
  return `${what} Backups stay until ${until} in ${backups.folders.join(' and ')} and are then deleted; delete them there yourself to have them gone at once.${away} ${copies}`;
}

const Since = z.object({ since: z.coerce.number().int().nonnegative().default(0) });
type WithId = { Params: { id: string } };

/** Settings, the list of quilts, and each quilt's log. Where a folder for backups is chosen, they are made at once. */
export function quiltRoutes(app: FastifyInstance, library: Library, backups: BackupRounds): void {
  app.get('/api/settings', async () => library.settings.data);
  app.put('/api/settings', async (request) => {
    const changes = parseInput(SettingsChanges, request.body) as Partial<Settings>;
    // a path on this machine's disk is for who sits at it: a phone could have it written to any folder
    if (changes.backupFolder !== undefined && !isThisMachine(request.raw)) {
      throw new Refusal('The folder for backups is chosen on the machine that runs Quiltside.', 403);
    }
    if (changes.backupFolder) await checkBackupFolder(library, changes.backupFolder);
    const settings = await library.saveSettings(changes);
    if (changes.backupFolder) void backups.round();
    return settings;
  });

  app.get('/api/quilts', async () => {
    await library.index();
    return library.list();
  });
  app.post('/api/quilts', async (request, reply) => {
    const details = parseInput(QuiltDetails, request.body);
    const fault = faultOfShape(details);
    if (fault) throw new Refusal(fault.message, 422, fault.field);
    const store = await library.makeQuilt(details);
    return reply.code(201).send({ id: store.id, quilt: store.log.quilt, seq: store.log.seq });
  });

  app.get<WithId>('/api/quilts/:id', async ({ params }) => {
    const { log, damage } = await library.quilt(params.id);
    return {
      id: log.quilt.id,
      seq: log.seq,
      quilt: log.quilt,
      notes: log.parts.notes.size,
      entries: log.entryCount,
      photos: log.photos.length,
      recordings: log.recordings.length,
      damage,
    };
  });
  app.delete<WithId>('/api/quilts/:id', async ({ params, query, raw }) => {
    const { for: how } = parseInput(Removal, query);
    if (how !== 'trash') {
      if (!isThisMachine(raw))
        throw new Refusal('A quilt is removed for good on the machine that runs Quiltside.', 403);
      const gone = await library.removeForGood(params.id, how === 'owner');
      return { removed: gone.length, message: saysWhatStays(gone.length, await backups.forget(gone)) };
    }
    await library.discardQuilt(params.id);
    return {
      message: 'The quilt was moved to the trash folder of the data folder, from where it can be put back.',
    };
  });

  app.get<WithId>('/api/quilts/:id/events', async ({ params, query }) => {
    const { since } = parseInput(Since, query);
    const { log } = await library.quilt(params.id);
    return { seq: log.seq, events: log.eventsSince(since) };
  });
  app.post<WithId>('/api/quilts/:id/commands', async ({ params, body }) => {
    const command = parseInput(Command, body);
    const store = await library.quilt(params.id);
    return runCommand(store, command, {
      now: new Date().toISOString(),
      idleMin: library.settings.data.idleMin,
    });
  });
}
