import { bytes, exactFraction, type Bytes, type Share } from "../quantity";
import type { Layout } from "./layout";

/**
 * Computes the usable capacity of equal drives of `driveSize` under `layout`, less the share `reserve` of it.
 *
 * Members × size × data / (data + redundancy) holds for every scheme: for groups it is whole groups of data drives, for a spread scheme
 * every drive gives the same part. Rounded down to a whole byte, once, at the end. Patterson, Gibson, Katz 1988 for the share of data.
 */
export function usableBytes(layout: Layout, driveSize: Bytes, reserve: Share): Bytes {
  const { numerator, denominator } = exactFraction(reserve);
  return bytes(scaledData(layout, driveSize, denominator - numerator, denominator));
}

/** Where the raw capacity goes, to the byte: the other lines add up to `raw`. */
export interface Breakdown {
  readonly raw: Bytes;
  readonly spares: Bytes;
  readonly outside: Bytes;
  /** Parity or copies, and the bytes that rounding down leaves. */
  readonly redundancy: Bytes;
  readonly reserve: Bytes;
  readonly usable: Bytes;
}

/** Breaks the raw capacity of equal drives down into spares, drives outside a group, redundancy, reserve and usable. */
export function breakDown(layout: Layout, driveSize: Bytes, reserve: Share): Breakdown {
  const raw = BigInt(layout.drives) * driveSize;
  const spares = BigInt(layout.spares) * driveSize;
  const outside = BigInt(layout.outside) * driveSize;
  const { numerator, denominator } = exactFraction(reserve);
  const reserved = scaledData(layout, driveSize, numerator, denominator);
  const usable = usableBytes(layout, driveSize, reserve);
  return {
    raw: bytes(raw),
    spares: bytes(spares),
    outside: bytes(outside),
    redundancy: bytes(raw - spares - outside - reserved - usable),
    reserve: bytes(reserved),
    usable,
  };
}

/** Adds up, line by line, where the raw capacity of several sets of drives goes. */
export function sumOfBreakdowns(parts: readonly Breakdown[]): Breakdown {
  const sum = (line: keyof Breakdown): Bytes => bytes(parts.reduce((total, part) => total + part[line], 0n));
  return { raw: sum("raw"), spares: sum("spares"), outside: sum("outside"), redundancy: sum("redundancy"), reserve: sum("reserve"), usable: sum("usable") };
}

function scaledData(layout: Layout, driveSize: Bytes, numerator: bigint, denominator: bigint): bigint {
  const data = BigInt(layout.members * layout.data) * driveSize * numerator;
  return data / (BigInt(layout.data + layout.redundancy) * denominator);
}
