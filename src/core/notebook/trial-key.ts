import { z } from "zod";
import type { LaidPatch } from "../design/plan.ts";
import type { Problem } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import { readShallowJson } from "./json-text.ts";
import { canonicalJson } from "./same-json.ts";
import { sha256OfText } from "./withdrawal.ts";

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

/**
 * The exact text of a trial's key, whose SHA-256 is laid down with the layout.
 *
 * @param salt  at least 128 random bits as hexadecimal, so that the hash tells nothing
 * @param seed  the lot that the layout was drawn by, as long and as random
 */
export const trialKeyText = (patches: readonly LaidPatch[], seed: string, salt: string): string =>
  canonicalJson(
    JSON.stringify(
      keySchema.parse({
        salt,
        seed,
        codes: Object.fromEntries(patches.map((p) => [p.code, { treatment: p.treatment, jar: p.jar }])),
      }),
    ),
  );

/** Reads an opened key; one that does not hash to what was laid down is another key and is refused. */
export function readTrialKey(text: string, expectedSha256: string): Result<TrialKey, Problem> {
  const refused = (code: string, message: string) =>
    fail({ code, field: "key", value: null, message, limits: null });
  if (sha256OfText(text) !== expectedSha256)
    return refused("contradiction", "This key is not the one whose hash was laid down with the layout.");
  const json = readShallowJson(text);
  if (!json.ok) return json;
  const key = keySchema.safeParse(json.value);
  return key.success ? ok(key.data) : refused("wrong-type", "This key does not say what is on each code.");
}
