// The words on the sheets of a PDF that the test browser printed. Only what such a file uses is read:
// whole objects with their streams deflated, and for each font a map from its glyphs to characters.
import zlib from 'node:zlib';

type Glyphs = ReadonlyMap<number, string>;

/** The text of each sheet, in the order in which it was drawn. */
export function pdfText(file: Buffer): readonly string[] {
  const objects = objectsIn(file);
  const sheets = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head));
  return sheets.map(({ head }) => {
    const fonts = fontsOf(head, objects);
    const drawn = [...head.matchAll(/\/Contents\s+(\d+) 0 R/g)].map(
      ([, id]) => objects.get(Number(id))?.stream ?? '',
    );
    return textOf(drawn.join('\n'), fonts);
  });
}

interface Held {
  readonly head: string;
  readonly stream: string;
}

function objectsIn(file: Buffer): ReadonlyMap<number, Held> {
  const bytes = file.toString('latin1');
  const objects = new Map<number, Held>();
  for (const found of bytes.matchAll(/(\d+) 0 obj\b([\s\S]*?)\bendobj/g)) {
    const [, id = '', body = ''] = found;
    const start = /stream\r?\n/.exec(body);
    if (!start) {
      objects.set(Number(id), { head: body, stream: '' });
      continue;
    }
    const head = body.slice(0, start.index);
    const from = start.index + start[0].length;
    const packed = Buffer.from(body.slice(from, body.lastIndexOf('endstream')), 'latin1');
    const stream = head.includes('/FlateDecode')
      ? zlib.inflateSync(packed, { finishFlush: zlib.constants.Z_SYNC_FLUSH }).toString('latin1')
      : packed.toString('latin1');
    objects.set(Number(id), { head, stream });
  }
  return objects;
}

/** The fonts a sheet names, by those names. */
function fontsOf(sheet: string, objects: ReadonlyMap<number, Held>): ReadonlyMap<string, Glyphs> {
  const named = /\/Font\s*<<([\s\S]*?)>>/.exec(sheet)?.[1] ?? '';
  return new Map(
    [...named.matchAll(/\/(\w+)\s+(\d+) 0 R/g)].map(([, name = '', id]) => {
      const font = objects.get(Number(id))?.head ?? '';
      const map = /\/ToUnicode\s+(\d+) 0 R/.exec(font)?.[1];
      return [name, glyphsIn(objects.get(Number(map))?.stream ?? '')] as const;
    }),
  );
}

function glyphsIn(map: string): Glyphs {
  const glyphs = new Map<number, string>();
  for (const [, lines = ''] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, glyph = '', character = ''] of lines.matchAll(/<(\w+)>\s*<(\w+)>/g)) {
      glyphs.set(parseInt(glyph, 16), characters(character));
    }
  }
  for (const [, lines = ''] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, a = '', b = '', first = ''] of lines.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const from = parseInt(a, 16);
      for (let glyph = from; glyph <= parseInt(b, 16); glyph++) {
        glyphs.set(glyph, String.fromCodePoint(parseInt(first, 16) + glyph - from));
      }
    }
  }
  return glyphs;
}

function characters(hex: string): string {
  return Buffer.from(hex, 'hex').swap16().toString('utf16le');
}

/** Glyphs are drawn as hexadecimal strings in the font named last. */
function textOf(drawn: string, fonts: ReadonlyMap<string, Glyphs>): string {
  let font: Glyphs = new Map();
  let text = '';
  for (const found of drawn.matchAll(/\/(\w+)\s+[\d.]+\s+Tf|<([0-9A-Fa-f]+)>|\b(ET)\b/g)) {
    const [, named, glyphs, end] = found;
    if (named !== undefined) font = fonts.get(named) ?? new Map();
    else if (end !== undefined) text += ' ';
    else {
      for (const [one] of (glyphs ?? '').matchAll(/.{4}/g)) {
        text += font.get(parseInt(one, 16)) ?? '';
      }
    }
  }
  return text;
}
