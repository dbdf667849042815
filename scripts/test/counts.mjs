const one = (passed) => ({ passed: passed ? 1 : 0, failed: passed ? 0 : 1 });

/** A stage that counts nothing itself counts as one check. */
export const countOfCheck = ({ code }) => one(code === 0);

/** From `… N passed, N failed[, N not read]` on lines of their own; what was not read has not passed. */
export function countOfLines({ code, output }) {
  const line = /^(?:[\w-]+: )?(\d+) passed, (\d+) failed(?:, (\d+) not read)?$/gm;
  const found = [...output.matchAll(line)];
  const total = (i) => found.reduce((all, match) => all + Number(match[i] ?? 0), 0);
  const passed = total(1);
  const failed = total(2) + total(3);
  const nothingSaid = passed + failed === 0;
  return { passed, failed: code !== 0 || nothingSaid ? Math.max(failed, 1) : failed };
}

/** From Vitest's JSON report. A file that could not be read, and a test that was skipped, have not passed. */
export function countOfVitest({ code }, report) {
  if (report === undefined) return one(false);
  const unread = report.testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0);
  const failed = report.numFailedTests + report.numPendingTests + report.numTodoTests + unread.length;
  return { passed: report.numPassedTests, failed: code === 0 ? failed : Math.max(failed, 1) };
}

/** From a run over all topics: a failed case fails anywhere, one not read only in a topic declared complete. */
export function countOfTopics({ code, output }, complete) {
  const line = /^([\w-]+): (\d+) passed, (\d+) failed, (\d+) not read$/gm;
  const topics = [...output.matchAll(line)].map(([, name, ...counts]) => [name, ...counts.map(Number)]);
  const total = { passed: 0, failed: code === 0 || code === 1 || code === 3 ? 0 : 1 };
  for (const [name, passed, failed, unread] of topics.filter(([name]) => name !== "all")) {
    total.passed += passed;
    total.failed += failed + (complete.includes(name) ? unread : 0);
  }
  const isChecked = (name) => topics.some(([topic, passed]) => topic === name && passed > 0);
  total.failed += complete.filter((name) => !isChecked(name)).length;
  return total;
}
