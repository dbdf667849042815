import { expect, test } from "vitest";
import { listen } from "../../test/listen.ts";
import { textsInFile } from "../core/notebook/notebook-file.ts";
import { parseEntry } from "../core/notebook/parse-entry.ts";
import { dispatch } from "./dispatch.ts";
import { realEffects } from "./effects.ts";

async function demo(...args: readonly string[]) {
  const { said, outputs } = listen();
  const exit = await dispatch(["demo", ...args], {
    ...realEffects,
    ...outputs,
  });
  return { ...said, exit };
}
const day = ["--now", "2026-11-02T09:30:00Z", "--zone", "Europe/Berlin"];

test("the demo is a notebook file, marked as made up, and the same for the same seed", async () => {
  const { stdout, exit } = await demo("--seed", "7", ...day);
  expect(exit).toBe(0);
  const texts = textsInFile(stdout);
  if (!texts.ok) throw new Error(texts.error.message);
  const first = parseEntry(texts.value[0] ?? "");
  expect(first.ok && first.value.entry.body).toMatchObject({ invented: true, seed: "7" });
  expect(stdout).toBe((await demo("--seed", "7", ...day)).stdout);
  expect(stdout).not.toBe((await demo("--seed", "8", ...day)).stdout);
});

test("a zone or an instant that is none is refused by name", async () => {
  const zone = await demo("--zone", "Nowhere/At_all");
  expect([zone.exit, zone.stdout]).toEqual([2, ""]);
  expect(zone.stderr).toContain("Nowhere/At_all");
  const now = await demo("--now", "tomorrow");
  expect([now.exit, now.stdout]).toEqual([2, ""]);
  expect(now.stderr).toContain("--now");
});
