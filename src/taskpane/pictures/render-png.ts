/** Draws the text of an SVG document as a PNG of so many dots, on a ground of one colour. Refuses what the browser cannot draw. */
export async function renderPng(svg: string, width: number, height: number, ground: string): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d")!;
  context.fillStyle = ground;
  context.fillRect(0, 0, width, height);
  context.drawImage(image, 0, 0, width, height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob === null ? reject(new Error("The picture could not be drawn.")) : resolve(blob)), "image/png");
  });
}
