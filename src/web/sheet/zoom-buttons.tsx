/** Buttons that bring a drawing nearer, farther, and whole into its window. */
import type { JSX } from "preact";
import type { Zooming } from "./use-zoom.js";
import { STEP } from "./zoom.js";

/** In a corner of the window. */
export function ZoomButtons({ zooming: { by, whole, zoom } }: { readonly zooming: Zooming }): JSX.Element {
  return (
    <fieldset class="zoom" aria-label="Zoom">
      <button type="button" onClick={() => by(STEP)} aria-label="Zoom in">
        +
      </button>
      <button type="button" onClick={() => by(1 / STEP)} aria-label="Zoom out" disabled={zoom.times === 1}>
        −
      </button>
      <button type="button" onClick={whole} disabled={zoom.times === 1}>
        Whole
      </button>
    </fieldset>
  );
}
