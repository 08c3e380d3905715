import { strToU8, zipSync } from "fflate";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** A workbook file written out by hand, packed by a general library: sheets by name, each the XML inside it, and further parts by name. */
export interface RawWorkbook {
  readonly sheets: Readonly<Record<string, string>>;
  /** What stands in the workbook part before and behind its list of sheets. */
  readonly before?: string;
  readonly behind?: string;
  readonly parts?: Readonly<Record<string, string>>;
  /** Relations of the workbook beside its sheets: id, kind, target. */
  readonly relations?: readonly (readonly [string, string, string])[];
}

/** Makes the bytes of a workbook, as ECMA-376 part 1 section 12.3 asks for its parts. */
export function rawWorkbook({ sheets, before = "", behind = "", parts = {}, relations = [] }: RawWorkbook): Uint8Array {
  const names = Object.keys(sheets);
  const relation = (id: string, kind: string, target: string) => `<Relationship Id="${id}" Type="${office}/${kind}" Target="${target}"/>`;
  const type = (part: string, kind: string) => `<Override PartName="/xl/${part}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`;
  const list = (inside: string) => `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${inside}</Relationships>`;
  const listed = names.map((name, index) => `<sheet name="${name}" sheetId="${index + 1}" r:id="s${index}"/>`).join("");
  const all: Record<string, string> = {
    "[Content_Types].xml":
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/>' +
      `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>${type("workbook", "sheet.main")}` +
      `${names.map((_, index) => type(`worksheets/sheet${index + 1}`, "worksheet")).join("")}</Types>`,
    "_rels/.rels": list(relation("w", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${office}">${before}<sheets>${listed}</sheets>${behind}</workbook>`,
    "xl/_rels/workbook.xml.rels": list([...names.map((_, index) => relation(`s${index}`, "worksheet", `worksheets/sheet${index + 1}.xml`)), ...relations.map((one) => relation(...one))].join("")),
    ...Object.fromEntries(names.map((name, index) => [`xl/worksheets/sheet${index + 1}.xml`, `<worksheet xmlns="${main}" xmlns:r="${office}">${sheets[name]!}</worksheet>`])),
    ...parts,
  };
  return zipSync(Object.fromEntries(Object.entries(all).map(([name, text]) => [name, strToU8(text)])));
}
