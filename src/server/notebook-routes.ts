import { type Context, Hono } from "hono";
import { idSchema } from "../core/notebook/entry.ts";
import { splitJsonArray } from "../core/notebook/json-text.ts";
import { type Problem, problemFromDomain } from "../core/registry/problem.ts";
import { readJson } from "../core/registry/read-json.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { type NotebookStore, UnknownCursor } from "../store/notebook-store.ts";
import { atMost, bodyText } from "./body-text.ts";
import { problemOfInput, problemResponse } from "./problem-response.ts";

export const mostAppendBytes = 16 * 2 ** 20;
export const pageSize = { default: 1_000, min: 1, max: 5_000 } as const;

function notebookId(c: Context): Result<string, Problem> {
  const value = c.req.param("notebook") ?? "";
  if (idSchema.safeParse(value).success) return ok(value);
  return fail(
    problemFromDomain({ code: "wrong-type", field: "notebook", value, because: "It is a lower-case UUID." }),
  );
}

function limitAsked(c: Context): Result<number, Problem> {
  const value = c.req.query("limit");
  if (value === undefined) return ok(pageSize.default);
  const limit = /^\d{1,9}$/.test(value) ? Number(value) : Number.NaN;
  if (limit >= pageSize.min && limit <= pageSize.max) return ok(limit);
  const limits = { min: pageSize.min, max: pageSize.max };
  const code = Number.isNaN(limit) ? "wrong-type" : "out-of-range";
  return fail(problemFromDomain({ code, field: "limit", value, limits }));
}

const noSuchNotebook = (c: Context, notebook: string): Response =>
  problemResponse(c, 404, {
    code: "no-such-notebook",
    field: "notebook",
    message: `There is no notebook ${notebook} here. It begins when its entry of kind notebook-begun is posted.`,
    value: notebook,
    limits: null,
  });

/** The texts of the entries in the body. It is read as a whole first, so that half a list is never kept. */
async function entryTexts(c: Context): Promise<Result<readonly string[], Problem>> {
  const text = await bodyText(c);
  if (!text.ok) return text;
  const json = readJson(text.value);
  if (!json.ok) return json;
  if (Array.isArray(json.value)) return splitJsonArray(text.value);
  const because = "A list of entries in square brackets would do.";
  return fail(problemFromDomain({ code: "wrong-type", field: "body", value: json.value, because }));
}

/** An append's answer: what is on disk now, and what was refused and why. */
async function append(c: Context, store: NotebookStore): Promise<Response> {
  const notebook = notebookId(c);
  if (!notebook.ok) return problemOfInput(c, notebook.error);
  const texts = await entryTexts(c);
  if (!texts.ok) return problemOfInput(c, texts.error);
  const report = await store.append(notebook.value, texts.value);
  const isUnknown = report.refused.some((refusal) => refusal.code === "no-such-notebook");
  return isUnknown ? noSuchNotebook(c, notebook.value) : c.json(report);
}

/** The next entries in the order of arrival, their texts as they came. */
async function arrivals(c: Context, store: NotebookStore): Promise<Response> {
  const notebook = notebookId(c);
  if (!notebook.ok) return problemOfInput(c, notebook.error);
  const limit = limitAsked(c);
  if (!limit.ok) return problemOfInput(c, limit.error);
  if (!(await store.has(notebook.value))) return noSuchNotebook(c, notebook.value);
  const after = c.req.query("after") ?? null;
  try {
    const { entries, cursor } = await store.after(notebook.value, after, limit.value);
    const body = `{"entries":[${entries.join(",")}],"cursor":${JSON.stringify(cursor)}}`;
    return c.body(body, 200, { "content-type": "application/json" });
  } catch (error) {
    if (!(error instanceof UnknownCursor)) throw error;
    const because = "It is a cursor that this server gave out.";
    return problemOfInput(
      c,
      problemFromDomain({ code: "wrong-type", field: "after", value: after, because }),
    );
  }
}

export const notebookRoutes = (store: NotebookStore): Hono =>
  new Hono()
    .get("/", async (c) => c.json({ notebooks: await store.notebooks() }))
    .post("/:notebook/entries", atMost(mostAppendBytes), (c) => append(c, store))
    .get("/:notebook/entries", (c) => arrivals(c, store));
