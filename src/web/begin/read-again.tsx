/** Of a job whose bases were read from a sheet: the way to read the sheet again, as it is or a newer one. */
import type { JSX } from "preact";
import { readable } from "../../diagnostics/printable.js";
import { useActions, usePart } from "../app/page.js";
import { sheetReadInto } from "../state/model.js";
import { sheetOf } from "./hand-over.js";
import { SheetField } from "./sheet-field.js";

/** Nothing where there is no such sheet at hand. */
export function ReadAgain(): JSX.Element | null {
  const name = usePart(({ live }) => (live === null ? null : sheetReadInto(live)));
  const actions = useActions();
  if (name === null) return null;
  const take = async ([file]: readonly File[]): Promise<void> => {
    const newer = file === undefined ? null : await sheetOf(file, actions);
    if (newer !== null) await actions.readInto({ ...newer, name });
  };
  return (
    <p class="row taking">
      <span>These bases were read from {readable(name)}.</span>
      <SheetField take={(files) => void take(files)}>Read a newer one</SheetField>
    </p>
  );
}
