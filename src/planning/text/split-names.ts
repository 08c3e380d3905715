/** Splits a cell that names several things, with commas between; empty places are passed over. */
export function splitNames(text: string): string[] {
  return text.split(",").map((name) => name.trim()).filter((name) => name !== "");
}
