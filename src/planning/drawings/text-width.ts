/** Advance widths of Helvetica in thousandths of the text's size, from the space to the tilde (Adobe Core 14 font metrics); Arial has the same. */
const widths = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
  1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
  333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];

/** By how much bold letters are wider, taken together. */
const boldFactor = 1.07;

/** Measures one line of text in the unit of `size`. Letters without a known width count as wide as they are drawn at most: 0.8 of the size, 1 beyond Latin. */
export function widthOfText(text: string, size: number, isBold = false): number {
  const thousandths = [...text].reduce((sum, letter) => sum + widthOfLetter(letter.codePointAt(0)!), 0);
  return (thousandths / 1000) * size * (isBold ? boldFactor : 1);
}

function widthOfLetter(code: number): number {
  return widths[code - 32] ?? (code < 0x250 ? 667 : code < 0x1100 ? 800 : 1000);
}

/** Makes one line of a text and takes letters out of its middle until it is no wider than `room`: names are told apart at both of their ends. */
export function shortenText(text: string, room: number, size: number, isBold = false): string {
  const letters = [...text.replace(/\s+/g, " ").trim()];
  const fits = (kept: number): string => `${letters.slice(0, Math.ceil(kept / 2)).join("")}…${letters.slice(letters.length - Math.floor(kept / 2)).join("")}`;
  if (widthOfText(letters.join(""), size, isBold) <= room) return letters.join("");
  // From what surely fits downwards: a line of a drawing has few letters.
  for (let kept = Math.min(letters.length - 1, Math.floor(room / size / 0.18)); kept > 0; kept -= 1) if (widthOfText(fits(kept), size, isBold) <= room) return fits(kept);
  return widthOfText("…", size, isBold) <= room ? "…" : "";
}
