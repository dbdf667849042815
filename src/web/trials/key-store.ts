import { bytesToHex, hexToBytes } from "@noble/hashes/utils.js";
import { type DBSchema, openDB } from "idb";

interface KeySchema extends DBSchema {
  /** The device's half of a sealed key, by the hash of the key it opens. Never sent, never part of the notebook. */
  keys: { key: string; value: string };
}

const database = () =>
  openDB<KeySchema>("lacbench-keys", 1, {
    upgrade(db) {
      db.createObjectStore("keys");
    },
  });

/** Keeps the bytes that open a trial's key on this device; settled once they are kept. */
export async function keepDeviceKey(keySha256: string, bytes: Uint8Array): Promise<void> {
  const db = await database();
  await db.put("keys", bytesToHex(bytes), keySha256);
  db.close();
}

/** The bytes that open a trial's key, where this device holds them. */
export async function deviceKey(keySha256: string): Promise<Uint8Array | null> {
  const db = await database();
  const kept = await db.get("keys", keySha256);
  db.close();
  return kept === undefined ? null : hexToBytes(kept);
}
