import { rangeOf } from "./range-of";
import type { Area } from "../../sheet";

/** One piece of work that may not be cut: about how many bytes it adds to a request, and how it is queued. */
export interface Step {
  readonly bytes: number;
  readonly queue: (request: WorkbookRequest) => void;
}

/** The sheets of one request: each is looked up once, as every object that is come by costs the request an action and a path. */
export class WorkbookRequest {
  private readonly sheets = new Map<string, Excel.Worksheet>();

  constructor(readonly workbook: Excel.Workbook) {}

  sheet(name: string): Excel.Worksheet {
    const sheet = this.sheets.get(name) ?? this.workbook.worksheets.getItem(name);
    this.sheets.set(name, sheet);
    return sheet;
  }

  range(name: string, area: Area): Excel.Range {
    return rangeOf(this.sheet(name), area);
  }

  /** Names are no longer those of the sheets that were looked up. */
  forgetSheets(): void {
    this.sheets.clear();
  }
}

/**
 * Most bytes of one request. The host on the web refuses 5 MB, and what is counted here is what the client sends or up to a quarter
 * more: a test holds it against the client itself.
 */
const requestBytes = 4_500_000;

/** What an object that is come by adds to a request: the action that finds it, its path, and its place in the list of what is let go. */
const objectBytes = 210;
/** What setting a property or calling a method adds, beside its values. */
const callBytes = 125;

/** Counts the bytes of a step by the objects it comes by, the properties it sets and methods it calls, and the values it sends. */
export function stepBytes({ objects, calls, sent = "" }: { readonly objects: number; readonly calls: number; readonly sent?: unknown }): number {
  return objects * objectBytes + calls * callBytes + jsonBytes(sent);
}

/** Puts steps together into requests that each stay under `limit` bytes; a step that is over it alone goes alone. */
export function packSteps(steps: Iterable<Step>, limit = requestBytes): Step[][] {
  const requests: Step[][] = [];
  let bytes = Infinity;
  for (const step of steps) {
    if (bytes + step.bytes > limit) {
      requests.push([]);
      bytes = 0;
    }
    requests.at(-1)!.push(step);
    bytes += step.bytes;
  }
  return requests;
}

/** Most cells of one block: above it the client cuts the block itself, with three more objects a piece. */
const blockCells = 1_500;

/** Cuts rows into blocks of at most `blockCells` cells and about `limit` bytes each; gives the first row and the one after the last of each block. */
export function rowBlocks(rows: readonly (readonly unknown[])[], limit = requestBytes / 4): { from: number; to: number; bytes: number }[] {
  const blocks: { from: number; to: number; bytes: number }[] = [];
  rows.forEach((row, index) => {
    const bytes = jsonBytes(row);
    const last = blocks.at(-1);
    if (last === undefined || last.bytes + bytes > limit || (index + 1 - last.from) * row.length > blockCells) blocks.push({ from: index, to: index + 1, bytes });
    else {
      last.to = index + 1;
      last.bytes += bytes;
    }
  });
  return blocks;
}

const encoder = new TextEncoder();

/** Counts the bytes of a value as it goes to the host, as JSON in UTF-8. */
export function jsonBytes(value: unknown): number {
  return encoder.encode(JSON.stringify(value)).length;
}
