import { invalid } from "../../planning/text";

/** One file inside a zip archive, as the archive's directory declares it. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Where its local header begins. */
  readonly offset: number;
}

/** What may be opened. Above it a browser runs out of memory, or somebody means harm. */
export const limits = { fileBytes: 50_000_000, unpackedBytes: 300_000_000, entries: 4_000, sheets: 250, cells: 1_500_000 } as const;

const signature = { directoryEnd: 0x06054b50, entry: 0x02014b50, oldOffice: 0xe011cfd0 } as const;

/**
 * Reads the directory of a zip archive and refuses what is none, or is too large once unpacked, before anything is unpacked.
 *
 * ZIP File Format Specification 6.3, sections 4.3.12 and 4.3.16; archives that need the 64-bit extensions are over the limits anyway.
 */
export function readZipDirectory(bytes: Uint8Array): ZipEntry[] {
  if (bytes.length > limits.fileBytes) throw tooLarge(`is ${megabytes(bytes.length)} MB large; ${megabytes(limits.fileBytes)} MB is the most`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length >= 4 && view.getUint32(0, true) === signature.oldOffice) {
    throw invalid("file", "", "This file is locked with a password or in the old .xls format. Save it as .xlsx without a password, then open that.");
  }
  const end = findDirectoryEnd(view);
  const count = view.getUint16(end + 10, true);
  if (count > limits.entries) throw tooLarge(`holds ${count} parts; ${limits.entries} is the most`);
  const entries: ZipEntry[] = [];
  const names = new TextDecoder();
  let at = view.getUint32(end + 16, true);
  let unpacked = 0;
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== signature.entry) throw damaged();
    const nameLength = view.getUint16(at + 28, true);
    const entry = {
      name: names.decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      method: view.getUint16(at + 10, true),
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      offset: view.getUint32(at + 42, true),
    };
    entries.push(entry);
    unpacked += entry.bytes;
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  if (unpacked > limits.unpackedBytes) throw tooLarge(`would take ${megabytes(unpacked)} MB once unpacked; ${megabytes(limits.unpackedBytes)} MB is the most`);
  return entries;
}

/** Unpacks one entry, and stops where it yields more than its directory declares. */
export async function unpack(bytes: Uint8Array, entry: ZipEntry): Promise<Uint8Array> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.offset + 30 > bytes.length) throw damaged();
  const start = entry.offset + 30 + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true);
  const packed = bytes.subarray(start, start + entry.packedBytes);
  if (entry.method === 0) return packed;
  if (entry.method !== 8) throw damaged();
  const reader = new Blob([packed as Uint8Array<ArrayBuffer>]).stream().pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  const unpacked = new Uint8Array(entry.bytes);
  let filled = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      if (filled + value.length > entry.bytes) throw damaged();
      unpacked.set(value, filled);
      filled += value.length;
    }
  } catch {
    await reader.cancel().catch(() => undefined);
    throw damaged();
  }
  if (filled !== entry.bytes) throw damaged();
  return unpacked;
}

/** Makes the problem of a file that is no whole workbook. */
export function damaged(): Error {
  return invalid("file", "", "This file is no .xlsx workbook, or it is damaged. Open it in a spreadsheet program, save it as .xlsx and open that.");
}

function findDirectoryEnd(view: DataView): number {
  // The end record is 22 bytes and may be followed by a comment of at most 65,535.
  for (let at = view.byteLength - 22; at >= 0 && at >= view.byteLength - 22 - 65_535; at -= 1) {
    if (view.getUint32(at, true) === signature.directoryEnd) return at;
  }
  throw damaged();
}

export function tooLarge(what: string): Error {
  return invalid("file", what, `This file ${what}. Take out sheets or pictures that the plan does not need, or split it.`);
}

function megabytes(bytes: number): string {
  return String(Math.ceil(bytes / 1_000_000));
}

