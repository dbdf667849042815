import type { z } from "zod";
import { benchKinds } from "./bench.ts";
import { bookKinds } from "./book.ts";
import { jarKinds } from "./jars.ts";
import { materialKinds } from "./materials.ts";
import { pieceKinds } from "./pieces.ts";
import { trialKinds } from "./trials.ts";

/**
 * Every kind of entry known on day one with the shape of its body, schema 1. Bodies are open: a later version may
 * add optional fields and this one keeps them. A changed meaning is a new schema number with its own reader.
 */
export const kinds = {
  ...materialKinds,
  ...jarKinds,
  ...benchKinds,
  ...trialKinds,
  ...pieceKinds,
  ...bookKinds,
} as const;
export type Kind = keyof typeof kinds;
export type Body<K extends Kind> = z.output<(typeof kinds)[K]>;

export const isKnownKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind);
