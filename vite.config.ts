import { defineConfig } from "vite";
import solid from "vite-plugin-solid";

export default defineConfig({
  root: "src/web",
  plugins: [solid()],
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    // In one piece and first: the schemas look at how the library is set up when they are made.
    rolldownOptions: {
      output: { codeSplitting: { groups: [{ name: "schemas", test: /node_modules\/zod|no-eval/ }] } },
    },
  },
  server: { proxy: { "/api": `http://127.0.0.1:${process.env.PORT ?? 4180}` } },
});
