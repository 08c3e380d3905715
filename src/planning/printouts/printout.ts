export type PackLine = readonly (string | number)[];

/** A block of the pack: its title, and its lines under headers, or a sentence where it has none. */
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

/** Makes a block; `none` is said where it has no lines. */
export function block(title: string, headers: readonly string[], lines: readonly PackLine[], none: string, note = ""): PackBlock {
  return { title, note, headers, lines, none };
}
