import type { ICellData, IDocumentData, ITextRun } from "@univerjs/core";
import type { Look, TextPiece } from "../document/workbook-document";
import { no } from "./engine-values";
import { lookOfStyle, styleOfLook } from "./look-style";

/** What of a look a piece of a text has for itself. */
const fontOf = ({ font, size, bold, italic, underline, strike, raised, color }: Look): Look => ({ font, size, bold, italic, underline, strike, raised, color });

/** Puts a text in pieces as the engine stores it. A piece with a font of its own takes on nothing of the cell's. */
export function storedPieces(pieces: readonly TextPiece[]): IDocumentData {
  const text = pieces.map((piece) => piece.text).join("").replace(/\r?\n/g, "\r");
  const textRuns: ITextRun[] = [];
  let from = 0;
  for (const { text: piece, look } of pieces) {
    const to = from + piece.replace(/\r?\n/g, "\r").length;
    if (look !== undefined) textRuns.push({ st: from, ed: to, ts: { bl: no, it: no, ul: { s: no }, st: { s: no }, ...styleOfLook(fontOf(look)) } });
    from = to;
  }
  const paragraphs = [...text.matchAll(/\r/g)].map(({ index }) => ({ startIndex: index, paragraphId: `p${index}` }));
  return { id: "pieces", documentStyle: {}, body: { dataStream: `${text}\r\n`, textRuns, paragraphs: [...paragraphs, { startIndex: text.length, paragraphId: `p${text.length}` }] } };
}

/** Reads the pieces of a text that do not look as their cell does; undefined where all of it does. */
export function piecesOf({ p }: ICellData, cell: Look): readonly TextPiece[] | undefined {
  const text = p?.body?.dataStream.replace(/\r\n$/, "") ?? "";
  const runs = [...(p?.body?.textRuns ?? [])].sort((one, other) => one.st - other.st);
  if (text === "" || runs.length === 0) return undefined;
  const own = fontOf(cell);
  const pieces: TextPiece[] = [];
  const add = (from: number, to: number, ts: ITextRun["ts"]) => {
    const piece = text.slice(from, to).replace(/\r/g, "\n");
    // What the engine says outright to be none, a cell may still have.
    const said = Object.fromEntries(Object.entries(lookOfStyle(ts ?? {})).filter(([key]) => key in own));
    const none = {
      ...(ts?.bl === no && { bold: undefined }), ...(ts?.it === no && { italic: undefined }), ...(ts?.ul?.s === no && { underline: undefined }), ...(ts?.st?.s === no && { strike: undefined }),
    };
    const font = fontOf({ ...own, ...none, ...said });
    const look = JSON.stringify(font) === JSON.stringify(own) ? undefined : font;
    const before = pieces.at(-1);
    if (piece === "") return;
    if (before !== undefined && JSON.stringify(before.look) === JSON.stringify(look)) pieces[pieces.length - 1] = { text: before.text + piece, look };
    else pieces.push({ text: piece, look });
  };
  let end = 0;
  for (const { st, ed, ts } of runs) {
    add(end, st, undefined);
    add(Math.max(st, end), Math.min(ed, text.length), ts);
    end = Math.max(end, ed);
  }
  add(end, text.length, undefined);
  return pieces.every(({ look }) => look === undefined) ? undefined : pieces;
}
