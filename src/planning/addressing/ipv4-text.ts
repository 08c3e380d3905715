/** The 256 octets as text, so that writing an address is four look-ups. */
const octets: readonly string[] = Array.from({ length: 256 }, (_, octet) => String(octet));
const octetsWithDot: readonly string[] = octets.map((octet) => `${octet}.`);

/**
 * Reads the dotted decimal between `from` and `to` as a number from 0 to 2^32 − 1, or answers −1 where it is not one.
 *
 * Exactly four octets, each 0 to 255 in decimal. A leading zero is not read: some programs take such an octet for octal.
 */
export function readIPv4(text: string, from: number, to: number): number {
  let value = 0;
  let octet = 0;
  let digits = 0;
  let dots = 0;
  for (let at = from; at < to; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit >= 0 && digit <= 9) {
      if (digits > 0 && octet === 0) return -1;
      octet = octet * 10 + digit;
      if (octet > 255) return -1;
      digits++;
    } else {
      if (digit !== -2 || digits === 0 || dots === 3) return -1;
      value = (value << 8) | octet;
      octet = 0;
      digits = 0;
      dots++;
    }
  }
  return dots === 3 && digits > 0 ? ((value << 8) | octet) >>> 0 : -1;
}

/** Writes a number from 0 to 2^32 − 1 as dotted decimal. */
export function writeIPv4(value: number): string {
  return (
    octetsWithDot[value >>> 24]! + octetsWithDot[(value >>> 16) & 255]! + octetsWithDot[(value >>> 8) & 255]! + octets[value & 255]!
  );
}
