import { defineCommand } from "./command.ts";

/** The server reads its settings from the environment, and keeps this process until it is told to end. */
export const command = defineCommand({
  usage: "serve   (PORT, HOST, LACBENCH_DATA, LACBENCH_NOTEBOOK are read from the environment)",
  positionals: 0,
  options: {},
  async run() {
    await import("../server/main.ts");
  },
});
