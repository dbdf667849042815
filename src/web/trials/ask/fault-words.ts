import * as words from "../../words/words.ts";
import type { Fault } from "./field-reader.ts";

/** The sentence beside a field that cannot be read, or nothing when it can. */
export function sayFault(faults: readonly Fault[], field: string): string | undefined {
  const fault = faults.find((f) => f.field === field);
  if (fault === undefined) return undefined;
  const say = words.trials.faults[fault.why];
  if (typeof say === "string") return say;
  return say(fault.value, fault.limit === undefined ? "" : String(Math.ceil(fault.limit * 100) / 100));
}
