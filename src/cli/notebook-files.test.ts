import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { listen } from "../../test/listen.ts";
import { notebookFile } from "../core/notebook/notebook-file.ts";
import { photographText, sha256OfBytes } from "../core/notebook/photographs-in-file.ts";
import { writeEntry } from "../core/notebook/write-entry.ts";
import { dispatch } from "./dispatch.ts";
import { realEffects } from "./effects.ts";

const notebook = "018f0000-0000-7000-8000-000000000001";
const device = "018f0000-0000-7000-8000-0000000000d1";
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lacbench-cli-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function lacbench(args: readonly string[], stdin = "") {
  const { said, outputs } = listen();
  const exit = await dispatch(args, {
    ...realEffects,
    ...outputs,
    stdin: async () => stdin,
    env: {},
    cwd: folder,
  });
  return { ...said, exit };
}

const picture = Uint8Array.from({ length: 400 }, (_, i) => i % 251);
const photograph = { sha256: sha256OfBytes(picture), type: "image/jpeg", bytes: picture };

/** The entries, and one that speaks of the photograph. */
function photographed(): string[] {
  const { sha256, type } = photograph;
  const body = { sha256, type, bytes: picture.length, note: "haze" };
  const effects = {
    ...{ now: () => "2026-10-05T18:00:00Z", zone: "Europe/Berlin", device, nextSeq: () => 9, by: null },
    randomBytes: (length: number) => new Uint8Array(length).fill(9),
  };
  return [...entries(), writeEntry({ notebook, kind: "photograph", body }, effects).text];
}

function entries(): string[] {
  let seq = 0;
  const effects = {
    now: () => "2026-10-05T18:00:00Z",
    randomBytes: (length: number) => new Uint8Array(length).fill(seq),
    zone: "Europe/Berlin",
    device,
    nextSeq: () => ++seq,
    by: null,
  };
  const begun = writeEntry({ notebook, kind: "notebook-begun", body: { name: "Bench book" } }, effects);
  const note = writeEntry({ notebook, kind: "note", body: { text: "Flakes came." } }, effects);
  // A later version's kind and fields, numbers spelt in another way, spaces: all of it must come through.
  const later = note.text
    .replace('"kind":"note"', '"kind": "from-a-later-version"')
    .replace('"body":{', '"weight": 1.50e1, "body":{ ')
    .replace(/"id":"[^"]{8}/, '"id":"018f9999');
  return [begun.text, note.text, later];
}

test("what is imported is exported byte for byte, and a second time changes nothing", async () => {
  const file = notebookFile(entries());
  expect((await lacbench(["import"], file)).exit).toBe(0);
  expect((await lacbench(["import"], file)).exit).toBe(0);
  const { stdout, exit } = await lacbench(["export", notebook]);
  expect([exit, stdout]).toEqual([0, file]);
  expect((await lacbench(["export"])).stdout).toBe(file);
  const list = await lacbench(["notebooks", "--json"]);
  expect(JSON.parse(list.stdout)).toEqual([
    { id: notebook, name: "Bench book", invented: false, entries: 3 },
  ]);
});

test("a file is named too, and one that is not there is refused", async () => {
  const path = join(folder, "book.json");
  writeFileSync(path, notebookFile(entries()));
  expect((await lacbench(["import", path, "--data", join(folder, "elsewhere")])).exit).toBe(0);
  const missing = await lacbench(["import", join(folder, "no-such.json")]);
  expect(missing.exit).toBe(2);
  expect(missing.stderr).toContain("no-such.json cannot be read");
});

test("an entry that cannot be taken in is named, and the others are in", async () => {
  const broken = '{"id":"x","notebook":5}';
  const { exit, stderr } = await lacbench(["import"], notebookFile([...entries(), broken]));
  expect(exit).toBe(1);
  expect(stderr).toContain("1 entry was not taken in");
  expect(JSON.parse((await lacbench(["notebooks", "--json"])).stdout)[0].entries).toBe(3);
});

test.each(["not a list", "[]", '[{"a":1}]', "[1"])(
  "a file of %j is refused, and nothing is begun",
  async (file) => {
    expect((await lacbench(["import"], file)).exit).toBe(2);
    expect((await lacbench(["notebooks"])).exit).toBe(1);
  },
);

test("a folder without notebooks is said to be one, and is not made", async () => {
  const { exit, stderr } = await lacbench(["export", "--data", join(folder, "none")]);
  expect(exit).toBe(1);
  expect(stderr).toContain("There are no notebooks in");
});

test("an unknown notebook is refused with the list of those there are", async () => {
  await lacbench(["import"], notebookFile(entries()));
  const { exit, stderr } = await lacbench(["export", device]);
  expect(exit).toBe(2);
  expect(stderr).toContain("Bench book");
});

test("a file's photographs are kept and come out again with the entries", async () => {
  const file = notebookFile([...photographed(), photographText(photograph)]);
  const { exit, stderr } = await lacbench(["import"], file);
  expect([exit, stderr]).toEqual([0, expect.stringContaining("1 photograph kept.")]);
  expect((await lacbench(["export"])).stdout).toBe(file);
});

test("a photograph that is spoiled or missing is named, and the entries are in", async () => {
  const missing = await lacbench(["import"], notebookFile(photographed()));
  expect(missing.exit).toBe(0);
  expect(missing.stderr).toMatch(/1 photograph not in the file:\n.* haze /);
  const spoiled = photographText({ ...photograph, bytes: picture.slice(1) });
  const second = await lacbench(["import"], notebookFile([...photographed(), spoiled]));
  expect(second.exit).toBe(1);
  expect(second.stderr).toContain(`${photograph.sha256}  is spoiled`);
  const out = await lacbench(["export"]);
  expect([out.exit, out.stdout]).toEqual([0, notebookFile(photographed())]);
  expect(out.stderr).toContain("1 photograph not here");
});
