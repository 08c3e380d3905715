import { areaAddress, parseAreas, quoteSheetName } from "../../../src/sheet";
import { Refusal, text, type HostObject } from "./host-object";
import type { HostName, HostState } from "./host-state";
import { placeGiven, rangeObject, type Place } from "./range-objects";

/** Longest name, in characters, as the host's help has it. */
const longestName = 255;

/** The names of the workbook. Formulas do not know them here. */
export function namesObject(state: HostState): HostObject {
  const find = (name: unknown) => state.names.find((one) => one.name.toLowerCase() === text(name).toLowerCase());
  return {
    type: "NamedItemCollection",
    items: () => state.names.map((one) => nameObject(state, one)),
    parts: {
      getItem: (name) => nameObject(state, find(name) ?? missing()),
      getItemOrNullObject: (name) => {
        const found = find(name);
        return found === undefined ? null : nameObject(state, found);
      },
      add: (name, reference, comment) => {
        refuseName(text(name));
        if (find(name) !== undefined) throw new Refusal("ItemAlreadyExists");
        const added = { name: text(name), formula: typeof reference === "string" ? reference : `=${addressOf(placeGiven(reference))}`, comment: typeof comment === "string" ? comment : "" };
        if (!added.formula.startsWith("=")) throw new Refusal("InvalidArgument");
        state.names = [...state.names, added];
        return nameObject(state, added);
      },
    },
  };
}

function missing(): never {
  throw new Refusal("ItemNotFound");
}

/** What a name may not be, as the host's help has it: it begins with a letter or a line below, holds no blank, and is no cell. */
function refuseName(name: string): void {
  const isOdd = !/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(name) || name.length > longestName || /^(\$?[a-z]{1,3}\$?\d+|[rc])$/i.test(name);
  if (isOdd) throw new Refusal("InvalidArgument");
}

function addressOf({ sheet, area }: Place): string {
  return `${quoteSheetName(sheet.name)}!${areaAddress(area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}`;
}

function nameObject(state: HostState, { name }: HostName): HostObject {
  const now = () => state.names.find((one) => one.name === name) ?? missing();
  const place = (): Place | null => {
    const [, quoted, address] = /^=('(?:[^']|'')*'|[^'!]+)!([$A-Z0-9:]+)$/.exec(now().formula) ?? [];
    if (quoted === undefined || address === undefined) return null;
    const called = quoted.startsWith("'") ? quoted.slice(1, -1).replaceAll("''", "'") : quoted;
    const [sheet, area] = [state.sheets.find((one) => one.name.toLowerCase() === called.toLowerCase()), parseAreas(address.replaceAll("$", ""))[0]];
    return sheet === undefined || area === undefined ? null : { sheet, area };
  };
  return {
    type: "NamedItem",
    id: name,
    reads: { name: () => now().name, formula: () => now().formula, comment: () => now().comment, type: () => (place() === null ? "String" : "Range") },
    writes: { comment: (value) => { state.names = state.names.map((one) => (one.name === name ? { ...one, comment: text(value) } : one)); } },
    parts: {
      getRange: () => rangeObject(state, place() ?? missing()),
      getRangeOrNullObject: () => {
        const found = place();
        return found === null ? null : rangeObject(state, found);
      },
    },
    calls: { delete: () => { state.names = state.names.filter((one) => one !== now()); } },
  };
}
