// Screenshots of ink on paper as PNG files of 16 colours, small enough to be kept with the documents.
import { crc32, deflateSync } from "node:zlib";
import type { Page } from "playwright-core";

interface Reduced {
  width: number;
  height: number;
  palette: number[];
  /** One index a pixel, as text, for the way out of the browser. */
  indices: string;
}

/** Colours that are near another are left to it; the rest by how often they occur. */
async function reduced(page: Page, png: Buffer): Promise<Reduced> {
  return page.evaluate(async (bytes) => {
    const most = 16;
    const apart = 8; // in one of red, green, blue
    const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(bytes), (byte) => byte.charCodeAt(0))]));
    const { width, height } = picture;
    const canvas = new OffscreenCanvas(width, height).getContext("2d")!;
    canvas.drawImage(picture, 0, 0);
    const { data } = canvas.getImageData(0, 0, width, height);
    const often = new Map<number, number>();
    for (let at = 0; at < data.length; at += 4) {
      const colour = (data[at]! << 16) | (data[at + 1]! << 8) | data[at + 2]!;
      often.set(colour, (often.get(colour) ?? 0) + 1);
    }
    const parts = (colour: number): number[] => [colour >> 16, (colour >> 8) & 255, colour & 255];
    const distance = (a: number, b: number): number => Math.max(...parts(a).map((part, i) => Math.abs(part - parts(b)[i]!)));
    const palette: number[] = [];
    for (const [colour] of [...often].sort((a, b) => b[1] - a[1])) {
      if (palette.length < most && palette.every((known) => distance(known, colour) >= apart)) palette.push(colour);
    }
    const nearest = new Map<number, string>();
    for (const colour of often.keys()) {
      const best = palette.reduce((a, b) => (distance(b, colour) < distance(a, colour) ? b : a));
      nearest.set(colour, palette.indexOf(best).toString(16));
    }
    let indices = "";
    for (let at = 0; at < data.length; at += 4) indices += nearest.get((data[at]! << 16) | (data[at + 1]! << 8) | data[at + 2]!)!;
    return { width, height, palette, indices };
  }, png.toString("base64"));
}

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}

/** PNG (W3C, third edition): colour type 3, 4 bits a pixel, no filter. */
export async function small_png(page: Page, png: Buffer): Promise<Buffer> {
  const { width, height, palette, indices } = await reduced(page, png);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([4, 3, 0, 0, 0], 8);
  const rows = Array.from({ length: height }, (_, row) => {
    const line = indices.slice(row * width, (row + 1) * width);
    return Buffer.from(`00${line.length % 2 === 0 ? line : `${line}0`}`, "hex");
  });
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", head),
    chunk("PLTE", Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]))),
    chunk("IDAT", deflateSync(Buffer.concat(rows), { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}
