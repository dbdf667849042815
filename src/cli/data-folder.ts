import { existsSync } from "node:fs";
import { join } from "node:path";
import { readSettings } from "../server/settings.ts";
import { StartUpProblem } from "../server/start-up-problem.ts";
import { DatabaseRefused } from "../store/database-refused.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import { SqliteStore } from "../store/sqlite-store.ts";
import { CliError } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";
import type { Effects } from "./effects.ts";

export const dataOption = {
  data: {
    type: "string",
    value: "FOLDER",
    description: "where the notebooks are kept; LACBENCH_DATA when left out, else .lacbench",
  },
} as const satisfies OptionSpecs;

/** The folder that a command is about: that of the server, unless told. */
function folderFrom(data: string | undefined, effects: Effects): string {
  const env = data === undefined ? effects.env : { ...effects.env, LACBENCH_DATA: data };
  return readSettings(env, effects.cwd).folder;
}

interface Asked {
  readonly data: string | undefined;
  /** Whether a folder without notebooks is begun, or refused. */
  readonly mayBegin: boolean;
}

/** Opens the notebooks, uses them and closes them. A running server may have them open at the same time. */
export async function withNotebooks<T>(
  asked: Asked,
  effects: Effects,
  use: (store: NotebookStore) => Promise<T>,
): Promise<T> {
  try {
    const folder = folderFrom(asked.data, effects);
    if (!asked.mayBegin && !existsSync(join(folder, "lacbench.sqlite")))
      throw new CliError(`There are no notebooks in ${folder}. --data FOLDER names another.`);
    const store = await SqliteStore.open(folder);
    try {
      return await use(store);
    } finally {
      await store.close();
    }
  } catch (error) {
    if (error instanceof StartUpProblem || error instanceof DatabaseRefused)
      throw new CliError(error.message);
    throw error;
  }
}

const page = 5_000;

/** The notebook that was named, or the only one. */
export async function notebookAsked(store: NotebookStore, id: string | undefined): Promise<string> {
  const known = await store.notebooks();
  const [only] = known;
  if (id === undefined && only !== undefined && known.length === 1) return only.id;
  const found = known.find((notebook) => notebook.id === id);
  if (found !== undefined) return found.id;
  const list = known.map((notebook) => `  ${notebook.id}  ${notebook.name}`).join("\n");
  const why = id === undefined ? "Which notebook? Name one:" : `There is no notebook ${id} here. There are:`;
  throw new CliError(`${why}\n${list}`, 2);
}

/** Every entry of a notebook as it was written, in the order of arrival. */
export async function textsOf(store: NotebookStore, notebook: string): Promise<readonly string[]> {
  const texts: string[] = [];
  for (let cursor: string | null = null; ; ) {
    const arrivals = await store.after(notebook, cursor, page);
    texts.push(...arrivals.entries);
    if (arrivals.entries.length < page) return texts;
    cursor = arrivals.cursor;
  }
}
