import { expect, test } from "vitest";
import { demoEntries } from "../../core/demo/demo.ts";
import { Notebook } from "../../core/notebook/notebook.ts";
import { jarFitness, jarIds, jarView } from "../../core/views/jar.ts";
import { type ShelvedJar, shelvesOf } from "./shelf-plan.ts";

const now = "2026-11-02T09:30:00.000Z";
const entries = demoEntries({ seed: "1", now, zone: "Europe/Berlin" });
const book = new Notebook(entries[0]?.entry.notebook ?? "");
book.add(entries);
const jars: ShelvedJar[] = jarIds(book).flatMap((id) => {
  const jar = jarView(book, id);
  return jar === null ? [] : [{ jar, fitness: jarFitness(book, id, now) }];
});

test("every jar stands once, whatever the room", () => {
  for (const across of [1, 2, 4]) {
    const placed = shelvesOf(jars, across, 0).flatMap((set) => set.columns.flatMap((c) => c.jars));
    expect(placed.map((p) => p.jar.id).sort()).toEqual(jars.map((j) => j.jar.id).sort());
  }
});

test("every pour onto a lower shelf is drawn; one along a shelf is told at the jar's own page", () => {
  const sets = shelvesOf(jars, 4, 104);
  const drawn = sets.flatMap((set) => set.pours.map((p) => `${p.from.jar.code}>${p.to.jar.code}`));
  const asked = jars.flatMap(({ jar }) =>
    jar.parents
      .flatMap((parent) => jars.filter((j) => j.jar.id === parent))
      .filter((parent) => parent.jar.stage !== jar.stage)
      .map((parent) => `${parent.jar.code}>${jar.code}`),
  );
  expect(drawn.sort()).toEqual(asked.sort());
});

test("jars on one shelf do not stand in each other", () => {
  for (const set of shelvesOf(jars, 4, 104)) {
    const all = set.columns.flatMap((c) => c.jars);
    for (const a of all)
      for (const b of all)
        if (a !== b && a.jar.stage === b.jar.stage && a.x < b.x)
          expect(a.x + 88 * a.scale).toBeLessThanOrEqual(b.x + 6);
  }
});

test("a column that is past using stands last", () => {
  const columns = shelvesOf(jars, 4, 104).flatMap((set) => set.columns);
  expect(columns.at(-1)?.jars.map((p) => p.jar.code)).toEqual(["G1"]);
});
