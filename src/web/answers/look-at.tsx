/** A file that is looked at: pictures and pages without scripts, tables as tables, texts as texts. */
import type { JSX } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { CutFilePicture } from "../../formats/dxf-picture.js";
import { ofPage } from "../app/later.js";
import { CutPicture } from "./cut-picture.js";
import { save, sizeWords } from "./save.js";
import { Scrolled } from "./scrolled.js";

/** How a file is shown. */
type Shown =
  | { readonly kind: "picture" | "page"; readonly address: string }
  | { readonly kind: "table"; readonly rows: readonly (readonly string[])[]; readonly left: number }
  | { readonly kind: "text"; readonly text: string; readonly left: number }
  | { readonly kind: "drawing"; readonly picture: CutFilePicture }
  | { readonly kind: "none" };

const [MOST_ROWS, MOST_SIGNS] = [400, 200_000];

const endingOf = (path: string): string => /\.([a-z0-9]+)$/i.exec(path)?.[1]?.toLowerCase() ?? "";

/** True for what can be shown here. */
export function canBeShown(path: string): boolean {
  return ["svg", "pdf", "csv", "txt", "json", "yaml", "dxf"].includes(endingOf(path));
}

async function read(path: string, blob: Blob): Promise<Shown> {
  switch (endingOf(path)) {
    case "svg":
      return { kind: "picture", address: URL.createObjectURL(new Blob([blob], { type: "image/svg+xml" })) };
    case "pdf":
      return { kind: "page", address: URL.createObjectURL(new Blob([blob], { type: "application/pdf" })) };
    case "csv":
      return tableOf(await blob.text());
    case "dxf":
      return drawingOf(new Uint8Array(await blob.arrayBuffer()));
    case "txt":
    case "json":
    case "yaml":
      return textOf(await blob.text());
    default:
      return { kind: "none" };
  }
}

function textOf(text: string): Shown {
  return { kind: "text", text: text.slice(0, MOST_SIGNS), left: Math.max(0, text.length - MOST_SIGNS) };
}

const csvReader = ofPage(() => import("../../readers/csv.js"));
const dxfReader = ofPage(() => import("../../readers/dxf.js"));
const dxfDrawer = ofPage(() => import("../../formats/dxf-picture.js"));

async function tableOf(text: string): Promise<Shown> {
  const { readCsv } = await csvReader();
  const table = readCsv(text, "");
  if (!table.ok) return textOf(text);
  const rows = table.value.rows.map((row) => row.map((cell) => cell.text));
  return { kind: "table", rows: rows.slice(0, MOST_ROWS), left: Math.max(0, rows.length - MOST_ROWS) };
}

async function drawingOf(bytes: Uint8Array): Promise<Shown> {
  const [{ readCutFile }, { drawCutFile }] = await Promise.all([dxfReader(), dxfDrawer()]);
  const picture = drawCutFile(readCutFile(bytes), []);
  return picture === null ? { kind: "none" } : { kind: "drawing", picture };
}

interface LookAtProps {
  readonly path: string;
  readonly blob: Blob;
  readonly onClose: () => void;
}

/** Shows it under its name, and takes the keyboard there. */
export function LookAt({ path, blob, onClose }: LookAtProps): JSX.Element {
  const [shown, setShown] = useState<Shown | null>(null);
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    let [isGone, address]: [boolean, string | null] = [false, null];
    setShown(null);
    void read(path, blob).then((made) => {
      if ("address" in made) address = made.address;
      if (isGone && address !== null) URL.revokeObjectURL(address);
      else if (!isGone) setShown(made);
    });
    head.current?.focus();
    return () => {
      isGone = true;
      if (address !== null) URL.revokeObjectURL(address);
    };
  }, [path, blob]);
  return (
    <section class="look-at" aria-label={path}>
      <div class="row">
        <h3 tabIndex={-1} ref={head}>
          {path}
        </h3>
        <span class="soft">{sizeWords(blob.size)}</span>
        <button type="button" onClick={() => save(path, blob)}>
          Save
        </button>
        <button type="button" onClick={onClose}>
          Close
        </button>
      </div>
      {shown === null ? <p class="soft">Reading</p> : <Content path={path} shown={shown} />}
    </section>
  );
}

function Content({ path, shown }: { readonly path: string; readonly shown: Shown }): JSX.Element {
  const [isLarge, setLarge] = useState(false);
  switch (shown.kind) {
    case "picture":
      return (
        <>
          <button type="button" aria-pressed={isLarge} onClick={() => setLarge(!isLarge)}>
            Larger
          </button>
          <div class="picture-room">
            <img class={isLarge ? "large" : ""} src={shown.address} alt={`The drawing ${path}`} />
          </div>
        </>
      );
    case "page":
      return (
        <p>
          <a class="button" href={shown.address} target="_blank" rel="noopener">
            Open the pages in a tab of their own
          </a>
        </p>
      );
    case "table":
      return <Rows path={path} rows={shown.rows} left={shown.left} />;
    case "text":
      return (
        <>
          <Scrolled look="text-room" name={`Text of ${path}`}>
            <pre>{shown.text}</pre>
          </Scrolled>
          {shown.left > 0 && <p class="soft">And {shown.left} more characters: save it to read all.</p>}
        </>
      );
    case "drawing":
      return <CutPicture picture={shown.picture} name={`What ${path} cuts`} />;
    case "none":
      return <p>It is for a program of its own: save it, and open it there.</p>;
  }
}

function Rows({
  path,
  rows,
  left,
}: {
  readonly path: string;
  readonly rows: readonly (readonly string[])[];
  readonly left: number;
}): JSX.Element {
  const [heads = [], ...body] = rows;
  return (
    <>
      <Scrolled look="table-room" name={`Table of ${path}`}>
        <table>
          <thead>
            <tr>
              {heads.map((cell, i) => (
                <th key={i} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {body.map((row, i) => (
              <tr key={i}>
                {row.map((cell, column) => (
                  <td key={column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
      {left > 0 && <p class="soft">And {left} more rows: save it to see all.</p>}
    </>
  );
}
