/** README's examples of the library, run as they stand there: each prints what its closing comments say. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const chapter = /\n## As a library\n([\s\S]*?)\n## /.exec(readFileSync(join(root, "README.md"), "utf8"))?.[1] ?? "";
const examples = [...chapter.matchAll(/```js\n([\s\S]*?)```/g)].map(([, code = ""]) => code);

/** Inside the package's own folder, so that `rodplate` is the package itself. */
function outputOf(code: string): string {
  const folder = mkdtempSync(join(root, "dist", ".example-"));
  try {
    writeFileSync(join(folder, "example.mjs"), code);
    return execFileSync(process.execPath, [join(folder, "example.mjs")], { encoding: "utf8" });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe("README's examples of the library", () => {
  it("are three", () => {
    expect(examples).toHaveLength(3);
  });

  it.each(examples.map((code) => [code.match(/"rodplate";|import \{ ([^}]*) \} from "rodplate"/)?.[1] ?? "", code]))(
    "%s",
    (_functions, code) => {
      const said = /((?:^\/\/ .*\n)+)$/m.exec(code)?.[1] ?? "";
      expect(said).not.toBe("");
      expect(outputOf(code)).toBe(said.replace(/^\/\/ /gm, ""));
    },
  );
});
