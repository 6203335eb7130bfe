/** A scene as elements of the page: every stroke, fill and text with the class of its role, so that style sheets colour it. */
import type { JSX } from "preact";
import { useMemo } from "preact/hooks";
import { pathData, xy } from "../../formats/path-data.js";
import { pensOf } from "../../formats/sheet-pens.js";
import type { SceneItem, StrokeRole } from "../../sheets/scene.js";
import { fontSize, setWidth } from "../../sheets/text-metrics.js";

interface SceneProps {
  readonly items: readonly SceneItem[];
  readonly height: number;
}

/** Items on a paper of this height, millimetres; y is turned down. Drawn again only when they are others. */
export function SceneItems({ items, height }: SceneProps): JSX.Element {
  return useMemo(() => <>{items.map((item, index) => element(item, index, height))}</>, [items, height]);
}

const PENS = pensOf(200);

/** How strokes of a role are drawn, millimetres of the paper. */
export function penOf(role: StrokeRole): { readonly "stroke-width": number; readonly "stroke-dasharray"?: string } {
  const { width, dashes } = PENS[role];
  return { "stroke-width": width, ...(dashes.length > 0 ? { "stroke-dasharray": dashes.join(" ") } : {}) };
}

function element(item: SceneItem, key: number, height: number): JSX.Element {
  switch (item.kind) {
    case "group":
      return (
        <g key={key} class={item.name}>
          {item.items.map((inner, index) => element(inner, index, height))}
        </g>
      );
    case "stroke": {
      return <path key={key} class={`stroke ${item.role}`} d={pathData(item.parts, height)} {...penOf(item.role)} />;
    }
    case "fill":
      return (
        <path
          key={key}
          class={`fill ${item.role}`}
          d={`M${item.points.map((point) => xy(point, height)).join("L")}Z`}
        />
      );
    case "text":
      return words(item, key, height);
  }
}

function words(item: Extract<SceneItem, { kind: "text" }>, key: number, height: number): JSX.Element {
  const [x, y] = [item.at.x, height - item.at.y];
  return (
    <text
      key={key}
      class={`words ${item.role}`}
      x={x}
      y={y}
      font-size={fontSize(item.height)}
      font-weight={item.bold ? "bold" : undefined}
      text-anchor={item.anchor}
      textLength={setWidth(item.text, item.height, item.bold)}
      lengthAdjust="spacingAndGlyphs"
      transform={item.turn === 0 ? undefined : `rotate(${-item.turn} ${x} ${y})`}
    >
      {item.text}
    </text>
  );
}
