import type { KnipConfig } from "knip";

const config: KnipConfig = {
  entry: [
    "src/server/main.ts",
    "src/cli/checks/main.ts",
    "src/web/index.html",
    "scripts/*.mjs",
    "scripts/calibrate/*.mjs",
    "examples/*.mjs",
    "bench/*.bench.mjs",
    "bench/verdict-worker.mjs",
  ],
  project: ["src/**/*.{ts,tsx,css}", "scripts/**/*.mjs", "test/**/*.ts", "bench/**/*.mjs"],
  ignoreExportsUsedInFile: true,
  // of the system's packages, brought by the test set-up and by the rivals in bench/
  ignoreBinaries: ["certutil", "Rscript", "apt-get"],
  compilers: {
    css: (text) =>
      [...text.matchAll(/@(import\s+"[^"]+")/g)].map(([, statement]) => `${statement};`).join("\n"),
  },
};

export default config;
