/** A scene as elements of the page: every stroke, fill and text with the class of its role, so that style sheets colour it. */
import type { JSX } from "preact";
import { pathData, xy } from "../../formats/path-data.js";
import { pensOf } from "../../formats/sheet-pens.js";
import type { SceneItem } from "../../sheets/scene.js";
import { fontSize, setWidth } from "../../sheets/text-metrics.js";

/** Items on a paper of this height, millimetres; y is turned down. */
export function SceneItems({
  items,
  height,
}: {
  readonly items: readonly SceneItem[];
  readonly height: number;
}): JSX.Element {
  return (
    <>
      {items.map((item, index) => (
        <Item key={index} item={item} height={height} />
      ))}
    </>
  );
}

const PENS = pensOf(200);

function Item({ item, height }: { readonly item: SceneItem; readonly height: number }): JSX.Element {
  switch (item.kind) {
    case "group":
      return (
        <g class={item.name}>
          <SceneItems items={item.items} height={height} />
        </g>
      );
    case "stroke": {
      const { width, dashes } = PENS[item.role];
      return (
        <path
          class={`stroke ${item.role}`}
          d={pathData(item.parts, height)}
          stroke-width={width}
          stroke-dasharray={dashes.length > 0 ? dashes.join(" ") : undefined}
        />
      );
    }
    case "fill":
      return <path class={`fill ${item.role}`} d={`M${item.points.map((point) => xy(point, height)).join("L")}Z`} />;
    case "text":
      return <Words item={item} height={height} />;
  }
}

function Words({
  item,
  height,
}: {
  readonly item: Extract<SceneItem, { kind: "text" }>;
  readonly height: number;
}): JSX.Element {
  const [x, y] = [item.at.x, height - item.at.y];
  return (
    <text
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
