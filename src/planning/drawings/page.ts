import { shortenText, widthOfText } from "./text-width";

/** What an area is filled with: each is told from the others on a black and white print too. */
export type Fill = "none" | "paper" | "light" | "grey" | "dark" | "hatch" | "cross" | "dots" | "alarm";

/** How a line is drawn: its dashes tell it from others without colour. */
export interface Stroke {
  readonly width: number;
  readonly colour: string;
  /** Millimetres drawn and left free in turn; none for a whole line. */
  readonly dashes: readonly number[];
}

export interface RectMark {
  readonly kind: "rect";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly fill: Fill;
  readonly stroke: Stroke | null;
}

export interface LineMark {
  readonly kind: "line";
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly stroke: Stroke;
}

/** One line of text: its left end, its baseline, the size of its font and the width it takes in whatever font it is drawn. */
export interface TextMark {
  readonly kind: "text";
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
  readonly text: string;
  readonly isBold: boolean;
}

export type Mark = RectMark | LineMark | TextMark;

/** What a page of drawings shows. */
export type DrawingKind = "capacity" | "racks" | "feeds" | "cabling" | "options";

/** A page of drawings as plain data: lines, rectangles and texts in millimetres from its upper left corner. */
export interface DrawingPage {
  readonly kind: DrawingKind;
  /** What it shows, such as "Rack RR-R1, front and rear". */
  readonly title: string;
  /** What it shows, in words, for whoever does not see it. */
  readonly summary: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** A page without the frame and the title block that the whole set gives it. */
export type PageContent = Pick<DrawingPage, "kind" | "title" | "summary" | "marks">;

/** A3, landscape (ISO 216). */
export const paper = { width: 420, height: 297 } as const;

/** What is inside the frame and above the title block: a page's content stays in it. */
export const body = { left: 14, top: 14, right: 406, bottom: 264 } as const;

/** Sizes of text in millimetres; the small one is 7.1 point, and nothing is smaller. */
export const small = 2.5;
export const medium = 3.2;
export const large = 4.6;

export const ink = "#1c2a26";
export const thin: Stroke = { width: 0.18, colour: ink, dashes: [] };
export const firm: Stroke = { width: 0.4, colour: ink, dashes: [] };
export const faint: Stroke = { width: 0.12, colour: "#93a19b", dashes: [] };
export const alarm: Stroke = { width: 0.7, colour: "#8c1c13", dashes: [] };

export function rect(x: number, y: number, width: number, height: number, fill: Fill, stroke: Stroke | null = thin): RectMark {
  return { kind: "rect", x, y, width: Math.max(0, width), height: Math.max(0, height), fill, stroke };
}

export function line(points: LineMark["points"], stroke: Stroke = thin): LineMark {
  return { kind: "line", points, stroke };
}

interface TextLook {
  readonly size?: number;
  readonly isBold?: boolean;
  readonly align?: "left" | "right" | "middle";
}

/** Writes a line of text with its baseline at `y`, at the left end, the right end or in the middle of `room`, shortened in sight where it has no room; none for no text. */
export function text(x: number, y: number, room: number, words: string, { size = small, isBold = false, align = "left" }: TextLook = {}): readonly TextMark[] {
  const shown = shortenText(words, room, size, isBold);
  if (shown === "") return [];
  const width = widthOfText(shown, size, isBold);
  const free = room - width;
  return [{ kind: "text", x: x + (align === "right" ? free : align === "middle" ? free / 2 : 0), y, size, width, text: shown, isBold }];
}

/** Gives the area that a text takes: from the tops of its letters to the ends of their tails. */
export function areaOfText({ x, y, size, width }: TextMark): { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number } {
  return { left: x, top: y - 0.76 * size, right: x + width, bottom: y + 0.22 * size };
}

/** Breaks a text into lines no wider than `room`, word by word. */
export function wrapText(words: string, room: number, size = small): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/).filter((one) => one !== "")) {
    const last = lines.at(-1);
    if (last !== undefined && widthOfText(`${last} ${word}`, size) <= room) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Distance of one line of a paragraph from the next, as a multiple of the size of its text. */
const leading = 1.45;

/** Writes a paragraph below `top`, and says where it ends. */
export function paragraph(x: number, top: number, room: number, words: string, size = small): { readonly marks: readonly TextMark[]; readonly bottom: number } {
  const lines = wrapText(words, room, size);
  return { marks: lines.flatMap((one, at) => text(x, top + (at * leading + 1) * size, room, one, { size })), bottom: top + lines.length * leading * size };
}

/** Writes the area of a table's row: words in columns of so many millimetres, each with a gap behind it. */
export function cells(x: number, y: number, columns: readonly (readonly [words: string, width: number])[], look: TextLook = {}): readonly TextMark[] {
  let left = x;
  return columns.flatMap(([words, width]) => {
    const marks = text(left, y, width - cellGap, words, look);
    left += width;
    return marks;
  });
}

const cellGap = 1.5;
