import { sameSheetName, sheetNamesIn } from "../../sheet";
import type { OpenFile } from "./read-workbook";
import { walkXml } from "./xml";

/** A sheet of a file of which rows or columns came or went, or that has another name now. */
export interface ChangedSheet {
  /** Part and name of the sheet in the file as it was opened. */
  readonly part: string;
  readonly name: string;
  /** True where its rows or columns moved; a new name alone leaves addresses as they are. */
  readonly moved: boolean;
}

/** Kinds of parts, as relations name them, whose references move with their sheet, or that hold none to cells of this workbook. */
const known: ReadonlySet<string> = new Set([
  "officeDocument", "core-properties", "extended-properties", "custom-properties", "thumbnail",
  "worksheet", "styles", "theme", "sharedStrings", "calcChain", "sheetMetadata", "person", "externalLink", "pivotCacheDefinition",
  "table", "pivotTable", "comments", "threadedComment", "printerSettings", "image",
]);

/** Attributes and elements that name cells without their sheet. */
const addressNames = /^r$|(?:ref|cells?|range|area|link)$/i;
const address = /^\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?(?:\s|$)/;

/** Kinds of parts that belong to a sheet whose anchors move with it; links of what is drawn do not. */
const anchored: ReadonlySet<string> = new Set(["drawing", "vmlDrawing"]);

/**
 * Lists those of `parts` of a file that are not known here and may point to other cells than before: they name a changed sheet in front of a cell
 * or as the sheet of an element, or belong to a sheet that moved and hold addresses of their own.
 */
export function pointingParts({ file, workbookPart, sheets }: OpenFile, changed: readonly ChangedSheet[], parts: readonly string[]): string[] {
  if (changed.length === 0) return [];
  const fold = (part: string) => part.toLowerCase();
  const passed = new Set<string>();
  const ofMoved = new Set<string>();
  for (const owner of ["", workbookPart, ...sheets.map(({ part }) => part)]) {
    const moves = changed.some(({ part, moved }) => moved && part === owner);
    for (const { kind, target, isOutside } of file.relations(owner)) {
      if (isOutside) continue;
      if (known.has(kind)) passed.add(fold(target));
      else if (moves && !anchored.has(kind)) ofMoved.add(fold(target));
    }
  }
  return parts.filter((part) => {
    // Charts and what pivot tables are made of move; relations name parts.
    if (!/\.(?:xml|vml)$/i.test(part) || /^(?:xl\/charts|xl\/pivotCache)\/[^/]+$|^\[Content_Types\]/i.test(part) || passed.has(fold(part))) return false;
    const xml = file.read(part);
    // A part that went with its sheet points nowhere any more.
    return xml !== null && pointsTo(xml, changed.map(({ name }) => name), ofMoved.has(fold(part)));
  });
}

/** Tells whether a part names one of these sheets, or, where it `isOfMoved`, cells of the sheet it belongs to. What people read, in elements called `t`, points nowhere. */
function pointsTo(xml: string, names: readonly string[], isOfMoved: boolean): boolean {
  const isMeant = (sheet: string) => names.some((name) => sameSheetName(name, sheet));
  const points = (name: string, text: string): boolean =>
    sheetNamesIn(text).some(isMeant) ||
    (/sheet/i.test(name) && isMeant(text)) ||
    (isOfMoved && addressNames.test(name) && address.test(text));
  let found = false;
  let own = "";
  let text = "";
  try {
    walkXml(xml, {
      open(element, attributes) {
        [own, text] = [element, ""];
        found ||= Object.entries(attributes).some(([name, value]) => points(name, value));
      },
      text(piece) {
        text += piece;
      },
      close() {
        found ||= own !== "t" && text !== "" && points(own, text);
        [own, text] = ["t", ""];
      },
    });
  } catch {
    // Shapes of notes are written by some programs as no well-formed text.
    return sheetNamesIn(xml).some(isMeant);
  }
  return found;
}
