/** A small picture of each kind of pattern: rods as circles, what is typed as lines. */
import type { JSX } from "preact";
import type { FirstPattern } from "../../tasks/first-job.js";

interface Drawn {
  readonly rods: readonly (readonly [number, number])[];
  readonly lines: JSX.Element;
}

const DRAWN: Readonly<Record<FirstPattern["kind"], Drawn>> = {
  rectangle: {
    rods: [
      [14, 12],
      [50, 12],
      [14, 36],
      [50, 36],
    ],
    lines: <path d="M14 44H50M14 41V47M50 41V47M58 12V36M55 12H61M55 36H61" />,
  },
  lines: {
    rods: [
      [12, 14],
      [24, 14],
      [52, 14],
      [12, 34],
      [24, 34],
      [52, 34],
    ],
    lines: <path d="M12 4V44M24 4V44M52 4V44M4 14H60M4 34H60" stroke-dasharray="5 2 1 2" />,
  },
  circle: {
    rods: Array.from({ length: 8 }, (_, index) => {
      const angle = ((index + 0.5) * Math.PI) / 4;
      return [32 + 19 * Math.cos(angle), 24 + 19 * Math.sin(angle)] as const;
    }),
    lines: <path d="M13 24A19 19 0 1 1 51 24A19 19 0 1 1 13 24M28 24H36M32 20V28" stroke-dasharray="5 2 1 2" />,
  },
  points: {
    rods: [
      [12, 36],
      [30, 14],
      [52, 28],
    ],
    lines: <path d="M4 24H60M32 4V44M52 28V24M52 28H32" stroke-dasharray="2 2" />,
  },
};

/** For the eye alone: the name of the kind stands beside it. */
export function PatternPicture({ kind }: { readonly kind: FirstPattern["kind"] }): JSX.Element {
  const { rods, lines } = DRAWN[kind];
  return (
    <svg class="pattern-picture" viewBox="0 0 64 48" aria-hidden="true">
      {lines}
      {rods.map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r="3.5" />
      ))}
    </svg>
  );
}
