import type { Picture, Shape } from "./picture";

const svg = "http://www.w3.org/2000/svg";

/** Draws a picture as an SVG element with a name and a description. Only one is on the page at a time: patterns have fixed ids. */
export function drawPicture({ title, summary, width, height, shapes }: Picture): SVGSVGElement {
  const root = document.createElementNS(svg, "svg");
  root.setAttribute("viewBox", `0 0 ${width} ${height}`);
  root.setAttribute("role", "img");
  root.setAttribute("aria-labelledby", "bay-picture-title bay-picture-summary");
  root.classList.add("bay-picture");
  root.append(named("title", "bay-picture-title", title), named("desc", "bay-picture-summary", summary), patterns());
  root.append(...shapes.map(draw));
  return root;
}

function draw({ tag, attributes, text, children = [] }: Shape): SVGElement {
  const element = document.createElementNS(svg, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  if (text !== undefined) element.textContent = text;
  element.append(...children.map(draw));
  return element;
}

function named(tag: "title" | "desc", id: string, text: string): SVGElement {
  const element = document.createElementNS(svg, tag);
  element.id = id;
  element.textContent = text;
  return element;
}

/** Makes the fillings that tell parts apart without colour. */
function patterns(): SVGElement {
  const defs = document.createElementNS(svg, "defs");
  const filling = (id: string, size: number, path: string) => {
    const pattern = document.createElementNS(svg, "pattern");
    for (const [name, value] of Object.entries({ id, width: size, height: size, patternUnits: "userSpaceOnUse" })) pattern.setAttribute(name, String(value));
    const ground = draw({ tag: "rect", attributes: { width: size, height: size, class: `${id}-ground` } });
    pattern.append(ground, draw({ tag: "path", attributes: { d: path, class: `${id}-ink` } }));
    defs.append(pattern);
  };
  filling("bay-hatch", 6, "M-1.5 1.5 L1.5 -1.5 M0 6 L6 0 M4.5 7.5 L7.5 4.5");
  filling("bay-cross", 6, "M0 0 L6 6 M6 0 L0 6");
  filling("bay-dots", 5, "M2 2 h1 v1 h-1 z");
  filling("bay-alarm", 7, "M-1.75 1.75 L1.75 -1.75 M0 7 L7 0 M5.25 8.75 L8.75 5.25");
  return defs;
}
