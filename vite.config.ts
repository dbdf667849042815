import { defineConfig } from "vite";
import solid from "vite-plugin-solid";

export default defineConfig({
  root: "src/web",
  plugins: [solid()],
  build: { outDir: "../../dist/web", emptyOutDir: true, target: "es2022", assetsInlineLimit: 0 },
  server: { proxy: { "/api": `http://127.0.0.1:${process.env.PORT ?? 4180}` } },
});
