/** A choice of one schedule of this machine, which looks and acts as a button. */
import type { JSX } from "preact";
import { useId } from "preact/hooks";

/** `children`: what the button says. */
export function SheetField({
  children,
  take,
}: {
  readonly children: string;
  take(files: readonly File[]): void;
}): JSX.Element {
  const id = useId();
  return (
    <label for={id} class="button file">
      {children}
      <input
        id={id}
        type="file"
        accept=".xlsx,.csv,.tsv,.txt"
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])];
          currentTarget.value = "";
          take(files);
        }}
      />
    </label>
  );
}
