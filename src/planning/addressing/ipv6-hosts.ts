import type { Groups } from "./ipv6-text";

/** Clears the bits after `length` in place: what is left names the network. */
export function clearHostBits(groups: Groups, length: number): void {
  for (let group = 7, free = 128 - length; free > 0; group--, free -= 16) groups[group]! &= ~lowBits(free);
}

/** Sets the bits after `length` in place: the last address of the subnet. */
export function setHostBits(groups: Groups, length: number): void {
  for (let group = 7, free = 128 - length; free > 0; group--, free -= 16) groups[group]! |= lowBits(free);
}

/** Clears the bits after `length` in place and steps past the subnet-router anycast address (RFC 4291), but for /127 (RFC 6164) and /128. */
export function toFirstHost(groups: Groups, length: number): void {
  clearHostBits(groups, length);
  if (length < 127) groups[7] |= 1;
}

/** Tells whether a bit after `length` is set. */
export function hasHostBits(groups: Groups, length: number): boolean {
  for (let group = 7, free = 128 - length; free > 0; group--, free -= 16) if ((groups[group]! & lowBits(free)) !== 0) return true;
  return false;
}

/** Makes the last `bits` bits of a group; all of them from 16 on. */
function lowBits(bits: number): number {
  return bits >= 16 ? 0xffff : (1 << bits) - 1;
}
