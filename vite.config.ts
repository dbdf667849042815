import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import solid from "vite-plugin-solid";
import { offlineFiles, workerFile } from "./scripts/pages/offline-files.mjs";

const inSource = (path: string): string => fileURLToPath(new URL(`src/${path}`, import.meta.url));

export default defineConfig({
  root: "src/web",
  plugins: [solid(), offlineFiles()],
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: {
        index: inSource("web/index.html"),
        "service-worker": inSource("service-worker/service-worker.ts"),
      },
      output: {
        // At the root, since a service worker answers only for what lies beside or below it.
        entryFileNames: ({ name }) => (name === "service-worker" ? workerFile : "assets/[name]-[hash].js"),
        // In one piece and first: the schemas look at how the library is set up when they are made.
        codeSplitting: { groups: [{ name: "schemas", test: /node_modules\/zod|no-eval/ }] },
      },
    },
  },
  server: { proxy: { "/api": `http://127.0.0.1:${process.env.PORT ?? 4180}` } },
});
