import { createHash, randomBytes } from "node:crypto";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";

export const sha256OfBytes = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

const isAbsent = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Photographs as files named by their SHA-256. A file is there whole or not at all. */
export class PhotographFiles {
  readonly #folder: string;
  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Returns after the bytes and the name are on disk. The caller has checked the hash. */
  async put(sha256: string, bytes: Uint8Array): Promise<void> {
    const path = this.#path(sha256);
    const folder = dirname(path);
    await mkdir(folder, { recursive: true });
    const unfinished = join(folder, `.${sha256}.${randomBytes(6).toString("hex")}`);
    try {
      const file = await open(unfinished, "wx");
      try {
        await file.writeFile(bytes);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(unfinished, path);
    } catch (error) {
      await rm(unfinished, { force: true });
      throw error;
    }
    await syncFolder(folder);
    await syncFolder(this.#folder);
  }

  async get(sha256: string): Promise<Uint8Array | null> {
    try {
      return await readFile(this.#path(sha256));
    } catch (error) {
      if (isAbsent(error)) return null;
      throw error;
    }
  }

  async drop(sha256: string): Promise<void> {
    await rm(this.#path(sha256), { force: true });
  }

  #path(sha256: string): string {
    return join(this.#folder, sha256.slice(0, 2), sha256);
  }
}
