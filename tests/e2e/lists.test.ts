import { writeFileSync } from "node:fs";
import { beginStory, closeWhole } from "./support/story";

jest.setTimeout(120_000);
const story = beginStory("baywright-lists");

/** A register of fifty arrays in a firm's own words and order. */
const register = (drives: (row: number) => number): string =>
  ["Serial no.;Device;Cabinet;U;Location;Disks;Owner", ...Array.from({ length: 50 }, (_, at) => `00${4710 + at};a-${at + 1};R${at % 5};${at + 1};North;${drives(at)};B`)].join("\r\n");

test("a sizing engineer brings in a register, and the same one with ten rows changed", async () => {
  const workbook = await story.open();
  const { page } = workbook;
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByRole("button", { name: "Set up tables" }).click();
  await page.getByRole("button", { name: "Choose a file …" }).waitFor();
  const bringIn = async (text: string) => {
    writeFileSync(story.at("register.csv"), text);
    const chosen = page.waitForEvent("filechooser");
    await page.getByRole("button", { name: "Choose a file …" }).click();
    await (await chosen).setFiles(story.at("register.csv"));
    await page.getByRole("heading", { name: "50 rows of register.csv" }).waitFor();
    await page.getByRole("button", { name: "Show what would be written" }).click();
  };
  await bringIn(register(() => 12));
  expect(await page.getByRole("combobox", { name: "Where Cabinet goes" }).inputValue()).toBe("rack");
  expect(await page.getByRole("combobox", { name: "Where Owner goes" }).inputValue()).toBe("");
  await page.getByText("50 rows new, 0 rows changed.").waitFor();
  await page.getByRole("button", { name: /^Write \d+ cells$/ }).click();
  await page.getByText(/^Bring the list into Arrays: \d+ cells written\.$/).waitFor();
  const arrays = (await workbook.sheet("Arrays")).values;
  const at = (header: string) => arrays[3]!.indexOf(header);
  expect(arrays.slice(4, 54).map((line) => line[at("Serial")])).toEqual(Array.from({ length: 50 }, (_, row) => `00${4710 + row}`));

  await bringIn(register((row) => (row < 10 ? 24 : 12)));
  await page.getByText("0 rows new, 10 rows changed.").waitFor();
  await page.getByRole("button", { name: "Write 10 cells" }).click();
  await page.getByText("Bring the list into Arrays: 10 cells written.").waitFor();
  const after = (await workbook.sheet("Arrays")).values;
  expect(after.slice(4, 54).map((line) => line[at("Drives")])).toEqual([...new Array<number>(10).fill(24), ...new Array<number>(40).fill(12)]);
  await closeWhole(workbook);
});
