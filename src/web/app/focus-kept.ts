/** The keyboard is never without a place: where what had it goes away or is disabled, what stands nearest has it. */
import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { ViewName } from "../state/model.js";

/** Where the view went away under the keyboard, the one that follows it has it; it begins at its top. */
export function useFocusKept(view: ViewName, main: RefObject<HTMLElement | null>): void {
  const isFirst = useRef(true);
  useEffect(() => {
    if (!isFirst.current && isNowhere()) main.current?.focus({ preventScroll: true });
    isFirst.current = false;
    main.current?.scrollTo(0, 0);
  }, [view, main]);
  useEffect(() => (main.current === null ? undefined : keepFocus(main.current)), [main]);
}

/** Watches until it is called back. */
function keepFocus(main: HTMLElement): () => void {
  let last: Element | null = null;
  const remember = ({ target }: FocusEvent): void => {
    last = target instanceof Element ? target : null;
  };
  // who presses beside everything gives it up
  const forget = (): void => {
    last = null;
  };
  const watch = new MutationObserver((records) => {
    if (last === null || !isNowhere() || isThere(last)) return;
    placeInstead(last, records, main).focus({ preventScroll: true });
  });
  document.addEventListener("focusin", remember);
  document.addEventListener("pointerdown", forget);
  watch.observe(document.body, { childList: true, subtree: true, attributeFilter: ["disabled"] });
  return () => {
    document.removeEventListener("focusin", remember);
    document.removeEventListener("pointerdown", forget);
    watch.disconnect();
  };
}

const isNowhere = (): boolean => document.activeElement === null || document.activeElement === document.body;

/** Nothing in the view has the keyboard: what comes next may take it. */
export const isAtNothing = (): boolean => isNowhere() || document.activeElement?.id === "view";

const isThere = (element: Element): boolean => element.isConnected && !element.matches(":disabled");

/** What came in its place; else what stands before it, after it, or around it; of a whole view the view. */
function placeInstead(last: Element, records: readonly MutationRecord[], main: HTMLElement): HTMLElement {
  if (last.isConnected) return nearest(last.parentElement, last.previousElementSibling, main);
  const removal = records.findLast(
    ({ target, removedNodes }) => target.isConnected && [...removedNodes].some((node) => node.contains(last)),
  );
  if (removal === undefined || !(removal.target instanceof Element) || removal.target === main) return main;
  const { target, previousSibling } = removal;
  const came = records.flatMap((record) => (record.target === target ? [...record.addedNodes] : []));
  return came.flatMap(stopsIn)[0] ?? nearest(target, elementAt(previousSibling, target), main);
}

/** The last stop at or before `before` among the children of `around`; else the first after it; else farther around. */
function nearest(around: Element | null, before: Element | null, main: HTMLElement): HTMLElement {
  if (around === null || around === main) return main;
  const children = [...around.children];
  const at = before === null ? 0 : children.indexOf(before) + 1;
  for (const child of children.slice(0, at).toReversed()) {
    if (child === main) return main;
    const stop = stopsIn(child).at(-1);
    if (stop !== undefined) return stop;
  }
  return children.slice(at).flatMap(stopsIn)[0] ?? nearest(around.parentElement, around.previousElementSibling, main);
}

/** The element at this node or before it; null: there is none any more. */
function elementAt(node: Node | null, parent: Element): Element | null {
  if (node === null || node.parentNode !== parent) return null;
  return node instanceof Element ? node : elementAt(node.previousSibling, parent);
}

/** Stops of the tab key in a part of the page that can be seen, itself among them. */
function stopsIn(node: Node): readonly HTMLElement[] {
  if (!(node instanceof Element)) return [];
  return [node, ...node.querySelectorAll("button, a, input, select, textarea, summary, [tabindex]")].filter(
    (each): each is HTMLElement =>
      each instanceof HTMLElement && each.tabIndex >= 0 && isThere(each) && each.checkVisibility(),
  );
}
