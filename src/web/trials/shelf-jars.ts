import type { NotebookReader } from "../../core/notebook/reader.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import { jarIds, jarView } from "../../core/views/jar.ts";
import * as words from "../words/words.ts";

export interface ShelfJar {
  readonly id: string;
  readonly code: string;
  readonly label: string;
}

/** The jars that are not empty, each with what tells it from the others. */
export const shelfJars = (read: NotebookReader): readonly ShelfJar[] =>
  jarIds(read)
    .flatMap((id) => jarView(read, id) ?? [])
    .filter((jar) => jar.emptied === null)
    .map((jar) => {
      const cut = jar.cut?.value ?? jar.labelCut;
      const pounds = cut === null ? null : poundsPerUsGallonFromCut(cut);
      const solvents = jar.solvents.map((s) => s.name);
      return { id: jar.id, code: jar.code, label: words.trials.shelfJar(jar.code, pounds, solvents) };
    });
