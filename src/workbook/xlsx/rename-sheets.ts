import { foldSheetName } from "../../sheet";
import { renameReferences } from "../document/move-lines";
import { changedFormat, type DocumentSheet } from "../document/workbook-document";
import { changeAttributes, changeTexts, formulaAttributes, isPivotSource, patchElements, rewrite, shapeLinks, sheetFormulas, tableFormulas } from "./change-part";
import { decoded, relationsOf, type FilePackage } from "./file-package";
import type { OpenFile } from "./read-workbook";

/**
 * Writes new names of sheets, by their old ones without regard to case, into all that names sheets besides the cells: rules, links, tables, drawings,
 * what charts and pivot tables are made of, and names that only programs know.
 */
export function renameSheets({ file, workbookPart, sheets, mayNameSheets }: OpenFile, names: ReadonlyMap<string, string>): void {
  const changed = (text: string) => renameReferences(text, names);
  for (const { part } of sheets) {
    if (mayNameSheets.has(part)) rewrite(file, part, (xml) => changeTexts(changeAttributes(xml, formulaAttributes, changed), sheetFormulas, changed));
    renameInAttached(file, part, changed);
  }
  for (const part of file.names().filter((name) => /^xl\/charts\/[^/]+\.xml$/i.test(name))) rewrite(file, part, (xml) => changeTexts(xml, ["f"], changed));
  for (const part of file.names().filter((name) => /^xl\/pivotCache\/pivotCacheDefinition[^/]*\.xml$/i.test(name))) {
    rewrite(file, part, (xml) => patchElements(xml, (name, { sheet }) => (isPivotSource(name) && sheet !== undefined ? { sheet: names.get(foldSheetName(sheet)) ?? sheet } : null)));
  }
  rewrite(file, workbookPart, (xml) => changeTexts(xml, ["definedName"], changed, ({ name = "" }) => name.startsWith("_xlnm.")));
}

/** Follows a new name in the links of a sheet and of its drawings that stand as relations, in the formulas of its tables and in its shapes. */
function renameInAttached(file: FilePackage, part: string, changed: (text: string) => string): void {
  renameLinks(file, part, changed);
  for (const { kind, target, isOutside } of file.relations(part)) {
    if (isOutside) continue;
    if (kind === "table") rewrite(file, target, (xml) => (xml.includes("!") ? changeTexts(xml, tableFormulas, changed) : xml));
    if (kind !== "drawing") continue;
    rewrite(file, target, (xml) => (xml.includes("textlink=") ? changeAttributes(xml, shapeLinks, changed) : xml));
    renameLinks(file, target, changed);
  }
}

/** Follows a new name in relations that lead to a place in the workbook itself, such as `#'Racks'!A1`; some programs write blanks in them as `%20`. */
function renameLinks(file: FilePackage, owner: string, changed: (text: string) => string): void {
  rewrite(file, relationsOf(owner), (xml) =>
    patchElements(xml, (_element, { Target = "" }) => {
      if (!Target.startsWith("#")) return null;
      const plain = decoded(Target.slice(1));
      const now = changed(plain);
      return now === plain ? null : { Target: `#${encodeURI(now)}` };
    }));
}

/** A sheet whose rules name other sheets by their new names, as `renameSheets` wrote them into the file. */
export function withNewNames(sheet: DocumentSheet, names: ReadonlyMap<string, string>): DocumentSheet {
  if (names.size === 0) return sheet;
  const changed = (formula: string) => renameReferences(formula, names);
  return {
    ...sheet,
    typingRules: sheet.typingRules.map((rule) => ({ ...rule, formulas: rule.formulas.map((formula) => (formula.startsWith("=") ? changed(formula) : formula)) })),
    formats: sheet.formats.map((format) => changedFormat(format, changed)),
  };
}
