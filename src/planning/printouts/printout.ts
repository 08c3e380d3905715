import type { Paper } from "../../sheet";

/** An amount of money, shown with so many decimals. */
export interface Amount {
  readonly amount: number;
  readonly decimals: number;
}

export type PackLine = readonly (string | number | Amount)[];

/** A block of a printout: its title, and its lines under headers, or a sentence where it has none. */
export interface PackBlock {
  readonly title: string;
  /** What is to be known before its lines are read; "" where that is nothing. */
  readonly note: string;
  readonly headers: readonly string[];
  readonly lines: readonly PackLine[];
  readonly none: string;
}

/** A drawing on a page of its own behind the blocks, as large as the drawing is. */
export interface PackPicture {
  /** As one SVG document that refers to nothing outside itself. */
  readonly svg: string;
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
}

/** What is handed to a customer on paper, as plain data: the sheet and the PDF show the same. */
export interface Printout {
  readonly title: string;
  /** What tells it from others of that title, in the head of every page. */
  readonly mark: string;
  /** Title among the properties of a file. */
  readonly fileTitle: string;
  /** Where, what, when: one line. */
  readonly facts: string;
  /** How it stands, in one sentence. */
  readonly standing: string;
  /** False where `standing` is something to look at. */
  readonly isComplete: boolean;
  readonly madeAt: string;
  readonly paper: Paper;
  readonly blocks: readonly PackBlock[];
  /** Drawings; on the sheet there is no place for them. */
  readonly pictures: readonly PackPicture[];
  /** Who signs below it. */
  readonly signatures: readonly string[];
}

/** Makes a block; `none` is said where it has no lines. */
export function block(title: string, headers: readonly string[], lines: readonly PackLine[], none: string, note = ""): PackBlock {
  return { title, note, headers, lines, none };
}

/** Writes a cell of a block as text, an amount with a comma between thousands and a point before its decimals. */
export function cellText(value: PackLine[number]): string {
  if (typeof value !== "object") return String(value);
  const [whole = "", part = ""] = Math.abs(value.amount).toFixed(value.decimals).split(".");
  return `${value.amount < 0 ? "-" : ""}${whole.replace(/\B(?=(?:\d{3})+$)/g, ",")}${part === "" ? "" : `.${part}`}`;
}
