import { createHash, randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { Low } from 'lowdb';
import { z } from 'zod';
import { PairedDevice } from '../../shared/settings.ts';
import type { FileSystem } from '../store/file-system.ts';
import { newId } from '../store/new-id.ts';
import { SafeJsonFile } from '../store/safe-json-file.ts';

/** With the SHA-256 of its token: whoever reads the file still can't come in with it. */
const KeptDevice = PairedDevice.extend({ tokenSha256: z.string() });
type KeptDevice = z.infer<typeof KeptDevice>;

/** When it was last here is kept this often at most. */
const SEEN_EVERY_MS = 10 * 60_000;

/** The devices that were let in, in `devices.json` of the data folder. */
export class PairedDevices {
  private constructor(readonly file: Low<KeptDevice[]>) {}

  static async open(fs: FileSystem, dataFolder: string): Promise<PairedDevices> {
    const file = new Low<KeptDevice[]>(new SafeJsonFile(fs, join(dataFolder, 'devices.json')), []);
    await file.read();
    // A list that can't be read lets nobody in.
    file.data = z.array(KeptDevice).safeParse(file.data).data ?? [];
    return new PairedDevices(file);
  }

  list(): PairedDevice[] {
    return this.file.data.map(({ tokenSha256: _, ...device }) => device);
  }

  /** Adds a device. Its token is given here and never again. */
  async add(name: string, now: Date): Promise<{ device: PairedDevice; token: string }> {
    const token = randomBytes(32).toString('base64url');
    const at = now.toISOString();
    const device: PairedDevice = { id: newId(), name, pairedAt: at, lastSeenAt: at };
    await this.#keep([...this.file.data, { ...device, tokenSha256: sha256(token) }]);
    return { device, token };
  }

  /** The device that has this token. */
  find(token: string, now: Date): PairedDevice | undefined {
    const sum = sha256(token);
    const device = this.file.data.find((one) => one.tokenSha256 === sum);
    if (device && now.getTime() - Date.parse(device.lastSeenAt) > SEEN_EVERY_MS) {
      device.lastSeenAt = now.toISOString();
      // Only for people to look at: not worth refusing a request over.
      this.file.write().catch(() => undefined);
    }
    return device;
  }

  /** False where there is none of this id. */
  async sendAway(id: string): Promise<boolean> {
    const left = this.file.data.filter((device) => device.id !== id);
    if (left.length === this.file.data.length) return false;
    await this.#keep(left);
    return true;
  }

  async #keep(devices: KeptDevice[]): Promise<void> {
    const before = this.file.data;
    this.file.data = devices;
    try {
      await this.file.write();
    } catch (error) {
      this.file.data = before;
      throw error;
    }
  }
}

const sha256 = (token: string): string => createHash('sha256').update(token).digest('hex');
