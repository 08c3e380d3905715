import { join } from "node:path";
import type { WorkbookPage } from "../support/workbook-page";

/** A workbook that tasks are done in, and how it comes onto the desk. `scratch` is a file that may be written over. */
export interface Ground {
  readonly name: string;
  readonly lay: (workbook: WorkbookPage, scratch: string) => Promise<void>;
}

/** The sample plan as it begins, saved and opened again, and as another spreadsheet program saved it once. */
export const grounds: readonly Ground[] = [
  { name: "fresh", lay: laySample },
  {
    name: "reopened",
    async lay(workbook, scratch) {
      await laySample(workbook);
      await workbook.save(scratch);
      await workbook.openFile(scratch);
    },
  },
  // The sample, saved by the page and converted with: soffice --headless --convert-to xlsx
  { name: "saved by LibreOffice", lay: (workbook) => workbook.openFile(join(__dirname, "saved-by-libreoffice.xlsx")) },
];

async function laySample(workbook: WorkbookPage): Promise<void> {
  const earlier = workbook.button("Close this message");
  if (await earlier.isVisible()) await earlier.click();
  await workbook.page.getByRole("button", { name: "Sample", exact: true }).click();
  await workbook.page.getByText("The sample plan is on the desk.").waitFor();
  await workbook.settle();
}
