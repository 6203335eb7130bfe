/** What the keys of a job may say, from the schema of job files. */
import { keyHints } from "../../tasks/live/key-hints.js";
import type { TaskWork } from "./task-model.js";

/** For the fields of the page. */
export const findHints: TaskWork<"hints"> = async () => keyHints();
