import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    environment: "node",
    include: ["src/**/*.test.ts", "test/**/*.test.ts", "scripts/**/*.test.mjs"],
    testTimeout: 20_000,
    isolate: false, // one set of modules for all files of a worker: half the time; a test cleans up what it changes
  },
});
