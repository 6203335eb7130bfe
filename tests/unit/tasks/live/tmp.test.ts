import { readFileSync } from "node:fs";
import { it } from "vitest";
import { openLive } from "../../../../src/tasks/live/open-live.js";
import { readdirSync } from "node:fs";
const shops = readdirSync("templates/shops").map((n) => [`templates/shops/${n}`, readFileSync(`templates/shops/${n}`, "utf8")] as const);
const shopInputs = (t: string) => ({ job: "job.yaml", files: new Map([["job.yaml", t], ...shops]) });
it("prints", () => {
  for (const name of ["machine-hall", "signal-mast", "packing-hall"]) {
    const text = readFileSync(`samples/${name}/job.yaml`, "utf8");
    const live = openLive(shopInputs(text), { date: "2026-01-01" });
    for (const base of live.state().bases) {
      const view = live.look({ base: base.path, room: { width: 200, height: 150 } });
      if (view === null) { console.log(base.path, "no view"); continue; }
      console.log(`== ${name} ${base.path} unplaced ${view.plan.unplaced.length}`);
      for (const f of view.figures.figures) console.log(`  ${f.words} | ${f.name} | ${f.keys.map((k) => `${k.key}=${k.shown} ${k.takes.kind === "moves" ? JSON.stringify(k.takes.moves) : k.takes.kind} "${k.note}"`).join(" ; ")} | ${f.follows}`);
      for (const f of view.figures.outlines) console.log(`  outline ${f.words} ${f.lines.length} | ${f.keys.map((k) => k.key).join(" ")}`);
      console.log("  " + view.figures.holes[0]?.words);
    }
  }
});
