import { addressAt, addressValue, formatPrefix, lastAddress, parseBlock, Prefix, type Family } from "../../../src/planning/addressing";

/** Slow, readable twins of the set algorithms: one address at a time, over a space small enough to list. */

/** Lists every address value of the texts. */
export function valuesOf(texts: readonly string[]): Set<bigint> {
  const values = new Set<bigint>();
  for (const text of texts) {
    const { first, last } = parseBlock(text);
    for (let value = addressValue(first); value <= addressValue(last); value++) values.add(value);
  }
  return values;
}

/** Finds the fewest prefixes of a set of addresses: join halves as long as both are there. */
export function fewestPrefixes(family: Family, values: ReadonlySet<bigint>): string[] {
  const bits = family === 4 ? 32 : 128;
  const found: Prefix[] = [];
  let level = new Set(values);
  for (let length = bits; level.size > 0; length--) {
    const size = 1n << BigInt(bits - length);
    const above = new Set<bigint>();
    for (const first of level) {
      const partner = first ^ size;
      if (level.has(partner)) above.add(first & ~size);
      else found.push(new Prefix(addressAt(family, first), length));
    }
    level = above;
  }
  return found.sort((a, b) => Number(addressValue(a.first) - addressValue(b.first))).map(formatPrefix);
}

/** Lists the addresses of a prefix that hosts may hold, by reading the rules aloud. */
export function hostValues(prefix: Prefix): bigint[] {
  const first = addressValue(prefix.first);
  const last = addressValue(lastAddress(prefix));
  const hosts: bigint[] = [];
  for (let value = first; value <= last; value++) {
    const ends = last - first > 1n && (value === first || (prefix.family === 4 && value === last));
    const anycast = prefix.family === 6 && last - first > 127n && value > last - 128n;
    if (!ends && !anycast) hosts.push(value);
  }
  return hosts;
}
