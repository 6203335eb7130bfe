/** A figure that is edited where it stands: it looks like its text until it is pressed, then it is a field. */
import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { useNow } from "../app/use-now.js";

/** A figure, and what is done with what is typed. */
export interface EditSpotProps {
  /** What a screen reader calls it, and the field. */
  readonly name: string;
  /** As it is written; what is typed begins with it. */
  readonly text: string;
  /** Shown while it is no field; a drawing has its own letters under it. */
  readonly shown: string;
  readonly class: string;
  readonly style?: Readonly<Record<string, string>>;
  readonly isWrong: boolean;
  take(text: string): void;
}

/** Enter and F2 open it, Enter takes what is typed, Escape leaves it as it was; the keyboard then is where it was. */
export function EditSpot({ name, text, shown, style, isWrong, take, ...own }: EditSpotProps): JSX.Element {
  const field = useNow<string | null>(null);
  const button = useRef<HTMLButtonElement>(null);
  const isBack = useRef(false);
  useEffect(() => {
    if (field.drawn === null && isBack.current) button.current?.focus({ preventScroll: true });
    isBack.current = false;
  }, [field.drawn === null]);
  // the browser tells of a field that is taken off that it lost the keyboard
  const close = (isTaken: boolean, isByKey: boolean): void => {
    const typed = field.get()?.trim() ?? text;
    isBack.current ||= isByKey;
    field.set(null);
    if (isTaken && typed !== text) take(typed);
  };
  if (field.drawn === null) {
    return (
      <button
        type="button"
        ref={button}
        class={`${own.class}${isWrong ? " wrong" : ""}`}
        style={style}
        aria-label={`${name}, ${text === "" ? "blank" : text}: edit`}
        onClick={() => field.set(text)}
        onKeyDown={(event) => {
          if (event.key !== "F2") return;
          event.preventDefault();
          field.set(text);
        }}
      >
        {shown}
      </button>
    );
  }
  return (
    <input
      class={`${own.class} open`}
      style={style === undefined ? undefined : { left: style.left, top: style.top }}
      aria-label={name}
      value={field.drawn}
      size={Math.max(6, field.drawn.length + 1)}
      autocomplete="off"
      spellcheck={false}
      ref={(input) => {
        if (input !== null && document.activeElement !== input) {
          input.focus();
          input.select();
        }
      }}
      onInput={({ currentTarget: { value } }) => field.set(value)}
      onBlur={() => close(true, false)}
      onKeyDown={(event) => {
        if (event.key === "Enter") close(true, true);
        else if (event.key === "Escape") close(false, true);
        else return;
        // Enter would press the button that has the keyboard then
        event.preventDefault();
        event.stopPropagation();
      }}
    />
  );
}
