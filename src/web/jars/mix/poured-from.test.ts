import { describe, expect, test } from "vitest";
import { aqueous } from "../../../core/solution/composition.ts";
import { massFraction } from "../../../core/units.ts";
import { fields } from "../../controls/read-quantity.ts";
import { partOf, pouredFrom, weighedFrom } from "./poured-from.ts";
import { readShares } from "./shares.ts";

const ethanol95 = aqueous("ethanol", massFraction(0.92408)); // 95 % by volume (OIML R 22)
const water = aqueous("water", massFraction(1));
const read = (...texts: string[]) => readShares(texts, fields.massOrVolume);

describe("what is typed beside each bottle", () => {
  test("one alone needs no figure; several take parts or amounts, not both", () => {
    expect(read("")).toEqual({ kind: "one" });
    expect(read("3 parts", "1")).toEqual({ kind: "parts", shares: [0.75, 0.25] });
    expect(read("75 %", "25 %")).toMatchObject({ kind: "parts", shares: [0.75, 0.25] });
    expect(read("200 ml", "50 g")).toMatchObject({ kind: "amounts" });
    expect(read("200 ml", "")).toEqual({ kind: "open", at: 1, why: "empty" });
    expect(read("200 ml", "1 part")).toEqual({ kind: "open", at: 1, why: "both" });
    expect(read("200 ml", "some")).toEqual({ kind: "open", at: 1, why: "unread" });
  });
});

describe("several bottles as one alcohol", () => {
  test("half a litre of 95 % and half a litre of water are 971 mL (published: about 971)", () => {
    const from = pouredFrom([ethanol95, water], read("500 ml", "500 ml"));
    expect((from?.total?.si ?? 0) * 1e6).toBeCloseTo(971, 0);
    expect(from?.total?.unit).toBe("ml");
    // 500 mL at 0.8114 g/mL (OIML R 22) and at 0.9982 g/mL
    expect(from?.massShares[0]).toBeCloseTo(405.7 / (405.7 + 499.1), 4);
  });

  test("weighed bottles stay weights, and parts of an alcohol are by volume", () => {
    const weighed = pouredFrom([ethanol95, water], read("100 g", "50 g"))?.total;
    expect(weighed?.unit).toBe("g");
    expect(weighed?.si).toBeCloseTo(0.15, 12);
    const parts = pouredFrom([ethanol95, water], read("1", "1"));
    expect(parts?.total).toBeUndefined();
    expect(parts?.massShares[0]).toBeCloseTo(405.7 / (405.7 + 499.1), 4);
    const first = partOf(parts as never, [ethanol95, water], 0, 0.9048);
    const second = partOf(parts as never, [ethanol95, water], 1, 0.9048);
    expect(first.m3 / second.m3).toBeCloseTo(1, 9);
    expect(first.kg + second.kg).toBeCloseTo(0.9048, 9);
  });

  test("bags of flakes are by weight", () => {
    const bags = weighedFrom(readShares(["40 g", "20 g"], fields.mass));
    expect(bags?.massShares[0]).toBeCloseTo(2 / 3, 12);
    expect(bags?.total?.si).toBeCloseTo(0.06, 12);
  });
});
