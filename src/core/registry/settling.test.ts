import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { refusal, run } from "../../../test/run-calculation.ts";

const read = (values: readonly (readonly [number, number])[]) =>
  values.map(([atH, value]) => ({ atH, value }));
const flagged = (out: Record<string, unknown>) =>
  (out.flags as readonly { readonly code: string; readonly field: string }[]).map(({ code }) => code);
const figureOf = (x: unknown): number => (x as { readonly value: number }).value;

describe("settling", () => {
  /** Half of what is left goes every 24 hours: by hand. */
  const halving = [0, 24, 48, 72].map((atH): [number, number] => [atH, 40 + 40 * 2 ** (-atH / 24)]);

  test("says when it settles, and that this lies beyond the readings", () => {
    const out = run("settling", { readings: read(halving), startsAt: 80, leftShare: 1 / 16 });
    expectNear(figureOf(out.endsAt), 40, { relative: 1e-9 });
    expectNear(figureOf(out.settledH), 96, { relative: 1e-9 });
    expect(flagged(out)).toEqual(["beyond-readings"]);
    const sooner = run("settling", { readings: read(halving), startsAt: 80, leftShare: 1 / 4 });
    expectNear(figureOf(sooner.settledH), 48, { relative: 1e-9 });
    expect(flagged(sooner)).toEqual([]);
  });

  test("readings without a bend give no answer, and a flag that says so", () => {
    const straight = run("settling", {
      readings: read([
        [0, 0],
        [1, 1],
        [2, 2],
        [3, 3],
      ]),
    });
    expect(straight.settledH).toBeNull();
    expect(flagged(straight)).toEqual(["not-fixed"]);
  });

  test("refused: too few readings for what is asked, and readings that are all alike", () => {
    expect(
      refusal("settling", {
        readings: read([
          [0, 5],
          [4, 4],
        ]),
      }),
    ).toMatchObject({
      field: "readings",
      code: "not-enough-data",
      limits: { min: 4 },
    });
    expect(
      refusal("settling", {
        readings: read([
          [0, 5],
          [4, 5],
          [8, 5],
        ]),
        startsAt: 9,
      }).code,
    ).toBe("no-variation");
  });
});

describe("dissolving-alike", () => {
  const atH = [2, 4];
  test("jars of one lot are averaged, and their scatter is taken off", () => {
    const out = run("dissolving-alike", {
      atH,
      reference: [
        [10, 30],
        [14, 34],
      ],
      other: [
        [20, 40],
        [24, 44],
      ],
    });
    expectNear(out.similarity as number, 49.892, { absolute: 0.001 }); // 10 points apart: 50·log10(100/√101)
    expectNear(out.similarityLessScatter as number, 50.788, { absolute: 0.001 }); // by hand: 100 − 25·log10(93)
    expect(out.alike).toBe(false);
  });
  test("refused: a jar with a look too few, and a reference of which nothing had dissolved", () => {
    expect(
      refusal("dissolving-alike", { atH, reference: [[10, 30], [14]], other: [[20, 40]] }),
    ).toMatchObject({
      field: "reference[1]",
      limits: { min: 2, max: 2 },
    });
    expect(refusal("dissolving-alike", { atH, reference: [[0, 0]], other: [[0, 10]] }).code).toBe(
      "no-variation",
    );
  });
});
