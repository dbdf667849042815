import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { dispatch } from "../../src/cli/dispatch.ts";
import type { Effects } from "../../src/cli/effects.ts";
import { calendarFaults } from "../../src/core/calendar-file/calendar-faults.ts";
import { bytesOfText } from "../../src/core/calendar-file/utf8.ts";
import { listen } from "../listen.ts";

/**
 * Each folder here is one call: `args` (one a line) and `stdin` beside `stdout`, `stderr` and `exit` as they must come
 * out, and a file NAME that it writes as `wrote.NAME`. What is missing is written, so that it can be read and kept; where
 * CI is set, it is a failure.
 */
const here = fileURLToPath(new URL(".", import.meta.url));
const folders = readdirSync(here, { withFileTypes: true }).filter((f) => f.isDirectory());

async function call(args: readonly string[], stdin: string, folder: string) {
  const { said, outputs } = listen();
  const wrote: Record<string, string> = {};
  const effects: Effects = {
    ...outputs,
    stdin: async () => stdin,
    readFile: (path) => readFileSync(join(folder, path), "utf8"),
    writeFile: (path, text) => {
      wrote[`wrote.${path}`] = text;
    },
    env: {},
    cwd: folder,
  };
  const exit = await dispatch(args, effects);
  return { ...said, ...wrote, exit: `${exit}\n` };
}

describe.each(folders.map((f) => f.name))("%s", (name) => {
  const folder = join(here, name);
  const read = (file: string) => readFileSync(join(folder, file), "utf8");
  test(`lacbench ${read("args").trim().replaceAll("\n", " ")}`, async () => {
    const stdin = existsSync(join(folder, "stdin")) ? read("stdin") : "";
    const came = await call(read("args").split("\n").filter(Boolean), stdin, folder);
    for (const [file, text] of Object.entries(came)) {
      if (!existsSync(join(folder, file)) && process.env.CI === undefined)
        writeFileSync(join(folder, file), text);
      expect(text, file).toBe(read(file));
      if (file.endsWith(".ics")) expect(calendarFaults(bytesOfText(text))).toEqual([]);
    }
  });
});

test("the list of calculations is the registry", async () => {
  const { calculations } = await import("../../src/core/registry/all.ts");
  const { stdout } = await call(["calc"], "", here);
  expect(stdout.trim().split("\n")).toHaveLength(calculations.length);
  for (const { name } of calculations) expect(stdout).toMatch(new RegExp(`^${name} +`, "m"));
  const asJson = await call(["calc", "--json"], "", here);
  expect(JSON.parse(asJson.stdout)).toEqual(calculations.map(({ name, purpose }) => ({ name, purpose })));
});

test("every calculation gives its schema", async () => {
  const { calculations } = await import("../../src/core/registry/all.ts");
  for (const { name } of calculations) {
    const { stdout, exit } = await call(["calc", name, "--schema"], "", here);
    expect(exit).toBe("0\n");
    expect(JSON.parse(stdout)).toMatchObject({
      input: { $schema: expect.any(String) },
      output: expect.any(Object),
    });
  }
});
