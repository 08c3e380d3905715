import type { Stroke } from "./page";

/** Dashes that are told apart in black and white, in millimetres. */
const dashes: readonly (readonly number[])[] = [[], [3, 1.2], [0.6, 0.9], [4, 1, 0.6, 1], [1.6, 0.8], [5, 0.8, 0.6, 0.8, 0.6, 0.8], [0.6, 2], [2.4, 2.4]];
const colours = ["#1d4f91", "#a3480a", "#3d3d3d", "#5a2a82", "#1b6b43"];

/** Gives each kind of cable a stroke of its own, sides first and by name: as many as there are dashes; further kinds begin again with another colour. */
export function strokesOf(kinds: readonly string[]): ReadonlyMap<string, Stroke> {
  const isSide = (kind: string): boolean => kind.startsWith("side ");
  const sorted = [...new Set(kinds)].filter((kind) => kind !== "").sort((a, b) => Number(isSide(b)) - Number(isSide(a)) || (a < b ? -1 : 1));
  return new Map(sorted.map((kind, at) => [kind, { width: 0.45, colour: colours[at % colours.length]!, dashes: dashes[at % dashes.length]! }]));
}
