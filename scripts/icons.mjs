// Draws the icons of the add-in into manifest/icons: a rack of three units, the middle one filled in part, on a ground of its own so
// that it reads on light and dark ribbons. Every edge falls on a whole pixel at every size. Wants an installed Chromium.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";

const folder = join(import.meta.dirname, "..", "manifest", "icons");
/** Every size that the ribbon takes; the add-in's own icon stands in its catalogue too. */
const ribbon = [16, 20, 24, 32, 40, 48, 64, 80];
const sizes = { baywright: [...ribbon, 128], check: ribbon, build: ribbon };

const ground = "#0d6e7d";
const bar = "#ffffff";
const filled = "#ffc24b";

const rectangle = (x, y, width, height, colour, radius = 0) => `<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="${radius}" fill="${colour}"/>`;

/** Draws one unit of the rack; the share from `from` to `to` of its width, in sixteenths of the icon. */
function unit(size, row, from, to, colour) {
  const at = (sixteenths) => Math.round((sixteenths * size) / 16);
  const height = Math.max(2, at(2.4));
  return rectangle(at(from), at(3 + 4 * row) - (size === 16 ? 0 : at(0.2)), at(to) - at(from), height, colour, size >= 48 ? at(0.5) : 0);
}

const marks = {
  baywright: (size) => unit(size, 0, 3, 13, bar) + unit(size, 1, 3, 13, "#5fb0bb") + unit(size, 1, 3, 10, filled) + unit(size, 2, 3, 13, bar),
  check: (size) => unit(size, 0, 3, 13, bar) + unit(size, 1, 3, 7, bar) + line(size, "4,11 7,14 13,7"),
  build: (size) => unit(size, 0, 3, 13, bar) + unit(size, 1, 3, 7, bar) + unit(size, 2, 3, 7, bar) + line(size, "11,8 11,14") + line(size, "8,11 14,11"),
};

/** Draws a line through points given in sixteenths. */
function line(size, points) {
  const scaled = points.replace(/\d+/g, (number) => String((Number(number) * size) / 16));
  return `<polyline points="${scaled}" fill="none" stroke="${filled}" stroke-width="${Math.max(2, size / 8)}"/>`;
}

mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
const page = await browser.newPage();
for (const [name, mark] of Object.entries(marks)) {
  for (const size of sizes[name]) {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}">${rectangle(0, 0, size, size, ground, Math.round(size / 6))}${mark(size)}</svg>`;
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>*{margin:0}svg{display:block}</style>${svg}`);
    await page.screenshot({ path: join(folder, `${name}-${size}.png`), omitBackground: true });
  }
}
await browser.close();
