/** The page: static files that run from any folder or server, and without one. */
import { fileURLToPath } from "node:url";
import { build, defineConfig, type Plugin, type UserConfig } from "vite";

const inPage = (path: string): string => fileURLToPath(new URL(`src/web/${path}`, import.meta.url));

const PAGE = {
  root: inPage("."),
  // relative, so that the files may lie anywhere
  base: "./",
  publicDir: false,
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
} satisfies UserConfig;

const BUILT = {
  outDir: fileURLToPath(new URL("dist/page", import.meta.url)),
  target: "es2023",
  // the policy of the page forbids data: in the place of files
  assetsInlineLimit: 0,
  reportCompressedSize: false,
  chunkSizeWarningLimit: 12000,
} satisfies UserConfig["build"];

/** How long plugins take is nothing to be told of a build. */
const QUIET = { checks: { pluginTimings: false } };

/** The classic scripts beside the modules: the first one, and the page as one script for addresses at which modules are refused. */
function classicScripts(): Plugin {
  return {
    name: "classic-scripts",
    apply: "build",
    transformIndexHtml: { order: "post", handler: startedByScript },
    closeBundle: async () => {
      await buildClassic("start.ts", "start");
      await buildClassic("main.tsx", "from-disk");
    },
  };
}

/** Modules are named to the first script, which decides; `crossorigin` would forbid the style where there is no server. */
function startedByScript(html: string): string {
  const pages: string[] = [];
  const needs: string[] = [];
  const rest = html
    .replace(/\s*<script type="module"[^>]* src="([^"]+)"><\/script>/g, (_, page: string) => (pages.push(page), ""))
    .replace(/\s*<link rel="modulepreload"[^>]* href="([^"]+)">/g, (_, need: string) => (needs.push(need), ""))
    .replaceAll(/(<link rel="stylesheet") crossorigin/g, "$1");
  if (pages.length !== 1) throw new Error(`index.html has ${pages.length} modules`);
  const named = `data-page="${pages[0]}" data-needs="${needs.join(" ")}" data-from-disk="./assets/from-disk.js"`;
  return rest.replace("</body>", `  <script src="./assets/start.js" ${named}></script>\n  </body>`);
}

async function buildClassic(input: string, name: string): Promise<void> {
  await build({
    ...PAGE,
    configFile: false,
    logLevel: "warn",
    resolve: { alias: [{ find: /^\.\/threads\.js$/, replacement: inPage("engine/threads-from-disk.ts") }] },
    build: {
      ...BUILT,
      emptyOutDir: false,
      modulePreload: false,
      rolldownOptions: {
        input: inPage(input),
        output: { format: "iife", entryFileNames: `assets/${name}.js` },
        // nothing is loaded by address from one script, so that it needs none of its own
        transform: { define: { "import.meta": "{}" } },
        ...QUIET,
      },
    },
    worker: { format: "iife", plugins: () => [withoutProfile()] },
  });
}

/** A thread made of a text has no place of its own: pdfkit would look beside it for a colour profile (of PDF/A, which is not written). */
function withoutProfile(): Plugin {
  return {
    name: "without-profile",
    enforce: "pre",
    transform: {
      filter: { id: /\/pdfkit\// },
      handler: (code) => code.replaceAll("import.meta.url", '"file:///"'),
    },
  };
}

export default defineConfig({
  ...PAGE,
  plugins: [classicScripts()],
  build: { ...BUILT, emptyOutDir: true, modulePreload: { polyfill: false }, rolldownOptions: QUIET },
  worker: { format: "es" },
});
