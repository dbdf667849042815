import { expect, test } from "vitest";
import { nodeProblem } from "./node-version.mjs";

test.each(["20.19.0", "20.20.2", "22.0.0", "100.1.0"])("Node %s will do", (version) => {
  expect(nodeProblem(version, ">=20.19")).toBeUndefined();
});

test.each(["20.18.9", "18.20.4", "9.99.0"])("Node %s is told what would do", (version) => {
  const problem = nodeProblem(version, ">=20.19");
  expect(problem).toContain("Node 20.19 or newer");
  expect(problem).toContain(version);
});
