/**
 * Programs that show, print, check and scan sheets, none of them ours: Chromium, librsvg, poppler, qpdf, zbar; of solids admesh
 * and assimp. On a machine without them
 * their checks are skipped, unless RODPLATE_REQUIRE_OUTSIDE=1 makes them required, as in CI.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium } from "playwright-core";

/** Debian's packages by what is called. */
const PACKAGES = {
  chromium: "chromium",
  "rsvg-convert": "librsvg2-bin",
  pdftoppm: "poppler-utils",
  pdftotext: "poppler-utils",
  pdftocairo: "poppler-utils",
  qpdf: "qpdf",
  zbarimg: "zbar-tools",
  admesh: "admesh",
  assimp: "assimp-utils",
} as const;

export type Viewer = keyof typeof PACKAGES;

const DEJAVU = "/usr/share/fonts/truetype/dejavu/DejaVuSansCondensed-Bold.ttf";

/** True where something is not installed; says so on standard error. Never true where outside programs are required. */
export function isSkipped(...wanted: readonly (Viewer | "fonts-dejavu-extra")[]): boolean {
  if (process.env.RODPLATE_REQUIRE_OUTSIDE === "1") return false;
  const missing = wanted.filter((name) => !existsSync(name === "fonts-dejavu-extra" ? DEJAVU : `/usr/bin/${name}`));
  for (const name of missing) {
    const from = name === "fonts-dejavu-extra" ? name : PACKAGES[name];
    process.stderr.write(`SKIPPED: ${name} is not installed (apt-get install ${from}); nothing is checked by it\n`);
  }
  return missing.length > 0;
}

/** A folder of its own for one run. */
export function newFolder(): string {
  return mkdtempSync(join(tmpdir(), "rodplate-viewers-"));
}

/** What a program prints; throws where it ends with a fault. */
export function run(program: Viewer | "pdffonts" | "pdfinfo", args: readonly string[], environment = {}): string {
  const env = { ...process.env, ...environment };
  return execFileSync(`/usr/bin/${program}`, args, {
    encoding: "utf8",
    env,
    maxBuffer: 1e9,
    stdio: ["ignore", "pipe", "pipe"],
  });
}

/** Settings of fontconfig under which DejaVu is all that is installed: nothing like Arial, nor of its widths. */
export function dejavuAlone(folder: string): { readonly FONTCONFIG_FILE: string } {
  const path = join(folder, "fonts.conf");
  const text = `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>/usr/share/fonts/truetype/dejavu</dir><cachedir>${folder}/cache</cachedir></fontconfig>`;
  writeFileSync(path, text);
  return { FONTCONFIG_FILE: path };
}

/** Chromium where DejaVu is all that is installed; asks nothing of the network. */
export function startChromium(folder: string): Promise<Browser> {
  const quiet = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
  ];
  return chromium.launch({
    executablePath: "/usr/bin/chromium",
    args: [...quiet, "--disable-component-update", "--disable-sync"],
    env: { ...process.env, ...dejavuAlone(folder) } as Record<string, string>,
  });
}

/** A grey picture. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** Reads a binary PGM, as poppler writes it. */
export function readPgm(bytes: Uint8Array): Raster {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(bytes.subarray(0, 40)).toString("latin1"));
  if (head === null) throw new Error("no PGM");
  return { width: Number(head[1]), height: Number(head[2]), grey: bytes.subarray(head[0].length) };
}

/** Share of pixels in either picture that nothing within one pixel in the other is like, within a third of black to white. */
export function shareApart(a: Raster, b: Raster): number {
  if (a.width !== b.width || a.height !== b.height)
    throw new Error(`${a.width} by ${a.height} against ${b.width} by ${b.height}`);
  return (countAlone(a, b) + countAlone(b, a)) / (a.width * a.height);
}

function countAlone(a: Raster, b: Raster): number {
  let count = 0;
  for (let y = 1; y < a.height - 1; y++)
    for (let x = 1; x < a.width - 1; x++) if (isAlone(a.grey[y * a.width + x] ?? 0, b, x, y)) count += 1;
  return count;
}

function isAlone(grey: number, { grey: other, width }: Raster, x: number, y: number): boolean {
  if (Math.abs((other[y * width + x] ?? 0) - grey) < 85) return false;
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++) if (Math.abs((other[(y + dy) * width + x + dx] ?? 0) - grey) < 85) return false;
  return true;
}
