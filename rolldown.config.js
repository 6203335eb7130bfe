/** The program in a few files, since opening hundreds of modules takes longer than checking a small job. The library stays as it is compiled. */
import { defineConfig } from "rolldown";

export default defineConfig({
  input: { rodplate: "dist/cli/main.js" },
  platform: "node",
  output: {
    dir: "dist/bin",
    cleanDir: true,
    chunkFileNames: "[name].js",
    // Names of functions stay, for the lines of a reported fault.
    minify: { compress: true, mangle: { keepNames: true }, codegen: { removeWhitespace: true } },
  },
});
