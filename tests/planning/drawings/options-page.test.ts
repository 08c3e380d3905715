import { optionsPage, svgOf, type TextMark } from "../../../src/planning/drawings";
import { readOptions } from "../../../src/planning/options";
import { filledOptions, threeDesigns } from "../../support/options-sheet";

const page = optionsPage(readOptions(filledOptions(threeDesigns)), { madeAt: "2026-06-01 10:00", planName: "thornmere.xlsx" });
const texts = page.marks.filter((mark): mark is TextMark => mark.kind === "text");

describe("the picture of the options", () => {
  test("says in words what it shows, for whoever does not see it", () => {
    expect(page.summary).toBe(
      "From 2026-06-01: 60 TB of data, growing by 20% a year for 5 years; filled to 80% at most. One large array: 1 array, 192 TB to hosts, full after 5.2 years, in 2031. " +
      "Two arrays, mirrored: 2 arrays, 192 TB to hosts, full after 5.2 years, in 2031. Single parity: 1 array, 176 TB to hosts, full after 4.7 years, in 2031.",
    );
  });

  test("draws one line a design over the whole years, and marks where the data reaches it in time", () => {
    const lines = page.marks.filter((mark) => mark.kind === "line" && mark.points.length === 2 && mark.stroke.colour === "#1d4f91" && mark.points[1]![0] - mark.points[0]![0] > 100);
    expect(lines).toHaveLength(3);
    expect(page.marks.filter((mark) => mark.kind === "rect" && mark.fill === "alarm" && mark.width < 3)).toHaveLength(2);
  });

  test("names each line beside it without one name over another, though two are as high", () => {
    const names = texts.filter(({ text, x }) => ["One large array", "Two arrays, mirrored", "Single parity"].includes(text) && x > 300).map(({ y }) => y).sort((a, b) => a - b);
    expect(names).toHaveLength(3);
    expect(Math.min(names[1]! - names[0]!, names[2]! - names[1]!)).toBeGreaterThanOrEqual(3);
  });

  test("lies on the page with all it holds, and is drawn as SVG of its size", () => {
    expect(page.marks.every((mark) => mark.kind !== "text" || (mark.x >= 8 && mark.x + mark.width <= 412 && mark.y <= 290))).toBe(true);
    expect(svgOf(page)).toMatch(/^<svg [^>]*width="420mm" height="297mm"/);
  });
});
