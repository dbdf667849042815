import { expect, test } from "vitest";
import type { Mend } from "../../../core/design/foresight/more-of-it.ts";
import { type Draft, type DraftFactor, emptyDraft, noiseOf, readDraft } from "./draft.ts";
import { changeFor, screenOf } from "./draft-changes.ts";
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
  const alone = {
    kind: "other",
    name: "",
    levels: "old",
    appliedTo: "patch",
    fromOneStock: false,
    twice: "",
  } as const;
  expect(faultsOf({ factors: [alone] })).toEqual([
    ["factors.0.name", "missing"],
    ["factors.0.levels", "two needed"],
  ]);
});

test("noise is a share of what matters, or an earlier trial's, until the person says their own", () => {
  const gloss = { name: "gloss", matters: 5 };
  expect(noiseOf(draft(), gloss)).toEqual({ patch: 3, jar: 1, plank: 2 });
  expect(noiseOf(draft(), gloss, { patch: 1.2, jar: 0 })).toEqual({ patch: 1.2, jar: 0, plank: 2 });
  const own = draft({ noises: { gloss: { patch: "1,5", jar: "0", plank: "" } } });
  expect(noiseOf(own, gloss, { patch: 9, plank: 7 })).toEqual({ patch: 1.5, jar: 0, plank: 7 });
  expect(noiseOf(own, { name: "colour change", matters: 2 })).toEqual({ patch: 1.2, jar: 0.4, plank: 0.8 });
});

test("boards of several sizes, a control twice as often, neighbours that differ", () => {
  const [alcohol] = emptyDraft.factors;
  const { asked } = readDraft(
    draft({
      boardsPerWood: "3",
      patchesPerBoard: "6, 4",
      factors: [{ ...(alcohol as DraftFactor), twice: "isopropanol" }],
      neighboursDiffer: "alcohol",
    }),
  );
  expect(asked?.boards.map((b) => b.patches)).toEqual([6, 4, 6]);
  expect(asked?.moreOften).toEqual([{ what: { alcohol: "isopropanol" }, times: 2 }]);
  expect(asked?.neighboursForbidden).toHaveLength(2);
  expect(asked?.body.layout).toBe("every-board");
  const gone = readDraft(draft({ factors: [{ ...(alcohol as DraftFactor), twice: "gin" }] }));
  expect(gone.asked?.moreOften).toEqual([]);
  expect(faultsOf({ patchesPerBoard: "6, many" })).toEqual([["patchesPerBoard", "not a number"]]);
  expect(faultsOf({ patchesPerBoard: "" })).toEqual([["patchesPerBoard", "missing"]]);
});

test("what mends a plan is a change of the draft, and brings the plan that was told", () => {
  const from = draft({ woods: "cherry, ash", boardsPerWood: "2", planksPerWood: "1" });
  const { asked } = readDraft(from);
  if (asked === null) throw new Error("it can be read");
  const after = (mend: Mend) => readDraft({ ...from, ...changeFor(from, asked, mend) }).asked;
  const now = { jarsPerLevel: asked.jarsPerLevel, boards: asked.boards };
  expect(after({ ...now, change: "jars", jarsPerLevel: 3 })?.jarsPerLevel).toBe(3);
  const planks = after({ ...now, change: "planks" })?.boards.map((b) => b.plank);
  expect(new Set(planks).size).toBe(4);
  const six = [...asked.boards, ...asked.boards.slice(0, 2)];
  expect(after({ ...now, change: "boards", boards: six })?.boards).toHaveLength(6);
});

test("the first stage of a large grid holds the two ends of each thing", () => {
  const [alcohol] = emptyDraft.factors;
  const large = draft({
    factors: [{ ...(alcohol as DraftFactor), levels: "ethanol, n-propanol, isopropanol" }],
  });
  const screen = { ...large, ...screenOf(large) };
  expect(screen.kind).toBe("screen");
  expect(screen.factors[0]?.levels).toBe("ethanol, isopropanol");
});
