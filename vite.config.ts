/** The page: static files that run from any folder or server. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

export default defineConfig({
  root: fileURLToPath(new URL("src/web", import.meta.url)),
  // relative, so that the files may lie anywhere
  base: "./",
  publicDir: false,
  build: {
    outDir: fileURLToPath(new URL("dist/page", import.meta.url)),
    emptyOutDir: true,
    target: "es2023",
    // the policy of the page forbids data: in the place of files
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 4000,
  },
  worker: { format: "es" },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
});
