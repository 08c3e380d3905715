import { Inflate, deflateSync, inflateSync } from "fflate";
import { damaged, limits, locked, tooLarge } from "./file-problems";

// Of the libraries that read archives none checks sums and sizes while it unpacks and hands on packed parts as they are; fflate packs and unpacks.

/** One part of an archive, packed as it stands in the file. */
export interface ArchiveEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly packed: Uint8Array;
  /** Size unpacked, and the sum of it. */
  readonly bytes: number;
  readonly crc: number;
}

const signatures = { local: 0x04034b50, entry: 0x02014b50, end: 0x06054b50, end64: 0x06064b50, locator64: 0x07064b50, oldOffice: 0xe011cfd0 } as const;
/** In a directory: the figure stands in the extension for large archives. */
const large = 0xffffffff;

/**
 * Lists the parts of a zip archive and refuses what is none, is locked, or is too large, before anything is unpacked.
 *
 * ZIP File Format Specification 6.3 (APPNOTE), sections 4.3.7, 4.3.12, 4.3.14 to 4.3.16 and 4.5.3.
 */
export function readArchive(bytes: Uint8Array): ArchiveEntry[] {
  if (bytes.length > limits.fileBytes) throw tooLarge(`is ${megabytes(bytes.length)} MB large; ${megabytes(limits.fileBytes)} MB is the most`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length >= 4 && view.getUint32(0, true) === signatures.oldOffice) throw locked();
  try {
    return readDirectory(bytes, view);
  } catch (thrown) {
    // Read over the end of the file.
    if (thrown instanceof RangeError) throw damaged();
    throw thrown;
  }
}

function readDirectory(bytes: Uint8Array, view: DataView): ArchiveEntry[] {
  const { count, start, shift } = findDirectory(view);
  if (count > limits.entries) throw tooLarge(`holds ${count} parts; ${limits.entries} is the most`);
  const names = new TextDecoder();
  const entries: ArchiveEntry[] = [];
  let at = start + shift;
  let unpacked = 0;
  for (let index = 0; index < count; index += 1) {
    if (view.getUint32(at, true) !== signatures.entry) throw damaged();
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const [nameLength, extraLength, commentLength] = [view.getUint16(at + 28, true), view.getUint16(at + 30, true), view.getUint16(at + 32, true)];
    if ((flags & 1) !== 0) throw locked();
    const [size, packedSize, place] = sizesOf(view, at, nameLength, extraLength);
    const offset = place + shift;
    const name = names.decode(bytes.subarray(at + 46, at + 46 + nameLength));
    if (view.getUint32(offset, true) !== signatures.local) throw damaged();
    const localName = view.getUint16(offset + 26, true);
    const body = offset + 30 + localName + view.getUint16(offset + 28, true);
    if (names.decode(bytes.subarray(offset + 30, offset + 30 + localName)) !== name || body + packedSize > bytes.length) throw damaged();
    entries.push({ name, method, packed: bytes.subarray(body, body + packedSize), bytes: size, crc: view.getUint32(at + 16, true) });
    unpacked += size;
    at += 46 + nameLength + extraLength + commentLength;
  }
  // More parts than were counted: one that nobody asks for would go without a sign.
  if (view.getUint32(at, true) === signatures.entry) throw damaged();
  if (unpacked > limits.unpackedBytes) throw tooLarge(`would take ${megabytes(unpacked)} MB once unpacked; ${megabytes(limits.unpackedBytes)} MB is the most`);
  return entries;
}

/** Finds the directory, which ends where the end record begins; where something was put in front of the archive all places are shifted by its length. */
function findDirectory(view: DataView): { readonly count: number; readonly start: number; readonly shift: number } {
  for (const at of endRecords(view)) {
    const [count, start] = [view.getUint16(at + 10, true), view.getUint32(at + 16, true)];
    if (start !== large && count !== 0xffff) {
      const shift = at - view.getUint32(at + 12, true) - start;
      return { count, start, shift: shift > 0 && start + shift + 4 <= at && view.getUint32(start + shift, true) === signatures.entry ? shift : 0 };
    }
    if (view.getUint32(at - 20, true) !== signatures.locator64) throw damaged();
    const end = Number(view.getBigUint64(at - 12, true));
    if (view.getUint32(end, true) !== signatures.end64) throw damaged();
    return { count: Number(view.getBigUint64(end + 32, true)), start: Number(view.getBigUint64(end + 48, true)), shift: 0 };
  }
  throw damaged();
}

/**
 * Lists where an end record may stand: 22 bytes, followed by a comment of at most 65,535. The comment may hold the mark of an end record: the one whose
 * comment ends with the file comes first.
 */
function endRecords(view: DataView): readonly number[] {
  const found: number[] = [];
  for (let at = view.byteLength - 22; at >= 0 && at >= view.byteLength - 22 - 65_535; at -= 1) if (view.getUint32(at, true) === signatures.end) found.push(at);
  const whole = found.filter((at) => at + 22 + view.getUint16(at + 20, true) === view.byteLength);
  return [...whole, ...found];
}

/** Reads size, packed size and offset of the entry at `at`; figures too large for it stand in its first extension, in that order. */
function sizesOf(view: DataView, at: number, nameLength: number, extraLength: number): readonly [number, number, number] {
  const found = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
  let extra = at + 46 + nameLength;
  for (const end = extra + extraLength; found.includes(large) && extra + 4 <= end; extra += 4 + view.getUint16(extra + 2, true)) {
    if (view.getUint16(extra, true) !== 1) continue;
    let figure = extra + 4;
    found.forEach((one, place) => {
      if (one !== large) return;
      found[place] = Number(view.getBigUint64(figure, true));
      figure += 8;
    });
    break;
  }
  return [found[0]!, found[1]!, found[2]!];
}

/** Packs and unpacks the content of parts: DEFLATE, RFC 1951, without any header. */
export interface Deflater {
  readonly deflate: (plain: Uint8Array) => Uint8Array;
  /** Unpacks what yields at most `bytes`; throws anything where it yields more, or is damaged. */
  readonly inflate: (packed: Uint8Array, bytes: number) => Uint8Array;
}

/** How much is unpacked in one go: what a hostile part grows to before it is noticed is at most a thousand times as much. */
const slice = 65_536;

/** Packs and unpacks wherever there is JavaScript. */
export const anywhereDeflater: Deflater = {
  // Level 3 packs cells nearly as small as 6 does, in half the time.
  deflate: (plain) => deflateSync(plain, { level: 3 }),
  inflate(packed, bytes) {
    const plain = new Uint8Array(bytes);
    let filled = 0;
    const inflate = new Inflate((chunk) => {
      if (filled + chunk.length > bytes) throw damaged();
      plain.set(chunk, filled);
      filled += chunk.length;
    });
    for (let at = 0; at < packed.length; at += slice) inflate.push(packed.subarray(at, at + slice), at + slice >= packed.length);
    return plain.subarray(0, filled);
  },
};

/** Unpacks a part, and refuses it as damaged where it yields more or less than its directory declares, or something else. */
export function unpack({ method, packed, bytes, crc }: ArchiveEntry, { inflate }: Deflater = anywhereDeflater): Uint8Array {
  if (method !== 0 && method !== 8) throw damaged();
  let plain = packed;
  try {
    if (method === 8) plain = inflate(packed, bytes);
  } catch {
    throw damaged();
  }
  if (plain.length !== bytes || crc32(plain) !== crc) throw damaged();
  return plain;
}

/** Unpacks a part that `unpack` found whole before, or that we packed: nothing is checked. */
export function unpackAgain({ method, packed, bytes }: ArchiveEntry): Uint8Array {
  return method === 8 ? inflateSync(packed, { out: new Uint8Array(bytes) }) : packed;
}

/** Packs a part of a new archive. */
export function pack(name: string, plain: Uint8Array, { deflate }: Deflater = anywhereDeflater): ArchiveEntry {
  return { name, method: 8, packed: deflate(plain), bytes: plain.length, crc: crc32(plain) };
}

/** 1980-01-01, the first day an archive can name: the same workbook makes the same file. */
const day = 0x0021;

/** Writes an archive; parts that were read are handed on packed as they were. */
export function writeArchive(entries: readonly ArchiveEntry[]): Uint8Array {
  const named = entries.map((entry) => ({ ...entry, nameBytes: new TextEncoder().encode(entry.name) }));
  const size = named.reduce((sum, { nameBytes, packed }) => sum + 76 + 2 * nameBytes.length + packed.length, 22);
  const file = new Uint8Array(size);
  const view = new DataView(file.buffer);
  const header = (at: number, { nameBytes, name, method, crc, packed, bytes }: (typeof named)[number]) => {
    view.setUint16(at, 20, true);
    // Names in UTF-8 say so: APPNOTE 4.4.4, bit 11.
    view.setUint16(at + 2, nameBytes.length === name.length ? 0 : 0x0800, true);
    view.setUint16(at + 4, method, true);
    view.setUint16(at + 8, day, true);
    view.setUint32(at + 10, crc, true);
    view.setUint32(at + 14, packed.length, true);
    view.setUint32(at + 18, bytes, true);
    view.setUint16(at + 22, nameBytes.length, true);
  };
  let at = 0;
  const offsets = named.map((entry) => {
    const offset = at;
    view.setUint32(at, signatures.local, true);
    header(at + 4, entry);
    file.set(entry.nameBytes, at + 30);
    file.set(entry.packed, at + 30 + entry.nameBytes.length);
    at += 30 + entry.nameBytes.length + entry.packed.length;
    return offset;
  });
  const start = at;
  named.forEach((entry, index) => {
    view.setUint32(at, signatures.entry, true);
    view.setUint16(at + 4, 20, true);
    header(at + 6, entry);
    view.setUint32(at + 42, offsets[index]!, true);
    file.set(entry.nameBytes, at + 46);
    at += 46 + entry.nameBytes.length;
  });
  view.setUint32(at, signatures.end, true);
  view.setUint16(at + 8, named.length, true);
  view.setUint16(at + 10, named.length, true);
  view.setUint32(at + 12, at - start, true);
  view.setUint32(at + 16, start, true);
  return file;
}

/** What each byte does to a sum, and to one that is up to three bytes further on. */
const crcTables = Array.from({ length: 4 }, () => new Uint32Array(256));
for (let byte = 0; byte < 256; byte += 1) {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum & 1) === 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  crcTables[0]![byte] = sum;
}
for (let byte = 0; byte < 256; byte += 1) {
  for (let ahead = 1; ahead < 4; ahead += 1) crcTables[ahead]![byte] = (crcTables[ahead - 1]![byte]! >>> 8) ^ crcTables[0]![crcTables[ahead - 1]![byte]! & 0xff]!;
}

/** Computes the sum that archives hold of a part: the CRC-32 of ITU-T V.42, four bytes at a time. */
export function crc32(bytes: Uint8Array): number {
  const [first, second, third, fourth] = crcTables as [Uint32Array, Uint32Array, Uint32Array, Uint32Array];
  let sum = 0xffffffff;
  let at = 0;
  for (const whole = bytes.length & ~3; at < whole; at += 4) {
    sum ^= bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
    sum = fourth[sum & 0xff]! ^ third[(sum >>> 8) & 0xff]! ^ second[(sum >>> 16) & 0xff]! ^ first[sum >>> 24]!;
  }
  for (; at < bytes.length; at += 1) sum = first[(sum ^ bytes[at]!) & 0xff]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

function megabytes(bytes: number): string {
  return String(Math.ceil(bytes / 1_000_000));
}
