import { addressValue, type Address } from "./address";
import { bitsOf } from "./family";

/**
 * Writes text that sorts addresses in address order, IPv4 before IPv6: the family, then the value in hexadecimal at full length.
 *
 * Digits sort before letters wherever text is sorted, and there is no hyphen or apostrophe, which a sheet passes over when it sorts.
 */
export function sortKey(address: Address): string {
  return `v${address.family}.${addressValue(address).toString(16).padStart(bitsOf(address.family) / 4, "0")}`;
}
