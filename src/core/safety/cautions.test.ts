import { expect, test } from "vitest";
import { acts, cautionsFor } from "./cautions.ts";

const denatured = [
  { component: "ethanol", massFraction: 0.82 },
  { component: "isopropanol", massFraction: 0.05 },
  { component: "mek", massFraction: 0.03 },
  { component: "water", massFraction: 0.1 },
] as const;

test("methanol stands first, then ketones, then fire", () => {
  const codes = cautionsFor("mixing", [...denatured, { component: "methanol", massFraction: 0.01 }]).map(
    (caution) => caution.code,
  );
  expect(codes).toEqual(["methanol", "ketone", "catches-fire", "no-flame-in-the-room"]);
});

test("the first part to catch is named, however little of it there is", () => {
  // NFPA 497 and IEC 60079-20-1: methyl ethyl ketone -10 °C, ethanol 12 °C
  expect(cautionsFor("opening", denatured)).toContainEqual({
    code: "catches-fire",
    component: "mek",
    flashPoint: -10,
  });
});

test("in a closed room each part's limit is given with its body and year", () => {
  const limits = cautionsFor("coating indoors", denatured).filter((c) => c.code === "breathing-limit");
  expect(limits.map((c) => c.code === "breathing-limit" && [c.component, c.limit.ppm, c.limit.body])).toEqual(
    [
      ["ethanol", 1000, "OSHA"],
      ["isopropanol", 400, "OSHA"],
      ["mek", 200, "OSHA"],
    ],
  );
});

// NIOSH Pocket Guide: methanol is absorbed by the skin, and its respirator is supplied air, never a cartridge. Ketones break
// through a cartridge for organic vapour within minutes to an hour: common practice.
test("methanol and ketones pass a mask's cartridge: said where they are breathed, and only there", () => {
  const liquid = [...denatured, { component: "methanol", massFraction: 0.01 }] as const;
  const masks = (act: "coating indoors" | "spraying" | "mixing", given: Parameters<typeof cautionsFor>[1]) =>
    cautionsFor(act, given).flatMap((c) => (c.code === "cartridge-does-not-hold" ? [c.component] : []));
  expect(masks("coating indoors", liquid)).toEqual(["mek", "methanol"]);
  expect(masks("spraying", liquid)).toEqual(["mek", "methanol"]);
  expect(masks("mixing", liquid)).toEqual([]);
  expect(masks("coating indoors", [{ component: "ethanol", massFraction: 1 }])).toEqual([]);
});

test.each([
  ["rags", "oil-rags-heat"],
  ["warming", "warm-in-drawn-water"],
  ["coating indoors", "open-and-draw-away"],
  ["disposing", "not-down-the-drain"],
] as const)("%s: %s", (act, code) => {
  expect(cautionsFor(act, denatured).map((c) => c.code)).toContain(code);
});

test("what a data sheet leaves unnamed is said, with its share", () => {
  expect(cautionsFor("mixing", [{ component: "unknown", massFraction: 0.04 }])[0]).toEqual({
    code: "unnamed-share",
    massFraction: 0.04,
  });
});

test.each(acts)("%s says something even of a liquid nobody knows", (act) => {
  expect(cautionsFor(act, []).length).toBeGreaterThan(0);
});

test("water alone does not catch fire", () => {
  const codes = cautionsFor("opening", [{ component: "water", massFraction: 1 }]).map((c) => c.code);
  expect(codes).not.toContain("catches-fire");
});
