import type { Effects } from "../src/cli/effects.ts";

/** The two outputs of a command, kept instead of printed. */
export function listen(): {
  readonly said: { stdout: string; stderr: string };
  readonly outputs: Pick<Effects, "stdout" | "stderr">;
} {
  const said = { stdout: "", stderr: "" };
  return {
    said,
    outputs: {
      stdout: (text) => {
        said.stdout += text;
      },
      stderr: (text) => {
        said.stderr += text;
      },
    },
  };
}
