/** The program in a few files, since opening hundreds of modules takes longer than checking a small job. The library stays as it is compiled. */
import { defineConfig } from "rolldown";

export default defineConfig({
  // the second is opened as a thread, by its name
  input: { rodplate: "dist/cli/main.js", "base-thread": "dist/cli/base-thread.js" },
  platform: "node",
  output: {
    dir: "dist/bin",
    cleanDir: true,
    entryFileNames: "[name].js",
    chunkFileNames: "[name].js",
    // Names of functions stay, for the lines of a reported fault.
    minify: { compress: true, mangle: { keepNames: true }, codegen: { removeWhitespace: true } },
  },
});
