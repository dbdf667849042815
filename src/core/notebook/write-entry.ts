import { DomainError } from "../domain-error.ts";
import type { KeptEntry, KnownTo, NotebookEntry } from "./entry.ts";
import { newEntryId, type WritingEffects } from "./entry-id.ts";
import type { Body, Kind } from "./kinds/all.ts";
import { parseEntry } from "./parse-entry.ts";

/** What the person did; the rest of the envelope comes from the effects. */
export interface EntryDraft<K extends Kind> {
  readonly notebook: string;
  readonly kind: K;
  readonly body: Body<K>;
  readonly about?: readonly string[];
  readonly strikes?: readonly string[];
  /** When it happened, where that is not now. */
  readonly happened?: string;
  readonly happenedKnownTo?: KnownTo;
  readonly for?: readonly string[];
  readonly remembered?: boolean;
}

/** Writes one entry into the notebook at hand, and gives its id. */
export type WriteDraft = <K extends Kind>(draft: Omit<EntryDraft<K>, "notebook">) => string;

/**
 * Writes a new entry, schema 1, with its id and its text.
 *
 * @throws DomainError when the body or another field is not what the kind promises
 */
export function writeEntry<K extends Kind>(draft: EntryDraft<K>, effects: WritingEffects): KeptEntry {
  const recorded = effects.now();
  const seq = effects.nextSeq();
  const entry: NotebookEntry = {
    id: newEntryId(recorded, seq, effects.randomBytes),
    notebook: draft.notebook,
    kind: draft.kind,
    schema: 1,
    device: effects.device,
    seq,
    by: effects.by,
    ...(draft.for === undefined ? {} : { for: [...draft.for] }),
    happened: draft.happened ?? recorded,
    happenedKnownTo: draft.happenedKnownTo ?? "minute",
    zone: effects.zone,
    recorded,
    about: [...(draft.about ?? [])],
    strikes: [...(draft.strikes ?? [])],
    ...(draft.remembered === undefined ? {} : { remembered: draft.remembered }),
    body: draft.body,
  };
  const kept = parseEntry(JSON.stringify(entry));
  if (kept.ok) return kept.value;
  const { field, value, message } = kept.error;
  throw new DomainError({ code: "wrong-type", field, value, because: message });
}

/** What a correction leaves as it was: when it happened, how well that is known, and whose hands it was, whoever corrects it. */
export function asItHappened(
  entry: NotebookEntry,
): Pick<EntryDraft<Kind>, "happened" | "happenedKnownTo" | "for" | "remembered"> {
  const hands = entry.for ?? (entry.by === null ? undefined : [entry.by]);
  return {
    happened: entry.happened,
    happenedKnownTo: entry.happenedKnownTo,
    ...(hands === undefined ? {} : { for: hands }),
    ...(entry.remembered === undefined ? {} : { remembered: entry.remembered }),
  };
}

/**
 * What a correction of `current` strikes: that entry, and whatever it struck in its turn, so that one live entry
 * stands for the thing however often it is corrected, and undoing the last correction brings the one before back.
 */
export const strikesToCorrect = (current: NotebookEntry): string[] => [current.id, ...current.strikes];
