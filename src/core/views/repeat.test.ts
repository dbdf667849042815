import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { pieceView } from "./piece.ts";
import { repeatView } from "./repeat.ts";

function done(
  beside: { readonly resin?: string; readonly solvent?: string },
  pen = new Pen("repeat", "UTC"),
) {
  const piece = pen.write("2026-10-04T08:00:00.000Z", "piece-described", {
    name: "Table top",
    area: typed("2 m²", "area"),
  });
  const step = { step: "1", what: "coat" as const, millilitres: 200 };
  const recipe = { cutLbPerGal: 2, coats: 1, method: "brush" as const };
  const body = { recipe, steps: [step], millilitresPerM2PerCoat: 100, ...beside };
  pen.write("2026-10-04T09:00:00.000Z", "piece-scheduled", body, { about: [piece] });
  const coat = (amount: string | null) =>
    pen.write(
      "2026-10-05T18:00:00.000Z",
      "layer-applied",
      {
        sort: "coat",
        targets: [{ piece }],
        from: [],
        method: "brush",
        planned: { coat: 1 },
        ...(amount === null ? {} : { amount: { by: "jug", total: typed(amount, "volume") } }),
      },
      { about: [piece] },
    );
  const air = (at: string, temperature: string, humidity: string) =>
    pen.write(at, "air-read", {
      temperature: typed(temperature, "temperature"),
      relativeHumidity: typed(humidity, "fraction"),
    });
  const seen = () => {
    const view = pieceView(pen.book, piece);
    if (view === null) throw new Error("no piece");
    return repeatView(pen.book, view);
  };
  return { coat, air, seen };
}

test("of a piece that left nothing but its plan, everything else is not known", () => {
  const { seen } = done({});
  expect(seen()).toEqual({
    airThen: null,
    airNow: null,
    notKnown: [
      "flakes not in the book",
      "alcohol not in the book",
      "liquid never measured",
      "air never read",
    ],
  });
});

test("the air of then is the reading nearest to the first coat, and none that was days away", () => {
  const { coat, air, seen } = done({});
  coat("210 mL");
  air("2026-10-03T18:00:00.000Z", "25 °C", "80 %");
  expect(seen().airThen).toBeNull();
  air("2026-10-05T16:00:00.000Z", "17 °C", "55 %");
  air("2026-11-25T18:00:00.000Z", "9 °C", "70 %");
  expect(seen().airThen?.temperature).toBeCloseTo(290.15, 9);
  expect(seen().airNow?.relativeHumidity).toBeCloseTo(0.7, 12);
  expect(seen().notKnown).toEqual(["flakes not in the book", "alcohol not in the book"]);
});

test("what stands on the shelf is known, and what was used up is said", () => {
  const pen = new Pen("repeat", "UTC");
  const at = "2026-09-01T08:00:00.000Z";
  const resin = pen.write(at, "material-bought", { form: "resin", name: "Lemon flakes" });
  const solvent = pen.write(at, "material-bought", {
    form: "solvent",
    name: "Ethanol",
    solvent: { alcohol: "ethanol" },
  });
  const { seen } = done({ resin, solvent }, pen);
  expect(seen().notKnown).toEqual(["liquid never measured", "air never read"]);
  pen.write("2026-11-01T08:00:00.000Z", "material-used-up", {}, { about: [resin] });
  expect(seen().notKnown[0]).toBe("flakes used up");
});
