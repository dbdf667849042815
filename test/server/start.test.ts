import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { failToStart, startServer } from "./server-process.ts";

const root = mkdtempSync(join(tmpdir(), "lacbench-start-"));
afterAll(() => rmSync(root, { recursive: true }));
const newFolder = (): string => mkdtempSync(join(root, "data-"));

/** One plain sentence that names what is wrong and what would do. */
function expectSentence({ code, said }: { code: number | null; said: string }, ...words: RegExp[]): void {
  expect(code).toBe(1);
  expect(said).not.toMatch(/^\s+at /m);
  expect(said.trim().split("\n")).toHaveLength(1);
  for (const word of words) expect(said).toMatch(word);
}

test("a start names the folder, begins the notebook asked for, says last where it is, and ends cleanly", async () => {
  const cwd = newFolder();
  const server = await startServer({ LACBENCH_NOTEBOOK: "empty" }, cwd);
  expect(server.output()).toContain(join(cwd, ".lacbench"));
  expect(server.output().trimEnd().split("\n").at(-1)).toBe(`Lacbench is at ${server.address}`);
  expect(existsSync(join(cwd, ".lacbench/lacbench.sqlite"))).toBe(true);
  const { notebooks } = await (await fetch(`${server.address}/api/notebooks`)).json();
  expect(notebooks).toMatchObject([{ invented: false, entries: 1 }]);
  expect(await server.end("SIGTERM")).toBe(0);
  expect(existsSync(join(cwd, ".lacbench/lacbench.sqlite-wal"))).toBe(false); // closed, not left behind
  const again = await startServer({ LACBENCH_NOTEBOOK: "demo" }, cwd);
  const list = await (await fetch(`${again.address}/api/notebooks`)).json();
  expect(list.notebooks).toEqual(notebooks);
  expect(await again.end("SIGINT")).toBe(0);
});

test("without a wish there is no notebook; the demo says that it is invented", async () => {
  const server = await startServer({ LACBENCH_DATA: newFolder() });
  expect(await (await fetch(`${server.address}/api/notebooks`)).json()).toEqual({ notebooks: [] });
  await server.end("SIGTERM");
  const demo = await startServer({ LACBENCH_DATA: newFolder(), LACBENCH_NOTEBOOK: "demo" });
  const { notebooks } = await (await fetch(`${demo.address}/api/notebooks`)).json();
  expect(notebooks).toMatchObject([{ invented: true }]);
  expect(notebooks[0].entries).toBeGreaterThan(100);
  await demo.end("SIGTERM");
});

test("a taken port is named, with another one", async () => {
  const holder = createServer().listen(0, "127.0.0.1");
  await new Promise((resolve) => holder.once("listening", resolve));
  const { port } = holder.address() as { port: number };
  const failed = await failToStart({ PORT: String(port), LACBENCH_DATA: newFolder() });
  holder.close();
  expectSentence(
    { ...failed, said: failed.said.split("\n").slice(-2).join("\n") },
    new RegExp(`Port ${port} is taken`),
    /PORT=/,
  );
});

test.each([
  [{ PORT: "high" }, [/PORT is high/, /0 to 65535/]],
  [{ PORT: "70000" }, [/PORT is 70000/]],
  [{ LACBENCH_NOTEBOOK: "full" }, [/LACBENCH_NOTEBOOK is full/, /empty or demo/]],
])("%o is refused with what would do", async (env, words) => {
  expectSentence(await failToStart({ LACBENCH_DATA: newFolder(), ...env }), ...words);
});

test("a database that is none is refused with what to do, and not touched", async () => {
  const folder = newFolder();
  const file = join(folder, "lacbench.sqlite");
  writeFileSync(file, "my recipes\n");
  expectSentence(await failToStart({ LACBENCH_DATA: folder }), /is not a Lacbench database/, /move it away/);
  expect(readFileSync(file, "utf8")).toBe("my recipes\n");
});

test("a folder that this user may not write to is named, with what to do", async () => {
  const folder = newFolder();
  for (const path of [root, folder]) chmodSync(path, 0o755);
  const locked = join(folder, "locked");
  mkdirSync(locked, { mode: 0o555 });
  const nobody = process.getuid?.() === 0 ? { uid: 65_534 } : {};
  expectSentence(await failToStart({ LACBENCH_DATA: locked }, nobody), /may not write to/, /LACBENCH_DATA/);
});
