/** The field of one key: a text as it is written, or one of the words that the key takes. */
import type { JSX } from "preact";
import { useId } from "preact/hooks";
import type { KeyHint } from "../../tasks/live/key-hints.js";

/** What a field shows and tells. */
export interface KeyInputProps {
  readonly id?: string;
  readonly value: string;
  readonly label?: string;
  readonly hint: KeyHint | null;
  /** What stands there while nothing is written. */
  readonly placeholder?: string;
  readonly isFaulty: boolean;
  readonly describedBy?: string | undefined;
  readonly onText: (text: string) => void;
  readonly onLeave?: () => void;
}

/** A list of words where the key takes no other text; else a line, with words to choose from where there are any. */
export function KeyInput(props: KeyInputProps): JSX.Element {
  const choices = props.hint?.choices ?? [];
  return choices.length > 0 && props.hint?.isOpen === false ? (
    <Choice {...props} choices={choices} />
  ) : (
    <Line {...props} choices={choices} />
  );
}

interface WithChoices extends KeyInputProps {
  readonly choices: readonly string[];
}

function said({ id, label, isFaulty, describedBy, onLeave }: KeyInputProps) {
  return {
    ...(id === undefined ? {} : { id }),
    ...(label === undefined ? {} : { "aria-label": label }),
    ...(isFaulty ? { "aria-invalid": "true" as const } : {}),
    ...(describedBy === undefined ? {} : { "aria-describedby": describedBy }),
    ...(onLeave === undefined ? {} : { onBlur: onLeave }),
  };
}

function Choice(props: WithChoices): JSX.Element {
  const { choices, value, placeholder = "", onText } = props;
  const others = value === "" || choices.includes(value) ? [] : [value];
  return (
    <select {...said(props)} value={value} onChange={(event) => onText(event.currentTarget.value)}>
      <option value="">{placeholder === "" ? "not given" : `${placeholder}, not written`}</option>
      {[...choices, ...others].map((choice) => (
        <option key={choice} value={choice}>
          {choice}
        </option>
      ))}
    </select>
  );
}

function Line(props: WithChoices): JSX.Element {
  const { choices, value, placeholder = "", onText } = props;
  const list = useId();
  const line = {
    ...said(props),
    ...{ dir: "auto" as const, autocomplete: "off", spellcheck: false, value, placeholder },
    onInput: (event: { readonly currentTarget: HTMLInputElement }) => onText(event.currentTarget.value),
  };
  if (choices.length === 0) return <input {...line} type="text" />;
  return (
    <>
      <input {...line} type="text" list={list} />
      <datalist id={list}>
        {choices.map((choice) => (
          <option key={choice} value={choice} />
        ))}
      </datalist>
    </>
  );
}
