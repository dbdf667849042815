import {
  countPower,
  criticalCount,
  type Guessing,
  similarityCount,
  trialsNeeded,
} from "../../core/statistics/senses/difference-count.ts";
import {
  type DifferenceForm,
  differenceEstimate,
  shareFromDPrime,
} from "../../core/statistics/senses/odd-one-out.ts";
import { numberIn, perRow } from "./table.ts";
import { type Json, NotReadable, type Row, type TableAdapter, type Topic } from "./topic.ts";

const forms: Readonly<Record<string, DifferenceForm>> = {
  triangle: "triangle",
  duotrio: "duo-trio",
  twoAFC: "two-afc",
  threeAFC: "three-afc",
  tetrad: "tetrad",
};

function formOf(protocol: unknown): DifferenceForm {
  const form = forms[String(protocol)];
  if (form === undefined) throw new NotReadable(`protocol ${String(protocol)} is not known`);
  return form;
}

/** A third is written with ten digits in the tables. */
const guessingIn = (row: Row): number => {
  const p0 = numberIn(row, "p0");
  return Math.abs(p0 - 1 / 3) < 1e-9 ? 1 / 3 : p0;
};

function testIn(row: Row): Guessing {
  const tails = numberIn(row, "tails");
  if (tails !== 1 && tails !== 2) throw new NotReadable(`tails ${tails} is not known`);
  return { guessing: guessingIn(row), tails };
}

function estimate(given: Json): Json {
  const { protocol, correct, trials } = given.input as Json;
  if (typeof correct !== "number" || typeof trials !== "number")
    throw new NotReadable("input.correct or input.trials is not a number");
  const found = differenceEstimate(formOf(protocol), correct, trials);
  return {
    p_value: found.pValue,
    pc: found.share,
    pd: found.discriminators,
    dprime: found.dPrime,
    se_pc: found.standardErrors.share,
    se_pd: found.standardErrors.discriminators,
    se_dprime: found.standardErrors.dPrime,
    pc_ci95: found.shareInterval,
    pd_ci95: found.discriminatorsInterval,
    dprime_ci95: found.dPrimeInterval,
  };
}

/** A printed table: one column a level of significance, named by it. */
function printedTable(guessing: number, columns: Readonly<Record<string, number>>): TableAdapter {
  return perRow({
    inputs: ["n"],
    expected: Object.fromEntries(Object.keys(columns).map((column) => [column, ["exact", 0] as const])),
    empty: "absent",
    compute: (row) =>
      Object.fromEntries(
        Object.entries(columns).map(([column, alpha]) => [
          column,
          criticalCount(numberIn(row, "n"), { guessing, tails: 1 }, alpha),
        ]),
      ),
  });
}

export const topic: Topic = {
  kinds: { "difference-estimate": estimate },
  tables: {
    "critical-numbers.csv": perRow({
      inputs: ["p0", "tails", "alpha", "n"],
      others: ["test"],
      expected: { critical: ["exact", 0] },
      empty: "absent",
      compute: (row) => ({
        critical: criticalCount(numberIn(row, "n"), testIn(row), numberIn(row, "alpha")),
      }),
    }),
    "fao-triangle-published.csv": printedTable(1 / 3, {
      crit_10pc: 0.1,
      crit_5pc: 0.05,
      crit_1pc: 0.01,
      "crit_0.1pc": 0.001,
    }),
    "iso10399-duo-trio-published.csv": printedTable(1 / 2, {
      "alpha_0.20": 0.2,
      "alpha_0.10": 0.1,
      "alpha_0.05": 0.05,
      "alpha_0.01": 0.01,
      "alpha_0.001": 0.001,
    }),
    "similarity-max-correct.csv": perRow({
      inputs: ["p0", "n", "pd", "beta"],
      others: ["test"],
      expected: { max_correct: ["exact", 0] },
      empty: "absent",
      compute: (row) => ({
        max_correct: similarityCount(
          numberIn(row, "n"),
          guessingIn(row),
          numberIn(row, "pd"),
          numberIn(row, "beta"),
        ),
      }),
    }),
    "sample-size.csv": perRow({
      inputs: ["p0", "pd", "alpha", "beta"],
      others: ["test"],
      expected: { n_first: ["exact", 0], n_stable: ["exact", 0] },
      compute: (row) => {
        const found = trialsNeeded(
          { guessing: guessingIn(row), tails: 1 },
          numberIn(row, "pd"),
          numberIn(row, "alpha"),
          numberIn(row, "beta"),
        );
        return { n_first: found.first, n_stable: found.stable };
      },
    }),
    "power.csv": perRow({
      inputs: ["p0", "tails", "n", "alpha", "pd"],
      others: ["test"],
      expected: { power: ["abs", 1e-9] },
      compute: (row) => ({
        power: countPower(numberIn(row, "n"), testIn(row), numberIn(row, "alpha"), numberIn(row, "pd")),
      }),
    }),
    "psychometric.csv": perRow({
      inputs: ["protocol", "dprime"],
      expected: { pc: ["abs", 1e-8] },
      compute: (row) => ({ pc: shareFromDPrime(formOf(row.protocol?.trim()), numberIn(row, "dprime")) }),
    }),
  },
};
