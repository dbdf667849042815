// Everything that can be checked, in named stages. `--quick` leaves out the browser and the long simulations. The last line is `N passed, N failed`.
import "./house/node-version.mjs";
import { ensureInstalled } from "./house/install.mjs";

await ensureInstalled();
const { stages } = await import("./test/stages.mjs");
const quick = process.argv.includes("--quick");

async function counted(stage, buildFailed) {
  if (buildFailed && stage.needsBuild) {
    console.log("Not run, because the build failed.");
    return { passed: 0, failed: 1 };
  }
  try {
    return await stage.run({ quick });
  } catch (error) {
    console.log(error);
    return { passed: 0, failed: 1 };
  }
}

const summary = [];
const total = { passed: 0, failed: 0 };
let buildFailed = false;
for (const stage of stages) {
  if (stage.slow && quick) continue;
  console.log(`\n── ${stage.name}`);
  const start = performance.now();
  const { passed, failed } = await counted(stage, buildFailed);
  if (stage.isBuild) buildFailed = failed > 0;
  total.passed += passed;
  total.failed += failed;
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  summary.push(
    `${failed === 0 ? "✓" : "✗"} ${stage.name.padEnd(20)} ${seconds.padStart(6)} s  ${passed} passed, ${failed} failed`,
  );
}
console.log(`\n${summary.join("\n")}`);
process.exitCode = total.failed === 0 ? 0 : 1;
console.log(`${total.passed} passed, ${total.failed} failed`);
