import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import type { KeptEntry, NotebookEntry } from "./entry.ts";
import type { Body } from "./kinds/all.ts";
import { understand } from "./understanding.ts";

/** SHA-256 of a text's UTF-8 bytes, as 64 hexadecimal digits. */
export const sha256OfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

export const isStub = (entry: NotebookEntry): boolean => entry.withdrawn !== undefined;

/**
 * What is left of an entry once its text is withdrawn: the ids, kind, times and links that the rest of the notebook hangs
 * on, and the SHA-256 of the text. Body and unknown fields are gone.
 */
export function stubOf(kept: KeptEntry): KeptEntry {
  if (isStub(kept.entry)) return kept;
  const { id, notebook, kind, schema, device, seq, by, happened, happenedKnownTo } = kept.entry;
  const { zone, recorded, about, strikes } = kept.entry;
  const entry: NotebookEntry = {
    ...{
      id,
      notebook,
      kind,
      schema,
      device,
      seq,
      by,
      happened,
      happenedKnownTo,
      zone,
      recorded,
      about,
      strikes,
    },
    withdrawn: { sha256: sha256OfText(kept.text) },
    body: {},
  };
  return { entry, text: JSON.stringify(entry), understanding: understand(entry) };
}

/**
 * The entries that this one withdraws. A withdrawal acts at once and for good, whether or not it is struck later: a text
 * that is gone cannot come back. A withdrawal itself cannot be withdrawn (`stubbable`).
 */
export function withdraws(kept: KeptEntry): readonly string[] {
  if (kept.entry.kind !== "withdrawn" || isStub(kept.entry)) return [];
  if ((kept.understanding ?? understand(kept.entry)).as !== "understood") return [];
  return (kept.entry.body as Body<"withdrawn">).entries;
}

export const stubbable = (entry: NotebookEntry): boolean => entry.kind !== "withdrawn";
