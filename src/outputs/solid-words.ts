/** What files of solids say of themselves. */
import type { CheckedBase } from "../checks/checked.js";
import type { ModelFacts } from "../formats/solid-3mf.js";
import { printable } from "../sheets/text-metrics.js";
import { ASSEMBLY_CHORD } from "../solids/assembly.js";
import { PIECE_CHORD } from "../solids/plate-solid.js";
import type { Plate } from "../template/model.js";

type Of = Pick<CheckedBase, "job" | "held" | "open">;

/** For the short head of an STL: what counts first. */
export function pieceHead({ held }: Of, { mark, revision }: Plate): string {
  return `${heldWord(held)}chords within ${PIECE_CHORD} mm of arcs; ${mark} rev ${printable(revision)}`;
}

/** The same of a template with its rods. */
export function assemblyHead({ held }: Of, { mark, revision }: Plate): string {
  return `${heldWord(held)}chords within ${ASSEMBLY_CHORD} mm of arcs; ${mark} rev ${printable(revision)}, rods`;
}

const heldWord = (held: readonly string[]): string => (held.length > 0 ? "HELD; " : "");

/** Of a 3MF of a piece. */
export function pieceFacts(of: Of, plate: Plate): ModelFacts {
  const holes = "With every hole, cut or drilled, at nominal size, without marks.";
  return factsOf(of, `Template ${plate.mark} rev ${plate.revision}`, `${holes} ${chordWords(PIECE_CHORD)}`);
}

/** Of a 3MF of a template with its rods. */
export function assemblyFacts(of: Of, plate: Plate): ModelFacts {
  const title = `Template ${plate.mark} rev ${plate.revision} with rods and nuts`;
  return factsOf(of, title, `For reference: rods as plain bars, nuts to fit them. ${chordWords(ASSEMBLY_CHORD)}`);
}

function chordWords(chord: number): string {
  return `Arcs are chords whose ends lie on them, at most ${chord} mm off. z 0 is the underside, TOP is up, x and y as on the sheet.`;
}

function factsOf({ job, held }: Of, title: string, about: string): ModelFacts {
  const status = held.length > 0 ? "HELD: not to be made. " : "";
  const description = `Job ${job.number}. ${status}${job.status === "released" ? "" : "NOT RELEASED. "}${about}`;
  return { title, description, program: "rodplate", unit: job.unit };
}
