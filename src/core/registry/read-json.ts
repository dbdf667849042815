import { fail, ok, type Result } from "../result.ts";
import type { Problem } from "./problem.ts";

/** Reads the text that a door was given; what is not JSON is a problem of the same shape as any other. */
export function readJson(text: string): Result<unknown, Problem> {
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    const seen = text.trim();
    const message =
      seen === ""
        ? "The input is empty: one JSON object is read."
        : `The input cannot be read as JSON: ${error.message}.`;
    return fail({ code: "unreadable", field: "input", message, value: seen.slice(0, 80), limits: null });
  }
}
