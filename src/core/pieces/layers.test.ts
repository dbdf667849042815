import { describe, expect, test } from "vitest";
import { metre } from "../units.ts";
import { type LayersAsked, layerAdvice, layersOver, layersUnder, overneath, underneath } from "./layers.ts";

const plain: LayersAsked = { under: "bare wood", over: "nothing", wax: 0.005, dryFilm: 20e-6 };
const notes = (change: Partial<LayersAsked>) => layerAdvice({ ...plain, ...change }).map(({ note }) => note);

describe("what the trade reference says of layers", () => {
  // D: "Fish-eyes: silicone, wax, oil – clean, shellac barrier, thin coats"; "White haze after recoating: wax layer – wipe naphtha"
  test("wax under it stops it until it is cleared", () => {
    const found = layerAdvice({ ...plain, under: "wax" });
    expect(found.find(({ stops }) => stops)?.note).toBe("clear first");
    expect(found.map(({ note }) => note)).toContain("isolate");
  });
  // D: "Wrinkle on second coat: solvent bites uncured oil stain – isolate with thin dry coats"
  test("an oil stain is waited for and isolated", () => {
    expect(notes({ under: "oil stain" })).toEqual(["wait", "isolate", "scrap"]);
  });
  // A 20: "Test with a drop of alcohol in a hidden spot; clean off wax; soften/rejoin or pad over"
  test("an old film of the same is cleaned, tried with a drop, and rejoins", () => {
    expect(notes({ under: "old spirit varnish" })).toEqual(["clean first", "drop test", "melts in", "scrap"]);
  });
  // P37: "wipe with fast solvent, then 1–2 dewaxed coats"
  test("oily wood is wiped and sealed", () => {
    expect(notes({ under: "oily wood" })).toEqual(["wipe first", "isolate", "scrap"]);
  });
  // E: "for old painted work, lead rules"
  test("old paint is asked of lead before anything else", () => {
    expect(notes({ under: "old paint" })[0]).toBe("lead");
  });
  // C 20, 22: "dewaxed under anything else; thin, dewaxed, scuffed, test". B6: natural 3–5 % wax, dewaxed 0.2–1 %
  test.each(["oil varnish", "polyurethane", "waterborne", "lacquer"])(
    "%s asks a dewaxed, thin, scuffed film",
    (over) => {
      for (const wax of [0.002, 0.01])
        expect(notes({ over, wax })).toEqual(["holds", "wait", "scuff", "scrap"]);
      for (const wax of [0.03, 0.05]) expect(notes({ over, wax })).toContain("waxy");
      expect(layerAdvice({ ...plain, over, wax: 0.05 }).some(({ stops }) => stops)).toBe(true);
      expect(notes({ over, wax: null })).toContain("wax not told");
      expect(notes({ over, dryFilm: 60e-6 })).toContain("too thick");
    },
  );
  // B4: two or three days at the least before rubbing; waxing is of the same film
  test("wax on top waits two days or more and is the last of all", () => {
    expect(overneath.wax.waitHours).toBeGreaterThanOrEqual(48);
    expect(notes({ over: "wax" })).toContain("last of all");
  });
});

test("a try on a scrap is advised whatever lies under and over", () => {
  for (const under of layersUnder)
    for (const over of layersOver) expect(notes({ under, over }).at(-1)).toBe("scrap");
});

test("every wait of the table has its hours", () => {
  for (const meeting of [...Object.values(underneath), ...Object.values(overneath)])
    expect(meeting.notes.includes("wait")).toBe(meeting.waitHours !== undefined);
});

test.each([
  ["under", { under: "gold leaf" }],
  ["over", { over: "constructor" }],
])("%s that is not in the table is refused by name", (field, change) => {
  expect(() => layerAdvice({ ...plain, ...change, dryFilm: metre(1e-5) })).toThrow(field);
});
