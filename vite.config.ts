import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import solid from "vite-plugin-solid";
import { offlineFiles, workerFile } from "./scripts/pages/offline-files.mjs";
import { plainFiles } from "./scripts/pages/plain-files.mjs";
import { pagePolicy } from "./src/server/page-policy.ts";

const inSource = (path: string): string => fileURLToPath(new URL(`src/${path}`, import.meta.url));

/** `no-house`: the same pages as plain files, for a host that keeps no notebook. */
export default defineConfig(({ mode }) => ({
  root: "src/web",
  plugins: [solid(), offlineFiles(), ...(mode === "no-house" ? [plainFiles(pagePolicy)] : [])],
  build: {
    outDir: mode === "no-house" ? "../../dist/plain" : "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    rolldownOptions: {
      // Nothing happens when words are read in: each page brings those of its own place.
      treeshake: { moduleSideEffects: [{ test: /src\/web\/words\//, sideEffects: false }] },
      input: {
        index: inSource("web/index.html"),
        "service-worker": inSource("service-worker/service-worker.ts"),
      },
      output: {
        // At the root, since a service worker answers only for what lies beside or below it.
        entryFileNames: ({ name }) => (name === "service-worker" ? workerFile : "assets/[name]-[hash].js"),
        codeSplitting: {
          groups: [
            // In one piece and first: the schemas look at how the library is set up when they are made.
            { name: "schemas", test: /node_modules\/zod|no-eval/, priority: 2 },
            // What eight places share comes in one file in place of forty: every file costs a slow phone its time.
            { name: "common", test: /src\/(core|web)\/.*\.tsx?$/, minShareCount: 8, priority: 1 },
          ],
        },
      },
    },
  },
  server: { proxy: { "/api": `http://127.0.0.1:${process.env.PORT ?? 4180}` } },
}));
