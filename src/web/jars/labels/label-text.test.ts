import { expect, test } from "vitest";
import { demoEntries } from "../../../core/demo/demo.ts";
import { Notebook } from "../../../core/notebook/notebook.ts";
import { jarIds, jarView } from "../../../core/views/jar.ts";
import { brokenInto, labelText } from "./label-text.ts";

const zone = "Europe/Berlin";
const entries = demoEntries({ seed: "1", now: "2026-11-02T09:30:00.000Z", zone });
const book = new Notebook(entries[0]?.entry.notebook ?? "");
book.add(entries);
const label = (code: string) => {
  const jar = jarIds(book)
    .flatMap((id) => jarView(book, id) ?? [])
    .find((one) => one.code === code);
  if (jar === undefined) throw new Error(`no jar ${code}`);
  return labelText(jar, zone, 180);
};

test("a working jar: the cut it was let down to, defined by the litre (1 lb a US gallon is 119.8 g)", () => {
  expect(label("L3")).toMatchObject({ cut: "1½", resin: "Dewaxed lemon flakes" });
  expect(label("L3").cutDefined).toContain("180 g");
  expect(label("L4").cutDefined).toContain("120 g");
});

test("its parents, its own day and its resin's, and when to test it", () => {
  const rows = Object.fromEntries(label("L3").rows.map((row) => [row.name, row.says]));
  expect(rows).toMatchObject({
    From: "L2 ‹ L1",
    Thinned: "27 Sep",
    "Old as": "25 Sep",
    "Test by": "24 Mar 2027",
  });
});

test("what the front label hides stands before the fire", () => {
  expect(label("D3").warning).toMatch(/^Ketone\. Catches fire/);
  expect(label("D3").solvent).toContain("methyl ethyl ketone 3 %");
  expect(label("L3").warning).toBe("Catches fire. Not to drink.");
});

test("lines are broken at spaces and no text is lost while there is room", () => {
  expect(brokenInto("one two three four", 9, 3)).toEqual(["one two", "three", "four"]);
  expect(brokenInto("one two three four", 9, 2).join(" ")).toContain("…");
});
