/** What every base has that does not say otherwise: the job's defaults, and its kinds of bases. */
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useActions, usePart } from "../app/page.js";
import { type Column, cellOf, type Subject, typed } from "./columns.js";
import { type Texts, textsUnder } from "./texts.js";

interface Layer {
  readonly name: string;
  readonly path: readonly string[];
  readonly texts: Texts;
}

/** Keys of a base alone. */
const OWN = new Set(["mark", "state", "worst", "quantity", "kind", "template.mark"]);

/** A row for the defaults and one for each kind; their columns are those of the schedule. */
export function Layers({ columns }: { readonly columns: readonly Column[] }): JSX.Element {
  const turn = usePart((state) => state.live?.turn);
  const findings = usePart((state) => state.live?.findings);
  const actions = useActions();
  const [texts, setTexts] = useState<Texts>({});
  useEffect(() => {
    let isCurrent = true;
    void actions.written(["defaults", "kinds"]).then((written) => {
      if (isCurrent) setTexts(written);
    });
    return () => {
      isCurrent = false;
    };
  }, [turn, actions]);
  const layers = layersOf(texts);
  const shown = columns.filter(({ id, content }) => !OWN.has(id) && content.kind !== "told");
  const faults = (findings ?? []).filter(({ at }) => /^(defaults|kinds)\b/.test(at.path ?? ""));
  return (
    <details class="layers" open={layers.length > 1 || Object.keys(texts).length > 0}>
      <summary>Defaults and kinds</summary>
      <p class="hint">A base has these where it gives nothing itself; above they are shown lighter.</p>
      <div class="wide">
        <table aria-label="Defaults and kinds">
          <thead>
            <tr>
              <th scope="col">For</th>
              {shown.map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {layers.map((layer) => (
              <tr key={layer.name}>
                <th scope="row">{layer.name}</th>
                {shown.map((column) => (
                  <LayerCell key={column.id} layer={layer} column={column} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {faults.map(({ at, message }) => (
        <p key={`${at.path} ${message}`} class="fault">
          {at.path}: {message}
        </p>
      ))}
    </details>
  );
}

function layersOf(texts: Texts): readonly Layer[] {
  const kinds = new Set(Object.keys(textsUnder(texts, "kinds")).map((path) => path.replace(/\..*$/s, "")));
  return [
    { name: "every base", path: ["defaults"], texts: textsUnder(texts, "defaults") },
    ...[...kinds].map((kind) => ({
      name: `kind ${kind}`,
      path: ["kinds", kind],
      texts: textsUnder(texts, `kinds.${kind}`),
    })),
  ];
}

function LayerCell({ layer, column }: { readonly layer: Layer; readonly column: Column }): JSX.Element {
  const { edit } = useActions();
  const subject: Subject = { texts: layer.texts, own: layer.texts, by: {}, isGroup: false, hasGroups: false };
  const { text } = cellOf(column, subject);
  const [now, setNow] = useState<string | null>(null);
  const [why, setWhy] = useState("");
  const take = (): void => {
    if (now === null) return;
    const said = typed(column, subject, now);
    setWhy(said.ok ? "" : said.why);
    if (!said.ok) return;
    setNow(null);
    const edits = said.edits.map((each) => ({ ...each, path: [...layer.path, ...each.path] }));
    if (edits.length > 0) void edit(`${layer.name}, ${column.name.toLowerCase()} ${now}`, edits);
  };
  return (
    <td>
      <input
        aria-label={`${layer.name}, ${column.name}`}
        aria-invalid={why === "" ? undefined : "true"}
        value={now ?? text}
        size={Math.max(6, Math.min(24, (now ?? text).length + 1))}
        onInput={({ currentTarget: { value } }) => setNow(value)}
        onBlur={take}
        onKeyDown={({ key }) => {
          if (key === "Enter") take();
          if (key === "Escape") setNow(null);
        }}
      />
      {why !== "" && <span class="fault">{why}</span>}
    </td>
  );
}
