#!/usr/bin/env node
import { dispatch } from "./dispatch.ts";
import { realEffects } from "./effects.ts";

// A reader that has had enough (`| head`) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
  process.exit(0);
});

process.exitCode = await dispatch(process.argv.slice(2), realEffects);
