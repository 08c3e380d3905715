import { damaged, limits, readZipDirectory, tooLarge, unpack, type ZipEntry } from "./zip-directory";
import { element, elements, unescapeXml } from "./xml-scan";

/** What a file says of one sheet that the file library does not pass on. */
export interface PackagedSheet {
  readonly name: string;
  readonly xml: string;
  /** Notes by the address of their cell, as plain text: the file library loses those of cells that hold nothing else. */
  readonly notes: ReadonlyMap<string, string>;
  /** How many pictures, shapes and charts are drawn on it. */
  readonly drawings: number;
  /** How many of them are no pictures. */
  readonly lostDrawings: number;
}

/** A defined name as it stands in the file; `sheet` where it is known on that sheet alone. */
export interface PackagedName {
  readonly name: string;
  readonly formula: string;
  readonly sheet?: string;
  readonly hidden: boolean;
}

/** The parts of a workbook file that we read ourselves. */
export interface FilePackage {
  readonly sheets: readonly PackagedSheet[];
  readonly names: readonly PackagedName[];
  /** The twelve theme colours as `#rrggbb`, in the order in which cells count them; empty where the file has no theme. */
  readonly themeColors: readonly string[];
}

/** Opens the package of an .xlsx file; refuses with a sentence what is no workbook or over the limits. */
export async function openPackage(bytes: Uint8Array): Promise<FilePackage> {
  const directory = new Map(readZipDirectory(bytes).map((entry) => [entry.name.toLowerCase(), entry]));
  const read = async (name: string): Promise<string | null> => {
    const entry: ZipEntry | undefined = directory.get(name.toLowerCase());
    return entry === undefined ? null : new TextDecoder().decode(await unpack(bytes, entry));
  };
  const workbook = await read("xl/workbook.xml");
  if (workbook === null || element(workbook, "sheets") === undefined) throw damaged();
  const targets = relations(await read("xl/_rels/workbook.xml.rels"), "xl/");
  const listed = [...elements(workbook, "sheet")].map(({ attributes }) => ({ name: attributes["name"] ?? "", part: targets.get(attributes["r:id"] ?? "") ?? "" }));
  if (listed.length > limits.sheets) throw tooLarge(`has ${listed.length} sheets; ${limits.sheets} is the most`);
  const sheets: PackagedSheet[] = [];
  let cells = 0;
  for (const { name, part } of listed) {
    const xml = await read(part);
    if (xml === null) throw damaged();
    cells += occurrences(xml, "<c ");
    if (cells > limits.cells) throw tooLarge(`has more than ${limits.cells.toLocaleString("en")} cells`);
    sheets.push({ name, xml, ...(await readAttached(part, read)) });
  }
  return { sheets, names: readNames(workbook, sheets), themeColors: readTheme(await read("xl/theme/theme1.xml")) };
}

async function readAttached(part: string, read: (name: string) => Promise<string | null>): Promise<Omit<PackagedSheet, "name" | "xml">> {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  const targets = relations(await read(`${folder}_rels/${part.slice(folder.length)}.rels`), folder);
  const notes = new Map<string, string>();
  let [drawings, pictures] = [0, 0];
  for (const target of targets.values()) {
    if (/\/drawings\/[^/]+\.xml$/.test(target)) {
      const xml = (await read(target)) ?? "";
      drawings += [...xml.matchAll(/<(?:[\w.-]+:)?(?:twoCellAnchor|oneCellAnchor|absoluteAnchor)[\s>]/g)].length;
      pictures += [...xml.matchAll(/<(?:[\w.-]+:)?pic[\s>]/g)].length;
    }
    if (/\/comments[^/]*\.xml$/.test(target)) {
      for (const { attributes, inner } of elements((await read(target)) ?? "", "comment")) {
        notes.set(attributes["ref"] ?? "", [...elements(inner, "t")].map((text) => unescapeXml(text.inner)).join(""));
      }
    }
  }
  return { notes, drawings, lostDrawings: Math.max(0, drawings - pictures) };
}

/** Reads a relations part: ids to names of parts. */
function relations(xml: string | null, folder: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const { attributes } of elements(xml ?? "", "Relationship")) {
    const target = attributes["Target"] ?? "";
    if (attributes["TargetMode"] !== "External") found.set(attributes["Id"] ?? "", decodeURIComponent(new URL(target, `http://package/${folder}`).pathname.slice(1)));
  }
  return found;
}

function readNames(workbook: string, sheets: readonly PackagedSheet[]): PackagedName[] {
  return [...elements(workbook, "definedName")].map(({ attributes, inner }) => ({
    name: attributes["name"] ?? "",
    formula: unescapeXml(inner),
    ...(attributes["localSheetId"] !== undefined && { sheet: sheets[Number(attributes["localSheetId"])]?.name }),
    hidden: attributes["hidden"] === "1",
  }));
}

/** Order in which a theme lists its colours; cells count the first four in pairs the other way round. */
const themeOrder = ["lt1", "dk1", "lt2", "dk2", "accent1", "accent2", "accent3", "accent4", "accent5", "accent6", "hlink", "folHlink"] as const;

function readTheme(xml: string | null): string[] {
  const scheme = xml === null ? undefined : element(xml, "clrScheme")?.inner;
  if (scheme === undefined) return [];
  return themeOrder.map((name) => {
    const inner = element(scheme, name)?.inner ?? "";
    const color = element(inner, "srgbClr")?.attributes["val"] ?? element(inner, "sysClr")?.attributes["lastClr"] ?? "000000";
    return `#${color.toLowerCase()}`;
  });
}

function occurrences(text: string, part: string): number {
  let count = 0;
  for (let at = text.indexOf(part); at >= 0; at = text.indexOf(part, at + part.length)) count += 1;
  return count;
}
