import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, expect, test } from "vitest";
import { calculations } from "../core/registry/all.ts";
import { MemoryStore } from "../store/memory-store.ts";
import { entryText } from "../store/notebook-store.contract.ts";
import { createApp } from "./app.ts";

const pagesFolder = mkdtempSync(join(tmpdir(), "lacbench-pages-"));
mkdirSync(join(pagesFolder, "assets"));
writeFileSync(join(pagesFolder, "index.html"), "<!doctype html><title>Lacbench</title>");
writeFileSync(
  join(pagesFolder, "assets/main-BvK3x_9a.js"),
  `export const words = "${"shellac ".repeat(400)}";`,
);
writeFileSync(join(pagesFolder, "mark.svg"), "<svg xmlns='http://www.w3.org/2000/svg'/>");
afterAll(() => rmSync(pagesFolder, { recursive: true }));

const template = JSON.parse(entryText(0));
const notebook = template.notebook as string;
const begun = entryText(0, { kind: "notebook-begun", body: { name: "Shop" } });
const entries = `/api/notebooks/${notebook}/entries`;

let app: ReturnType<typeof createApp>;
let unexpected: unknown[];
beforeEach(() => {
  unexpected = [];
  const onError = (error: unknown) => unexpected.push(error);
  app = createApp({ store: new MemoryStore(), calculations, version: "0.0.0", pagesFolder, onError });
});

const post = (path: string, body: BodyInit, headers: Record<string, string> = {}) =>
  app.request(path, { method: "POST", body, headers });

async function expectProblem(response: Response, status: number, fields: object): Promise<void> {
  expect(response.status).toBe(status);
  expect(response.headers.get("content-type")).toBe("application/problem+json");
  const problem = await response.json();
  expect(problem).toMatchObject({ type: "about:blank", status, ...fields });
  for (const field of ["title", "detail", "code", "field", "message"])
    expect(problem[field]).toEqual(expect.stringMatching(/./));
  expect(problem).toHaveProperty("value");
  expect(problem).toHaveProperty("limits");
}

test("entries are answered once they are kept, and come back byte for byte", async () => {
  const odd = entryText(1, { body: { text: "t", big: 1 } }).replace('"big":1', '"big": 9007199254740993');
  const answer = await post(entries, `[${begun},\n ${odd} ]`);
  expect(answer.status).toBe(200);
  expect(await answer.json()).toEqual({ accepted: [template.id, JSON.parse(odd).id], refused: [] });
  const page = await app.request(`${entries}?limit=1`);
  expect(await page.text()).toBe(`{"entries":[${begun}],"cursor":"1"}`);
  const rest = await app.request(`${entries}?after=1&limit=10`);
  expect(await rest.text()).toBe(`{"entries":[${odd}],"cursor":"2"}`);
  const list = await app.request("/api/notebooks");
  expect(await list.json()).toEqual({
    notebooks: [{ id: notebook, name: "Shop", invented: false, entries: 2 }],
  });
});

test("what cannot be taken in is refused one by one with 200", async () => {
  await post(entries, `[${begun}]`);
  const other = begun.replace("Shop", "School");
  const answer = await post(entries, `[${begun},${other},${entryText(2, { notebook: "elsewhere" })}]`);
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({
    accepted: [template.id],
    refused: [
      { id: template.id, code: "same-id-other-content" },
      { code: "wrong-type", field: "notebook" },
    ],
  });
});

test.each([
  ["[", 400, { code: "unreadable" }],
  ["", 400, { code: "unreadable" }],
  ["{}", 422, { code: "wrong-type", field: "body" }],
  [`[${begun},{"id":]`, 400, { code: "unreadable" }],
  [Uint8Array.from([0x5b, 0xff, 0x5d]), 400, { code: "unreadable", field: "input" }],
  [`[${entryText(1)}]`, 404, { code: "no-such-notebook", field: "notebook" }],
])("posting %s to a notebook that has not begun", async (body, status, fields) => {
  await expectProblem(await post(entries, body), status, fields);
});

test.each([
  [`${entries}`, 404, { code: "no-such-notebook" }],
  ["/api/notebooks/J12/entries", 422, { field: "notebook", value: "J12" }],
  ["/api/nothing", 404, { code: "unknown-route" }],
  [`/api/photographs/${"0".repeat(64)}`, 404, { code: "no-such-photograph" }],
  ["/api/photographs/abc", 422, { field: "sha256" }],
])("GET %s", async (path, status, fields) => {
  await expectProblem(await app.request(path), status, fields);
});

test.each([
  ["limit=0", { field: "limit", code: "out-of-range", limits: { min: 1, max: 5000 } }],
  ["limit=5001", { field: "limit", code: "out-of-range" }],
  ["limit=ten", { field: "limit", code: "wrong-type" }],
  ["after=yesterday", { field: "after", value: "yesterday" }],
])("asking for entries with %s is refused", async (query, fields) => {
  await post(entries, `[${begun}]`);
  await expectProblem(await app.request(`${entries}?${query}`), 422, fields);
});

test("a body over the limit is refused with the limit", async () => {
  const body = `[${" ".repeat(17 * 2 ** 20)}]`;
  await expectProblem(await post(entries, body), 413, { code: "too-large", limits: { max: 16 * 2 ** 20 } });
});

test("a photograph goes in and out by its hash, typed by its bytes", async () => {
  const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);
  const path = `/api/photographs/${createHash("sha256").update(bytes).digest("hex")}`;
  const headers = { "content-type": "text/html" };
  expect((await app.request(path, { method: "PUT", body: bytes, headers })).status).toBe(204);
  const got = await app.request(path);
  expect(new Uint8Array(await got.arrayBuffer())).toEqual(bytes);
  expect(got.headers.get("content-type")).toBe("image/jpeg");
  expect(got.headers.get("x-content-type-options")).toBe("nosniff");
  const wrong = await app.request(path, { method: "PUT", body: "something else" });
  await expectProblem(wrong, 422, { code: "contradiction", field: "sha256" });
  await expectProblem(await app.request(path, { method: "PUT", body: "" }), 422, {
    code: "missing",
    field: "body",
  });
});

test("a calculation gives what the registry gives, and its refusals", async () => {
  const mix = calculations.find((c) => c.name === "mix");
  const answer = await post("/api/calc/mix", JSON.stringify(mix?.example.input));
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ massFractionResin: expect.closeTo(0.228, 3) });
  await expectProblem(await post("/api/calc/mix", "{"), 400, { code: "unreadable" });
  await expectProblem(await post("/api/calc/mix", '{"resinG":-1}'), 422, {
    code: "out-of-range",
    field: "resinG",
  });
  const unknown = { ...(mix?.example.input as object), colour: "amber" };
  const refused = await post("/api/calc/mix", JSON.stringify(unknown));
  await expectProblem(refused, 422, { code: "unknown-field", field: "colour", value: "amber" });
  const nameless = await post("/api/calc/mixx", "{}");
  await expectProblem(nameless, 404, { code: "unknown-name", value: "mixx" });
});

test("the list of calculations holds each with its schemas and its example", async () => {
  const { calculations: told } = await (await app.request("/api/calc")).json();
  expect(told.map((c: { name: string }) => c.name)).toEqual(calculations.map((c) => c.name));
  for (const one of told)
    expect(one).toMatchObject({ purpose: expect.any(String), input: {}, output: {}, example: {} });
});

test("the pages: places get the first page, hashed files are kept for ever, nothing outside is served", async () => {
  for (const path of ["/", "/jars", "/jars/01a0", "/index.html"]) {
    const page = await app.request(path);
    expect(await page.text()).toContain("<title>Lacbench</title>");
    expect(page.headers.get("cache-control")).toBe("no-cache");
    expect(page.headers.get("content-type")).toBe("text/html; charset=utf-8");
  }
  const script = await app.request("/assets/main-BvK3x_9a.js", { headers: { "accept-encoding": "gzip" } });
  expect(script.headers.get("cache-control")).toContain("immutable");
  expect(script.headers.get("content-type")).toBe("text/javascript; charset=utf-8");
  expect(script.headers.get("content-encoding")).toBe("gzip");
  expect((await app.request("/mark.svg")).headers.get("content-type")).toBe("image/svg+xml");
  for (const path of ["/assets/gone.js", "/..%2fapp.ts", "/%2e%2e/app.ts", "/%00.js", "/%zz.js"])
    await expectProblem(await app.request(path), 404, { code: "unknown-route" });
  await expectProblem(await post("/jars", ""), 404, { code: "unknown-route" });
});

test("a board may have a dot in its name: a person who opens it gets the page, a script that asks for a file does not", async () => {
  const board = "/bench/boards/01a0/ash%201.5";
  const opened = await app.request(board, { headers: { accept: "text/html,*/*;q=0.8" } });
  expect(await opened.text()).toContain("<title>Lacbench</title>");
  await expectProblem(await app.request(board), 404, { code: "unknown-route" });
  const inHtml = { headers: { accept: "text/html" } };
  expect((await app.request("/mark.svg", inHtml)).headers.get("content-type")).toBe("image/svg+xml");
});

test("an unchanged page is not sent again", async () => {
  const tag = (await app.request("/")).headers.get("etag") as string;
  expect((await app.request("/", { headers: { "if-none-match": tag } })).status).toBe(304);
});

test("every answer carries the strict headers", async () => {
  for (const path of ["/", "/api/notebooks", "/api/nothing"]) {
    const { headers } = await app.request(path);
    const policy = headers.get("content-security-policy");
    expect(policy).toContain("default-src 'self'");
    expect(policy).not.toContain("unsafe");
    expect(policy).not.toContain("http");
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    expect(headers.get("referrer-policy")).toBe("no-referrer");
  }
});

test("a page of another site cannot write, this one's can", async () => {
  const foreign = await post(entries, `[${begun}]`, {
    host: "127.0.0.1:4680",
    origin: "http://elsewhere.example",
  });
  await expectProblem(foreign, 403, { code: "other-origin", field: "origin" });
  const own = await post(entries, `[${begun}]`, { host: "127.0.0.1:4680", origin: "http://127.0.0.1:4680" });
  expect(own.status).toBe(200);
});

test("a server for this machine alone answers to no other name", async () => {
  const deps = { store: new MemoryStore(), calculations, version: "0.0.0", onError: () => {} };
  const local = createApp({ ...deps, loopbackOnly: () => true });
  const ask = (host: string) => local.request("/api/notebooks", { headers: { host } });
  for (const host of ["localhost:4680", "127.0.0.1:4680", "[::1]:4680"])
    expect((await ask(host)).status).toBe(200);
  for (const host of ["lacbench.example", "127.0.0.1.example:4680"])
    await expectProblem(await ask(host), 403, { code: "other-origin", field: "host" });
});

test("an error that nobody expected is a problem without its details", async () => {
  const store = new MemoryStore();
  store.notebooks = () => Promise.reject(new Error("secret path"));
  const broken = createApp({ store, calculations, version: "0", onError: (error) => unexpected.push(error) });
  const answer = await broken.request("/api/notebooks");
  expect(await answer.clone().text()).not.toContain("secret path");
  await expectProblem(answer, 500, { code: "internal" });
  expect(unexpected).toHaveLength(1);
});
