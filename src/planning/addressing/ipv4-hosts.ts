/** Makes the 32-bit mask with `length` leading ones, as a signed number. A shift by 32 is a shift by 0, hence the end. */
export function maskBits(length: number): number {
  return length === 0 ? 0 : -1 << (32 - length);
}

/** Computes the first address of the subnet of `length` that `address` lies in. */
export function networkIPv4(address: number, length: number): number {
  return (address & maskBits(length)) >>> 0;
}

/** Computes the last address of the subnet of `length` that `address` lies in. */
export function lastIPv4(address: number, length: number): number {
  return (address | ~maskBits(length)) >>> 0;
}

/** Computes the first address a host may hold: past the network's own (RFC 950), but for a /31 (RFC 3021) and a /32. */
export function firstHostIPv4(address: number, length: number): number {
  return networkIPv4(address, length) + (length < 31 ? 1 : 0);
}

/** Computes the last address a host may hold: before the broadcast address (RFC 950), but for a /31 (RFC 3021) and a /32. */
export function lastHostIPv4(address: number, length: number): number {
  return lastIPv4(address, length) - (length < 31 ? 1 : 0);
}
