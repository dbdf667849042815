import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { metre } from "../units.ts";
import { type Doubt, type FilmAct, filmBuiltUp } from "./build-up.ts";

const um = (x: number) => metre(x / 1e6);
const sealed = { shares: [], relative: 0 };
const bare = { shares: [0.5, 0.2], relative: 0.4 };
const coat = (entry: string, dry: number | null, doubts: readonly Doubt[] = []): FilmAct => ({
  what: "coat",
  entry,
  dry: dry === null ? null : um(dry),
  doubts,
});
const off = (entry: string, removed: number, doubts: readonly Doubt[] = []): FilmAct => ({
  what: "taken off",
  entry,
  removed: um(removed),
  doubts,
});
const left = (built: ReturnType<typeof filmBuiltUp>): number[] =>
  built.layers.map((layer) => Math.round(layer.left * 1e9) / 1e3);

test("coats lie on each other, and work takes them off from the top", () => {
  const built = filmBuiltUp([coat("a", 20), coat("b", 10), off("s", 12), coat("c", 5)], sealed);
  expect(left(built)).toEqual([18, 0, 5]);
  expectNear(built.thickness, 23e-6, { relative: 1e-12 });
  expect([...built.after].map(([entry, film]) => [entry, Math.round(film * 1e6)])).toEqual([
    ["a", 20],
    ["b", 30],
    ["s", 18],
    ["c", 23],
  ]);
});

test("what is laid is what stands and what sank in; the third coat on bare wood sinks no more", () => {
  const built = filmBuiltUp([coat("a", 10), coat("b", 10), coat("c", 10)], bare);
  expect(left(built)).toEqual([5, 8, 10]);
  for (const layer of built.layers) expectNear(layer.laid + layer.sunk, 10e-6, { relative: 1e-12 });
});

test("stripped wood is bare again", () => {
  const built = filmBuiltUp([coat("a", 10), { what: "stripped", entry: "x" }, coat("b", 10)], bare);
  expect(left(built)).toEqual([5]);
});

test("coats off by the same thing add, coats off by their own are squared first", () => {
  const shared = [{ source: "usual amount", relative: 0.3 }];
  const together = filmBuiltUp([coat("a", 10, shared), coat("b", 10, shared)], sealed);
  expectNear(together.standardUncertainty, 6e-6, { relative: 1e-12 });
  const own = ["a", "b"].map((entry) => coat(entry, 10, [{ source: entry, relative: 0.3 }]));
  expectNear(filmBuiltUp(own, sealed).standardUncertainty, 3e-6 * Math.SQRT2, { relative: 1e-12 });
  expect(together.contributions).toEqual([{ source: "usual amount", share: 1 }]);
});

// JCGM 100:2008, 5.1.2: Σ (∂film/∂source·u)², worked out by hand; 5.2.2 for what is shared.
test("its uncertainty is the law of propagation's", () => {
  const doubts = (source: string): Doubt[] => [
    { source, relative: 0.05 },
    { source: "stays", relative: 0.2 },
  ];
  const acts = [
    coat("a", 20, doubts("a")),
    coat("b", 15, doubts("b")),
    off("s", 4, [{ source: "s", relative: 0.5 }]),
  ];
  const built = filmBuiltUp(acts, bare);
  const [ua, ub, stays, sinks, us] = [0.05, 0.05, 0.2, 0.4, 0.5];
  const bySource = [
    20 * 0.5 * ua,
    15 * 0.8 * ub,
    (20 * 0.5 + 15 * 0.8) * stays,
    (20 * 0.5 + 15 * 0.2) * sinks,
    4 * us,
  ];
  expectNear(built.standardUncertainty * 1e6, Math.hypot(...bySource), { relative: 1e-12 });
});

test("work that takes more than is there is told, and a coat nobody can know is no layer", () => {
  const built = filmBuiltUp([coat("a", 5), off("s", 9), coat("b", null)], sealed);
  expect(built.thickness).toBe(0);
  expect([built.tooMuch, built.unknown]).toEqual([["s"], ["b"]]);
  expect(filmBuiltUp([coat("a", null), off("s", 9)], sealed).tooMuch).toEqual([]);
});

test("cut through stays told until it is stripped", () => {
  const cut: FilmAct = { what: "cut through", entry: "x" };
  expect(filmBuiltUp([coat("a", 9), cut, coat("b", 9)], sealed).cutThrough).toBe(true);
  expect(filmBuiltUp([coat("a", 9), cut, { what: "stripped", entry: "y" }], sealed).cutThrough).toBe(false);
});
