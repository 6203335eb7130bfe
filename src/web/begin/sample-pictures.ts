/** Small pictures of the samples, drawn by the engine once the page stands: outline, holes and openings without a word. */
import { useEffect, useState } from "preact/hooks";
import type { ScreenPlan } from "../../sheets/on-screen.js";
import type { PathPart, SceneItem } from "../../sheets/scene.js";
import { greatestOf, leastOf } from "../../units/extremes.js";
import { startPreview } from "./preview.js";
import { SAMPLES, sampleFiles } from "./samples.js";

/** A picture: `height` of the paper that its items stand on, millimetres; what of it is seen. */
export interface Picture {
  readonly viewBox: string;
  readonly height: number;
  readonly items: readonly SceneItem[];
}

const ROOM = { width: 170, height: 120 };
const SHOWN: ReadonlySet<string> = new Set(["outline", "hole", "centre"]);

/** Made once; the samples do not change. */
const made = new Map<string, Picture>();

/** The pictures that are there, by the sample's name. */
export function useSamplePictures(): ReadonlyMap<string, Picture> {
  const [pictures, setPictures] = useState<ReadonlyMap<string, Picture>>(new Map(made));
  useEffect(() => {
    if (made.size === SAMPLES.length) return;
    const preview = startPreview();
    const draw = async (): Promise<void> => {
      for (const { name, base } of SAMPLES.filter((sample) => !made.has(sample.name))) {
        const { view } = await preview.look({ files: await sampleFiles(name), base, room: ROOM });
        if (view === null) continue;
        made.set(name, pictureOf(view.plan));
        setPictures(new Map(made));
      }
      preview.stop();
    };
    const waiting = setTimeout(() => void draw(), 0);
    return () => {
      clearTimeout(waiting);
      preview.stop();
    };
  }, []);
  return pictures;
}

function pictureOf({ items, height }: ScreenPlan): Picture {
  const lines = linesOf(items);
  const outlines = lines.flatMap((item) => (item.kind === "stroke" && item.role === "outline" ? item.parts : []));
  const corners = outlines.flatMap(reachOf);
  const [xs, ys] = [corners.map((corner) => corner[0]), corners.map((corner) => corner[1])];
  const [left, right] = [leastOf(xs, ROOM.width), greatestOf(xs, 0)];
  const [low, high] = [leastOf(ys, ROOM.height), greatestOf(ys, 0)];
  const [x, y] = [left - EDGE, height - high - EDGE];
  return { viewBox: `${x} ${y} ${right - left + 2 * EDGE} ${high - low + 2 * EDGE}`, height, items: lines };
}

const EDGE = 6;

type Corner = readonly [number, number];

function reachOf(part: PathPart): readonly Corner[] {
  switch (part.kind) {
    case "circle": {
      const { center, radius } = part;
      return [
        [center.x - radius, center.y - radius],
        [center.x + radius, center.y + radius],
      ];
    }
    case "line":
    case "arc":
      return [part.from, part.to].map(({ x, y }) => [x, y] as const);
  }
}

function linesOf(items: readonly SceneItem[]): readonly SceneItem[] {
  return items.flatMap((item): readonly SceneItem[] => {
    if (item.kind === "group") return linesOf(item.items);
    return item.kind === "stroke" && SHOWN.has(item.role) ? [item] : [];
  });
}
