/** What stands behind the canvas of a solid: from where it is seen, and when it is drawn again. */
import type { LiveSolid } from "../../tasks/live/solid.js";
import { startOrbit } from "./orbit.js";
import type { Inks, Stage } from "./stage.js";
import { layTags } from "./tags.js";
import { between, namedViewPoint, type ViewPoint, type ViewPointName } from "./view-point.js";

/** A canvas that shows a solid until it is stopped. */
export interface Table {
  /** From where it is seen stays as it is, unless it is another base. */
  show(solid: LiveSolid, base: string): Promise<void>;
  go(to: ViewPointName | ((from: ViewPoint) => ViewPoint)): void;
  stop(): void;
}

/** null where the browser draws no solids. */
export function startTable(canvas: HTMLCanvasElement, tags: HTMLDivElement): Table | null {
  const context = canvas.getContext("webgl2", { antialias: true, preserveDrawingBuffer: true });
  if (context === null) return null;
  let view = namedViewPoint("slant", null);
  let stage: Stage | null = null;
  let shown: { readonly base: string; readonly solid: LiveSolid } | null = null;
  const draw = (): void => {
    if (stage === null || shown === null || canvas.clientWidth === 0) return;
    layTags(tags, stage.draw(view, inksOf(canvas)), canvas);
    canvas.dataset.shown = shown.solid.template;
  };
  const frames = startFrames();
  const redraw = (): void => frames.next(draw);
  const set = (next: ViewPoint): void => {
    view = next;
    redraw();
  };
  const turnTo = (to: ViewPoint): void => {
    const from = view;
    frames.run((share) => {
      view = between(from, to, share);
      draw();
    });
  };
  const whole = (from: ViewPoint): ViewPoint => ({ ...from, zoom: stage?.fit(from) ?? 1, right: 0, up: 0 });
  const named = (name: ViewPointName): ViewPoint => whole(namedViewPoint(name, shown?.solid.north ?? null));
  const stopOrbit = startOrbit(canvas, { get: () => view, set, whole: () => turnTo(whole(view)) });
  const stopWatch = watch(canvas, redraw);
  let isStopped = false;
  return {
    show: async (solid, base) => {
      const isOther = shown?.base !== base;
      shown = { base, solid };
      const { startStage } = await import("./stage.js");
      if (isStopped) return;
      stage ??= startStage(canvas, context);
      stage.show(shown.solid);
      if (isOther) view = named("slant");
      redraw();
    },
    go: (to) => turnTo(typeof to === "string" ? named(to) : to(view)),
    stop: () => {
      isStopped = true;
      for (const end of [frames.stop, stopOrbit, stopWatch]) end();
      stage?.stop();
      context.getExtension("WEBGL_lose_context")?.loseContext();
    },
  };
}

/** Draws again when the room, the colours or the graphics card are others. */
function watch(canvas: HTMLCanvasElement, redraw: () => void): () => void {
  const end = new AbortController();
  const room = new ResizeObserver(redraw);
  room.observe(canvas);
  for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)"])
    matchMedia(query).addEventListener("change", redraw, { signal: end.signal });
  canvas.addEventListener("webglcontextlost", (event) => event.preventDefault(), { signal: end.signal });
  canvas.addEventListener("webglcontextrestored", redraw, { signal: end.signal });
  return () => {
    end.abort();
    room.disconnect();
  };
}

/** Milliseconds that a turn to another view takes. */
const TURN = 260;

/** One drawing a frame of the screen; `run` goes from 0 to 1, at once for who asked for less motion. */
function startFrames(): { next(draw: () => void): void; run(step: (share: number) => void): void; stop(): void } {
  let frame = 0;
  const next = (draw: (now: number) => void): void => {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(draw);
  };
  return {
    next,
    run: (step) => {
      const isStill = matchMedia("(prefers-reduced-motion: reduce)").matches;
      const start = performance.now();
      const go = (now: number): void => {
        const share = isStill ? 1 : Math.min(1, Math.max(0, now - start) / TURN);
        step(share * share * (3 - 2 * share));
        if (share < 1) next(go);
      };
      next(go);
    },
    stop: () => cancelAnimationFrame(frame),
  };
}

/** As the style sheet has them now: dark, light, or those of the system. */
function inksOf(canvas: HTMLCanvasElement): Inks {
  const { backgroundColor, color } = getComputedStyle(canvas);
  return { paper: backgroundColor, ink: color };
}
