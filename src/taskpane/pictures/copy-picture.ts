/** Properties of a shape that come from the style sheet and have to go with a copy. */
const carried = ["fill", "stroke", "stroke-width", "stroke-dasharray", "font-family", "font-size", "font-weight", "opacity"];

/** How many dots one unit of a picture becomes. */
const scale = 3;

/** Turns a drawn picture into a PNG with the colours it has on the page. */
export async function renderPng(picture: SVGSVGElement): Promise<Blob> {
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

  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * scale;
  canvas.height = height * scale;
  const context = canvas.getContext("2d")!;
  context.fillStyle = getComputedStyle(picture).backgroundColor;
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob === null ? reject(new Error("The picture could not be drawn.")) : resolve(blob)), "image/png");
  });
}
