/** SETTING SECTION: rod, nuts, template and concrete, cut through, in words with least and most. */
import { group, rectangle, stroke } from "./items.js";
import type { Prepared } from "./request.js";
import type { Lettering } from "./sheet-sizes.js";
import type { SideView } from "./side-view.js";

/** The section through one rod as it is set. */
export function settingSection({ plate }: Prepared, { small }: Lettering): SideView {
  return {
    name: "setting-section",
    title: "SETTING SECTION",
    under: () => "NOT TO SCALE",
    sizes: [40, 34, 30].map((letters) => ({ width: letters * small, height: letters * small * 0.8 })),
    draw: ({ x0, x1, y0, y1 }, { width, height }) => {
      const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
      const half = Math.min(height / 2, plate.thickness / 2e6);
      return [
        group("setting-section", [stroke("outline", ...rectangle(x - width / 2, y - half, x + width / 2, y + half))]),
      ];
    },
  };
}
