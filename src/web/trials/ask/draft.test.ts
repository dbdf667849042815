import { expect, test } from "vitest";
import { type Draft, emptyDraft, noiseOf, readDraft } from "./draft.ts";
import { lookPresets } from "./presets.ts";

const draft = (over: Partial<Draft> = {}): Draft => ({ ...emptyDraft, looks: [lookPresets.gloss], ...over });
const faultsOf = (over: Partial<Draft>) => readDraft(draft(over)).faults.map((f) => [f.field, f.why]);

test("a draft comes to factors, boards from planks in turn, and a question", () => {
  const { asked, faults } = readDraft(
    draft({ woods: "cherry, ash", boardsPerWood: "3", planksPerWood: "2" }),
  );
  expect(faults).toEqual([]);
  expect(asked?.factors.map((f) => [f.name, f.appliedTo])).toEqual([
    ["alcohol", "jar"],
    ["wood", "plank"],
  ]);
  expect(asked?.boards.map((b) => [b.board, b.plank])).toEqual([
    ["cherry 1", "A"],
    ["cherry 2", "B"],
    ["cherry 3", "A"],
    ["ash 1", "C"],
    ["ash 2", "D"],
    ["ash 3", "C"],
  ]);
  expect(asked?.body.looksAt[0]).toMatchObject({ name: "gloss", matters: 5, mattersIsCommon: true });
});

test("one wood is held, not varied", () => {
  const { asked } = readDraft(draft());
  expect(asked?.factors.map((f) => f.name)).toEqual(["alcohol"]);
  expect(asked?.body.held).toEqual([{ what: "wood", at: "cherry" }]);
});

test.each([
  [{ coats: "" }, ["coats", "missing"]],
  [{ coats: "four" }, ["coats", "not a number"]],
  [{ coats: "2.5" }, ["coats", "not whole"]],
  [{ coats: "0" }, ["coats", "too little"]],
  [{ boardsPerWood: "99" }, ["boardsPerWood", "too much"]],
  [{ woods: "ash, ash" }, ["woods", "named twice"]],
  [{ woods: " " }, ["woods", "missing"]],
  [{ planksPerWood: "3" }, ["planksPerWood", "too much"]],
  [{ boardLengthMm: "150" }, ["boardLengthMm", "does not fit"]],
  [{ looks: [] }, ["looks", "missing"]],
  [{ looks: [{ ...lookPresets.gloss, matters: "" }] }, ["looks.0.matters", "missing"]],
] as const)("%j is said beside its own field", (over, fault) => {
  expect(faultsOf(over)).toContainEqual(fault);
});

test("a factor with one level alone is no comparison, and one without a name has none", () => {
  const alone = { kind: "other", name: "", levels: "old", appliedTo: "patch", fromOneStock: false } as const;
  expect(faultsOf({ factors: [alone] })).toEqual([
    ["factors.0.name", "missing"],
    ["factors.0.levels", "two needed"],
  ]);
});

test("noise is a share of what matters until the person says their own", () => {
  expect(noiseOf(draft(), 5)).toEqual({ patch: 3, jar: 1, plank: 2 });
  expect(noiseOf(draft({ noise: { patch: "1,5", jar: "0", plank: "" } }), 5)).toEqual({
    patch: 1.5,
    jar: 0,
    plank: 2,
  });
});
