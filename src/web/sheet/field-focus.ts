/** A field that opens takes the keys at once: what is typed right after it was opened stands in it. */
import type { RefObject } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

/**
 * The first field of the form has the focus, its text marked, from the moment that it opens; and again where it becomes a list
 * of words under the focus, once these are known.
 */
export function useFieldFocus(form: RefObject<HTMLFormElement | null>, isOpen: boolean): void {
  const last = useRef<Element | null>(null);
  useLayoutEffect(() => {
    const field = isOpen ? (form.current?.querySelector<HTMLElement>("input, select, button") ?? null) : null;
    const isNew = field !== null && field !== last.current;
    const isLost = last.current === null || !last.current.isConnected;
    last.current = field;
    if (!isNew || !isLost) return;
    field.focus();
    if (field instanceof HTMLInputElement) field.select();
  });
}
