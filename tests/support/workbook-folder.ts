import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openHeadless, type HeadlessWorkbook } from "../../src/headless/open-headless";

/** A folder of the tests of one file, which goes with them. */
export interface WorkbookFolder {
  readonly at: (name: string) => string;
  /** Saves what `work` makes of a workbook of the folder, or of a new one, under another name. */
  readonly change: (from: string | null, to: string, work: (workbook: HeadlessWorkbook) => Promise<void>) => Promise<void>;
}

/** Makes such a folder; to be called where tests are declared. */
export function workbookFolder(): WorkbookFolder {
  let folder = "";
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "workbooks-"));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));
  const at = (name: string): string => join(folder, name);
  return {
    at,
    async change(from, to, work) {
      const workbook = await openHeadless(from === null ? undefined : await readFile(at(from)));
      try {
        await work(workbook);
        await writeFile(at(to), await workbook.save());
      } finally {
        workbook.dispose();
      }
    },
  };
}
