/** The files of the built page, each by the path at which it is served; nothing else of the disk is reached by a path. */
import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { isThere } from "./disk.js";
import { INSTALLED } from "./shell.js";

const BUILT = join(INSTALLED, "dist", "page");

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
};

/** A file that is served. */
export interface PageFile {
  readonly type: string;
  read(): Uint8Array;
}

/** Every built file by its path, as `/assets/index.js`; null where the page is not built. `key`: of the job, which the page is told. */
export function pageFiles(key: string | null, folder: string = BUILT): ReadonlyMap<string, PageFile> | null {
  const paths = namesBelow(folder);
  if (!paths.includes("index.html")) return null;
  const files = new Map(
    paths.map((path): [string, PageFile] => [
      `/${path}`,
      { type: TYPES[extname(path)] ?? "application/octet-stream", read: () => readFileSync(join(folder, path)) },
    ]),
  );
  const start = { type: TYPES[".html"] ?? "", read: () => startPage(join(folder, "index.html"), key) };
  return files.set("/", start).set("/index.html", start);
}

/** Plain files alone: no link out of the folder is followed. */
function namesBelow(folder: string): readonly string[] {
  if (!isThere(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => lstatSync(join(folder, name)).isFile())
    .map((name) => name.replaceAll("\\", "/"));
}

/** The page's start, which says that a job is served with it. */
function startPage(path: string, key: string | null): Uint8Array {
  const text = readFileSync(path, "utf8");
  const told = key === null ? text : text.replace("</head>", `<meta name="rodplate-job" content="${key}" /></head>`);
  return new TextEncoder().encode(told);
}
