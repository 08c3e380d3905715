import { invalid } from "../../planning/text";
import { parseNumber, parseShare } from "../../planning/quantity";
import { buildGraph, type FallibleNode, type Graph, type Link } from "../../planning/resilience";
import { readRows, type RangeRow, type Scalar } from "./cells";
import { readName } from "./names";

/** Reads links, from and to a row; further columns are left alone. */
export function readGraph(received: unknown, argument: string): Graph {
  return buildGraph(linkRows(received, argument).map((row) => readLink(row, argument)));
}

/** Reads links with their unavailability, and the nodes that can be down themselves, if any. */
export function readFallibleGraph(links: unknown, argument: string, nodes: unknown, nodesArgument: string): Graph {
  const fallible = linkRows(links, argument).map((row): Link => {
    const link = readLink(row, argument);
    return { ...link, unavailability: parseUnavailability(row.cells[2] ?? null, `${link.at} unavailability`) };
  });
  return buildGraph(fallible, readNodes(nodes, nodesArgument));
}

function linkRows(received: unknown, argument: string): RangeRow[] {
  const rows = readRows(received, argument, ["from"]);
  if (rows.length === 0) throw invalid(argument, received, `${argument} is blank. Give a range with the two ends of a link in each row.`);
  return rows;
}

function readLink({ row, cells }: RangeRow, argument: string): Link & { readonly at: string } {
  const at = `${argument} row ${row}`;
  return { from: readName(cells[0], `${at} from`), to: readName(cells[1], `${at} to`), at };
}

function readNodes(received: unknown, argument: string): FallibleNode[] {
  return readRows(received, argument, ["name", "node", "nodes"]).map(({ row, cells }) => {
    const at = `${argument} row ${row}`;
    return { name: readName(cells[0], `${at} name`), unavailability: parseUnavailability(cells[1] ?? null, `${at} unavailability`), at };
  });
}

/** Reads a share of the time; a number above 1 is not taken for a percentage, because 99.9 is most often an availability. */
function parseUnavailability(cell: Scalar, argument: string): number {
  return typeof cell === "string" ? parseShare(cell, argument) : parseNumber(cell, argument, { min: 0, max: 1, example: 0.001 });
}
