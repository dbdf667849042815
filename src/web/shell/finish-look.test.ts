import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { contrastRatio } from "../../core/colour/contrast.ts";
import { absorptionOfGrade } from "../../core/colour/resin-grades.ts";
import { srgbFromHex } from "../../core/colour/srgb.ts";
import { volumeFraction } from "../../core/units.ts";
import { finishLook, finishStyle } from "./finish-look.ts";

const lights = ["day", "dark", "dim"] as const;

const tokens = readFileSync(join(import.meta.dirname, "../look/tokens.css"), "utf8");
const block = {
  day: /^:root \{[^}]*/m,
  dark: /data-light="dark"\] \{[^}]*/,
  dim: /data-light="dim"\] \{[^}]*/,
};
const token = (light: (typeof lights)[number], name: string) =>
  srgbFromHex(
    (
      new RegExp(`--${name}: (#[0-9a-f]{6});`, "i").exec(
        block[light].exec(tokens)?.[0] ?? "",
      ) as RegExpExecArray
    )[1] as string,
  );

// WCAG 2.2, 1.4.3: text of 4.5:1 at least.
test.each(lights)("text pairs of the %s light can be read", (light) => {
  for (const ground of ["ground", "sheet"] as const)
    for (const text of ["ink", "soft"] as const)
      expect(contrastRatio(token(light, text), token(light, ground))).toBeGreaterThan(4.5);
});

test.each(["platina", "lemon", "seedlac", "garnet"])("a page in %s can be read in every light", (grade) => {
  const absorption = absorptionOfGrade(grade);
  if (absorption === undefined) throw new Error(`no such grade: ${grade}`);
  // 4.5 before it is rounded to eight bits a channel, as the screen does.
  for (const solids of [0.05, 0.1, 0.2]) {
    const look = finishLook({ absorption, solids: volumeFraction(solids) });
    expect(contrastRatio(srgbFromHex(look.on), srgbFromHex(look.fill))).toBeGreaterThanOrEqual(4.45);
    for (const light of lights)
      for (const ground of ["ground", "sheet"] as const)
        expect(contrastRatio(srgbFromHex(look.ink[light]), token(light, ground))).toBeGreaterThanOrEqual(
          4.45,
        );
  }
});

test("without a finish the page has no colour", () => {
  expect(finishStyle(undefined, "day")).toEqual({});
});
