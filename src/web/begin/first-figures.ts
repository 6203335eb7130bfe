/** The figures of a first template: which there are of each kind of pattern, what is lacking, and examples in its place. */
import type { FirstFigures, FirstPattern } from "../../tasks/first-job.js";
import type { Unit } from "../../units/index.js";

/** A field of a pattern. */
export interface PatternField {
  readonly key: string;
  readonly label: string;
  readonly hint: string;
  /** Kept as it is where nothing is typed. */
  readonly isOptional: boolean;
}

const field = (key: string, label: string, hint: string, isOptional = false): PatternField => ({
  ...{ key, label, hint, isOptional },
});

/** Fields of each kind, in the order in which they are typed. */
export const PATTERN_FIELDS: Readonly<Record<FirstPattern["kind"], readonly PatternField[]>> = {
  rectangle: [
    field("x", "X overall", "from rod to rod, outermost"),
    field("y", "Y overall", "the other way"),
    field("nx", "Rods in X", "blank: 2", true),
    field("ny", "Rods in Y", "blank: 2", true),
  ],
  lines: [
    field("x", "Lines at X", "from the middle, as -8, 0, 8"),
    field("y", "Lines at Y", "a rod at every crossing"),
  ],
  circle: [
    field("diameter", "Bolt circle", "diameter through the rods"),
    field("count", "Rods", "evenly spaced"),
    field("start", "First rod", "on-axis, straddle, or degrees"),
  ],
  points: [field("at", "Rods at X, Y", "as 0, 8; 0, -8")],
};

/** A pattern of this kind with nothing typed. */
export function emptyPattern(kind: FirstPattern["kind"]): FirstPattern {
  switch (kind) {
    case "rectangle":
      return { kind, x: "", y: "", nx: "", ny: "" };
    case "lines":
      return { kind, x: "", y: "" };
    case "circle":
      return { kind, diameter: "", count: "", start: "" };
    case "points":
      return { kind, at: "" };
  }
}

/** Nothing typed. */
export function emptyFigures(unit: Unit): FirstFigures {
  return { unit, diameter: "", thickness: "", pattern: emptyPattern("rectangle") };
}

/** The text of a field. */
export function figureOf(pattern: FirstPattern, key: string): string {
  const texts: Readonly<Record<string, string>> = pattern;
  return texts[key] ?? "";
}

/** The pattern with a field changed. */
export function withFigure<P extends FirstPattern>(pattern: P, key: string, text: string): P {
  return { ...pattern, [key]: text };
}

/** Labels of what must still be typed. */
export function lacking({ diameter, thickness, pattern }: FirstFigures): readonly string[] {
  const fields = PATTERN_FIELDS[pattern.kind];
  return [
    ...(diameter.trim() === "" ? ["Rod diameter"] : []),
    ...(thickness.trim() === "" ? ["Plate thickness"] : []),
    ...fields.flatMap(({ key, label, isOptional }) =>
      isOptional || figureOf(pattern, key).trim() !== "" ? [] : [label],
    ),
  ];
}

const EXAMPLES: Readonly<Record<Unit, Readonly<Record<string, string>>>> = {
  in: { rod: "3/4", plate: "1/4", side: "12", x: "-8, 0, 8", y: "-5, 5", circle: "24", at: "6, 6; -6, 6; 0, -6" },
  mm: {
    rod: "M20",
    plate: "6",
    side: "300",
    x: "-200, 0, 200",
    y: "-120, 120",
    circle: "600",
    at: "150, 150; -150, 150; 0, -150",
  },
};

/** What is not typed yet is drawn by an example; one side of a rectangle by the other. */
export function withExamples({ unit, diameter, thickness, pattern }: FirstFigures): FirstFigures {
  const { rod = "", plate = "" } = EXAMPLES[unit];
  return {
    unit,
    diameter: diameter.trim() === "" ? rod : diameter,
    thickness: thickness.trim() === "" ? plate : thickness,
    pattern: patternWithExamples(pattern, EXAMPLES[unit]),
  };
}

function patternWithExamples(pattern: FirstPattern, example: Readonly<Record<string, string>>): FirstPattern {
  const or = (text: string, other = ""): string => (text.trim() === "" ? other : text);
  switch (pattern.kind) {
    case "rectangle":
      return {
        ...pattern,
        x: or(pattern.x, or(pattern.y, example.side)),
        y: or(pattern.y, or(pattern.x, example.side)),
      };
    case "lines":
      return { ...pattern, x: or(pattern.x, example.x), y: or(pattern.y, example.y) };
    case "circle":
      return {
        ...pattern,
        diameter: or(pattern.diameter, example.circle),
        count: or(pattern.count, "8"),
        start: or(pattern.start, "straddle"),
      };
    case "points":
      return { ...pattern, at: or(pattern.at, example.at) };
  }
}
