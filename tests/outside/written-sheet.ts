/** Reads a written SVG sheet back with a strict XML parser, sharing nothing with the writer. */
import { parser } from "sax";

export interface WrittenText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly bold: boolean;
  readonly anchor: string;
  /** Degrees clockwise, as SVG counts them. */
  readonly turn: number;
}

export interface WrittenGroup {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly texts: readonly string[];
}

export interface WrittenSheet {
  readonly root: Readonly<Record<string, string>>;
  readonly texts: readonly WrittenText[];
  readonly groups: readonly WrittenGroup[];
  readonly names: readonly string[];
  /** Every `d` of a path, with its attributes. */
  readonly paths: readonly Readonly<Record<string, string>>[];
}

/** Throws on anything that is not well-formed XML. */
export function readWrittenSheet(svg: string): WrittenSheet {
  const texts: WrittenText[] = [];
  const groups: { name: string; attributes: Readonly<Record<string, string>>; texts: string[] }[] = [];
  const open: (typeof groups)[number][] = [];
  const names: string[] = [];
  const paths: Readonly<Record<string, string>>[] = [];
  let root: Readonly<Record<string, string>> = {};
  let current: { attributes: Readonly<Record<string, string>>; text: string } | null = null;
  const xml = parser(true);
  xml.onerror = (error) => {
    throw error;
  };
  xml.onopentag = ({ name, attributes }) => {
    names.push(name);
    if (name === "svg") root = attributes;
    if (name === "path") paths.push(attributes);
    if (name === "text") current = { attributes, text: "" };
    if (name === "g") {
      const group = { name: attributes.class ?? "", attributes, texts: [] };
      groups.push(group);
      open.push(group);
    }
  };
  xml.ontext = (text) => {
    if (current !== null) current.text += text;
  };
  xml.onclosetag = (name) => {
    if (name === "g") open.pop();
    if (name !== "text" || current === null) return;
    const { attributes, text } = current;
    texts.push(textOf(attributes, text));
    for (const group of open) group.texts.push(text);
    current = null;
  };
  xml.write(svg).close();
  return { root, texts, groups, names, paths };
}

function textOf(attributes: Readonly<Record<string, string>>, text: string): WrittenText {
  const turn = /rotate\((\S+)/.exec(attributes.transform ?? "")?.[1] ?? "0";
  return {
    text,
    x: Number(attributes.x),
    y: Number(attributes.y),
    size: Number(attributes["font-size"]),
    bold: attributes["font-weight"] === "bold",
    anchor: attributes["text-anchor"] ?? "start",
    turn: Number(turn),
  };
}
