/** What of a base's template is cut by itself, as a template of its own with its own files. */
import type { SummaryBase, SummaryPiece, TemplateSummary } from "./model.js";

type WithPieces = Pick<SummaryBase, "template" | "files">;

/** A piece in the place of the template. */
export type OnePiece<Base extends WithPieces> = Base & { readonly role: SummaryPiece["role"] };

/** Each piece of a base's template; the template itself where it is one piece. */
export function eachPiece<Base extends WithPieces>(base: Base): readonly OnePiece<Base>[] {
  const { pieces } = base.template;
  if (pieces === undefined) return [{ ...base, role: "template" }];
  return pieces.map((piece) => ({
    ...base,
    role: piece.role,
    template: templateOf(piece, base.template),
    files: base.files.filter(({ piece: mark }) => (mark ?? base.template.mark) === piece.mark),
  }));
}

/** The template that a file of a base is cut by: that of its piece. */
export function templateOfFile({ template }: WithPieces, mark: string | undefined): TemplateSummary {
  const piece = template.pieces?.find((each) => each.mark === mark);
  return piece === undefined ? template : templateOf(piece, template);
}

function templateOf(
  { role: _role, place: _place, ...plate }: SummaryPiece,
  { bases, heldBy }: TemplateSummary,
): TemplateSummary {
  return { ...plate, bases, ...(heldBy === undefined ? {} : { heldBy }) };
}
