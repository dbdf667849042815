import { realEffects } from "../effects.ts";
import { runChecks } from "./run-checks.ts";

process.exitCode = await runChecks(process.argv.slice(2), realEffects);
