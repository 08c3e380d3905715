import "./page-buffer";
import { Buffer } from "buffer";
import { create } from "fontkit";
import Printer from "pdfmake/js/Printer";
import medium from "roboto-fontface/fonts/roboto/Roboto-Medium.woff";
import regular from "roboto-fontface/fonts/roboto/Roboto-Regular.woff";
import { cellText, type PackPicture, type Printout } from "../planning/printouts";
import { aside, blockTable } from "./block-table";

/** Prints without asking any address: all that a printout shows is in it. */
class OfflinePrinter extends Printer {
  override resolveUrls(): Promise<void> {
    return Promise.resolve();
  }
}

/**
 * Writes a printout as a PDF: tables whose headers stand again on every page, text that can be searched and copied, and on each page the
 * title, what tells it from others of that title, and which page of how many it is.
 *
 * The same printout gives the same bytes. Its font has the Latin, Greek and Cyrillic letters; of others a box is seen, and a line at the end says so.
 */
export async function writePrintout({ title, mark, fileTitle, facts, standing, isComplete, madeAt, paper, blocks, pictures, signatures }: Printout): Promise<Uint8Array<ArrayBuffer>> {
  const { width } = pageSizes[paper];
  const text = [title, facts, standing, ...blocks.flatMap(({ title: name, note, headers, lines, none }) => [name, note, none, ...headers, ...lines.flat().map(cellText)])].join("\n");
  const definition = {
    pageSize: pageSizes[paper],
    pageMargins: [margin, margin + 22, margin, margin + 24],
    info: { title: fileTitle, subject: facts, creator: "Baywright", producer: "Baywright", creationDate: dateOf(madeAt) },
    language: "en",
    displayTitle: true,
    defaultStyle: { font: "Roboto", fontSize: 9, color: ink },
    header: { margin: [margin, margin - 6, margin, 0], fontSize: 8, columns: [{ text: title, bold: true }, { text: mark, alignment: "right" }] },
    footer: (page: number, pages: number) => ({
      margin: [margin, 8, margin, 0],
      fontSize: 8,
      columns: [{ text: facts, width: "*" }, { text: `page ${page} of ${pages}`, alignment: "right", width: 90 }],
    }),
    content: [
      { text: title, fontSize: 18, bold: true },
      { text: facts, color: aside, margin: [0, 2, 0, 4] },
      { text: standing, fontSize: 11, bold: true, color: isComplete ? ink : "#8c1c13", margin: [0, 0, 0, 4] },
      ...blocks.map((block) => blockTable(block, width - 2 * margin)),
      ...unseenLetters(text),
      signatureLines(signatures),
      ...pictures.map((picture) => picturePage(picture, `${title}, ${mark}`)),
    ],
  };
  const fonts = { Roboto: { normal: Buffer.from(regular), bold: Buffer.from(medium) } };
  return bytesOf(await new OfflinePrinter(fonts, null, null, () => false).createPdfKitDocument(definition));
}

/** Points of the papers, lying: A4 by ISO 216, Letter by ANSI Y14.1. */
const pageSizes: Readonly<Record<Printout["paper"], { readonly width: number; readonly height: number }>> = {
  A4: { width: 841.89, height: 595.28 },
  Letter: { width: 792, height: 612 },
};

/** Width of the margins in points, and the colour of text. */
const margin = 34;
const ink = "#17211e";

/** Reads the moment at which a printout was made, as its clock showed it. */
function dateOf(madeAt: string): Date {
  const [year = 1970, month = 1, day = 1, hour = 0, minute = 0] = madeAt.match(/\d+/g)?.map(Number) ?? [];
  return new Date(Date.UTC(year, month - 1, day, hour, minute));
}

/** Says which letters of a text the font does not have, where there are such. */
function unseenLetters(text: string): object[] {
  const font = create(Buffer.from(regular));
  const unseen = [...new Set(text.replace(/\s/g, ""))].filter((letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0)!));
  if (unseen.length === 0) return [];
  const codes = unseen.slice(0, 8).map((letter) => `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`);
  const others = unseen.length > codes.length ? " and others" : "";
  return [{ text: `Not every letter can be shown here: this font has none for ${codes.join(", ")}${others}. The sheet has them.`, color: aside, margin: [0, 6, 0, 0] }];
}

/** Points of a millimetre. */
const millimetre = 72 / 25.4;

/** Gives a drawing a page of its own size. It has a title block of its own: `head` stands small below its frame. */
function picturePage({ svg, width, height }: PackPicture, head: string): object {
  const pageSize = { width: width * millimetre, height: height * millimetre };
  const line = { text: head, fontSize: 7, absolutePosition: { x: margin, y: pageSize.height - 16 } };
  return { section: [{ svg, width: pageSize.width }, line], pageSize, pageMargins: { left: 0, top: 0, right: 0, bottom: 0 }, header: null, footer: null };
}

function signatureLines(signatures: readonly string[]): object {
  const line = (text: string): object => ({
    stack: [{ canvas: [{ type: "line", x1: 0, y1: 0, x2: 300, y2: 0, lineWidth: 0.7, lineColor: ink }] }, { text, fontSize: 8, margin: [0, 2, 0, 0] }],
    width: "*",
  });
  return { columns: signatures.map(line), columnGap: 30, margin: [0, 46, 0, 0], unbreakable: true };
}

function bytesOf(document: Awaited<ReturnType<Printer["createPdfKitDocument"]>>): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    const pieces: Uint8Array[] = [];
    document.on("data", (piece) => pieces.push(piece));
    document.on("end", () => {
      resolve(new Uint8Array(Buffer.concat(pieces)));
    });
    document.on("error", reject);
    document.end();
  });
}
