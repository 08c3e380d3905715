import type { SectionDraft, StepDraft } from "../draft";

/** Ids of the steps that leave a site safe: cords and cables, alerts, what is told, the file. */
type LeavingIds = readonly [cords: string, alerts: string, told: string, file: string];

/** Ends a visit so that nothing is left to chance until the next one; `told` is what the site must know and sign, `when` under which condition there is such a visit. */
export function leavingSite(section: string, [cords, alerts, toldId, file]: LeavingIds, told: string, when?: string): SectionDraft {
  return {
    section,
    forEach: "site",
    ...(when === undefined ? {} : { when }),
    shownAs: "grid",
    steps: [
      { id: cords, do: "Look at every cord and cable that was touched: locked or latched at both ends, labelled, and out of the way of doors and feet.", expect: "All locked", minutes: 5 },
      { id: alerts, do: "See that alerts are on, and that none was left silenced for the work. Enter who gets them from tonight on.", record: "text", minutes: 3 },
      { id: toldId, do: `${told} Witness: the site's contact.`, expect: "Told {{Contact}}", sign: "two", minutes: 5 },
      fileGivenBack(file),
    ],
  };
}

/** The step with which every visit ends. */
export function fileGivenBack(id: string): StepDraft {
  return { id, do: "Give the file with this tab, and every page filled by hand, back to the lead of the work. Enter who has them.", record: "text", minutes: 3 };
}
