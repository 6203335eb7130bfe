/** A field with its label, its hint, and its fault under it. */
import type { JSX } from "preact";
import { useId } from "preact/hooks";

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onText: (text: string) => void;
  readonly fault: string | null;
  readonly hint?: string;
  /** Values with their words: a list to choose from. */
  readonly choices?: readonly (readonly [string, string])[];
  /** Several lines. */
  readonly isLong?: boolean;
}

/** What is typed is kept as it is. */
export function Field({ label, value, onText, fault, hint, choices, isLong = false }: FieldProps): JSX.Element {
  const id = useId();
  const about = fault === null ? (hint === undefined ? undefined : `${id}-hint`) : `${id}-fault`;
  const common = { id, value, "aria-invalid": fault !== null, "aria-describedby": about };
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {choices !== undefined ? (
        <select {...common} onChange={({ currentTarget }) => onText(currentTarget.value)}>
          {choices.map(([choice, words]) => (
            <option key={choice} value={choice}>
              {words}
            </option>
          ))}
        </select>
      ) : isLong ? (
        <textarea {...common} rows={3} onInput={({ currentTarget }) => onText(currentTarget.value)} />
      ) : (
        <input type="text" {...common} onInput={({ currentTarget }) => onText(currentTarget.value)} />
      )}
      {fault !== null ? (
        <span class="fault" id={`${id}-fault`}>
          {fault}
        </span>
      ) : (
        hint !== undefined && (
          <span class="hint" id={`${id}-hint`}>
            {hint}
          </span>
        )
      )}
    </div>
  );
}
