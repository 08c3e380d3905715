import { quote } from "../text";

/** Most characters of a label, and of a whole name without the dot at its end: 255 octets with the length octets (RFC 1035 section 2.3.4). */
const [longestLabel, longestName] = [63, 253];

/**
 * Says what keeps a text from being a host name; null where it is one, of one label or of several with dots between.
 *
 * Letters of ASCII, digits and inner dashes, at most 63 a label (RFC 952; RFC 1123 section 2.1, which lets a label begin with a digit). The
 * last label is not all digits, so that no name is taken for an address. Case does not count.
 */
export function hostNameFault(text: string): string | null {
  const start = `${quote(text.length > 60 ? `${text.slice(0, 60)}...` : text)} is no host name`;
  if (text === "") return `${start}: it is blank. Write letters, digits and inner dashes.`;
  if (text.length > longestName) return `${start}: it has ${text.length} characters, ${longestName} are the most. Write a shorter one.`;
  const labels = text.split(".");
  for (const label of labels) {
    if (label === "") return `${start}: it has a dot at an end, or two in a row. Take them out.`;
    if (label.length > longestLabel) return `${start}: a part of it has ${label.length} characters, ${longestLabel} are the most. Write a shorter one.`;
    const wrong = /[^A-Za-z0-9-]/u.exec(label)?.[0];
    if (wrong !== undefined) return `${start}: it holds ${/\s/.test(wrong) ? "a blank" : quote(wrong)}. Write letters, digits and inner dashes.`;
    if (label.startsWith("-") || label.endsWith("-")) return `${start}: a part of it begins or ends with a dash. Write it without.`;
  }
  return /^\d+$/.test(labels.at(-1)!) ? `${start}: its last part is a number, as in an address. Write at least one letter there.` : null;
}
