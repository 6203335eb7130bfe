/** The few edits of a TrueType file that the sheet font needs: further names for a drawn letter, and the checksums after it. */

/** Tables by tag. */
export function readTables(font) {
  const view = viewOf(font);
  const tables = new Map();
  for (let i = 0; i < view.getUint16(4); i += 1) {
    const at = 12 + i * 16;
    const tag = String.fromCharCode(...font.subarray(at, at + 4));
    const offset = view.getUint32(at + 8);
    tables.set(tag, Uint8Array.prototype.slice.call(font, offset, offset + view.getUint32(at + 12)));
  }
  return tables;
}

/** A font file of these tables, in the order of their tags, each padded to four bytes. */
export function writeTables(tables) {
  const tags = [...tables.keys()].sort();
  const starts = [];
  let size = 12 + tags.length * 16;
  for (const tag of tags) {
    starts.push(size);
    size += padded(tables.get(tag).length);
  }
  const bytes = new Uint8Array(size);
  const view = viewOf(bytes);
  const log = Math.floor(Math.log2(tags.length));
  [0x10000, 0].forEach((value, i) => {
    view.setUint32(i * 4, value);
  });
  [tags.length, 2 ** log * 16, log, (tags.length - 2 ** log) * 16].forEach((value, i) => {
    view.setUint16(4 + i * 2, value);
  });
  viewOf(tables.get("head")).setUint32(8, 0);
  tags.forEach((tag, i) => {
    const table = tables.get(tag);
    bytes.set(table, starts[i]);
    for (let k = 0; k < 4; k += 1) bytes[12 + i * 16 + k] = tag.charCodeAt(k);
    [sumOf(bytes.subarray(starts[i], starts[i] + padded(table.length))), starts[i], table.length].forEach(
      (value, k) => {
        view.setUint32(16 + i * 16 + k * 4, value);
      },
    );
  });
  view.setUint32(starts[tags.indexOf("head")] + 8, (0xb1b0afba - sumOf(bytes)) >>> 0);
  return bytes;
}

/** A copy of the drawing and width of glyph `from` as a glyph of its own at the end; its number. */
export function copyGlyph(tables, from) {
  const maxp = viewOf(tables.get("maxp"));
  const count = maxp.getUint16(4);
  const isLong = viewOf(tables.get("head")).getInt16(50) === 1;
  const loca = viewOf(tables.get("loca"));
  const offsets = Array.from({ length: count + 1 }, (_, i) =>
    isLong ? loca.getUint32(i * 4) : loca.getUint16(i * 2) * 2,
  );
  const glyf = tables.get("glyf").subarray(0, offsets[count]);
  const drawn = glyf.subarray(offsets[from], offsets[from + 1]);
  const grown = new Uint8Array(glyf.length + drawn.length);
  grown.set(glyf);
  grown.set(drawn, glyf.length);
  tables.set("glyf", grown);
  tables.set("loca", writeLoca([...offsets, grown.length]));
  viewOf(tables.get("head")).setInt16(50, 1);
  tables.set("hmtx", wholeMetrics(tables, count, from));
  viewOf(tables.get("hhea")).setUint16(34, count + 1);
  maxp.setUint16(4, count + 1);
  return count;
}

function writeLoca(offsets) {
  const loca = new Uint8Array(offsets.length * 4);
  offsets.forEach((offset, i) => {
    viewOf(loca).setUint32(i * 4, offset);
  });
  return loca;
}

/** Width and left bearing of every glyph, and those of `from` once more. */
function wholeMetrics(tables, count, from) {
  const old = viewOf(tables.get("hmtx"));
  const pairs = viewOf(tables.get("hhea")).getUint16(34);
  const whole = new Uint8Array((count + 1) * 4);
  for (let i = 0; i <= count; i += 1) {
    const glyph = i === count ? from : i;
    viewOf(whole).setUint16(i * 4, old.getUint16(Math.min(glyph, pairs - 1) * 4));
    const bearing = glyph < pairs ? glyph * 4 + 2 : pairs * 4 + (glyph - pairs) * 2;
    viewOf(whole).setInt16(i * 4 + 2, old.getInt16(bearing));
  }
  return whole;
}

/** A `cmap` of one table in format 4, from code points (below 65 536) to glyphs. */
export function writeCmap(glyphs) {
  const segments = segmentsOf([...glyphs].sort(([a], [b]) => a - b));
  const n = segments.length;
  const log = Math.floor(Math.log2(n));
  const words = [
    ...[0, 1, 3, 1, 0, 12],
    ...[4, 16 + n * 8, 0, n * 2, 2 ** log * 2, log, (n - 2 ** log) * 2],
    ...[...segments.map(({ last }) => last), 0],
    ...[...segments.map(({ first }) => first), ...segments.map(({ first, glyph }) => (glyph - first) & 0xffff)],
    ...segments.map(() => 0),
  ];
  const bytes = new Uint8Array(words.length * 2);
  words.forEach((word, i) => {
    viewOf(bytes).setUint16(i * 2, word);
  });
  return bytes;
}

/** Runs in which code points and glyphs both go up by one; the last one is the format's own end. */
function segmentsOf(pairs) {
  const segments = [];
  for (const [code, glyph] of pairs) {
    const open = segments.at(-1);
    if (open !== undefined && code === open.last + 1 && glyph - code === open.glyph - open.first) open.last = code;
    else segments.push({ first: code, last: code, glyph });
  }
  return [...segments, { first: 0xffff, last: 0xffff, glyph: 0 }];
}

const padded = (length) => Math.ceil(length / 4) * 4;

const viewOf = (bytes) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function sumOf(bytes) {
  const view = viewOf(bytes);
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
