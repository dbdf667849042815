import { expect, test } from "vitest";
import { demoEntries } from "../../core/demo/demo.ts";
import { Notebook } from "../../core/notebook/notebook.ts";
import { jarIds, jarView } from "../../core/views/jar.ts";
import { nextAct } from "./next-act.ts";

const entries = demoEntries({ seed: "1", now: "2026-11-02T09:30:00.000Z", zone: "Europe/Berlin" });
const book = new Notebook(entries[0]?.entry.notebook ?? "");
book.add(entries);
const named = (code: string) => {
  const jar = jarIds(book)
    .flatMap((id) => jarView(book, id) ?? [])
    .find((j) => j.code === code);
  if (jar === undefined) throw new Error(`no jar ${code}`);
  return jar;
};

test("what comes next at a jar", () => {
  expect(nextAct(named("S1"))).toBe("look");
  expect(
    nextAct({ ...named("S1"), looks: { ...named("S1").looks, ready: { notYetH: 3, doneByH: 20 } } }),
  ).toBe("strain");
  expect(nextAct({ ...named("L2"), children: [], driedDown: null })).toBe("dryDown");
  expect(nextAct({ ...named("L2"), children: [] })).toBe("thin");
  expect(nextAct(named("L3"))).toBe("weigh");
  expect(nextAct({ ...named("L3"), emptied: "x" })).toBeUndefined();
});
