import { openHeadless } from "../../src/headless/open-headless";
import { mostDesigns, optionsMark, planOptions } from "../../src/planning/options";
import { showCell, type CellValue, type Scalar, type WorkbookSnapshot } from "../../src/sheet";
import { modelOf } from "./plan-model";
import type { TableRows } from "../../src/planning/plan/schema";

/** What is typed into a sheet of options: by the text of a line, one value for the needs, one a design for the designs. */
export type OptionInputs = Readonly<Record<string, Scalar | readonly Scalar[]>>;

/** Three invented designs from one set of needs. */
export const threeDesigns: OptionInputs = {
  "Data now": 60, "Growth a year": 0.2, Years: 5, "Begins on": 46_174, "Operations wanted a second": 2000, "Share of reads": 0.7, "Risk accepted": 0.001,
  "Drives that fail in a year": 0.015, "Unreadable bits": 1e-15, "Discount rate": 0.03, "Price of a kWh": 0.25, "Rise of that price a year": 0.01, "Share added for cooling": 0.5, Currency: "EUR",
  Design: ["One large array", "Two arrays, mirrored", "Single parity"],
  Model: ["Elm 24", "Elm 24", "Oak 12"],
  "Drives an array": [24, 24, 12],
  "Drive size": ["12 TB", 12, "16 TB"],
  Scheme: ["RAID 60 8+2", "RAID 60 8+2", "RAID 5"],
  "Spares an array": [2, 2, null],
  "Across arrays": [null, "2 copies", null],
  Arrays: [null, null, 1],
  "Repair hours": [24, 24, 36],
  "Operations of one drive": [150, 150, 150],
  "Watts an array": [450, 450, 300],
  "Units an array": [4, 4, 2],
  "Cost an array": [42_000, 39_000, 18_000],
  "Support cost an array and year": [3000, 2800, 900],
};

/** Plans the sheet of options over a plan and types into it; formulas have no result yet. */
export function filledOptions(inputs: OptionInputs, rows: TableRows = {}): WorkbookSnapshot {
  const plan = planOptions(modelOf(rows));
  const values = plan.rows.map((row) => {
    const label = row[0]?.value;
    const typed = typeof label === "string" ? inputs[label] : undefined;
    const line: CellValue[] = row.map(({ value, formula }) => (formula === undefined ? (value ?? null) : ""));
    if (typed !== undefined) [typed].flat().forEach((one: Scalar, at) => (line[1 + at] = one));
    return line;
  });
  const sheet = { name: plan.name, visible: true, protected: false, values, formulas: plan.rows.map((row) => row.map(({ formula }) => formula ?? null)), tables: [], attachments: 0 };
  return { sheets: [...modelOf(rows).workbook.sheets, sheet] };
}

/** Types into a sheet of options in the engine, and answers with what each line shows, by its text: one value a column. */
export async function computedOptions(inputs: OptionInputs): Promise<Readonly<Record<string, readonly CellValue[]>>> {
  const { port, settle, dispose } = await openHeadless();
  try {
    const plan = planOptions(modelOf({}));
    await port.apply([{ kind: "add-sheet", plan }]);
    await port.apply(
      Object.entries(inputs).map(([label, typed]) => {
        const row = plan.rows.findIndex((line) => line[0]?.value === label);
        if (row < 0) throw new Error(`No line ${label}.`);
        return { kind: "write", sheet: optionsMark, row, column: 1, cells: [[typed].flat().map((value: Scalar) => ({ value }))] } as const;
      }),
    );
    await settle();
    const { sheets } = await port.read([optionsMark]);
    return Object.fromEntries(sheets.find(({ name }) => name === optionsMark)!.values.map((line) => [showCell(line[0]), line.slice(1, 1 + mostDesigns)]));
  } finally {
    dispose();
  }
}
