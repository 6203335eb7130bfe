/** Links that hold a job: there and back, and what becomes of broken ones. Node's own zlib and base64url (RFC 4648) as the outside. */
import { createHash } from "node:crypto";
import { deflateRawSync, inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { safeFileName, sheetFileName } from "../../../src/web/state/file-names.js";
import { isLink, LONGEST_LINK, linkOf, readLink } from "../../../src/web/state/share-link.js";
import { HOSTILE_LINE } from "../../hostile.js";
import { SEED } from "../../seed.js";

const job = { name: "job.yaml", text: "job: { number: 24-118 }\nbases: []\n", lacks: ["rows.csv"] };
const BROKEN = /^This link (is broken|is of another version|holds no job)/;

describe("a link", () => {
  it("gives back the job, whatever stands in it", () => {
    expect(readLink(linkOf(job))).toEqual(job);
    const hostile = { name: HOSTILE_LINE, text: `${HOSTILE_LINE}\u0000漢😀\r\n`, lacks: [HOSTILE_LINE, ""] };
    expect(readLink(linkOf(hostile))).toEqual(hostile);
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 300 }), (text) => {
        expect(readLink(linkOf({ ...job, text }))).toEqual({ ...job, text });
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("is what any deflater and base64url make of it, and safe in an address", () => {
    const link = linkOf(job);
    expect(link).toMatch(/^#job=1\.[A-Za-z0-9_-]{6}\.[A-Za-z0-9_-]+$/);
    const bytes = Buffer.from(link.split(".")[2] ?? "", "base64url");
    expect(JSON.parse(inflateRawSync(bytes).toString("utf8"))).toEqual([job.name, job.text, job.lacks]);
  });

  it("of a job of a hundred bases is short enough to be passed on", () => {
    const base = (at: number): string =>
      `  - { mark: B${at}, rods: { diameter: 3/4, grade: 36 }, pattern: { kind: rectangle, x: ${8 + (at % 7)}, y: 8 } }\n`;
    const text = `bases:\n${Array.from({ length: 100 }, (_, at) => base(at)).join("")}`;
    expect(linkOf({ ...job, text }).length).toBeLessThan(LONGEST_LINK / 10);
  });

  it.each([0.3, 0.6, 0.95])("that was cut at %s of it says so", (share) => {
    const link = linkOf(job);
    expect(readLink(link.slice(0, Math.floor(link.length * share)))).toMatch(BROKEN);
  });

  it("with any sign changed says so", () => {
    const link = linkOf(job);
    for (let at = 1; at < link.length; at += 1) {
      const changed = link.slice(0, at) + (link[at] === "A" ? "B" : "A") + link.slice(at + 1);
      const read = readLink(changed);
      expect(typeof read === "string" ? read : "read", changed).toMatch(BROKEN);
    }
  });

  it.each(["#job=", "#job=1.", "#job=1..", "#job=2.aaaaaa.aaaa", "#job=1.aaaaaa.%3Cscript%3E", "#job=null"])(
    "%s holds none",
    (link) => {
      expect(isLink(link)).toBe(true);
      expect(readLink(link)).toMatch(BROKEN);
    },
  );

  it.each([["null"], ["[]"], ["[1,2,3]"], ['["a","b"]'], ['{"text":"a"}'], ["["]])(
    "that holds %s holds no job",
    (json) => {
      expect(readLink(linkAround(deflateRawSync(Buffer.from(json))))).toBe("This link holds no job.");
    },
  );

  it("that swells to more than a job may have is not unpacked", () => {
    const bomb = deflateRawSync(Buffer.alloc(200_000_000, "a"));
    expect(readLink(linkAround(bomb))).toMatch(/16 MB/);
    expect(readLink(`#job=1.aaaaaa.${"a".repeat(3_000_000)}`)).toMatch(/3000014 characters/);
  });
});

/** A link with a right check sum around any bytes. */
function linkAround(bytes: Uint8Array): string {
  const sum = createHash("sha256").update(bytes).digest("base64url").slice(0, 6);
  return `#job=1.${sum}.${Buffer.from(bytes).toString("base64url")}`;
}

describe("a name to save under", () => {
  it.each([
    ["job.yaml", "job.yaml"],
    ["24-118 Cold store.yml", "24-118 Cold store.yml"],
    ["../../etc/passwd", "passwd.yaml"],
    ["C:\\windows\\nul.yaml", "job.yaml"],
    ["con", "job.yaml"],
    ["", "job.yaml"],
    ["...", "job.yaml"],
    [".bashrc", "bashrc.yaml"],
    ["a\u202Egpj.yaml", "a_gpj.yaml"],
    ['<img src=x onerror="1">.yaml', "_img src=x onerror=_1__.yaml"],
    [`${"x".repeat(500)}.yaml`, `${"x".repeat(100)}.yaml`],
    ["Halle Süd.json", "Halle Süd.json"],
  ])("%j is %j", (name, safe) => expect(safeFileName(name)).toBe(safe));
});

describe("a name under which a sheet is read", () => {
  it.each([
    ["Bases rev B.xlsx", "Bases rev B.xlsx"],
    ["host\u202Eile\u0000.csv", "hostile.csv"],
    ["Stützen Ø24.csv", "Stützen Ø24.csv"],
    [`${"n".repeat(300)}.xlsx`, `${"n".repeat(115)}.xlsx`],
    ["n".repeat(300), "n".repeat(120)],
  ])("%j is %j", (name, plain) => expect(sheetFileName(name)).toBe(plain));
});
