import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Low } from 'lowdb';
import { fold } from '../../core/log/evolve.ts';
import type { Log } from '../../core/log/log.ts';
import type { QuiltDetails } from '../../shared/quilt.ts';
import { QuiltCard, Settings } from '../../shared/settings.ts';
import { DiskTrouble } from './disk-trouble.ts';
import type { FileSystem } from './file-system.ts';
import { lockFolder } from './folder-lock.ts';
import { readEvents } from './journal.ts';
import { readSegments } from './journal-segments.ts';
import { newId } from './new-id.ts';
import { QuiltStore, Refusal, type StoreOptions } from './quilt-store.ts';
import { SafeJsonFile } from './safe-json-file.ts';

const CARDS_AFTER_MS = 1_000;
/** Begins the name of a folder that is being removed. */
const LEAVING = 'leaving-';
const sameName = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

/** The data folder: settings, the index of quilts, and one folder for each. */
export class Library {
  readonly #open = new Map<string, Promise<QuiltStore>>();
  #cardsTimer: NodeJS.Timeout | undefined;
  /** Folders that the index does not know: it was lost, or they were put there by hand. */
  #unlisted: string[] = [];
  #indexing: Promise<void> | undefined;
  #isClosing = false;

  private constructor(
    readonly folder: string,
    readonly fs: FileSystem,
    readonly settings: Low<Settings>,
    readonly cards: Low<QuiltCard[]>,
    /** What was found wrong when the folder was opened, for people. */
    readonly troubles: string[],
    private readonly unlock: () => Promise<void>,
    private readonly sizes: StoreOptions,
  ) {}

  /**
   * Opens (or makes) the data folder and takes its lock. Throws `FolderInUse`. What the index lacks is read by `index`, so
   * that nobody waits for it at the start.
   */
  static async open(folder: string, fs: FileSystem, sizes: StoreOptions = {}): Promise<Library> {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const unlock = await lockFolder(folder);
    try {
      const troubles: string[] = [];
      const settings = new Low<Settings>(
        new SafeJsonFile(fs, join(folder, 'settings.json')),
        Settings.parse({}),
      );
      await settings.read();
      const known = Settings.safeParse(settings.data);
      if (!known.success) troubles.push('The settings could not be read; the usual ones are in use.');
      settings.data = known.success ? known.data : Settings.parse({});
      const cards = new Low<QuiltCard[]>(new SafeJsonFile(fs, join(folder, 'quilts.json')), []);
      await cards.read();
      const library = new Library(folder, fs, settings, cards, troubles, unlock, sizes);
      await library.#matchCardsToFolders();
      return library;
    } catch (error) {
      await unlock();
      throw error;
    }
  }

  async saveSettings(changes: Partial<Settings>): Promise<Settings> {
    const before = this.settings.data;
    this.settings.data = Settings.parse({ ...before, ...changes });
    try {
      await this.settings.write();
    } catch (error) {
      this.settings.data = before;
      throw error;
    }
    return this.settings.data;
  }

  /**
   * Reads what the index lacks from the quilts themselves, once. Who needs every quilt waits for this; `quilt` does by
   * itself for one that is not listed yet.
   */
  index(): Promise<void> {
    this.#indexing ??= this.#readUnlisted();
    return this.#indexing;
  }

  /** The quilts, the one worked on last first; before `index` is done not all of them may be there. */
  list(): QuiltCard[] {
    return [...this.cards.data].sort((a, b) => b.lastAt.localeCompare(a.lastAt));
  }

  async makeQuilt(details: QuiltDetails): Promise<QuiltStore> {
    const id = newId();
    const folder = join(this.folder, 'quilts', id);
    try {
      await this.fs.makeFolder(folder);
      await this.fs.syncFolder(join(this.folder, 'quilts'));
      const store = await QuiltStore.open(this.fs, id, folder, this.sizes);
      const quilt = { ...details, id, madeAt: new Date().toISOString() };
      await store.commit(() => ({ events: [{ type: 'quilt-made', quilt }] }));
      this.#watch(store);
      this.#open.set(id, Promise.resolve(store));
      this.#putCard(store.log);
      await this.cards.write();
      return store;
    } catch (error) {
      throw error instanceof DiskTrouble ? error : new DiskTrouble('The quilt could not be made.', error);
    }
  }

  /** Whether a quilt of this id is here, as far as is known: see `index`. */
  has(id: string): boolean {
    return this.cards.data.some((card) => card.id === id);
  }

  /** Takes in a whole quilt's folder that was made elsewhere on this disk, such as from an archive. */
  async adoptQuilt(id: string, from: string): Promise<QuiltStore> {
    const folder = join(this.folder, 'quilts', id);
    if (this.has(id) || (await this.fs.stat(folder))) {
      throw new Refusal(`The quilt ${id} is here already.`, 409);
    }
    try {
      await this.fs.makeFolder(join(this.folder, 'quilts'));
      await this.fs.rename(from, folder);
      await this.fs.syncFolder(join(this.folder, 'quilts'));
      const store = await QuiltStore.open(this.fs, id, folder, this.sizes);
      this.#watch(store);
      this.#open.set(id, Promise.resolve(store));
      this.#putCard(store.log);
      await this.cards.write();
      return store;
    } catch (error) {
      throw error instanceof DiskTrouble ? error : new DiskTrouble('The quilt could not be taken in.', error);
    }
  }

  /** Where a quilt is kept. Many things can be seen there without opening its log. */
  folderOf(id: string): string {
    return join(this.folder, 'quilts', id);
  }

  isOpen(id: string): boolean {
    return this.#open.has(id);
  }

  /** The store of a quilt, opened on first use. Throws `Refusal` 404 where there is none. */
  async quilt(id: string): Promise<QuiltStore> {
    if (!this.#open.has(id) && !this.has(id)) await this.index();
    const known = this.#open.get(id);
    if (known) return known;
    if (!this.cards.data.some((card) => card.id === id)) {
      throw new Refusal(
        `There is no quilt ${id.slice(0, 40)} here. Choose one from the list of quilts.`,
        404,
      );
    }
    const opening = QuiltStore.open(this.fs, id, join(this.folder, 'quilts', id), this.sizes);
    this.#open.set(id, opening);
    try {
      const store = await opening;
      this.#watch(store);
      return store;
    } catch (error) {
      this.#open.delete(id);
      throw error;
    }
  }

  /** Moves a quilt's folder into `trash`, from where it can be put back by hand. Returns its new place. */
  async discardQuilt(id: string): Promise<string> {
    const store = await this.quilt(id);
    this.#open.delete(id);
    await store.close();
    const trash = join(this.folder, 'trash');
    await this.fs.makeFolder(trash);
    const place = join(trash, `${id}-${new Date().toISOString().replaceAll(/[:.]/g, '-')}`);
    await this.fs.rename(store.folder, place);
    await this.fs.syncFolder(trash);
    await this.fs.syncFolder(join(this.folder, 'quilts'));
    this.cards.data = this.cards.data.filter((card) => card.id !== id);
    await this.cards.write();
    return place;
  }

  /**
   * Removes a quilt for good, or with `ofOwner` all quilts of its owner, those in the trash too: their logs, sound,
   * photographs and older versions, and their names from the index. Returns the ids that went.
   */
  async removeForGood(id: string, ofOwner: boolean): Promise<string[]> {
    await this.index();
    const { owner } = (await this.quilt(id)).log.quilt;
    const isTheirs = (one: string): boolean => sameName(one, owner);
    const listed = this.cards.data.filter(
      (card) => card.id === id || (ofOwner && owner.trim() !== '' && isTheirs(card.owner)),
    );
    const trash = join(this.folder, 'trash');
    const doomed = listed.map((card) => ({ id: card.id, folder: this.folderOf(card.id) }));
    for (const name of await this.fs.list(trash)) {
      const folder = join(trash, name);
      const { quilt } = fold(readEvents(await readSegments(this.fs, folder)).events);
      const isOfOwner = ofOwner && owner.trim() !== '' && isTheirs(quilt.owner);
      if (quilt.id !== '' && (quilt.id === id || isOfOwner)) doomed.push({ id: quilt.id, folder });
    }
    const gone = [...new Set(doomed.map((one) => one.id))];
    // First, so that nothing which still works on one opens it again.
    this.cards.data = this.cards.data.filter((card) => !gone.includes(card.id));
    await this.fs.makeFolder(trash);
    for (const one of doomed) {
      await this.#open.get(one.id)?.then(
        (store) => store.close(),
        () => undefined,
      );
      this.#open.delete(one.id);
      // Under this name first: what a crash leaves of it is no quilt, and is removed at the next start.
      const leaving = join(trash, `${LEAVING}${newId()}`);
      await this.fs.rename(one.folder, leaving);
      await this.fs.syncFolder(trash);
      await this.fs.removeFolder(leaving);
    }
    // Twice: the copy that is kept of the last index would still have their names.
    await this.cards.write();
    await this.cards.write();
    return gone;
  }

  async close(): Promise<void> {
    this.#isClosing = true;
    await this.#indexing;
    clearTimeout(this.#cardsTimer);
    for (const opening of this.#open.values())
      await opening.then(
        (store) => store.close(),
        () => undefined,
      );
    await this.cards.write().catch(() => undefined);
    await this.unlock();
  }

  #watch(store: QuiltStore): void {
    store.subscribe(() => {
      this.#putCard(store.log);
      this.#cardsTimer ??= setTimeout(() => {
        this.#cardsTimer = undefined;
        // The index can be made again from the journals, so a failure here loses nothing.
        this.cards.write().catch(() => undefined);
      }, CARDS_AFTER_MS).unref();
    });
  }

  #putCard(log: Log): void {
    const card = cardOf(log);
    const at = this.cards.data.findIndex((old) => old.id === card.id);
    if (at === -1) this.cards.data.push(card);
    else this.cards.data[at] = card;
  }

  /** The folders are what there is; the index only spares opening them. */
  async #matchCardsToFolders(): Promise<void> {
    const trash = join(this.folder, 'trash');
    for (const name of await this.fs.list(trash))
      if (name.startsWith(LEAVING)) await this.fs.removeFolder(join(trash, name));
    const folders = await this.fs.list(join(this.folder, 'quilts'));
    const good = this.cards.data.filter(
      (card) => QuiltCard.safeParse(card).success && folders.includes(card.id),
    );
    const isShorter = good.length !== this.cards.data.length;
    this.cards.data = good;
    const listed = new Set(good.map((card) => card.id));
    this.#unlisted = folders.filter((id) => !listed.has(id));
    if (isShorter) await this.cards.write().catch(() => undefined);
  }

  async #readUnlisted(): Promise<void> {
    if (this.#unlisted.length === 0) return;
    for (const id of this.#unlisted) {
      if (this.#isClosing) return;
      // It may have been made, or brought in, since.
      if (this.has(id)) continue;
      try {
        const store = await QuiltStore.open(this.fs, id, join(this.folder, 'quilts', id), this.sizes);
        if (store.log.quilt.id === id) this.cards.data.push(cardOf(store.log));
        else if (store.log.seq === 0)
          this.troubles.push(`The folder quilts/${id} holds no quilt that could be read.`);
        else this.cards.data.push({ ...cardOf(store.log), id, name: `Quilt ${id}` });
        await store.close();
      } catch (error) {
        this.troubles.push(`The quilt in quilts/${id} could not be opened: ${(error as Error).message}`);
      }
    }
    await this.cards.write().catch(() => undefined);
  }
}

function cardOf(log: Log): QuiltCard {
  const { quilt } = log;
  const last = log.eventAt(log.seq);
  return {
    id: quilt.id,
    name: quilt.name,
    owner: quilt.owner,
    rows: quilt.rows,
    blocks: quilt.blocks,
    ...(quilt.shape ? { shape: quilt.shape } : {}),
    madeAt: quilt.madeAt,
    lastAt: last?.at ?? quilt.madeAt,
    entries: log.entryCount,
  };
}
