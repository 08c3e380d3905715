import { beginStory, closeWhole } from "./support/story";

jest.setTimeout(240_000);
const story = beginStory("baywright-options");

/** What is typed, line by line of the sheet: the needs, and then the designs in three columns. */
const needs = ["60", "20%", "5", "2026-06-01", "", "2000", "70%", "0.1%", "1.5%", "1E-15", "3%", "0.25", "1%", "0.5", "EUR"];
const designs = [
  ["One large array", "Elm 24", "24", "12", "RAID 60 8+2", "2", "", "", "24", "150", "450", "4", "42000", "3000"],
  ["Mirrored pair", "Elm 24", "24", "12", "RAID 60 8+2", "2", "2 copies", "", "24", "150", "450", "4", "39000", "2800"],
  ["Single parity", "Oak 12", "12", "16", "RAID 5", "", "", "1", "36", "150", "300", "2", "18000", "900"],
];

test("sales compares three designs without typing a formula, draws them, makes one rows of the plan, and receives its parts", async () => {
  const workbook = await story.open();
  const { page } = workbook;
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByRole("button", { name: "Set up tables" }).click();
  await workbook.said("Begin with Sites");
  await workbook.button("Options sheet").click();
  await workbook.said("No formula is to be typed");
  const rowOf = async (label: string): Promise<number> => (await workbook.sheet("Options")).values.findIndex((line) => line[0] === label);
  const begun = Date.now();
  await workbook.typeFrom("Options", await rowOf("Data now"), 1, needs, "Enter");
  for (const [at, design] of designs.entries()) await workbook.typeFrom("Options", await rowOf("Design"), 1 + at, design, "Enter");
  const seconds = (Date.now() - begun) / 1000;
  expect(seconds).toBeLessThan(300);
  await workbook.until(async () => {
    const { sheets } = await globalThis.baywright.port.read(["Options"]);
    return sheets.find(({ name }) => name === "Options")!.values.some((line) => line[0] === "Cost a TB to hosts" && typeof line[3] === "number");
  }, null);
  const line = async (label: string) => (await workbook.sheet("Options")).values[await rowOf(label)]!.slice(1, 4);
  expect(await line("Usable to hosts")).toEqual([192, 192, 176]);
  expect(await line("Against that accepted")).toEqual(["within", "within", "above"]);
  expect((await line("Price")).map(Number)).toEqual([42_000, 78_000, 18_000]);

  await workbook.button("Picture of the options").click();
  const picture = page.getByRole("region", { name: "The picture of the options" }).getByRole("img");
  expect(await picture.getAttribute("alt")).toContain("Mirrored pair: 2 arrays, 192 TB to hosts, full after 5.2 years, in 2031.");

  await workbook.button("Make plan rows …").click();
  await page.getByRole("combobox", { name: "Design" }).selectOption("Mirrored pair");
  await workbook.button("Show what would be written").click();
  await page.getByText("Site is empty. Write the site to which the arrays go: one of the plan, or a new one.").first().waitFor();
  await page.getByRole("textbox", { name: "Site" }).fill("Bindery");
  await workbook.button("Show what would be written").click();
  await page.getByRole("heading", { name: /^Make plan rows: \d+ cells would change$/ }).waitFor();
  await workbook.button(/^Write \d+ cells$/).click();
  await workbook.said("Make plan rows:");
  const arrays = (await workbook.sheet("Arrays")).values;
  const column = (header: string): number => arrays[3]!.indexOf(header);
  expect(arrays.slice(4, 7).map((row) => row[column("Array")] ?? null)).toEqual(["Bindery Mirrored pair 1", "Bindery Mirrored pair 2", null]);
  expect(arrays[4]![column("To hosts")]).toBe(96);

  await workbook.button("List parts …").click();
  await workbook.button(/^Write \d+ cells$/).click();
  await workbook.said("List parts:");
  const parts = (await workbook.sheet("Parts")).values;
  expect(parts.slice(4).filter((row) => typeof row[0] === "string" && row[0] !== "")).toHaveLength(2 + 48);
  await workbook.typeFrom("Parts", 4, parts[3]!.indexOf("Came"), ["2026-07-01", "EL-4711", "1"]);
  await workbook.turnTo("Plan");
  await workbook.button("Take serials …").click();
  await workbook.button(/^Write 1 cell$/).click();
  await workbook.said("Take serials: 1 cell written.");
  expect((await workbook.sheet("Arrays")).values[4]![column("Serial")]).toBe("EL-4711");
  await workbook.button("Parts sheet").click();
  await workbook.said("each box on a page of its own");
  expect((await workbook.sheet("Parts list")).values.flat()).toContain("Missing: 49 pieces in 49 rows");
  await closeWhole(workbook);
});
