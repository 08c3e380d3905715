import fc from "fast-check";

/** Scheme texts of every kind, for property tests. */
export const schemeTexts = [
  "none",
  "RAID 1",
  "mirror",
  "RAID 10",
  "2 copies",
  "3 copies",
  "RAID 5",
  "RAID 6",
  "triple parity",
  "RAID 5 4+1",
  "RAID 60 4+2",
  "triple parity 8+3",
  "4+2",
  "8+2",
  "8+3",
] as const;

export const anyScheme = fc.constantFrom(...schemeTexts);
