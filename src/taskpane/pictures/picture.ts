/** One element of a picture, as plain data: an SVG tag, its attributes, and either text or elements inside. */
export interface Shape {
  readonly tag: "g" | "rect" | "line" | "path" | "text" | "circle";
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly text?: string;
  readonly children?: readonly Shape[];
}

/** A picture as plain data. Colours and patterns come from the classes of its shapes, so that it follows the theme. */
export interface Picture {
  /** Short name, such as "Feed loads of Bindery". */
  readonly title: string;
  /** What the picture shows, in words: for a screen reader, and for whoever cannot tell the colours apart. */
  readonly summary: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** What the fillings mean: class and words. */
  readonly legend?: readonly { readonly look: string; readonly meaning: string }[];
}

/** Width of every picture in its own units: the width the narrowest pane has left. */
export const pictureWidth = 290;

/** Makes a rectangle; one that would be narrower than nothing is drawn with no width. */
export function rect(x: number, y: number, width: number, height: number, look: string): Shape {
  return { tag: "rect", attributes: { x: round(x), y: round(y), width: round(Math.max(0, width)), height: round(Math.max(0, height)), class: look } };
}

export function line(x1: number, y1: number, x2: number, y2: number, look: string): Shape {
  return { tag: "line", attributes: { x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2), class: look } };
}

interface LabelLook {
  readonly anchor?: "start" | "middle" | "end";
  readonly look?: string;
  readonly room?: number;
}

/** Makes a line of text with its baseline at `y`, cut to `room` units of width with an ellipsis. */
export function label(x: number, y: number, text: string, { anchor = "start", look = "label", room = pictureWidth }: LabelLook = {}): Shape {
  return { tag: "text", attributes: { x: round(x), y: round(y), "text-anchor": anchor, class: look }, text: clip(text, room) };
}

/** Average width of a letter at the size of labels. */
const letterWidth = 5.9;

/** Cuts text to what fits into `room` units of width. */
function clip(text: string, room: number): string {
  const letters = Math.max(1, Math.floor(room / letterWidth));
  return text.length <= letters ? text : `${text.slice(0, letters - 1)}…`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
