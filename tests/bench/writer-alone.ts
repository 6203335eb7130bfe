/** The yardstick: dxf-writer alone, emitting from memory the very entities that both cut files of a base hold. */
import Drawing from "dxf-writer";
import type { BaseResult } from "../../src/index.js";
import { readDrawing } from "../../src/readers/dxf-drawing.js";
import type { DxfEntity } from "../../src/readers/dxf-entities.js";

export interface Remembered {
  readonly layers: readonly string[];
  readonly entities: readonly DxfEntity[];
}

/** The entities of each cut file of a base. */
export function remember(base: BaseResult): readonly Remembered[] {
  return base.files
    .filter(({ kind }) => kind.startsWith("cut-"))
    .map(({ bytes }) => {
      const { layers, entities } = readDrawing(bytes);
      return { layers: layers.map(({ name }) => name).filter((name) => name !== "0"), entities };
    });
}

const encoder = new TextEncoder();

/** One file: the entities on their layers, as bytes. */
export function emit({ layers, entities }: Remembered): Uint8Array {
  const drawing = new Drawing();
  for (const layer of layers) drawing.addLayer(layer, 7, "CONTINUOUS");
  for (const entity of entities) {
    drawing.setActiveLayer(entity.layer);
    draw(drawing, entity);
  }
  return encoder.encode(drawing.toDxfString());
}

function draw(drawing: Drawing, entity: DxfEntity): void {
  switch (entity.kind) {
    case "line":
      drawing.drawLine(entity.from.x, entity.from.y, entity.to.x, entity.to.y);
      break;
    case "arc":
      drawing.drawArc(entity.x, entity.y, entity.radius, entity.start, entity.end);
      break;
    case "circle":
      drawing.drawCircle(entity.x, entity.y, entity.radius);
      break;
    case "polyline":
      drawing.drawPolyline(
        // A third value is the bulge; the typings of dxf-writer leave it out.
        entity.vertices.map(({ x, y, bulge }) => [x, y, bulge] as unknown as [number, number]),
        entity.closed,
      );
      break;
  }
}
