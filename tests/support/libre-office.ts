import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";

const office = ["/usr/bin/soffice", "/usr/bin/libreoffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice"].find(existsSync);

/** Tells whether LibreOffice is installed: it is no package of ours. Where it is not, tests that want it are counted as skipped. */
export const hasLibreOffice = office !== undefined;

/** A setting of LibreOffice: whatever program saved a file, its formulas are computed on opening. */
const computesAlways = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** Opens a workbook in LibreOffice and saves it into another folder, and answers with the path of that file. With `computes` every formula is computed anew. */
export function saveInLibreOffice(path: string, folder: string, { computes = false } = {}): string {
  if (computes) {
    mkdirSync(join(folder, "profile", "user"), { recursive: true });
    writeFileSync(join(folder, "profile", "user", "registrymodifications.xcu"), computesAlways);
  }
  execFileSync(office!, ["--headless", `-env:UserInstallation=file://${folder}/profile`, "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", folder, path], { stdio: "ignore" });
  return join(folder, basename(path));
}

/** Prints a workbook of LibreOffice into a PDF in a folder, and answers with how many pages it has. */
export function printInLibreOffice(path: string, folder: string): number {
  execFileSync(office!, ["--headless", `-env:UserInstallation=file://${folder}/profile`, "--convert-to", "pdf:calc_pdf_Export", "--outdir", folder, path], { stdio: "ignore" });
  const pdf = readFileSync(join(folder, basename(path).replace(/\.xlsx$/, ".pdf")), "latin1");
  return pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}
