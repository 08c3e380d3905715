import { invalid, type Problem } from "../text";
import { compareAddresses, formatAddress, type Address } from "./address";
import { assignableRanges } from "./assignable";
import { firstHost, lastHost } from "./hosts";
import { containsAddress, formatPrefix, lastAddress, type Prefix } from "./prefix";
import { findMisfit } from "./misfit";
import { RangeList, type AddressRanges } from "./ranges";
import { subtractRanges } from "./subtract";

/** An address that must stay where it is, and the row it was found in. */
export interface KeptAddress {
  readonly address: Address;
  readonly row: number;
}

/**
 * Works out what of a prefix is free once `reserved` and the kept addresses are gone.
 *
 * Refuses kept addresses that cannot stand: outside the prefix, not a host of it, reserved, or kept twice. They are never moved.
 */
export function freeBesideKept(prefix: Prefix, reserved: AddressRanges, kept: readonly KeptAddress[], argument = "kept"): AddressRanges {
  const free = subtractRanges(assignableRanges(prefix), reserved);
  const held = new RangeList(prefix.family, kept.length);
  for (const one of kept) {
    if (one.address.family !== prefix.family) throw explainKept(prefix, one, argument);
    held.addRange(one.address, one.address);
  }
  const misfit = findMisfit(held, free);
  if (misfit !== null) {
    const one = kept[misfit.index]!;
    throw misfit.meets === null ? explainKept(prefix, one, argument) : explainTwice(kept[misfit.meets]!, one, argument);
  }
  return subtractRanges(free, held);
}

function explainTwice(one: KeptAddress, other: KeptAddress, argument: string): Problem {
  const [first, second] = one.row <= other.row ? [one, other] : [other, one];
  const place = `${argument} row ${second.row}`;
  const text = formatAddress(second.address);
  return invalid(place, text, `${place} keeps ${text}, which row ${first.row} keeps already. Give one of them another address.`);
}

function explainKept(prefix: Prefix, { address, row }: KeptAddress, argument: string): Problem {
  const place = `${argument} row ${row}`;
  const text = formatAddress(address);
  return invalid(place, text, `${place} keeps ${text}, ${keptReason(prefix, address)}. Change or remove that row.`);
}

function keptReason(prefix: Prefix, address: Address): string {
  if (!containsAddress(prefix, address)) return `which is not in ${formatPrefix(prefix)}`;
  if (compareAddresses(address, firstHost(prefix)) < 0) {
    return prefix.family === 4 ? "the address of the network itself" : "the subnet-router anycast address";
  }
  if (compareAddresses(address, lastHost(prefix)) > 0 && compareAddresses(address, lastAddress(prefix)) === 0) {
    return "the broadcast address of its network";
  }
  return "which is reserved";
}
