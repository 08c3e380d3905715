import { writePrintout } from "../../src/pdf/write-printout";
import { jobsOf, readCommissioningPlan } from "../../src/planning/commissioning/build";
import { handoverPack } from "../../src/planning/commissioning/reports";
import { cellText, type PackBlock, type Printout } from "../../src/planning/printouts";
import { planWorkbook, smallPlan } from "../support/commissioning-plan";
import { jobRecords, sealLine, stepRecord } from "../support/job-records";
import { readPdf, textOf, withoutSpaces } from "../support/read-pdf";

const block = (more: Partial<PackBlock> = {}): PackBlock => ({ title: "Arrays", note: "", headers: ["Array", "Serial"], lines: [["n-1", "N-0001"]], none: "No arrays.", ...more });

function packOf(more: Partial<Printout> = {}): Printout {
  return {
    title: "Handover: North hall", mark: "build 3, seal AB12-CD34", fileTitle: "Handover: North hall, build 3",
    facts: "Try out, site North hall, build 3, made 2026-03-09 10:00", standing: "All settled.", isComplete: true, madeAt: "2026-03-09 10:00",
    paper: "A4", blocks: [block()], pictures: [], signatures: ["For the site, name and date", "For the installer, name and date"],
    ...more,
  };
}

test("every cell of a job's pack can be read back out of the PDF, in the order of the pack", async () => {
  const source = readCommissioningPlan(planWorkbook(smallPlan()));
  const steps = [
    stepRecord({}),
    stepRecord({ no: "2", stepId: "S-2", result: "Differs", typed: { found: 4, by: "AB", note: "A note that goes on for more than a line of its column, so that it is wrapped between its words" } }),
    stepRecord({ no: "3", kind: "number", expected: "at most 30", plannedUnit: "s", seenUnit: "s", result: "As expected", settled: true, typed: { found: 12, by: "AB" } }),
  ];
  const tab = jobRecords({ steps, seals: [sealLine({ typed: { reopened: 1, reopenedBy: "X", reason: "y" } })] });
  const pack = handoverPack(source, jobsOf(source)[0]!, { tab, sealHolds: false }, "2026-03-09 10:00");
  const { pages } = await readPdf(await writePrintout(pack));
  const text = pages.map(textOf).join("");
  let from = text.indexOf(withoutSpaces(pack.standing));
  expect(from).toBeGreaterThan(0);
  for (const { title, headers, lines, none } of pack.blocks) {
    for (const cell of [title, ...(lines.length === 0 ? [none] : [...headers, ...lines.flat()])]) {
      const at = text.indexOf(withoutSpaces(cellText(cell)), from);
      expect([cell, at >= from]).toEqual([cell, true]);
      from = at;
    }
  }
});

describe("every page of the PDF", () => {
  const long = packOf({ blocks: [block({ title: "Drives by bay", lines: Array.from({ length: 120 }, (_, at): [string, string] => [`bay ${at + 1}`, `D-${at + 1}`]) })] });

  test("says the job, its build, the code of the seal and which page of how many it is, and has the headers of its table", async () => {
    const { title, language, pages } = await readPdf(await writePrintout(long));
    expect([title, language]).toEqual(["Handover: North hall, build 3", "en"]);
    expect(pages.length).toBeGreaterThan(2);
    pages.forEach((page, at) => {
      for (const text of ["Handover: North hall", "build 3, seal AB12-CD34", `page ${at + 1} of ${pages.length}`, "Drives by bay", "Array Serial"]) {
        expect(textOf(page)).toContain(withoutSpaces(text));
      }
    });
    // No line is lost or doubled where pages break.
    const bays = pages.flatMap((page) => textOf(page).match(/bay\d+D-\d+/g) ?? []);
    expect(bays).toEqual(Array.from({ length: 120 }, (_, at) => `bay${at + 1}D-${at + 1}`));
  });

  // ISO 216: A4 is 210 mm by 297 mm. ANSI Y14.1: Letter is 8.5 by 11 inches. A point is 1/72 inch.
  test.each<[Printout["paper"], number, number]>([["A4", (297 / 25.4) * 72, (210 / 25.4) * 72], ["Letter", 11 * 72, 8.5 * 72]])("lies on %s", async (paper, width, height) => {
    const { pages } = await readPdf(await writePrintout({ ...long, paper }));
    for (const page of pages) {
      expect(page.width).toBeCloseTo(width, 1);
      expect(page.height).toBeCloseTo(height, 1);
    }
  });
});

describe("the text of the PDF", () => {
  test("has the letters of Latin, Greek and Cyrillic", async () => {
    const words = ["Straße façade ±3 ≥ 20 – “in”", "Łódź Győr Čeština", "Αθήνα Ωμέγα", "Київ Библиотека Ђурђевак"];
    const { pages } = await readPdf(await writePrintout(packOf({ blocks: [block({ lines: words.map((word) => [word, ""]) })] })));
    for (const word of words) expect(textOf(pages[0]!)).toContain(withoutSpaces(word));
    expect(textOf(pages[0]!)).not.toContain(withoutSpaces("Not every letter"));
  });

  test("says which letters it cannot show", async () => {
    const { pages } = await readPdf(await writePrintout(packOf({ blocks: [block({ lines: [["漢", "n-1"]] })] })));
    expect(textOf(pages[0]!)).toContain(withoutSpaces("Not every letter can be shown here: this font has none for U+6F22. The sheet has them."));
  });

  test("is that of the cell, whatever looks like markup in it", async () => {
    const cells = ["<b>bold</b> & {{Array}}", "=1+1", "**star** [link](https://example.org/)"];
    const bytes = await writePrintout(packOf({ blocks: [block({ lines: cells.map((cell) => [cell, ""]) })] }));
    const { pages } = await readPdf(bytes);
    for (const cell of cells) expect(textOf(pages[0]!)).toContain(withoutSpaces(cell));
    expect(Buffer.from(bytes).toString("latin1")).not.toMatch(/\/(URI|JavaScript|JS|Launch|OpenAction)\b/);
  });

  test("stays in its column where a word is longer than that, and none of it is lost", async () => {
    const name = `iqn.2024-05.example:${"reading-room".repeat(20)}`;
    const line = [name, ...Array.from({ length: 7 }, () => name)];
    const { pages } = await readPdf(await writePrintout(packOf({ blocks: [block({ headers: line.map((_, at) => `H${at}`), lines: [line] })] })));
    expect(pages.map(textOf).join("").split("reading-room").length - 1).toBeGreaterThanOrEqual(8);
  });
});

test("its font may be handed on: it says of itself that it stands under the Apache License, Version 2.0", async () => {
  const { openSync } = await import("fontkit");
  for (const weight of ["Regular", "Medium"]) {
    expect(openSync(require.resolve(`roboto-fontface/fonts/roboto/Roboto-${weight}.woff`)).getName("license")).toBe("Licensed under the Apache License, Version 2.0");
  }
});

test("the same pack gives the same bytes, and says when it was made", async () => {
  const [one, other] = [await writePrintout(packOf()), await writePrintout(packOf())];
  expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  expect((await readPdf(one)).made).toBe("D:20260309100000Z");
  expect(Buffer.from(await writePrintout(packOf({ madeAt: "2026-03-09 10:01" }))).equals(Buffer.from(one))).toBe(false);
});

test("drawings stand behind the tables, each on a page of its own size, with words that can be searched and the seal below", async () => {
  const shapes = '<rect x="10" y="10" width="50" height="20" fill="none" stroke="#17352d"/><text x="12" y="22" font-size="5" font-family="Arial, sans-serif">Rack RR-R1</text>';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="420mm" height="297mm" viewBox="0 0 420 297">${shapes}</svg>`;
  const { pages } = await readPdf(await writePrintout(packOf({ pictures: [{ svg, width: 420, height: 297 }, { svg, width: 420, height: 297 }] })));
  expect(pages).toHaveLength(3);
  expect(textOf(pages[0]!)).toContain(withoutSpaces("page 1 of 3"));
  for (const page of pages.slice(1)) {
    // ISO 216: A3 is 297 mm by 420 mm.
    expect([Math.round((page.width / 72) * 25.4), Math.round((page.height / 72) * 25.4)]).toEqual([420, 297]);
    expect(textOf(page)).toBe(withoutSpaces("Rack RR-R1 Handover: North hall, build 3, seal AB12-CD34"));
  }
});
