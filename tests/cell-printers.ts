/** Values of a schedule -> ways in which people write them into one cell (common practice), for tests that read them back. */
import { formatFeetInches, formatInches, formatLength, type Length, type Unit } from "../src/units/index.js";

/** A length in 1/16 in or in whole millimetres, as many ways as its unit has. */
export function printLength(length: Length, unit: Unit): readonly string[] {
  if (unit === "mm")
    return [formatLength(length, "mm"), `${formatLength(length, "mm")} mm`, `${formatLength(length, "mm")}mm`];
  const mixed = formatInches(length, 16);
  const spaced = mixed.replace("-", " ");
  const signs = spaced.replace("1/2", "½").replace("1/4", "¼").replace("3/4", "¾").replace("1/8", "⅛");
  const feet = formatFeetInches(length, 16);
  return [
    mixed,
    spaced,
    signs,
    `${mixed}"`,
    `${spaced}"`,
    `${signs}″`,
    `${mixed} in`,
    `${spaced} IN.`,
    `${mixed}”`,
    feet,
    feet.replace("'-", "’ "),
  ];
}

/** The same without feet: sizes of rods are given in inches. */
export function printSize(length: Length, unit: Unit): readonly string[] {
  return printLength(length, unit).filter((text) => !/['’]/.test(text));
}

/** A diameter with its sign, before or behind. */
export function printDiameter(length: Length, unit: Unit): readonly string[] {
  return printSize(length, unit).flatMap((text) => [
    `${text}Ø`,
    `Ø${text}`,
    `${text} DIA`,
    `${text} dia.`,
    `⌀ ${text}`,
    `${text} ø`,
  ]);
}

/** A number of rods and their size: signs that part them so that there is one reading. */
export function printRods(count: number, size: string): readonly string[] {
  return [
    `(${count}) ${size}`,
    `(${count})-${size}`,
    `${count} NO. ${size}`,
    `${count} EA ${size} RODS`,
    `${count} nos ${size}`,
    `${count} rods of ${size}`,
  ];
}

/** Two sides joined as people join them. */
export function printSides(x: string, y: string): readonly string[] {
  return [`${x}x${y}`, `${x} x ${y}`, `${x} X ${y}`, `${x}\u00A0×\u00A0${y}`];
}

/** A base plate by its sides and thickness. */
export function printPlate(x: string, y: string, thickness: string): readonly string[] {
  const sides = printSides(x, y);
  return sides.flatMap((plan) => [
    `${plan} PL ${thickness}`,
    `PL ${thickness} x ${plan}`,
    `PL${thickness}x${plan}`,
    `${plan} x ${thickness}`,
    `BASE PL ${plan} x ${thickness} THK.`,
  ]);
}

/** Spaces at a pitch, with their whole or without. */
export function printSpaces(spaces: number, pitch: string, overall: string): readonly string[] {
  return [
    `${spaces} SPA @ ${pitch}`,
    `${spaces} EQ SPA @ ${pitch}`,
    `${spaces} @ ${pitch} = ${overall}`,
    `${spaces} spaces at ${pitch} = ${overall}`,
    `${spaces} SPA @ ${pitch}=${overall} O.A.`,
  ];
}

/** A grade of ASTM F1554 with a finish: the specification's numbers are 36, 55 and 105. */
export function printMaterial(grade: string, finish: "galvanized" | "plain" | null): readonly string[] {
  const ends =
    finish === null
      ? [""]
      : finish === "plain"
        ? [" PLAIN", ", BLACK"]
        : [" HDG", ", GALV.", " (HDG)", " HOT-DIP GALVANIZED", " Galvanised"];
  const grades = [
    `F1554 GR ${grade}`,
    `F1554-${grade}`,
    `ASTM F1554, GRADE ${grade}`,
    `F1554 GR.${grade}`,
    `F 1554 Gr. ${grade}`,
  ];
  return grades.flatMap((text) => ends.map((end) => text + end));
}

/** A run of marks with one prefix. */
export function printRange(first: string, last: string): readonly string[] {
  return [`${first}-${last}`, `${first} - ${last}`, `${first} THRU ${last}`, `${first} to ${last}`, `${first}–${last}`];
}
