import type { NotebookEntry } from "../core/notebook/entry.ts";
import { readKeptEntry } from "../core/notebook/parse-entry.ts";
import {
  type FileParts,
  type Photograph,
  type PhotographTold,
  photographsTold,
} from "../core/notebook/photographs-in-file.ts";
import type { NotebookStore } from "../store/notebook-store.ts";

/** Photographs that a notebook's entries speak of: those whose bytes are there, and those that are not. */
export interface Photographs {
  readonly here: readonly Photograph[];
  readonly lacking: readonly PhotographTold[];
}

export const photographsNamed = (n: number): string => (n === 1 ? "1 photograph" : `${n} photographs`);

/** One as a person finds it again: when it was taken, what it shows, how its file is named. */
export const photographLine = ({ happened, note, sha256 }: PhotographTold): string =>
  `  ${happened}  ${note === "" ? "(no note)" : note}  ${sha256}`;

function entriesOf(texts: readonly string[]): readonly NotebookEntry[] {
  return texts.flatMap((text) => {
    const read = text.includes("photograph") ? readKeptEntry(text) : undefined;
    return read?.ok === true ? [read.value.entry] : [];
  });
}

/** What the store has of the photographs that these entries speak of. */
export async function photographsOf(store: NotebookStore, texts: readonly string[]): Promise<Photographs> {
  const here: Photograph[] = [];
  const lacking: PhotographTold[] = [];
  for (const told of photographsTold(entriesOf(texts))) {
    const bytes = await store.photograph(told.sha256);
    if (bytes === null) lacking.push(told);
    else here.push({ sha256: told.sha256, type: told.type, bytes });
  }
  return { here, lacking };
}

/** What became of a file's photographs: how many were kept, and in lines for a person those not taken and those not in it. */
export async function keepPhotographs(store: NotebookStore, file: FileParts) {
  const refused = file.spoiled.map(
    (sha256) => `  ${sha256}  is spoiled: its bytes are not those of its name`,
  );
  let kept = 0;
  for (const { sha256, bytes } of file.photographs) {
    const outcome = await store.putPhotograph(sha256, bytes);
    if (outcome === "kept") kept++;
    else refused.push(`  ${sha256}  was withdrawn, and is not taken back in`);
  }
  const { lacking } = await photographsOf(store, file.texts);
  const missing = lacking.filter((one) => !file.spoiled.includes(one.sha256)).map(photographLine);
  return { kept, refused, missing };
}
