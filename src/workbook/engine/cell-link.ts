import type { ICellData, Nullable } from "@univerjs/core";

/** Reads where a cell leads: as its file says, as the link within a text that was pasted, or as its formula comes to. */
export function linkOf(cell: Nullable<ICellData>): string | undefined {
  return ownLink(cell) ?? cell?.p?.body?.customRanges?.map(({ properties }) => (properties as { url?: unknown } | undefined)?.url).find((url) => typeof url === "string");
}

/** Reads the link that a file keeps for a cell: what a formula comes to, it says itself. */
export function keptLink(cell: ICellData): string | undefined {
  return cell.f || cell.si ? ownLink(cell) : linkOf(cell);
}

function ownLink(cell: Nullable<ICellData>): string | undefined {
  return (cell?.custom as { link?: string } | null | undefined)?.link;
}
