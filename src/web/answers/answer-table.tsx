/** A table of an answer. */
import type { JSX } from "preact";
import type { AnswerTable as Table } from "../engine/answer-table.js";
import { Scrolled } from "./scrolled.js";

/** Scrolls by itself where the page is narrow. */
export function AnswerTable({ table, name }: { readonly table: Table; readonly name: string }): JSX.Element | null {
  const { heads, figures, rows } = table;
  if (rows.length === 0) return null;
  const classOf = (column: number): string | undefined => (figures.includes(column) ? "figure" : undefined);
  return (
    <Scrolled look="table-room" name={name}>
      <table>
        <thead>
          <tr>
            {heads.map((head, i) => (
              <th key={i} scope="col" class={classOf(i)}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ state, cells }, i) => (
            <tr key={i} class={state}>
              {cells.map((cell, column) => (
                <td key={column} class={classOf(column)}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}
