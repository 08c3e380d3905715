import { anywhereDeflater, pack, readArchive, unpack, unpackAgain, writeArchive, type ArchiveEntry, type Deflater } from "./zip-archive";
import { damaged, limits, tooLarge } from "./file-problems";
import { childrenOf, parseXml, prefixOf, splice, writeAttributes, type Attributes, type Splice } from "./xml";

/** A link from one part of a file to another, or out of the file. */
export interface Relation {
  readonly id: string;
  /** The last word of its type, such as "worksheet": the rest differs between the two forms of the standard. */
  readonly kind: string;
  /** Name of the part, or the address outside. */
  readonly target: string;
  readonly isOutside: boolean;
}

const contentTypes = "[Content_Types].xml";
const typeBase = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
export const relationTypes = {
  worksheet: `${typeBase}worksheet`,
  table: `${typeBase}table`,
  styles: `${typeBase}styles`,
  metadata: `${typeBase}sheetMetadata`,
  comments: `${typeBase}comments`,
  vmlDrawing: `${typeBase}vmlDrawing`,
  hyperlink: `${typeBase}hyperlink`,
} as const;

/** A part that was written and is packed at the end: the lists of parts and relations grow with every part that is added. */
interface OpenList {
  readonly name: string;
  readonly text: string;
}

/** The parts of a workbook file, each as it came until it is written. Parts are found whatever case or slashes their names have. */
export class FilePackage {
  private readonly entries: (ArchiveEntry | OpenList)[] = [];
  /** Where each part stands in the list, by its name as it is spelt and in whatever case. Where two have one name the last is meant, as in every archive. */
  private readonly exact = new Map<string, number>();
  private readonly folded = new Map<string, number>();

  /** Where texts are encoded: a part is packed before the next one is. */
  private room = new Uint8Array(0);
  /** Parts that came and were not found whole yet. */
  private readonly unchecked = new Set<ArchiveEntry>();
  /** What was read so far of the parts that came. */
  private readonly texts = { bytes: 0, tags: 0 };

  private constructor(private readonly deflater: Deflater = anywhereDeflater) {}

  /** Opens a file, of which a part is checked when it is first read. */
  static open(bytes: Uint8Array, deflater?: Deflater): FilePackage {
    const opened = new FilePackage(deflater);
    for (const entry of readArchive(bytes)) {
      opened.unchecked.add(entry);
      opened.put(opened.entries.length, entry);
    }
    return opened;
  }

  /** Refuses a file of which a part that nobody read is damaged. */
  checkRest(): void {
    for (const entry of this.unchecked) unpack(entry, this.deflater);
    this.unchecked.clear();
  }

  static of(parts: Readonly<Record<string, string>>): FilePackage {
    const made = new FilePackage();
    for (const [name, text] of Object.entries(parts)) made.write(name, text);
    return made;
  }

  has(name: string): boolean {
    return this.find(name) !== undefined;
  }

  names(): string[] {
    return this.entries.map(({ name }) => name);
  }

  /** Reads a part as text; null where there is none. */
  read(name: string): string | null {
    const entry = this.find(name);
    if (entry === undefined) return null;
    if ("text" in entry) return entry.text;
    if (!this.unchecked.has(entry)) return decode(unpackAgain(entry));
    this.texts.bytes += entry.bytes;
    if (this.texts.bytes > limits.textBytes) throw tooLarge(`holds more than ${limits.textBytes / 1_000_000} MB of cells and texts`);
    const plain = unpack(entry, this.deflater);
    this.texts.tags += countTags(plain);
    if (this.texts.tags > limits.tags) throw tooLarge("nests or repeats its parts without measure");
    this.unchecked.delete(entry);
    return decode(plain);
  }

  /** Writes a part, which from then on is UTF-8; of a long one the pieces of its text. */
  write(name: string, text: string | readonly string[]): void {
    const [first = "", ...rest] = typeof text === "string" ? [text] : text;
    const declared = first.startsWith("<?xml") ? first.slice(first.indexOf("?>") + 2).trimStart() : first;
    const before = this.find(name);
    const spelt = before?.name ?? name;
    const pieces = ['<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n', declared, ...rest];
    const isList = spelt === contentTypes || spelt.endsWith(".rels");
    this.put(before === undefined ? this.entries.length : this.entries.indexOf(before), isList ? { name: spelt, text: pieces.join("") } : pack(spelt, this.encode(pieces), this.deflater));
  }

  /** Encodes pieces of a text one after the other, so that a long text is never put together. What it answers holds until it is called again. */
  private encode(pieces: readonly string[]): Uint8Array {
    let used = 0;
    for (const piece of pieces) {
      // A unit of UTF-16 takes three bytes at most.
      if (this.room.length - used < 3 * piece.length) {
        const longer = new Uint8Array(2 * this.room.length + 3 * piece.length);
        longer.set(this.room.subarray(0, used));
        this.room = longer;
      }
      used += new TextEncoder().encodeInto(piece, this.room.subarray(used)).written;
    }
    return this.room.subarray(0, used);
  }

  private put(place: number, entry: ArchiveEntry | OpenList): void {
    this.entries[place] = entry;
    this.exact.set(entry.name, place);
    this.folded.set(keyOf(entry.name), place);
  }

  /** Finds a part by its name as it is spelt, else in whatever case. */
  private find(name: string): ArchiveEntry | OpenList | undefined {
    const place = this.exact.get(name) ?? this.folded.get(keyOf(name));
    return place === undefined ? undefined : this.entries[place];
  }

  private drop(name: string): void {
    const entry = this.find(name);
    if (entry === undefined) return;
    const left = this.entries.filter((one) => one !== entry);
    this.entries.length = 0;
    this.exact.clear();
    this.folded.clear();
    left.forEach((one, place) => {
      this.put(place, one);
    });
  }

  remove(name: string): void {
    this.drop(name);
    this.drop(relationsOf(name));
    const xml = this.read(contentTypes);
    if (xml === null) return;
    const gone = childrenOf(parseXml(xml), "Override").filter(({ attributes }) => keyOf(attributes["PartName"] ?? "") === keyOf(name));
    if (gone.length > 0) this.write(contentTypes, splice(xml, gone.map(({ start, end }): Splice => ({ start, end, text: "" }))));
  }

  /** Adds a part with its type; a name with `#` in it gets the first number that is free. */
  add(name: string, type: string, text: string | readonly string[]): string {
    let free = name;
    for (let number = 1; name.includes("#") && (free === name || this.has(free)); number += 1) free = name.replace("#", String(number));
    this.write(free, text);
    const xml = this.read(contentTypes)!;
    const root = parseXml(xml);
    const override = `<${prefixOf(xml, root)}Override${writeAttributes({ PartName: `/${free}`, ContentType: type })}/>`;
    this.write(contentTypes, splice(xml, [appendTo(xml, root, override)]));
    return free;
  }

  /** The type that a part is said to have. */
  typeOf(name: string): string {
    const xml = this.read(contentTypes);
    if (xml === null) return "";
    const types = parseXml(xml);
    const own = childrenOf(types, "Override").find(({ attributes }) => keyOf(attributes["PartName"] ?? "") === keyOf(name));
    const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
    const shared = childrenOf(types, "Default").find(({ attributes }) => attributes["Extension"]?.toLowerCase() === ending);
    return (own ?? shared)?.attributes["ContentType"] ?? "";
  }

  /** Lists the relations of a part; of the whole file where the name is empty. */
  relations(part: string): Relation[] {
    const xml = this.read(relationsOf(part));
    if (xml === null) return [];
    return childrenOf(parseXml(xml), "Relationship").map(({ attributes }) => {
      const isOutside = attributes["TargetMode"] === "External";
      const target = attributes["Target"] ?? "";
      const type = attributes["Type"] ?? "";
      return { id: attributes["Id"] ?? "", kind: type.slice(type.lastIndexOf("/") + 1), target: isOutside ? target : resolve(part, target), isOutside };
    });
  }

  /** Adds a relation from one part to another, or to an address outside, and answers with its id. */
  relate(part: string, type: string, target: string, isOutside = false): string {
    const name = relationsOf(part);
    const xml = this.read(name) ?? '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';
    const root = parseXml(xml);
    const taken = new Set(root.children.map(({ attributes }) => attributes["Id"]));
    let number = root.children.length + 1;
    while (taken.has(`rId${number}`)) number += 1;
    const attributes = { Id: `rId${number}`, Type: type, Target: isOutside ? target : relativeTo(part, target), TargetMode: isOutside ? "External" : undefined };
    this.write(name, splice(xml, [appendTo(xml, root, `<${prefixOf(xml, root)}Relationship${writeAttributes(attributes)}/>`)]));
    return `rId${number}`;
  }

  /** Takes away the relations of a part that lead to another one. */
  unrelate(part: string, target: string): void {
    this.dropRelations(part, (attributes) => keyOf(resolve(part, attributes["Target"] ?? "")) === keyOf(target));
  }

  /** Takes away one relation of a part. */
  unrelateId(part: string, id: string): void {
    this.dropRelations(part, (attributes) => attributes["Id"] === id);
  }

  private dropRelations(part: string, isMeant: (attributes: Attributes) => boolean): void {
    const name = relationsOf(part);
    const xml = this.read(name);
    if (xml === null) return;
    const gone = childrenOf(parseXml(xml), "Relationship").filter(({ attributes }) => isMeant(attributes));
    this.write(name, splice(xml, gone.map(({ start, end }): Splice => ({ start, end, text: "" }))));
  }

  toBytes(): Uint8Array {
    return writeArchive(this.entries.map((entry) => ("text" in entry ? pack(entry.name, this.encode([entry.text]), this.deflater) : entry)));
  }
}

/** Puts a text behind the last child of an element, which may be written without any. */
export function appendTo(xml: string, { start, inner, innerEnd, end, name }: { start: number; inner: number; innerEnd: number; end: number; name: string }, text: string): Splice {
  if (innerEnd !== end) return { start: innerEnd, end: innerEnd, text };
  const tag = xml.slice(start, inner);
  const whole = tag.slice(1, tag.indexOf(name) + name.length);
  return { start, end, text: `${tag.replace(/\s*\/>$/, "")}>${text}</${whole}>` };
}

function keyOf(name: string): string {
  const slashed = name.replaceAll("\\", "/").toLowerCase();
  return slashed.startsWith("/") ? slashed.slice(1) : slashed;
}

/** Names the part in which the relations of a part stand. */
export function relationsOf(part: string): string {
  const cut = part.lastIndexOf("/") + 1;
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
}

/** Finds the part that a target means, seen from another part; a path that climbs over the root ends there. */
function resolve(part: string, target: string): string {
  const [path] = target.replaceAll("\\", "/").split("#");
  const steps = path!.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of path!.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "." && step !== "") steps.push(step);
  }
  return decoded(steps.join("/"));
}

/** Decodes what stands in a target as `%20` and the like; what cannot be decoded stands for itself. */
export function decoded(target: string): string {
  try {
    return decodeURIComponent(target);
  } catch {
    return target;
  }
}

/** Writes a target as seen from a part: several readers do not understand it from the root. */
function relativeTo(part: string, target: string): string {
  const [from, to] = [part.split("/").slice(0, -1), target.split("/")];
  let common = 0;
  while (common < from.length && common < to.length - 1 && from[common] === to[common]) common += 1;
  return [...from.slice(common).map(() => ".."), ...to.slice(common)].join("/");
}

/** Counts the tags of a text before anything is made of it; refuses one that goes on and on without any. */
function countTags(bytes: Uint8Array): number {
  let [tags, last] = [0, 0];
  const refuseLong = (at: number) => {
    if (at - last > limits.betweenTags) throw tooLarge(`holds a text of more than ${limits.betweenTags / 1_000_000} MB`);
  };
  for (let at = 0; at < bytes.length; at += 1) {
    if (bytes[at] !== openingBracket) continue;
    refuseLong(at);
    tags += 1;
    last = at;
  }
  refuseLong(bytes.length);
  return tags;
}

const openingBracket = 0x3c;

function decode(bytes: Uint8Array): string {
  const [first = 0, second = 0] = bytes;
  const named = /encoding=["']([\w-]+)["']/i.exec(new TextDecoder("latin1").decode(bytes.subarray(0, 200)))?.[1];
  // Two bytes a character, told by a mark in front or else by the first bracket: XML 1.0, appendix F.
  const [isLow, isHigh] = [(first === 0xff && second === 0xfe) || (first === openingBracket && second === 0), (first === 0xfe && second === 0xff) || (first === 0 && second === openingBracket)];
  const encoding = isLow ? "utf-16le" : isHigh ? "utf-16be" : (named ?? "utf-8");
  try {
    return new TextDecoder(/^utf-?16$/i.test(encoding) ? "utf-8" : encoding, { fatal: true }).decode(bytes);
  } catch {
    throw damaged();
  }
}
