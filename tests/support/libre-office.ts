import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { basename, join } from "node:path";

const office = ["/usr/bin/soffice", "/usr/bin/libreoffice", "/Applications/LibreOffice.app/Contents/MacOS/soffice"].find(existsSync);

/** Tells whether LibreOffice is installed: it is no package of ours. Where it is not, tests that want it are counted as skipped. */
export const hasLibreOffice = office !== undefined;

/** Opens a workbook in LibreOffice and saves it into another folder, and answers with the path of that file. */
export function saveInLibreOffice(path: string, folder: string): string {
  execFileSync(office!, ["--headless", `-env:UserInstallation=file://${folder}/profile`, "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", folder, path], { stdio: "ignore" });
  return join(folder, basename(path));
}
