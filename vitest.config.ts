import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    environment: "node",
    include: ["src/**/*.test.ts", "test/**/*.test.ts", "scripts/**/*.test.mjs"],
    testTimeout: 20_000,
  },
});
