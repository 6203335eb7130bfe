/**
 * XML text -> its tags and texts, in one pass and in time that grows with its length. Names lose their prefix, since the
 * parts of a workbook may bear any. Document types are passed over: no entity but the five of XML and numbers is known.
 */

/** What is called while a text is scanned; a tag that closes itself opens and closes. */
export interface XmlVisitor {
  open(name: string, attributes: XmlAttributes): void;
  close(name: string): void;
  /** Text between tags, entities resolved; white space too. */
  text(text: string): void;
}

/** The attributes of the tag that is being opened; not to be kept. */
export interface XmlAttributes {
  /** The value under a local name, entities resolved; undefined where the tag has none. */
  get(name: string): string | undefined;
}

/** Elements within elements; those of a workbook nest less than twenty deep. */
const DEEPEST = 256;

/**
 * Scans a text to its end; false where it ends inside a tag, a comment or an open element, closes what is not open, or nests
 * too deep: the scan ends there.
 */
export function scanXml(text: string, visitor: XmlVisitor): boolean {
  const open: string[] = [];
  let at = 0;
  while (at < text.length) {
    const tag = text.indexOf("<", at);
    const end = tag < 0 ? text.length : tag;
    if (end > at && open.length > 0) visitor.text(plainXml(text.slice(at, end)));
    if (tag < 0) break;
    const next = text.startsWith("<!", tag) || text.startsWith("<?", tag) ? passOver(text, tag, visitor) : -1;
    const after = next >= 0 ? next : takeTag(text, tag, open, visitor);
    if (after <= tag) return false;
    at = after;
  }
  return open.length === 0;
}

/** Comments, instructions and document types are passed over, CDATA is text; where the text goes on, or 0. */
function passOver(text: string, tag: number, visitor: XmlVisitor): number {
  if (text.startsWith("<!--", tag)) return endAfter(text, "-->", tag + 4);
  if (text.startsWith("<?", tag)) return endAfter(text, "?>", tag + 2);
  if (!text.startsWith("<![CDATA[", tag)) return endAfter(text, ">", tag + 2);
  const end = endAfter(text, "]]>", tag + 9);
  if (end > 0) visitor.text(text.slice(tag + 9, end - 3));
  return end;
}

function endAfter(text: string, mark: string, from: number): number {
  const end = text.indexOf(mark, from);
  return end < 0 ? 0 : end + mark.length;
}

/** One tag; where the text goes on after it, or 0 where the tag has no end or does not fit what is open. */
function takeTag(text: string, tag: number, open: string[], visitor: XmlVisitor): number {
  const end = tagEnd(text, tag + 1);
  if (end < 0) return 0;
  const isClosing = text[tag + 1] === "/";
  const isEmpty = !isClosing && text[end - 1] === "/";
  const body = text.slice(tag + (isClosing ? 2 : 1), isEmpty ? end - 1 : end);
  const space = body.search(/\s/);
  const name = localName(space < 0 ? body : body.slice(0, space));
  if (isClosing) {
    if (open.pop() !== name) return 0;
    visitor.close(name);
    return end + 1;
  }
  visitor.open(name, new Attributes(space < 0 ? "" : body.slice(space)));
  if (isEmpty) visitor.close(name);
  else open.push(name);
  return open.length > DEEPEST ? 0 : end + 1;
}

/** Where the tag's `>` stands, which may also stand inside a quoted value; -1 where there is none. */
function tagEnd(text: string, from: number): number {
  let quote = 0;
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === GREATER) return at;
    else if (code === DOUBLE || code === SINGLE) quote = code;
    else if (code === LESS) return -1;
  }
  return -1;
}

const [DOUBLE, SINGLE, LESS, GREATER] = [0x22, 0x27, 0x3c, 0x3e];

function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

/** Read when they are first asked for: most tags of a sheet have few, and not all are looked at. */
class Attributes implements XmlAttributes {
  private values: Map<string, string> | null = null;

  constructor(private readonly text: string) {}

  get(name: string): string | undefined {
    this.values ??= readAttributes(this.text);
    return this.values.get(name);
  }
}

/** Up to the first that is not `name="value"`. */
function readAttributes(text: string): Map<string, string> {
  const values = new Map<string, string>();
  for (let at = skipBlanks(text, 0); at < text.length; ) {
    const equals = text.indexOf("=", at);
    const start = equals < 0 ? text.length : skipBlanks(text, equals + 1);
    const quote = text[start];
    const end = quote === '"' || quote === "'" ? text.indexOf(quote, start + 1) : -1;
    if (end < 0) break;
    values.set(localName(text.slice(at, equals).trimEnd()), plainXml(text.slice(start + 1, end)));
    at = skipBlanks(text, end + 1);
  }
  return values;
}

function skipBlanks(text: string, from: number): number {
  let at = from;
  while (at < text.length && text.charCodeAt(at) <= BLANK) at++;
  return at;
}

const BLANK = 0x20;

const NAMED = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

/** Entities resolved; one that is not known stays as it is written. */
function plainXml(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(/&(#x?[0-9a-f]{1,6}|[a-z]{2,4});/gi, (whole, name: string) => {
    if (!name.startsWith("#")) return NAMED.get(name) ?? whole;
    const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number(name.slice(1));
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}
