/** A margin as a bar: what passes to the right of the line, what fails to the left. The text beside it says the same. */
import type { JSX } from "preact";

/** A margin of this share of its limit fills its side. */
const WHOLE = 0.5;
const [WIDTH, HEIGHT, LEAST] = [80, 8, 2];

/** `share`: of the limit, below 0 where the row fails; null: no bar, its room stays. */
export function MarginBar({ share }: { readonly share: number | null }): JSX.Element {
  const middle = WIDTH / 2;
  const size = share === null ? 0 : Math.max(LEAST, (Math.min(WHOLE, Math.abs(share)) / WHOLE) * middle);
  return (
    <svg class="margin-bar" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      {share !== null && (
        <>
          <line class="axis" x1={0} x2={WIDTH} y1={HEIGHT / 2} y2={HEIGHT / 2} />
          <rect
            class={share < 0 ? "short" : "more"}
            x={share < 0 ? middle - size : middle}
            y={1}
            width={size}
            height={HEIGHT - 2}
          />
          <line class="limit" x1={middle} x2={middle} y1={0} y2={HEIGHT} />
        </>
      )}
    </svg>
  );
}
