import type { SectionDraft, StepDraft } from "../draft";

/** What stays behind, and the signature. */
export function acceptance(prefix: string): readonly SectionDraft[] {
  return [
    {
      section: "What stays behind",
      forEach: "site",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-475`, do: "Export the configuration of every array and store it off the arrays. Enter where.", record: "text", minutes: 10 },
        { id: `${prefix}-476`, do: "Photograph every rack, front and back, with the labels readable. Enter where the pictures are kept.", record: "text", minutes: 10 },
        { id: `${prefix}-477`, do: "Hand over spare drives, cords, keys and rails left over; take test accounts, console line and packing away. Enter what stays, and where.", record: "text", minutes: 20 },
        { id: `${prefix}-478`, do: "Register every serial number for support. Enter the reference that came back.", record: "text", minutes: 10 },
      ],
    },
    {
      section: "Acceptance",
      forEach: "site",
      steps: [
        { id: `${prefix}-481`, do: "Go through all that differs and every snag with the site's contact; agree who calls whom, by day and night. Then the site accepts. By: the lead. Witness: the contact.", expect: "Accepted", record: "choice:Accepted|Refused", sign: "two", holdPoint: true, minutes: 20 },
      ],
    },
  ];
}

/** The signature under work on an array that was in use before. */
export function siteAccepts(id: string): StepDraft {
  return { id, do: "The site accepts. Witness: the site's contact.", expect: "Accepted", record: "choice:Accepted|Refused", sign: "two", holdPoint: true, minutes: 5 };
}

/** The step after the tab was closed. */
export function signOff(prefix: string): SectionDraft {
  return {
    section: "Sign-off",
    forEach: "site",
    steps: [
      { id: `${prefix}-499`, do: "Close out this tab, print it, and have both sides sign the page with the code of the seal.", expect: "Signed page filed", required: false, sign: "none", minutes: 10 },
    ],
  };
}
