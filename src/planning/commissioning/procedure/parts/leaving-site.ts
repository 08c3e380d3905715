import type { SectionDraft, StepDraft } from "../draft";

/**
 * Ends a visit so that nothing is left to chance until the next one; `told` is what the site must know and sign, `when` under which condition there is such a visit. Its four steps
 * have ids that begin with `ids`, such as INS-94.
 */
export function leavingSite(section: string, ids: string, told: string, when?: string): SectionDraft {
  return {
    section,
    forEach: "site",
    ...(when === undefined ? {} : { when }),
    shownAs: "grid",
    steps: [
      { id: `${ids}1`, do: "Look at every cord and cable that was touched: locked or latched at both ends, labelled, and out of the way of doors and feet.", expect: "All locked", minutes: 5 },
      { id: `${ids}2`, do: "See that alerts are on, and that none was left silenced for the work. Enter who gets them from tonight on.", record: "text", minutes: 3 },
      { id: `${ids}3`, do: `${told} Witness: the site's contact.`, expect: "Contact told", sign: "two", minutes: 5 },
      fileGivenBack(`${ids}4`),
    ],
  };
}

/** The step with which every visit ends. */
export function fileGivenBack(id: string): StepDraft {
  return { id, do: "Give the file with this tab, and every page filled by hand, back to the lead of the work. Enter who has them.", record: "text", minutes: 3 };
}
