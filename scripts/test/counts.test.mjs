import { expect, test } from "vitest";
import { countOfCheck, countOfLines, countOfTopics, countOfVitest } from "./counts.mjs";

test("a check counts as one", () => {
  expect(countOfCheck({ code: 0 })).toEqual({ passed: 1, failed: 0 });
  expect(countOfCheck({ code: 2 })).toEqual({ passed: 0, failed: 1 });
});

test("lines are added up, and what was not read has not passed", () => {
  const output = "a line\ncalc: 7 passed, 1 failed, 2 not read\n3 passed, 0 failed\n";
  expect(countOfLines({ code: 1, output })).toEqual({ passed: 10, failed: 3 });
});

test("a stage that crashes, or says nothing, counts as failed", () => {
  expect(countOfLines({ code: 1, output: "5 passed, 0 failed\n" })).toEqual({ passed: 5, failed: 1 });
  expect(countOfLines({ code: 0, output: "" })).toEqual({ passed: 0, failed: 1 });
  const nothingRead = "calc: 0 passed, 0 failed, 0 not read\n";
  expect(countOfLines({ code: 0, output: nothingRead })).toEqual({ passed: 0, failed: 1 });
  expect(countOfVitest({ code: 1 }, undefined)).toEqual({ passed: 0, failed: 1 });
});

const report = { numPassedTests: 5, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };

test("a skipped test and a test file that cannot be read have not passed", () => {
  expect(countOfVitest({ code: 0 }, report)).toEqual({ passed: 5, failed: 0 });
  expect(countOfVitest({ code: 0 }, { ...report, numPendingTests: 1 })).toEqual({ passed: 5, failed: 1 });
  const testResults = [{ status: "failed", assertionResults: [] }];
  expect(countOfVitest({ code: 1 }, { ...report, testResults })).toEqual({ passed: 5, failed: 1 });
});

test("outside cases: a failed one fails anywhere, one not read only in a topic declared complete", () => {
  const lines = ["calc: 4 passed, 0 failed, 2 not read", "mixed: 1 passed, 1 failed, 5 not read"];
  const output = `${lines.join("\n")}\nall: 5 passed, 1 failed, 7 not read\n`;
  expect(countOfTopics({ code: 1, output }, ["calc"])).toEqual({ passed: 5, failed: 3 });
  expect(countOfTopics({ code: 1, output }, [])).toEqual({ passed: 5, failed: 1 });
  expect(countOfTopics({ code: 1, output }, ["colour"])).toEqual({ passed: 5, failed: 2 }); // not there at all
  expect(countOfTopics({ code: 137, output: "" }, [])).toEqual({ passed: 0, failed: 1 });
});
