import { renderPng } from "./render-png";

/** Properties of a shape that come from the style sheet and have to go with a copy. */
const carried = ["fill", "stroke", "stroke-width", "stroke-dasharray", "font-family", "font-size", "font-weight", "opacity"];

/** How many dots one unit of a picture becomes. */
const scale = 3;

/** Turns a drawn picture into a PNG with the colours it has on the page. */
export function renderPicture(picture: SVGSVGElement): Promise<Blob> {
  const { width, height } = picture.viewBox.baseVal;
  const copy = picture.cloneNode(true) as SVGSVGElement;
  const originals = picture.querySelectorAll<SVGElement>("*");
  copy.querySelectorAll<SVGElement>("*").forEach((element, index) => {
    const style = getComputedStyle(originals[index]!);
    for (const property of carried) element.style.setProperty(property, style.getPropertyValue(property));
  });
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("width", String(width * scale));
  copy.setAttribute("height", String(height * scale));
  return renderPng(new XMLSerializer().serializeToString(copy), width * scale, height * scale, getComputedStyle(picture).backgroundColor);
}
