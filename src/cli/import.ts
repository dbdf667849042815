import { readShallowJson } from "../core/notebook/json-text.ts";
import { type FileParts, partsOfFile } from "../core/notebook/photographs-in-file.ts";
import type { AppendReport } from "../store/notebook-store.ts";
import { CliError, refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { dataOption, withNotebooks } from "./data-folder.ts";
import type { Effects } from "./effects.ts";
import { keepPhotographs, photographsNamed } from "./photographs.ts";

export const command = defineCommand({
  usage: "import [FILE]   (standard input when left out)",
  positionals: 1,
  options: dataOption,
  async run({ values, positionals }, effects) {
    const file = partsFrom(await fileOrStdin(positionals[0], effects));
    const groups = byNotebook(file.texts);
    const { reports, photographs } = await withNotebooks(
      { data: values.data, mayBegin: true },
      effects,
      async (store) => {
        const all: (AppendReport & { readonly notebook: string })[] = [];
        for (const [notebook, texts] of groups)
          all.push({ notebook, ...(await store.append(notebook, texts)) });
        return { reports: all, photographs: await keepPhotographs(store, file) };
      },
    );
    if (values.json === true) effects.stdout(`${JSON.stringify(reports, null, 2)}\n`);
    for (const { notebook, accepted } of reports)
      effects.stderr(`${notebook}: ${accepted.length} entries are in the notebook.\n`);
    if (photographs.kept > 0) effects.stderr(`${photographsNamed(photographs.kept)} kept.\n`);
    const { missing } = photographs;
    if (missing.length > 0)
      effects.stderr(`${photographsNamed(missing.length)} not in the file:\n${missing.join("\n")}\n`);
    const refusals = reports.flatMap((report) => report.refused);
    const entries = refusals.map(({ id, message }) => `  ${id ?? "(no id)"}  ${message}`);
    const lines = [
      ...notTaken(refusals.length === 1 ? "1 entry" : `${refusals.length} entries`, entries),
      ...notTaken(photographsNamed(photographs.refused.length), photographs.refused),
    ];
    if (lines.length > 0) throw new CliError(lines.join("\n"));
  },
});

const shown = 20;

function notTaken(count: string, lines: readonly string[]): readonly string[] {
  if (lines.length === 0) return [];
  return [`${count} ${lines.length === 1 ? "was" : "were"} not taken in:`, ...lines.slice(0, shown)];
}

async function fileOrStdin(path: string | undefined, effects: Effects): Promise<string> {
  if (path === undefined) return effects.stdin();
  try {
    return effects.readFile(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== "ENOENT" && code !== "EISDIR" && code !== "EACCES") throw error;
    throw new CliError(`${path} cannot be read (${code}).`, 2);
  }
}

function partsFrom(file: string): FileParts {
  const parts = partsOfFile(file);
  if (!parts.ok) throw refused(parts.error);
  if (parts.value.texts.length === 0) throw new CliError("The file holds no entries.", 2);
  return parts.value;
}

/** A text whose notebook cannot be read goes with the others of the file: the store says what is wrong with it. */
function byNotebook(texts: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const named = texts.map(notebookOf);
  const first = named.find((id) => id !== undefined);
  if (first === undefined) throw new CliError("No entry in the file names its notebook.", 2);
  const groups = new Map<string, string[]>();
  texts.forEach((text, i) => {
    const notebook = named[i] ?? first;
    const group = groups.get(notebook);
    if (group === undefined) groups.set(notebook, [text]);
    else group.push(text);
  });
  return groups;
}

function notebookOf(text: string): string | undefined {
  const json = readShallowJson(text);
  const id = json.ok ? (json.value as { notebook?: unknown } | null)?.notebook : undefined;
  return typeof id === "string" ? id : undefined;
}
