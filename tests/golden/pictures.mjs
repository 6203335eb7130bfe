/** Makes README's pictures of a sample's set anew, in shades of grey, small. Needs poppler (pdftotext, pdftoppm). */
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { crc32, deflateSync } from "node:zlib";

const root = fileURLToPath(new URL("../..", import.meta.url));
const docs = join(root, "docs");
const folder = mkdtempSync(join(tmpdir(), "rodplate-pictures-"));
const run = (program, args) => execFileSync(program, args, { encoding: "utf8", maxBuffer: 1e9 });

/** Dots around and between pages that stand side by side. */
const GAP = 12;

/** By words that stand on the page and on no other, but for the cover's list. */
const PICTURES = [
  { name: "template", words: "PH-207-T9", width: 1500 },
  { name: "plan", words: "PLAN, PART 1 OF", width: 1500 },
  { name: "cover", words: "JOB PH-207", width: 1100 },
];

makePackage();
const [set] = readdirSync(join(folder, "package")).filter((name) => name.endsWith("_set.pdf"));
const pdf = join(folder, "package", set);
const pages = run("pdftotext", [pdf, "-"]).split("\f");
for (const { name, words, width } of PICTURES) {
  const page = pages.findIndex((text) => text.includes(words) && (name === "cover" || !text.includes("SET OF SHEETS")));
  if (page < 0) throw new Error(`no page says ${words}`);
  const out = join(folder, name);
  run("pdftoppm", [
    "-gray",
    "-f",
    `${page + 1}`,
    "-singlefile",
    "-scale-to-x",
    `${width}`,
    "-scale-to-y",
    "-1",
    pdf,
    out,
  ]);
  const png = pngOf(pixelsOf(readFileSync(`${out}.pgm`)));
  writeFileSync(join(docs, `${name}.png`), png);
  console.log(`docs/${name}.png: page ${page + 1}, ${Math.round(png.length / 1024)} KB`);
}
writeFileSync(join(docs, "package.png"), packagePicture());
console.log("docs/package.png");
await pagePicture();
rmSync(folder, { recursive: true });

/** The page with a base of eight rods, as a browser shows it from the built files; needs Chromium or Chrome. */
async function pagePicture() {
  const { chromium } = await import("playwright-core");
  const built = join(root, "dist", "page");
  const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml" };
  const server = createServer((request, response) => {
    const path = join(built, request.url === "/" ? "index.html" : request.url.split("?")[0]);
    if (!path.startsWith(built) || !existsSync(path)) return response.writeHead(404).end();
    return response.writeHead(200, { "content-type": types[extname(path)] ?? "" }).end(readFileSync(path));
  }).listen(0, "127.0.0.1");
  await new Promise((done) => server.once("listening", done));
  const executablePath = process.env.RODPLATE_CHROMIUM ?? "/usr/bin/chromium";
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.getByRole("button", { name: "Open sample packing-hall" }).click();
  await page.getByRole("list", { name: "Bases" }).getByRole("button", { name: /^B9/ }).click();
  await page.getByRole("img", { name: /^Template T9/ }).waitFor();
  await page.screenshot({ path: join(docs, "page.jpg"), type: "jpeg", quality: 72 });
  await browser.close();
  server.close();
  console.log("docs/page.jpg");
}

/** First pages as their readers open them, side by side: checker, table operator, rod shop, field, engineer. */
function packagePicture() {
  const files = [
    ["engineer", "_checking.pdf", 1],
    ["cut", "_cut-list.pdf", 1],
    ["rods", "_travellers.pdf", 3],
    ["field", "_setting-sheets.pdf", 9],
    ["engineer", "_letter.pdf", 1],
  ];
  const height = 720;
  const pages = files.map(([reader, ending, page]) => {
    const name = readdirSync(join(folder, "package", reader)).find((each) => each.endsWith(ending));
    const out = join(folder, `${reader}${page}${ending}`);
    const scale = ["-scale-to-y", `${height}`, "-scale-to-x", "-1"];
    run("pdftoppm", ["-gray", "-f", `${page}`, "-singlefile", ...scale, join(folder, "package", reader, name), out]);
    return pixelsOf(readFileSync(`${out}.pgm`));
  });
  return pngOf(sideBySide(pages, height));
}

/** Pages on grey ground, in a frame of it. */
function sideBySide(pages, height) {
  const width = pages.reduce((sum, page) => sum + page.width + GAP, GAP);
  const pixels = Buffer.alloc(width * (height + 2 * GAP), 187);
  let left = GAP;
  for (const page of pages) {
    for (let y = 0; y < Math.min(height, page.height); y++)
      page.pixels.copy(pixels, (y + GAP) * width + left, y * page.width, (y + 1) * page.width);
    left += page.width + GAP;
  }
  return { width, height: height + 2 * GAP, pixels };
}

/** Exit code 1: made, and something in it is held. */
function makePackage() {
  const args = ["dist/bin/rodplate.js", "make", "samples/packing-hall/job.yaml", "--out", join(folder, "package")];
  try {
    execFileSync(process.execPath, args, { cwd: root, stdio: "ignore" });
  } catch (error) {
    if (error.status !== 1) throw error;
  }
}

/** Of a PGM, a byte a dot. */
function pixelsOf(pgm) {
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString("latin1"));
  return { width: Number(width), height: Number(height), pixels: pgm.subarray(head.length) };
}

/** A PNG of 16 greys, two a byte. */
function pngOf({ width: w, height: h, pixels }) {
  const row = 1 + Math.ceil(w / 2);
  const raw = Buffer.alloc(row * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++)
      raw[y * row + 1 + (x >> 1)] |= Math.round(pixels[y * w + x] / 17) << (x % 2 === 0 ? 4 : 0);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(w, 0);
  header.writeUInt32BE(h, 4);
  header.set([4, 0, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(raw, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}
