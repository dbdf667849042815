import type { KeptEntry } from "./entry.ts";
import { sameJson } from "./same-json.ts";
import { sha256OfText } from "./withdrawal.ts";

/**
 * What becomes of an entry that comes in under an id that is already here:
 * `keep` what is here, which says the same; `replace` it by the stub that came, whose hash it has; or `refuse`.
 * A stub stays a stub: the full text is recognised by its hash and not taken back in.
 */
export function meeting(here: KeptEntry, incoming: KeptEntry): "keep" | "replace" | "refuse" {
  const mine = here.entry.withdrawn?.sha256;
  const theirs = incoming.entry.withdrawn?.sha256;
  if (mine === undefined && theirs === undefined)
    return sameJson(here.text, incoming.text) ? "keep" : "refuse";
  if (mine !== undefined && theirs !== undefined) return mine === theirs ? "keep" : "refuse";
  if (mine !== undefined) return sha256OfText(incoming.text) === mine ? "keep" : "refuse";
  return sha256OfText(here.text) === theirs ? "replace" : "refuse";
}

/** Why an entry was not taken in; `code` is for programs, the message for people. */
export interface Refusal {
  readonly id: string;
  readonly code: "same-id-other-content" | "other-notebook";
  readonly message: string;
}

export const otherContent = (id: string): Refusal => ({
  id,
  code: "same-id-other-content",
  message: `An entry with the id ${id} and other content is already in this notebook. It was kept, and this one was not taken in.`,
});

export const otherNotebook = (id: string, named: string, here: string): Refusal => ({
  id,
  code: "other-notebook",
  message: `This entry belongs to the notebook ${named}, not to ${here}.`,
});
