#!/usr/bin/env node
import { dispatch } from "./dispatch.ts";
import { realEffects } from "./effects.ts";

process.exitCode = await dispatch(process.argv.slice(2), realEffects);
