/** The cells of a table as the proofs of headings look at them: by row and column, ditto marks answered by the cell above. */
import type { Length, Unit } from "../units/index.js";
import type { CellShape, Fit } from "./cell-shapes.js";
import { countIn, fitOf, lengthIn, shapeOf } from "./cell-shapes.js";
import type { FoundTable } from "./model.js";
import type { KnownHeading } from "./settled-column.js";

/** What the cells of a column say of a heading. */
export interface ColumnFit {
  readonly byRow: readonly Fit[];
  /** Row of the first cell that cannot stand under it; null where every cell can. */
  readonly refusedAt: number | null;
  /** True where no cell that says something can stand under it. */
  readonly isRefusedByAll: boolean;
  /** True where at least one cell is plainly of its form. */
  readonly isShown: boolean;
}

const DITTO = /^(?:"|''|\u201d|\u3003|do\.?|ditto)$/i;

const BLANK = /^(?:[-\u2010-\u2015]+|n\/?a|none|nil|tbd|\?|x)?$/i;

/** A table with its cells answered on demand; each column is looked at once. */
export class TableView {
  readonly rows: number;
  private readonly texts = new Map<number, readonly string[]>();
  private readonly lengths = new Map<number, readonly (Length | null)[]>();
  private readonly counts = new Map<number, readonly (number | null)[]>();
  private readonly fits = new Map<string, ColumnFit>();
  private readonly shapes = new Map<string, CellShape>();
  private readonly blank = new Map<number, boolean>();

  constructor(
    readonly table: FoundTable,
    readonly unit: Unit,
  ) {
    this.rows = table.rows.length;
  }

  /** Texts of a column from top to bottom; "" for blank cells and those that were struck out. */
  textsOf(column: number): readonly string[] {
    return remembered(this.texts, column, () => {
      const texts: string[] = [];
      for (const row of this.table.rows) {
        const cell = row[column];
        const text = cell === undefined || cell.isStruck === true ? "" : cell.text.trim();
        texts.push(DITTO.test(text) ? (texts.at(-1) ?? "") : BLANK.test(text) ? "" : text);
      }
      return texts;
    });
  }

  /** Lengths that the cells plainly say, in nanometres. */
  lengthsOf(column: number): readonly (Length | null)[] {
    const unit = this.table.columns[column]?.unit ?? null;
    return remembered(this.lengths, column, () =>
      eachOnce(this.textsOf(column), (text) => lengthIn(text, unit, this.unit)),
    );
  }

  /** Whole numbers that the cells plainly say. */
  countsOf(column: number): readonly (number | null)[] {
    return remembered(this.counts, column, () => eachOnce(this.textsOf(column), countIn));
  }

  /** Whether the column's cells can stand under the heading. */
  fitOf(column: number, heading: KnownHeading): ColumnFit {
    return remembered(this.fits, `${column} ${heading.name}`, () => {
      const fits = eachOnce(
        this.textsOf(column),
        (text): Fit => (text === "" ? "unsaid" : fitOf(heading, text, this.shape(text))),
      );
      const filled = this.textsOf(column).filter((text) => text !== "").length;
      const refusedAt = fits.indexOf("no");
      return {
        byRow: fits,
        refusedAt: refusedAt < 0 ? null : refusedAt,
        isRefusedByAll: filled > 0 && fits.filter((fit) => fit === "no").length === filled,
        isShown: fits.includes("yes"),
      };
    });
  }

  private shape(text: string): CellShape {
    return remembered(this.shapes, text, () => shapeOf(text));
  }

  /** True where no cell of the column holds anything. */
  isBlank(column: number): boolean {
    return remembered(this.blank, column, () => this.textsOf(column).every((text) => text === ""));
  }

  /** True where every cell is filled and none is as another, in any case. */
  isDistinct(column: number): boolean {
    const texts = this.textsOf(column)
      .filter((text) => text !== "")
      .map((text) => text.toLowerCase());
    return texts.length > 0 && new Set(texts).size === texts.length;
  }
}

/** What a text gives, asked once for each that is another. */
function eachOnce<Value>(texts: readonly string[], give: (text: string) => Value): readonly Value[] {
  const given = new Map<string, Value>();
  return texts.map((text) => remembered(given, text, () => give(text)));
}

function remembered<Key, Value>(among: Map<Key, Value>, key: Key, make: () => Value): Value {
  const known = among.get(key);
  if (known !== undefined) return known;
  const made = make();
  among.set(key, made);
  return made;
}
