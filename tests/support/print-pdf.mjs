// Reads the PDF that is named, by the library with which browsers show it, and prints what is in it as JSON: `readPdf` asks for it.
import { readFile } from "node:fs/promises";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

const file = await getDocument({ data: new Uint8Array(await readFile(process.argv[2])), verbosity: 0 }).promise;
const pages = [];
for (let number = 1; number <= file.numPages; number += 1) {
  const page = await file.getPage(number);
  const { items } = await page.getTextContent();
  const [, , width, height] = page.view;
  pages.push({ width, height, texts: items.map(({ str }) => str).filter((text) => text.trim() !== "") });
}
const { info } = await file.getMetadata();
process.stdout.write(JSON.stringify({ title: info.Title, made: info.CreationDate, language: info.Language, pages }));
