import { bytes, type Bytes } from "../../quantity";

/** Adds sizes up; null where one of them is not known: a part of the sum would be taken for the whole. */
export function sumKnown(sizes: readonly (Bytes | null)[]): Bytes | null {
  return sizes.reduce<Bytes | null>((sum, size) => (sum === null || size === null ? null : bytes(sum + size)), bytes(0n));
}
