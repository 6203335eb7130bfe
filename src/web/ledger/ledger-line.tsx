/** One line of the ledger of a base: what is held against what, where, and what came of it; the rest on demand. */
import type { JSX } from "preact";
import { useId, useState } from "preact/hooks";
import { sourceWords } from "../../formats/ledger-text.js";
import type { LiveLine } from "../../tasks/live/model.js";
import { KeyButtons } from "./key-buttons.js";
import { MarginBar } from "./margin-bar.js";
import { answerWords, capital, figureWords, standingWords, stateClass } from "./row-words.js";

/** A line, and what is told of it while it is looked at. */
export interface LineProps {
  readonly line: LiveLine;
  /** Path of the base. */
  readonly base: string;
  readonly isLit: boolean;
  readonly point: (line: LiveLine | null) => void;
}

/** An item of the list of lines. */
export function LedgerLine({ line, base, isLit, point }: LineProps): JSX.Element {
  const [isOpen, open] = useState(false);
  const about = useId();
  const { check, where } = line;
  const figures = figureWords(check);
  return (
    <li
      class={`check ${check.status} ${stateClass(check)}${isLit ? " lit" : ""}`}
      onPointerEnter={() => point(line)}
      onPointerLeave={() => point(null)}
    >
      <button
        type="button"
        aria-expanded={isOpen}
        aria-controls={about}
        onFocus={() => point(line)}
        onBlur={() => point(null)}
        onClick={() => open(!isOpen)}
      >
        <span class={`state ${stateClass(check)}`}>{standingWords(check)}</span>{" "}
        <span class="name">{capital(check.plainName)}</span> <span class="where">{where}</span>
        {figures !== "" && (
          <span class="figures">
            {" "}
            <span class="compared">{figures}</span> <MarginBar share={check.share} />{" "}
            <span class="spare">{check.spare}</span>
          </span>
        )}
      </button>
      <div id={about} class="about" hidden={!isOpen && check.status !== "fail"}>
        <Said line={line} />
        {isOpen && <p class="soft">{sourceLine(line)}</p>}
        {check.missing.length > 0 && <KeyButtons keys={check.missing} base={base} />}
      </div>
    </li>
  );
}

function sourceLine({ check }: LiveLine): string {
  const { share } = check;
  const part = share === null ? "" : ` Margin: ${Math.round(share * 1000) / 10} % of the limit.`;
  return `${check.rule}: ${sourceWords(check)}.${part}`;
}

/** Notes of the rows, and what was said to them. */
function Said({ line: { notes, check } }: { readonly line: LiveLine }): JSX.Element {
  const answered = answerWords(check);
  return (
    <>
      {notes.map(({ where, note }) => (
        <p key={`${where} ${note}`}>
          {where !== "" && <b>{where}: </b>}
          {note}
        </p>
      ))}
      {answered !== "" && <p class="answer">{answered}</p>}
    </>
  );
}
