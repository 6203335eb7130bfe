/** What is looked at beside the state: texts as written, the layout, its points. Nothing of the job changes by it. */
import type { LivePlan, LivePoints, Room, Zoom } from "../../tasks/live/plan-model.js";
import type { Engine } from "../engine/engine.js";

/** Looks. */
export interface LookActions {
  /** Every scalar of the job as written under keys of its first level, by key path. */
  written(keys: readonly string[]): Promise<Readonly<Record<string, string>>>;
  /** The layout drawn in a room; null where no job was ever right. */
  plan(room: Room, zoom: Zoom): Promise<LivePlan | null>;
  /** Points to set out; null where there is no layout. */
  points(): Promise<LivePoints | null>;
}

/** Looks by an engine. */
export function startLookActions(engine: Engine): LookActions {
  return {
    written: async (keys) => (await engine.ask({ kind: "written", keys })).written ?? {},
    plan: async (room, zoom) => (await engine.ask({ kind: "plan", room, zoom })).plan ?? null,
    points: async () => (await engine.ask({ kind: "points" })).points ?? null,
  };
}
