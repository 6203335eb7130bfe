/** A part of the page's code that is no longer to be had: the server it came from was ended, or its files are gone. */
import { Refused } from "./refused.js";

/** What is said then. */
export const NOT_LOADED =
  "This part of the page could not be loaded from where the page came from: start rodplate open again, or put its files back, and try again. The job is kept in this browser.";

/** Thrown in the place of what a thread would have answered. */
export class NotLoaded extends Refused {
  constructor() {
    super([NOT_LOADED]);
  }
}

/** True for that, and for what browsers say of a module that does not come: Chromium and Firefox, Safari. */
export function isNotLoaded(error: unknown): boolean {
  const words = /dynamically imported module|importing a module script failed/i;
  return error instanceof NotLoaded || (error instanceof TypeError && words.test(error.message));
}
