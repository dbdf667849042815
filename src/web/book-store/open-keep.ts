import { newEntryId } from "../../core/notebook/entry-id.ts";
import { IdbKeep } from "./idb-keep.ts";
import type { Keep } from "./keep.ts";
import { MemoryKeep } from "./memory-keep.ts";

/** `getRandomValues` is there on plain HTTP too, where `randomUUID` is not. */
export const randomBytes = (length: number): Uint8Array => crypto.getRandomValues(new Uint8Array(length));
export const newId = (): string => newEntryId(new Date().toISOString(), 0, randomBytes);

/** What this browser keeps, or a memory that lasts as long as the page where it refuses. */
export async function openKeep(): Promise<Keep> {
  try {
    return await IdbKeep.open(newId, () => location.reload());
  } catch (error) {
    if (!(error instanceof DOMException || error instanceof ReferenceError || error instanceof TypeError))
      throw error;
    return new MemoryKeep(newId());
  }
}
