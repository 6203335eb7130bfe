/** Shop files that come with the program, by the names under which a job asks for them. */
import { SHOP_FOLDER } from "../../job/index.js";

const TEXTS: Readonly<Record<string, string>> = import.meta.glob("../../../templates/shops/*.yaml", {
  query: "?raw",
  import: "default",
  eager: true,
});

/** Name and text of each. */
export function packagedFiles(): ReadonlyMap<string, string> {
  const entries = Object.entries(TEXTS);
  return new Map(entries.map(([path, text]) => [`${SHOP_FOLDER}${path.split("/").at(-1)}`, text]));
}
