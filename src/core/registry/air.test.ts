import { describe, expect, test } from "vitest";
import { refusal, run } from "../../../test/run-calculation.ts";

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 };
const film = { wetUm: 125, cutLbPerGal: 1, solvent: ethanol95 };
const air = { temperatureC: 20, relativeHumidity: 0.5, speedMS: 0.1 };
const wood = { temperatureC: 20, thicknessMm: 20 };
const coat = { film, air, wood, radiation: true };
const flagsOf = (out: Record<string, unknown>): string[] =>
  (out.flags as { code: string }[]).map((flag) => flag.code);

describe("drying", () => {
  test("a coat: what is asked of it is there, and the series goes from the whole film to what is held", () => {
    const out = run("drying", coat);
    const series = out.series as { s: number; surfaceC: number; massGM2: Record<string, number> }[];
    expect(series[0]).toMatchObject({ s: 0, surfaceC: 20 });
    expect(series.at(-1)?.s).toBe(12 * 3600);
    expect(Object.keys(series[0]?.massGM2 ?? {})).toEqual(["ethanol", "water"]);
    expect(series[0]?.massGM2.ethanol).toBeGreaterThan(50 * (series.at(-1)?.massGM2.ethanol ?? 0));
    expect(out).toMatchObject({ blush: "unlikely", wouldHelp: null });
    expect(out.dewMarginC).toBeCloseTo((out.lowestSurfaceC as number) - (out.dewPointC as number), 9);
  });

  test("asked what would help, each answer names its own value", () => {
    const out = run("drying", {
      ...coat,
      air: { ...air, relativeHumidity: 0.7 },
      wood: { temperatureC: 14 },
      whatWouldHelp: true,
    });
    expect(out.blush).not.toBe("unlikely");
    const [warmer] = out.wouldHelp as { change: string; woodC: number; blush: string }[];
    expect(warmer).toMatchObject({ change: "warmer wood", blush: "unlikely" });
    expect(warmer?.woodC).toBeGreaterThan(14);
  });

  test("one's own whitening moves the margin, and with it the word", () => {
    const [common, own] = [run("drying", coat), run("drying", { ...coat, whitensBelowC: 3 })];
    expect((common.blushMarginC as number) - (own.blushMarginC as number)).toBeCloseTo(3, 9);
    expect([common.blush, own.blush]).toEqual(["unlikely", "possible"]);
  });

  test("water alone, on nothing and without radiation, is the wet bulb's: 13.8 °C at 20 °C and 50 %", () => {
    const solvent = { alcohol: "water" };
    const alone = { wetUm: 400, cutLbPerGal: 0, solvent };
    const out = run("drying", { film: alone, air, wood: null, radiation: false, hours: 0.5 });
    expect(out.lowestSurfaceC).toBeCloseTo(13.8, 1);
    expect([out.blush, out.touchDryMin, out.waterShareAtSet]).toEqual([null, null, null]);
    expect(flagsOf(out)).toContain("no-resin");
  });

  test("what lies outside a source is flagged: a ketone, a small board in still air, a film that is not dry in time", () => {
    const mek = {
      parts: [
        { ...ethanol95, massShare: 0.97 },
        { alcohol: "mek", massShare: 0.03 },
      ],
    };
    expect(flagsOf(run("drying", { ...coat, film: { ...film, solvent: mek } }))).toContain("original-unifac");
    const small = run("drying", { ...coat, lengthM: 0.05, hours: 0.05 });
    expect(flagsOf(small)).toEqual(expect.arrayContaining(["outside-correlation", "not-yet-dry"]));
    const creeping = { ...coat, air: { ...air, speedMS: 0.002 }, lengthM: 0.06, hours: 0.05 };
    const fields = (run("drying", creeping).flags as { field: string }[]).map((flag) => flag.field);
    expect(fields).toContain("air.speedMS");
    expect(flagsOf(run("drying", coat))).not.toContain("outside-correlation");
    expect(flagsOf(run("drying", coat))).toContain("sinking-left-out");
    const over = run("drying", { ...coat, film: { ...film, beneathUm: 10 } });
    expect(flagsOf(over)).not.toContain("sinking-left-out");
  });

  test.each([
    ["air.temperatureC", { ...coat, air: { ...air, temperatureC: 51 } }, { max: 50 }],
    ["air.temperatureC", { ...coat, air: { ...air, temperatureC: -1 } }, { min: 0 }],
    ["air.relativeHumidity", { ...coat, air: { ...air, relativeHumidity: 1.01 } }, { max: 1 }],
    ["air.relativeHumidity", { ...coat, air: { ...air, relativeHumidity: -0.01 } }, { min: 0 }],
    ["film.wetUm", { ...coat, film: { ...film, wetUm: 0.5 } }, { min: 1 }],
    ["film.beneathUm", { ...coat, film: { ...film, beneathUm: 1001 } }, { max: 1000 }],
    ["hours", { ...coat, hours: 73 }, { max: 72 }],
    ["lengthM", { ...coat, lengthM: 4 }, { max: 3 }],
    ["whitensBelowC", { ...coat, whitensBelowC: 21 }, { max: 20 }],
    ["air.speedMS", { ...coat, air: { ...air, speedMS: 6 } }, { max: 5 }],
    ["film.wetUm", { ...coat, film: { ...film, wetUm: 501 } }, { max: 500 }],
    ["wood.temperatureC", { ...coat, wood: { temperatureC: 60 } }, { max: 50 }],
  ])("%s out of range is refused with what would do", (field, input, limits) => {
    expect(refusal("drying", input)).toMatchObject({ code: "out-of-range", field, limits });
  });

  test("a part without a name is refused by name, and shares that do not add up", () => {
    const parts = (second: object) => ({
      ...coat,
      film: { ...film, solvent: { parts: [{ ...ethanol95, massShare: 0.9 }, second] } },
    });
    expect(refusal("drying", parts({ alcohol: "unknown", massShare: 0.1 }))).toMatchObject({
      code: "not-enough-data",
      field: "film.solvent",
      value: "unknown",
    });
    expect(refusal("drying", parts({ alcohol: "mek", massShare: 0.2 }))).toMatchObject({
      code: "contradiction",
      field: "film.solvent.parts",
    });
  });
});

describe("vapour", () => {
  const room = { volumeM3: 40, airChangesPerHour: 0.5, mixingFactor: 5 };
  const worked = { solvent: { alcohol: "ethanol" }, amountMl: 100, minutes: 60, room };

  test("the trade's arithmetic: 100 mL of ethanol in a closed room of 40 m³ at 25 °C is about 1050 ppm", () => {
    const closed = { ...worked, temperatureC: 25, room: { volumeM3: 40, airChangesPerHour: 0 } };
    const out = run("vapour", closed);
    const [ethanol] = out.components as { peakPpm: number; steadyPpm: null; minutesAboveLimit: null }[];
    expect(ethanol?.peakPpm).toBeGreaterThan(1030);
    expect(ethanol?.peakPpm).toBeLessThan(1055);
    expect(ethanol).toMatchObject({ steadyPpm: null, minutesAboveLimit: null });
    expect(flagsOf(out)).toContain("above-limit");
    expect(out.statement).toMatch(/not a clearance/);
  });

  // Q = 24·SG·ER·K·10⁶/(MW·C), the printed metric form: 0.789 · 0.1 L/h · 5 · 24e6/(46.07 · 1000)
  test("ventilation is the printed formula's, within 1 percent", () => {
    const printed = (24 * 0.789 * 0.1 * 5 * 1e6) / (46.07 * 1000);
    const got = run("vapour", worked).ventilationM3PerH as number;
    expect(Math.abs(got / printed - 1)).toBeLessThan(0.01);
  });

  test("methanol stands first, water nowhere, and effects add up", () => {
    const parts = [
      { alcohol: "ethanol", massShare: 0.9 },
      { alcohol: "methanol", massShare: 0.05 },
      { alcohol: "water", massShare: 0.05 },
    ];
    const out = run("vapour", { ...worked, solvent: { parts } });
    const found = out.components as { component: string; shareOfLimit: number; goesThroughSkin: boolean }[];
    expect(found.map((c) => c.component)).toEqual(["methanol", "ethanol"]);
    expect(found[0]?.goesThroughSkin).toBe(true);
    const sum = found.reduce((total, c) => total + c.shareOfLimit, 0);
    expect(out.mixtureShareOfLimit).toBeCloseTo(sum, 12);
    expect((out.cautions as { code: string }[])[0]?.code).toBe("methanol");
  });

  // One vapour: the mixture's time is its own. The level of a quarter of what can catch fire is 0.25 · 3.1 % of the air.
  test("time above the limits and above a quarter of the flammable limit", () => {
    const much = { ...worked, amountMl: 2000, room: { ...room, airChangesPerHour: 6, mixingFactor: 1 } };
    const out = run("vapour", much);
    const [ethanol] = out.components as { minutesAboveLimit: number; peakPpm: number }[];
    expect(out.mixtureMinutesAboveLimit).toBeCloseTo(ethanol?.minutesAboveLimit ?? 0, 9);
    expect(out.minutesAboveQuarterFlammable).toBe(0);
    const still = run("vapour", { ...much, room: { ...room, airChangesPerHour: 0 } });
    expect(still.minutesAboveQuarterFlammable).toBeNull();
    expect(flagsOf(still)).toContain("near-flammable");
    const aired = run("vapour", { ...much, amountMl: 8000 });
    const peak = (aired.components as { peakPpm: number }[])[0]?.peakPpm ?? 0;
    expect(peak).toBeGreaterThan(0.25 * 31_000);
    // after the work it falls by e⁻¹ each ten minutes: from the peak to the level
    const after = 10 * Math.log(peak / (0.25 * 31_000));
    expect(aired.minutesAboveQuarterFlammable as number).toBeGreaterThan(after);
    expect(aired.minutesAboveQuarterFlammable as number).toBeLessThan(60 + after);
  });

  test.each([
    ["amountMl", { amountMl: Number.NaN }],
    ["minutes", { minutes: 0 }],
    ["room.mixingFactor", { room: { ...room, mixingFactor: 11 } }],
    ["temperatureC", { temperatureC: 41 }],
  ])("%s out of range is refused", (field, more) => {
    expect(refusal("vapour", { ...worked, ...more })).toMatchObject({ field });
  });

  test("what cannot be is refused", () => {
    expect(refusal("vapour", { ...worked, amountMl: -1 })).toMatchObject({ field: "amountMl" });
    expect(refusal("vapour", { ...worked, room: { ...room, volumeM3: 0 } })).toMatchObject({
      field: "room.volumeM3",
    });
    expect(refusal("vapour", { ...worked, solvent: { alcohol: "unknown" } })).toMatchObject({
      field: "solvent",
    });
  });
});

describe("dew point, wood and flash point", () => {
  test("dew point of 20 °C and 50 %, and how far a cold board is from it", () => {
    const out = run("dew-point", { temperatureC: 20, relativeHumidity: 0.5, surfaceC: 12 });
    expect(out.dewPointC).toBeCloseTo(9.27, 2);
    expect(out.marginC).toBeCloseTo(2.73, 2);
    expect(flagsOf(run("dew-point", { temperatureC: 5, relativeHumidity: 0.4 }))).toEqual(["frost-point"]);
    expect(run("dew-point", { temperatureC: 1, relativeHumidity: 0.1 }).wetBulbC).toBeNull();
    expect(refusal("dew-point", { temperatureC: 20, relativeHumidity: 1.2 }).field).toBe("relativeHumidity");
  });

  test("wood of the table at 70 °F, and a panel that moves out and back", () => {
    const [dry, damp] = [0.3, 0.6].map((relativeHumidity) => ({ temperatureC: 21.1, relativeHumidity }));
    const panel = { species: "cherry, black", widthMm: 300, grain: "tangential" };
    const out = run("wood-moisture", { ...dry, otherSeason: damp, panel });
    expect(out.moisturePercent).toBeCloseTo(6.2, 1);
    expect(out.otherMoisturePercent).toBeCloseTo(11, 1);
    expect(out.panel).toMatchObject({ method: "coefficient" });
    expect(run("wood-moisture", { ...dry }).panel).toBeNull();
    expect(refusal("wood-moisture", { ...dry, panel: { ...panel, species: "bamboo" } })).toMatchObject({
      code: "unknown-name",
    });
    expect(refusal("wood-moisture", { ...dry, panel })).toMatchObject({ field: "otherSeason" });
  });

  test.each([
    ["dew-point", { temperatureC: 50.1, relativeHumidity: 0.5 }, ["temperatureC"]],
    ["dew-point", { temperatureC: 20, relativeHumidity: 0.5, surfaceC: -0.1 }, ["surfaceC"]],
    ["dew-point", { temperatureC: 50, relativeHumidity: 0.5, surfaceC: 0 }, []],
    ["wood-moisture", { temperatureC: 50.1, relativeHumidity: 0.5 }, ["temperatureC"]],
    [
      "wood-moisture",
      {
        temperatureC: 0,
        relativeHumidity: 0.5,
        otherSeason: { temperatureC: -0.1, relativeHumidity: 0.5 },
      },
      ["otherSeason.temperatureC"],
    ],
  ])("%s %j lies outside a shop's air at %j", (name, input, fields) => {
    const flags = run(name, input).flags as readonly { readonly code: string; readonly field: string }[];
    expect(flags.filter(({ code }) => code === "outside-shop").map(({ field }) => field)).toEqual(fields);
  });

  test.each([
    ["dew-point", { temperatureC: 70, relativeHumidity: 0.5 }, "temperatureC"],
    ["dew-point", { temperatureC: 20, relativeHumidity: 0.5, pressurePa: 1 }, "pressurePa"],
    ["wood-moisture", { temperatureC: 200, relativeHumidity: 0.5 }, "temperatureC"],
    ["wood-moisture", { temperatureC: 20, relativeHumidity: -0.1 }, "relativeHumidity"],
    ["flash-point", { solvent: { alcohol: "unknown" } }, "solvent"],
    ["flash-point", { solvent: { alcohol: "ethanol", massFraction: 1.2 } }, "solvent.massFraction"],
  ])("%s %j is refused at %s", (name, input, field) => {
    const refused = refusal(name, input);
    expect(refused.field).toBe(field);
    expect(refused.message.length).toBeGreaterThan(10);
  });

  test("the flash point of a denatured alcohol lies below that of the alcohol, and water's is nowhere", () => {
    const parts = [
      { ...ethanol95, massShare: 0.97 },
      { alcohol: "mek", massShare: 0.03 },
    ];
    const denatured = run("flash-point", { solvent: { parts } });
    const plain = run("flash-point", { solvent: ethanol95 });
    expect(denatured.flashPointC as number).toBeLessThan(plain.flashPointC as number);
    expect(flagsOf(denatured)).toContain("original-unifac");
    const water = run("flash-point", { solvent: { alcohol: "water" } });
    expect(water.flashPointC).toBeNull();
    expect(flagsOf(water)).toContain("no-flash-point");
  });
});
