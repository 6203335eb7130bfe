/** A figure that is edited where it stands: it looks like its text until it is pressed, then it is a field. */
import type { JSX } from "preact";
import { useState } from "preact/hooks";

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

/** Enter and F2 open it, Enter takes what is typed, Escape leaves it as it was. */
export function EditSpot({ name, text, shown, style, isWrong, take, ...own }: EditSpotProps): JSX.Element {
  const [now, setNow] = useState<string | null>(null);
  const close = (isTaken: boolean): void => {
    if (isTaken && now !== null && now.trim() !== text) take(now.trim());
    setNow(null);
  };
  if (now === null) {
    return (
      <button
        type="button"
        class={`${own.class}${isWrong ? " wrong" : ""}`}
        style={style}
        aria-label={`${name}, ${text === "" ? "blank" : text}: edit`}
        onClick={() => setNow(text)}
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
      value={now}
      size={Math.max(6, now.length + 1)}
      autocomplete="off"
      spellcheck={false}
      ref={(input) => {
        if (input !== null && document.activeElement !== input) {
          input.focus();
          input.select();
        }
      }}
      onInput={({ currentTarget: { value } }) => setNow(value)}
      onBlur={() => close(true)}
      onKeyDown={({ key }) => {
        if (key === "Enter") close(true);
        if (key === "Escape") close(false);
      }}
    />
  );
}
