import { noPrintPlan, type DocumentSheet } from "../document/workbook-document";
import { FilePackage } from "./file-package";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";
const types = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** The type of a part that is a sheet. */
export const worksheetType = `${types}.worksheet+xml`;
export const stylesType = `${types}.styles+xml`;
export const metadataType = `${types}.sheetMetadata+xml`;

/** A sheet without anything, over which a new one is written. */
export const blankSheet: Omit<DocumentSheet, "id" | "name"> = {
  state: "visible", cells: new Map(), rows: [], columns: [], merges: [], frozen: { rows: 0, columns: 0 }, hidesGrid: false, isProtected: false, typingRules: [], formats: [],
  otherFormats: 0, tables: [], print: noPrintPlan, notes: [], drawings: 0,
};

/** What stands before and behind the elements of a new sheet. */
export const openSheet = `<worksheet xmlns="${main}" xmlns:r="${relations}">`;
export const closeSheet = "</worksheet>";

/** Styles with the one look of an empty cell. The two fills are where programs expect them: ECMA-376 part 1, section 18.8.21. */
export const emptyStyles =
  `<styleSheet xmlns="${main}"><fonts count="1"><font><sz val="11"/><color theme="1"/><name val="Calibri"/><family val="2"/></font></fonts>` +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  "<borders count=\"1\"><border><left/><right/><top/><bottom/><diagonal/></border></borders>" +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

const themeColors = [
  ...["dk1:000000", "lt1:FFFFFF", "dk2:44546A", "lt2:E7E6E6", "accent1:4472C4", "accent2:ED7D31", "accent3:A5A5A5", "accent4:FFC000"],
  ...["accent5:5B9BD5", "accent6:70AD47", "hlink:0563C1", "folHlink:954F72"],
];

function theme(): string {
  const colors = themeColors.map((one) => one.split(":")).map(([name, color]) => `<a:${name}><a:srgbClr val="${color}"/></a:${name}>`).join("");
  const font = (kind: string) => `<a:${kind}Font><a:latin typeface="Calibri"/><a:ea typeface=""/><a:cs typeface=""/></a:${kind}Font>`;
  const solid = '<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>';
  const effect = "<a:effectStyle><a:effectLst/></a:effectStyle>";
  return (
    `<a:theme xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" name="Workbook"><a:themeElements><a:clrScheme name="Workbook">${colors}</a:clrScheme>` +
    `<a:fontScheme name="Workbook">${font("major")}${font("minor")}</a:fontScheme><a:fmtScheme name="Workbook"><a:fillStyleLst>${solid.repeat(3)}</a:fillStyleLst>` +
    `<a:lnStyleLst>${`<a:ln w="9525">${solid}</a:ln>`.repeat(3)}</a:lnStyleLst><a:effectStyleLst>${effect.repeat(3)}</a:effectStyleLst>` +
    `<a:bgFillStyleLst>${solid.repeat(3)}</a:bgFillStyleLst></a:fmtScheme></a:themeElements></a:theme>`
  );
}

/** Makes the parts of a workbook without any sheet. */
export function newFile(): FilePackage {
  const override = (part: string, type: string) => `<Override PartName="/${part}" ContentType="${type}"/>`;
  return FilePackage.of({
    "[Content_Types].xml":
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
      `<Default Extension="xml" ContentType="application/xml"/>${override("xl/workbook.xml", `${types}.sheet.main+xml`)}${override("xl/styles.xml", stylesType)}` +
      `${override("xl/theme/theme1.xml", "application/vnd.openxmlformats-officedocument.theme+xml")}</Types>`,
    "_rels/.rels": `<Relationships xmlns="${packageRelations}"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${relations}"><workbookPr/><bookViews><workbookView/></bookViews><sheets></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels":
      `<Relationships xmlns="${packageRelations}"><Relationship Id="rId1" Type="${relations}/styles" Target="styles.xml"/>` +
      `<Relationship Id="rId2" Type="${relations}/theme" Target="theme/theme1.xml"/></Relationships>`,
    "xl/styles.xml": emptyStyles,
    "xl/theme/theme1.xml": theme(),
  });
}
