// Makes readings of 4 alcohols × 5 jars on 10 boards of 20 and answers with their verdicts.
import { parentPort } from "node:worker_threads";
import { randomFromSeed, randomNormal } from "../dist/core/random.js";
import { calculate } from "../dist/core/registry/calculation.js";
import { verdictCalculation } from "../dist/core/registry/verdict.js";

const known = new Map();

function inputOf({ seed, scale }) {
  if (known.has(seed)) return known.get(seed);
  const random = randomFromSeed(seed);
  const boards = Array.from({ length: 10 }, () => 2 * randomNormal(random));
  const jars = Array.from({ length: 20 }, (_, j) => ({
    jar: `jar ${j}`,
    alcohol: `alcohol ${j % 4}`,
    luck: 0.5 * randomNormal(random),
  }));
  const rows = boards.flatMap((board, b) =>
    jars.map(({ jar, alcohol, luck }, j) => {
      const value = 40 + luck + board + randomNormal(random);
      return {
        patch: `${b}-${j}`,
        jar,
        block: `board ${b}`,
        factors: { alcohol },
        value: scale === "measured" ? value : Math.max(1, Math.min(5, Math.round((value - 40) / 2 + 3))),
      };
    }),
  );
  const input = {
    response: { name: "gloss", scale, ...(scale === "measured" ? { matters: 2 } : {}) },
    compare: "alcohol",
    appliedTo: { alcohol: "jar" },
    rows,
  };
  known.set(seed, input);
  return input;
}

parentPort.on("message", (asked) => {
  const answers = asked.map((one) => calculate(verdictCalculation, inputOf(one)));
  parentPort.postMessage({ ok: answers.every((a) => a.ok) });
});
