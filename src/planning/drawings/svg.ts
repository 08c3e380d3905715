import type { DrawingPage, Fill, Mark, Stroke } from "./page";

const inks = { soft: "#5b6b65", alarm: "#8c1c13", ground: "#eef2f0" } as const;
const fills: Readonly<Record<Fill, string>> = {
  none: "none", paper: "#ffffff", light: "#f1f5f3", grey: "#d9e2de", dark: "#7f9a90", hatch: "url(#hatch)", cross: "url(#cross)", dots: "url(#dots)", alarm: "url(#alarm)",
};

/** The fillings that are patterns: size of their square in millimetres, what is drawn in it, and with what. */
const patterns: readonly (readonly [id: string, size: number, path: string, look: string])[] = [
  ["hatch", 2, "M-0.5 0.5L0.5 -0.5M0 2L2 0M1.5 2.5L2.5 1.5", `stroke="${inks.soft}" stroke-width="0.25"`],
  ["cross", 2, "M0 0L2 2M0 2L2 0", `stroke="${inks.soft}" stroke-width="0.2"`],
  ["dots", 1.6, "M0.6 0.6h0.4v0.4h-0.4z", `fill="${inks.soft}"`],
  ["alarm", 3, "M-0.75 0.75L0.75 -0.75M0 3L3 0M2.25 3.75L3.75 2.25", `stroke="${inks.alarm}" stroke-width="0.7"`],
];

/** Fonts of the same widths as those by which texts are measured come first. */
const fonts = "Arial, Helvetica, Liberation Sans, DejaVu Sans Condensed, sans-serif";

/**
 * Writes a page as the text of an SVG document (SVG 1.1) as large as the page, with its title and what it shows in words.
 *
 * Every text says how wide it is, so that it keeps to its room in whatever font the reader has.
 */
export function svgOf({ title, summary, width, height, marks }: DrawingPage): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="${fonts}" fill="#1c2a26">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(summary)}</desc>`,
    "<defs>",
    ...patterns.map(([id, size, path, look]) =>
      `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse"><rect width="${size}" height="${size}" fill="${inks.ground}"/><path d="${path}" ${look}/></pattern>`),
    "</defs>",
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...marks.map(elementOf),
    "</svg>",
    "",
  ].join("\n");
}

function elementOf(mark: Mark): string {
  if (mark.kind === "rect") {
    const stroke = mark.stroke === null ? "" : strokeOf(mark.stroke);
    return `<rect x="${round(mark.x)}" y="${round(mark.y)}" width="${round(mark.width)}" height="${round(mark.height)}" fill="${fills[mark.fill]}"${stroke}/>`;
  }
  if (mark.kind === "line") return `<path d="M${mark.points.map(([x, y]) => `${round(x)} ${round(y)}`).join("L")}" fill="none"${strokeOf(mark.stroke)}/>`;
  const weight = mark.isBold ? ` font-weight="bold"` : "";
  const length = `textLength="${round(mark.width)}" lengthAdjust="spacingAndGlyphs"`;
  return `<text x="${round(mark.x)}" y="${round(mark.y)}" font-size="${round(mark.size)}"${weight} ${length}>${escaped(mark.text)}</text>`;
}

function strokeOf({ width, colour, dashes }: Stroke): string {
  return ` stroke="${colour}" stroke-width="${width}"${dashes.length === 0 ? "" : ` stroke-dasharray="${dashes.join(" ")}"`}`;
}

function round(millimetres: number): number {
  return Math.round(millimetres * 1000) / 1000 + 0;
}

/** What a text of XML 1.0 may not hold (section 2.2): controls, halves of letters, and two codes that are none. */
// eslint-disable-next-line no-control-regex -- these codes are what is looked for
const forbidden = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

function escaped(words: string): string {
  return words.replace(forbidden, "\ufffd").replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
}
