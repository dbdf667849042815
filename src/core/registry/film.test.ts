import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { refusal, run } from "../../../test/run-calculation.ts";

const coat = { cutLbPerGal: 2, wetUm: 100 };
const built = (more: object) =>
  run("film-build", { coats: [coat, coat, coat, coat], ...more }) as unknown as {
    readonly coats: readonly { readonly dryUm: number; readonly sunkUm: number; readonly filmUm: number }[];
    readonly dryUm: number;
    readonly equivalentCoats: readonly { readonly cutLbPerGal: number; readonly coats: number }[];
    readonly rubbingOut: { readonly toGoUm: number; readonly coatsToGo: number; readonly risk: string };
  };

describe("film-build", () => {
  test("on bare wood the first coats sink in, and what stands and what sinks is what was laid", () => {
    const [sealed, bare] = [built({}), built({ bareWood: true })];
    expect(sealed.coats.map((c) => c.sunkUm)).toEqual([0, 0, 0, 0]);
    const laid = sealed.coats[0]?.dryUm ?? 0;
    [0.5, 0.8, 0.95, 1].forEach((part, i) => {
      const { dryUm = 0, sunkUm = 0 } = bare.coats[i] ?? {};
      expectNear(dryUm, part * laid, { relative: 1e-12 });
      expectNear(dryUm + sunkUm, laid, { relative: 1e-12 });
    });
    expectNear(built({ bareWood: true, sinks: [1] }).dryUm, 3 * laid, { relative: 1e-12 });
  });

  // A refinisher's rounded builds at 4 mil wet: 0.66 mil at 2 lb, 0.36 at 1 lb.
  test("six coats of 2 lb are eleven of 1 lb, and twice as many where half is lost", () => {
    const six = Array.from({ length: 6 }, () => coat);
    const equivalents = [1, 0.5].map((transfer) => ({ cutLbPerGal: 1, wetUm: 100, transfer }));
    const [all, half] = built({ coats: six, equivalents }).equivalentCoats;
    expectNear(all?.coats ?? 0, (6 * 0.66) / 0.36, { relative: 0.02 });
    expectNear(half?.coats ?? 0, 2 * (all?.coats ?? 0), { relative: 1e-12 });
  });

  test("how far to rubbing out, and that it would cut through; the thicknesses are the person's to change", () => {
    const { rubbingOut, dryUm } = built({});
    expectNear(rubbingOut.toGoUm, 76 - dryUm, { relative: 1e-9 });
    expect(rubbingOut).toMatchObject({ coatsToGo: 1, risk: "holds" });
    expect(built({ coats: [coat] }).rubbingOut.risk).toBe("may go through");
    expect(built({ coats: [coat], rubOut: { removesUm: 20 } }).rubbingOut.risk).toBe("goes through");
    expect(built({ rubOut: { neededUm: 50 } }).rubbingOut).toMatchObject({ toGoUm: 0, coatsToGo: 0 });
  });

  test.each([
    ["sinks.0", { sinks: [1.2] }, "out-of-range"],
    ["rubOut.removesUm", { rubOut: { removesUm: -1 } }, "out-of-range"],
    [
      "equivalents.0.transfer",
      { equivalents: [{ cutLbPerGal: 1, wetUm: 100, transfer: 0 }] },
      "out-of-range",
    ],
    ["coats.0.wetUm", { coats: [{ ...coat, wetUm: 6000 }] }, "out-of-range"],
  ])("%s is refused", (field, more, code) => {
    const refused = refusal("film-build", { coats: [coat], ...more });
    expect(refused.code).toBe(code);
    expect(refused.field.replaceAll(/\[(\d+)\]/g, ".$1")).toBe(field);
    expect(refused.limits).not.toBeNull();
  });
});
