import type { NotebookInFile } from "../../core/notebook/notebook-in-file.ts";
import { readKeptEntry } from "../../core/notebook/parse-entry.ts";
import { type FileParts, photographsTold } from "../../core/notebook/photographs-in-file.ts";
import { isNoKeep, keepPicture } from "./picture-keep.ts";
import { pictureOf } from "./picture-of.ts";

/** What became of the photographs of a file that was taken in. */
export interface TakenIn {
  readonly kept: number;
  readonly lacking: NotebookInFile["lacking"];
}

/** Keeps a file's photographs here, to be sent on; those that are neither whole in it nor to be had otherwise are told. */
export async function takenIn(notebook: string, file: FileParts): Promise<TakenIn> {
  let kept = 0;
  for (const one of file.photographs) if (await keeps(notebook, one)) kept++;
  const entries = file.texts.flatMap((text) => {
    const read = readKeptEntry(text);
    return read.ok ? [read.value.entry] : [];
  });
  const lacking: NotebookInFile["lacking"][number][] = [];
  for (const told of photographsTold(entries))
    if ((await pictureOf(notebook, told)) === undefined)
      lacking.push({ ...told, spoiled: file.spoiled.includes(told.sha256) });
  return { kept, lacking };
}

async function keeps(notebook: string, picture: FileParts["photographs"][number]): Promise<boolean> {
  try {
    await keepPicture(notebook, picture, "to-send");
    return true;
  } catch (error) {
    if (!isNoKeep(error)) throw error;
    return false;
  }
}
