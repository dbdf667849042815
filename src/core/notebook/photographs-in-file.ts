import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import type { Problem } from "../registry/problem.ts";
import { ok, type Result } from "../result.ts";
import { base64Of, bytesOfBase64 } from "./base64.ts";
import type { NotebookEntry } from "./entry.ts";
import { readShallowJson } from "./json-text.ts";
import { textsInFile } from "./notebook-file.ts";

/** A photograph with its bytes. Its name is the SHA-256 of the bytes; the type is what it was said to be. */
export interface Photograph {
  readonly sha256: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** What an entry says of a photograph. */
export interface PhotographTold {
  readonly sha256: string;
  readonly type: string;
  readonly happened: string;
  readonly note: string;
}

/** A file taken apart: its entries' texts as they stand, the photographs that are whole, the names of those that are not. */
export interface FileParts {
  readonly texts: readonly string[];
  readonly photographs: readonly Photograph[];
  readonly spoiled: readonly string[];
}

/**
 * SHA-256 of bytes: the name of a photograph.
 *
 * @param bytes  n
 * @returns      64 lower-case hexadecimal digits
 */
export const sha256OfBytes = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

/**
 * A photograph as an element of a notebook file, beside the entries.
 *
 * @param photograph  its name, type and bytes
 * @returns           one line of JSON
 */
export const photographText = ({ sha256: name, type, bytes }: Photograph): string =>
  JSON.stringify({ photograph: name, type, base64: base64Of(bytes) });

/**
 * Takes a notebook file apart, and looks whether each photograph in it is the one that its name says.
 *
 * @param text  the file's text
 * @returns     entries' texts and photographs, or the problem `unreadable`
 */
export function partsOfFile(text: string): Result<FileParts, Problem> {
  const all = textsInFile(text);
  if (!all.ok) return all;
  const texts: string[] = [];
  const photographs = new Map<string, Photograph>();
  const spoiled = new Set<string>();
  for (const one of all.value) {
    const element = elementIn(one);
    if (element === undefined) texts.push(one);
    else {
      const whole = wholeIn(element);
      if (whole === undefined) spoiled.add(element.photograph);
      else photographs.set(whole.sha256, whole);
    }
  }
  const lost = [...spoiled].filter((name) => !photographs.has(name));
  return ok({ texts, photographs: [...photographs.values()], spoiled: lost });
}

/**
 * The photographs that entries speak of, struck or not; one that several speak of is told once.
 *
 * @param entries  of a notebook, n
 * @returns        what is told of each, at most n; of a withdrawn one nothing is
 */
export function photographsTold(entries: readonly NotebookEntry[]): readonly PhotographTold[] {
  const told = new Map<string, PhotographTold>();
  for (const { kind, body, happened } of entries) {
    const { sha256: name, type, note } = body as Readonly<Record<string, unknown>>;
    if (kind !== "photograph" || typeof name !== "string" || told.has(name)) continue;
    told.set(name, {
      sha256: name,
      type: typeof type === "string" ? type : "",
      happened,
      note: typeof note === "string" ? note : "",
    });
  }
  return [...told.values()];
}

interface Element {
  readonly photograph: string;
  readonly type?: unknown;
  readonly base64?: unknown;
}

/** An entry has an id and a kind; a photograph has neither. */
function elementIn(text: string): Element | undefined {
  if (!/^\{\s*"(photograph|type|base64)"/.test(text)) return undefined;
  const json = readShallowJson(text);
  if (!json.ok) return undefined;
  const value = json.value as Readonly<Record<string, unknown>>; // it begins with a brace
  return typeof value.photograph === "string" && !("kind" in value)
    ? (value as unknown as Element)
    : undefined;
}

function wholeIn({ photograph, type, base64 }: Element): Photograph | undefined {
  if (typeof type !== "string" || !type.startsWith("image/") || typeof base64 !== "string") return undefined;
  const bytes = bytesOfBase64(base64);
  if (!bytes.ok || sha256OfBytes(bytes.value) !== photograph) return undefined;
  return { sha256: photograph, type, bytes: bytes.value };
}
