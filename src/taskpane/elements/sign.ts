const svg = "http://www.w3.org/2000/svg";

/** What each sign is drawn of, on a square of 16: as characters they would need a font that not every machine has. */
const shapes = {
  stop: { d: "M3 3h10v10H3z", isFilled: true },
  warn: { d: "M8 2.5 14.5 13.5H1.5z", isFilled: true },
  note: { d: "M8 3a5 5 0 1 1 0 10a5 5 0 1 1 0-10z", isFilled: true },
  good: { d: "M2.5 8.5 6.5 12.5 13.5 4", isFilled: false },
  close: { d: "M3.5 3.5 12.5 12.5M12.5 3.5 3.5 12.5", isFilled: false },
  menu: { d: "M2 4h12M2 8h12M2 12h12", isFilled: false },
} as const;

export type Sign = keyof typeof shapes;

/** Draws a sign as large as the text beside it, in the colour of that text; it says nothing to a screen reader. */
export function makeSign(sign: Sign): SVGSVGElement {
  const root = document.createElementNS(svg, "svg");
  const path = document.createElementNS(svg, "path");
  const { d, isFilled } = shapes[sign];
  const drawn: Record<string, string> = isFilled ? { fill: "currentColor" } : { fill: "none", stroke: "currentColor", "stroke-width": "1.8" };
  for (const [name, value] of Object.entries({ viewBox: "0 0 16 16", width: "1em", height: "1em", "aria-hidden": "true" })) root.setAttribute(name, value);
  for (const [name, value] of Object.entries({ d, ...drawn })) path.setAttribute(name, value);
  root.append(path);
  return root;
}
