import type { SectionDraft, StepDraft } from "../draft";

/** Who leads, who may stop, and until when the work can be undone. `wayBack` says how; nothing where the people on site agree it. */
export function authority(prefix: string, visit: string, wayBack = "what is switched back, moved back or carried out again"): SectionDraft {
  return {
    section: "Authority and back-out plan",
    visit,
    forEach: "site",
    shownAs: "grid",
    steps: [
      { id: `${prefix}-301`, do: "Name who leads the work, and say to everybody present that anyone may stop it at any time.", record: "text", minutes: 3 },
      { id: `${prefix}-302`, do: `Agree with the site's contact until when the work can still be undone, and how: ${wayBack}. Witness: the contact.`, expect: "Contact agreed", sign: "two", minutes: 10 },
      { id: `${prefix}-303`, do: "Is the site's change window open, does its operations desk know, and are those there who work on its hosts and switches? Enter who said so.", record: "text", minutes: 5 },
      { id: `${prefix}-304`, do: "Ask the project manager today which build of this tab is in use: it is the one printed on this page.", expect: "Same build", minutes: 2 },
    ],
  };
}

/** What hurts people and boards, said before anything is opened or lifted. */
export function safety(prefix: string): SectionDraft {
  return {
    section: "Before anything is touched",
    forEach: "site",
    steps: [
      { id: `${prefix}-310`, do: "Find the room's emergency power-off, fire exits and first-aid box, and the person to call. Show them to everybody present.", caution: "A gas fire system can kill: leave the room at its first signal.", expect: "Shown", sign: "none", minutes: 5 },
      { id: `${prefix}-311`, do: "Agree which licensed person may work on mains supplies, or that none is needed. This tab never asks for a breaker to be operated or a fixed connection to be opened.", caution: "Electric shock kills. Fixed wiring, distribution boards and breakers are for licensed electricians under the local code.", expect: "Agreed", sign: "none", minutes: 3 },
      { id: `${prefix}-312`, do: "Safety shoes and gloves on, sleeves and lanyards in. No one lifts alone what is for two people or the lift table. Way in: {{Access and lift}}", caution: "Crushed hands and backs: an array falls faster than anyone lets go. Clear the way before lifting, and never stand below a raised load.", expect: "Agreed", sign: "none", minutes: 3 },
      { id: `${prefix}-313`, do: "Lay out an antistatic mat and test every wrist strap.", caution: "A discharge too small to be felt destroys drives and boards. Wear the strap whenever a bag, a cover or a bay is open; take it off before power comes on.", expect: "Every strap passes", sign: "none", minutes: 4 },
      { id: `${prefix}-314`, do: "Everybody present has heard these cautions. By: the lead of the work. Witness: the site's contact.", expect: "All present", sign: "two", minutes: 2 },
    ],
  };
}

/** The step that tells the array of the job from its neighbours, with two names. */
export function rightArray(id: string): StepDraft {
  return { id, do: "Read the serial number of {{Array}} on the chassis and on its own page: one and the same.", expect: "{{Array.Serial}}", record: "serial", sign: "two", minutes: 2 };
}

/** That the data was saved before anybody touches a system that holds some. */
export function liveData(prefix: string): SectionDraft {
  return {
    section: "Live data",
    forEach: "site",
    steps: [
      { id: `${prefix}-316`, do: "Ask for the day of the last backup from which something was read back.", caution: "The system holds live data. No tested backup, no work.", record: "date", sign: "none", minutes: 5 },
    ],
  };
}

/** The boxes as they arrive, and the hours that they stand closed. */
export function boxes(prefix: string): readonly SectionDraft[] {
  return [
    {
      section: "Boxes",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-320`, do: "Count the boxes against the packing list before you sign the carrier's paper. Look at shock and tilt marks, for dents and wet corners; photograph what you find, note it on the paper.", expect: "Complete and unharmed", record: "choice:Complete and unharmed|Something missing|Marks or damage", minutes: 10 },
      ],
    },
    {
      section: "Boxes left closed",
      forEach: "array",
      steps: [
        { id: `${prefix}-325`, do: "Leave its boxes closed in the room for at least as long as its maker's guide asks. How many hours did they stand?", expect: "{{Warm-up hours}}", bound: "at least", caution: "Cold equipment draws water: switched on too early it shorts. No bag is opened before.", record: "number", unit: "h", sign: "none", minutes: 2 },
      ],
    },
  ];
}
