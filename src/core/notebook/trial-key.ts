import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { z } from "zod";
import type { LaidPatch } from "../design/plan.ts";
import type { Problem } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import { readJson } from "./json-text.ts";

/** 128 bits at least: without them the hash could be met by trying every way to deal the treatments. */
const hex128 = /^[0-9a-f]{32,}$/;

const keySchema = z.strictObject({
  salt: z.string().regex(hex128),
  /** The lot that the layout was drawn by. It stands nowhere else: who has it can draw the layout again. */
  seed: z.string(),
  codes: z.record(
    z.string(),
    z.strictObject({ treatment: z.record(z.string(), z.string()), jar: z.string() }),
  ),
});
/** What a blind trial keeps from its judges: what is on each code, and the lot that it was drawn by. */
export type TrialKey = z.output<typeof keySchema>;

/** JSON with sorted keys and no white space: the same key always has the same text, and so the same hash. */
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_, v: unknown) =>
    v !== null && typeof v === "object" && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );

/**
 * The exact text of a trial's key, whose SHA-256 is laid down with the layout.
 *
 * @param salt  at least 128 random bits as hexadecimal, so that the hash tells nothing
 * @param seed  the lot that the layout was drawn by, as long and as random
 */
export const trialKeyText = (patches: readonly LaidPatch[], seed: string, salt: string): string =>
  canonical(
    keySchema.parse({
      salt,
      seed,
      codes: Object.fromEntries(patches.map((p) => [p.code, { treatment: p.treatment, jar: p.jar }])),
    }),
  );

/** SHA-256 of a text's UTF-8 bytes, hexadecimal. Source: FIPS 180-4 (2015) */
export const sha256OfText = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** Reads an opened key; one that does not hash to what was laid down is another key and is refused. */
export function readTrialKey(text: string, expectedSha256: string): Result<TrialKey, Problem> {
  const refused = (code: string, message: string) =>
    fail({ code, field: "key", value: null, message, limits: null });
  if (sha256OfText(text) !== expectedSha256)
    return refused("contradiction", "This key is not the one whose hash was laid down with the layout.");
  const json = readJson(text);
  if (!json.ok) return json;
  const key = keySchema.safeParse(json.value);
  return key.success ? ok(key.data) : refused("wrong-type", "This key does not say what is on each code.");
}
