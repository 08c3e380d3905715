import { beginStory, closeWhole } from "./support/story";

jest.setTimeout(120_000);
const story = beginStory("baywright-site");

test("a project manager plans a site from counts and names, sees what is missing, and no installation is built on a guess", async () => {
  const workbook = await story.open();
  const { page } = workbook;
  await page.getByRole("button", { name: "New", exact: true }).click();
  await page.getByRole("button", { name: "Plan a site …" }).click();
  for (const part of ["Racks and power", "Networks", "Switches", "The model of its arrays", "Arrays", "Hosts and work"]) await page.getByText(new RegExp(`^${part}: \\d+ questions$`)).click();
  const typed = {
    "Site": "Map Store", "Racks": "2", "Source of feed A": "UPS", "Source of feed B": "Mains board", "Ports of a switch": "24", "Model": "Alder 24", "Bays": "24", "Arrays": "3",
    "Drives": "12", "Drive size": "4 TB", "Scheme": "RAID 6", "Spares": "one", "Hosts": "2",
  };
  for (const [name, text] of Object.entries(typed)) await page.getByRole("textbox", { name, exact: true }).fill(text);
  await page.getByRole("combobox", { name: "Cluster" }).selectOption("new");
  await page.getByRole("button", { name: "Show what would be written" }).click();
  await page.getByText('Spares "one" is not a number. Write digits, such as 42 or 0.5.').waitFor();
  const spares = page.getByRole("textbox", { name: "Spares", exact: true });
  expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-invalid"))).toBe("true");
  // What cannot be read changed nothing: there is no table yet.
  expect(await workbook.sheetNames()).toEqual(["Sheet1"]);
  await spares.fill("1");
  await page.getByRole("button", { name: "Show what would be written" }).click();
  await page.getByRole("button", { name: /^Write \d+ cells$/ }).click();
  await page.getByText(/^Plan the site: \d+ cells written\.$/).waitFor();
  await page.getByText("Assumed: 22 values").waitFor();
  await page.getByText("Arrays: Serial").waitFor();

  await page.getByRole("tab", { name: "Commission" }).click();
  await page.getByRole("button", { name: "Build 1 tab" }).click();
  await page.getByText(/assumed\. Write what is so, or tick Settled in Assumptions/).first().waitFor();
  expect(await workbook.sheetNames()).not.toContain("Map Store installation");
  await closeWhole(workbook);
});
