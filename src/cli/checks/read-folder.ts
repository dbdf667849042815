import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readTable } from "./table.ts";
import type { ToleranceTable } from "./tolerance.ts";
import { type CheckCase, type Context, type Json, NotReadable, type Topic } from "./topic.ts";

/** A case that nothing here knows how to read, and why. */
export interface Unread {
  readonly id: string;
  readonly why: string;
}
export interface ReadFolder {
  readonly cases: readonly CheckCase[];
  readonly unread: readonly Unread[];
}

const instanceFormats = ["rcpsp/1", "rcpsp-max/1", "jobshop/1"];

const isObject = (x: unknown): x is Json => typeof x === "object" && x !== null && !Array.isArray(x);
const text = (x: unknown, otherwise: string): string =>
  typeof x === "string" || typeof x === "number" ? String(x) : otherwise;

/** Every case in a folder: each is either in `cases` or in `unread`, none is passed over in silence. */
export function readFolder(folder: string, topic: Topic, constantsFolder: string): ReadFolder {
  const context = contextFor(folder, constantsFolder);
  const cases: CheckCase[] = [];
  const unread: Unread[] = [];
  for (const name of readdirSync(folder).sort()) {
    const read = name.endsWith(".json") ? readJson : name.endsWith(".csv") ? readCsv : undefined;
    if (read === undefined) continue;
    try {
      const found = read(name, readFileSync(join(folder, name), "utf8"), topic, context);
      cases.push(...found.cases);
      unread.push(...found.unread);
    } catch (error) {
      if (!(error instanceof SyntaxError || error instanceof NotReadable)) throw error;
      unread.push({ id: name, why: error.message });
    }
  }
  return { cases, unread };
}

/** What goes wrong while cases are made of a file is a failed case, as it is while they are computed. */
function orFailed(id: string, make: () => readonly CheckCase[]): readonly CheckCase[] {
  try {
    return make();
  } catch (error) {
    if (error instanceof NotReadable) throw error;
    return [{ id, expected: {}, tol: {}, compute: () => Promise.reject(error) }];
  }
}

function contextFor(folder: string, constantsFolder: string): Context {
  const rows = (path: string) => readTable(readFileSync(path, "utf8")).rows;
  return {
    folder,
    rows: (path) => rows(join(folder, path)),
    constants: (path) => JSON.parse(readFileSync(join(constantsFolder, path), "utf8")) as Json,
    constantRows: (path) => rows(join(constantsFolder, path)),
  };
}

function readJson(name: string, content: string, topic: Topic, context: Context): ReadFolder {
  const file: unknown = JSON.parse(content);
  if (!isObject(file)) throw new NotReadable("the file does not hold an object");
  const { wholeFile } = topic;
  if (wholeFile !== undefined)
    return { cases: orFailed(name, () => wholeFile(name, file, context)), unread: [] };
  if (Array.isArray(file.cases)) return readCases(name, file, file.cases, topic, context);
  if (Array.isArray(file.instances)) return readInstances(name, file, file.instances, topic, context);
  return { cases: [], unread: [] };
}

function readCases(
  name: string,
  file: Json,
  given: readonly unknown[],
  topic: Topic,
  context: Context,
): ReadFolder {
  const cases: CheckCase[] = [];
  const unread: Unread[] = [];
  given.forEach((x, i) => {
    const id = isObject(x) ? text(x.id, `${name} ${i + 1}`) : `${name} ${i + 1}`;
    const why = whyNotACase(file, x, topic);
    if (why !== undefined || !isObject(x)) unread.push({ id, why: why ?? "it is not an object" });
    else {
      const adapter = topic.kinds?.[String(x.kind)];
      cases.push({
        id,
        expected: x.expected as Json,
        tol: (isObject(x.tol) ? x.tol : {}) as ToleranceTable,
        ...(x.published === undefined || x.published === null ? {} : { published: x.published }),
        compute: () => adapter?.(x, context),
      });
    }
  });
  return { cases, unread };
}

function whyNotACase(file: Json, given: unknown, topic: Topic): string | undefined {
  if (file.format !== "cases/1") return `the format is ${text(file.format, "not given")}, not cases/1`;
  if (!isObject(given)) return "it is not an object";
  if (typeof given.kind !== "string" || !Object.hasOwn(topic.kinds ?? {}, given.kind))
    return `the kind ${text(given.kind, "(none)")} is not known`;
  if (!isObject(given.expected) || Object.keys(given.expected).length === 0) return "it expects nothing";
  return undefined;
}

function readInstances(
  name: string,
  file: Json,
  given: readonly unknown[],
  topic: Topic,
  context: Context,
): ReadFolder {
  const format = text(file.format, "not given");
  const adapter = instanceFormats.includes(format) ? topic.instances?.[format] : undefined;
  if (adapter !== undefined && given.every(isObject))
    return { cases: orFailed(name, () => given.map((x) => adapter(x, context))), unread: [] };
  const unread = given.map((x, i) => ({
    id: isObject(x) ? text(x.name, `${name} ${i + 1}`) : `${name} ${i + 1}`,
    why: `instances of format ${format} are not known`,
  }));
  return { cases: [], unread };
}

function readCsv(name: string, content: string, topic: Topic, context: Context): ReadFolder {
  if (topic.notCompared?.includes(name)) return { cases: [], unread: [] };
  const table = readTable(content);
  const adapter =
    topic.tables !== undefined && Object.hasOwn(topic.tables, name) ? topic.tables[name] : undefined;
  const allUnread = (why: string): ReadFolder => ({
    cases: [],
    unread: Array.from({ length: Math.max(1, table.rows.length) }, (_, i) => ({
      id: `${name} row ${i + 1}`,
      why,
    })),
  });
  if (adapter === undefined) return allUnread("the table is not known");
  const unknown = table.columns.find(
    (column) => !adapter.columns.some((c) => (typeof c === "string" ? c === column : c.test(column))),
  );
  if (unknown !== undefined) return allUnread(`the column ${unknown} is not known`);
  const missing = adapter.needs.find((column) => !table.columns.includes(column));
  if (missing !== undefined) return allUnread(`the column ${missing} is missing`);
  const cases = orFailed("", () => adapter.cases(table.rows, context));
  return { cases: cases.map((c) => ({ ...c, id: `${name} ${c.id}` })), unread: [] };
}
