import { foldName } from "../../text";

/**
 * Writes what stands above each section where a visit begins with it, such as `Visit 2 of 3: Tests`; "" elsewhere, and where there is one visit.
 *
 * `visits` names the visit of each section in their order. One that comes again after another is counted again.
 */
export function visitHeadings(visits: readonly string[]): string[] {
  const begins = visits.map((visit, index) => index === 0 || foldName(visit) !== foldName(visits[index - 1]!));
  const count = begins.filter(Boolean).length;
  let number = 0;
  return visits.map((visit, index) => {
    if (count < 2 || !begins[index]!) return "";
    number += 1;
    // A heading is one line: nobody sees a second one.
    return `Visit ${number} of ${count}${visit === "" ? "" : `: ${visit.replace(/\s+/g, " ").trim()}`}`;
  });
}
