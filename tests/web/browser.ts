/**
 * The page in a real browser, driven as a person would. Static files from a server on loopback; whatever the browser complains
 * of on the way, a fault, a refused file, something that the page's policy forbids, fails the test that met it. Chromium or
 * Chrome as they are installed; without one its tests are skipped, unless RODPLATE_REQUIRE_OUTSIDE=1 makes them required.
 */
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { browserPath } from "./installed-browser.js";

/** Folder of the built page. */
export const BUILT: string = fileURLToPath(new URL("../../dist/page", import.meta.url));

/** True where no browser is installed; says on standard error how to get one. Never true where outside programs are required. */
export function hasNoBrowser(): boolean {
  if (browserPath !== undefined || process.env.RODPLATE_REQUIRE_OUTSIDE === "1") return false;
  process.stderr.write(
    "SKIPPED: no Chromium or Chrome is installed (Debian: apt-get install chromium; else set RODPLATE_CHROMIUM to its path); the page is not tested\n",
  );
  return true;
}

/** Solids are drawn without a graphics card too. */
const ARGUMENTS = ["--no-sandbox", "--enable-unsafe-swiftshader"];

/** How fast a graphics driver is when pictures are taken of its page is no complaint of the page. */
const OF_DRIVER = /GL Driver Message \(OpenGL, Performance/;

/** What Chromium says of a request that the page itself gave up: it was loaded again, or ended a thread, before all had come. */
const GIVEN_UP = "net::ERR_ABORTED";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
  ".svg": "image/svg+xml",
};

/** A file server that runs. */
export interface FileServer {
  readonly address: string;
  close(): void;
}

/** Serves the built page as any file server does, below a path that ends with a slash. `port` 0: any that is free. */
export async function serve(below = "/", port = 0): Promise<FileServer> {
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const path = pathname.startsWith(below) ? `/${pathname.slice(below.length)}` : "/..";
    const file = join(BUILT, normalize(path === "/" ? "/index.html" : path));
    if (!file.startsWith(BUILT) || !existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" });
    response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(port, "127.0.0.1", resolve));
  const close = (): void => {
    server.close();
    server.closeAllConnections();
  };
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}${below}`, close };
}

/** What tests of the page are given. */
export interface Driver {
  /** A page of its own context, at the empty state. What it complained of is told at the end of `visit`. */
  visit(work: (page: Page, context: BrowserContext) => Promise<void>, options?: VisitOptions): Promise<void>;
  readonly address: () => string;
}

/** How the page is looked at. */
export interface VisitOptions {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Where the page lies, where not at the driver's server. */
  readonly at?: string;
  /** What follows the address, as `#job=...`. */
  readonly fragment?: string;
  /** Complaints that the test itself provokes. */
  readonly expected?: RegExp;
}

/** Starts a browser and a server for the tests of one file. */
export function startDriver(): Driver {
  let browser: Browser | null = null;
  let server: FileServer | null = null;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: browserPath ?? "/usr/bin/chromium", args: ARGUMENTS });
    server = await serve();
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });
  const address = (): string => server?.address ?? "";
  return {
    address,
    visit: async (work, { width = 1280, height = 800, dark = false, at = address(), fragment = "", expected } = {}) => {
      if (browser === null) throw new Error("the browser was not started");
      const context = await browser.newContext({
        viewport: { width, height },
        colorScheme: dark ? "dark" : "light",
        acceptDownloads: true,
      });
      const complaints: string[] = [];
      const page = await context.newPage();
      page.on("console", (message) => {
        const isComplaint = message.type() === "error" || message.type() === "warning";
        if (isComplaint && !OF_DRIVER.test(message.text())) complaints.push(message.text());
      });
      page.on("pageerror", (error) => complaints.push(error.message));
      page.on("requestfailed", (request) => {
        if (request.failure()?.errorText !== GIVEN_UP) complaints.push(`not loaded: ${request.url()}`);
      });
      page.on("request", (request) => {
        if (!request.url().startsWith(new URL(".", at).href) && !/^(blob|data):/.test(request.url()))
          complaints.push(`asked of another server: ${request.url()}`);
      });
      try {
        await page.goto(`${at}${fragment}`);
        await work(page, context);
        expect(complaints.filter((words) => expected?.test(words) !== true)).toEqual([]);
      } finally {
        await context.close();
      }
    },
  };
}
