import { crc32 } from "node:zlib";

/** Reads the size of a PNG and its dots a metre, and holds the check sum of each chunk against what it covers (ISO/IEC 15948). */
export function readPng(png: Buffer): { readonly width: number; readonly height: number; readonly perMetre: number } {
  let [width, height, perMetre] = [0, 0, 0];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    const end = at + 8 + png.readUInt32BE(at);
    expect(png.readUInt32BE(end)).toBe(crc32(png.subarray(at + 4, end)));
    const name = png.toString("latin1", at + 4, at + 8);
    if (name === "IHDR") [width, height] = [png.readUInt32BE(at + 8), png.readUInt32BE(at + 12)];
    if (name === "pHYs") perMetre = png.readUInt32BE(at + 8);
  }
  return { width, height, perMetre };
}
