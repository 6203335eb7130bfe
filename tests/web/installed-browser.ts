/** Chromium or Chrome as it is installed; `RODPLATE_CHROMIUM` names another place. */
import { existsSync } from "node:fs";

const PLACES = [
  process.env.RODPLATE_CHROMIUM ?? "",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

/** Path of a browser; undefined where there is none. */
export const browserPath: string | undefined = PLACES.find((path) => path !== "" && existsSync(path));
