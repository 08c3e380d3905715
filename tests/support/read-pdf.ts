import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";

/** A PDF as somebody reads it who searches and copies its text. */
export interface ReadPdf {
  readonly title: string;
  readonly made: string;
  readonly language: string;
  /** Points, and the texts in the order in which they stand in the file. */
  readonly pages: readonly { readonly width: number; readonly height: number; readonly texts: readonly string[] }[];
}

/** Reads a PDF in a process of its own: the library that reads it is a module that jest does not load. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const folder = await mkdtemp(join(tmpdir(), "pdf-"));
  const file = join(folder, "read.pdf");
  try {
    await writeFile(file, bytes);
    const { stdout } = await promisify(execFile)(process.execPath, [join(__dirname, "print-pdf.mjs"), file], { maxBuffer: 50_000_000 });
    return JSON.parse(stdout) as ReadPdf;
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** Writes all that stands on a page as one text without spaces: lines break between words and behind hyphens, and each part stands apart. */
export function textOf({ texts }: ReadPdf["pages"][number]): string {
  return withoutSpaces(texts.join(""));
}

/** Writes a text as it is looked for in `textOf`. */
export function withoutSpaces(text: string): string {
  return text.replace(/\s/g, "");
}
