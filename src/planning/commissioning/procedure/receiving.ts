import type { ProcedureDraft } from "./draft";
import { fileGivenBack } from "./parts/leaving-site";

/** Goods as they come in, at the workshop or at the site: counted, read and kept dry before anything is opened. */
export const receiving: ProcedureDraft = {
  procedure: "Receiving",
  sections: [
    {
      section: "At the door",
      visit: "Receiving",
      forEach: "site",
      steps: [
        { id: "RCV-010", do: "Let the carrier wait until everything is counted and looked at. Nothing is signed before.", caution: "Lifting injures backs: boxes over 25 kg are for two people or the lift table (common practice; local rules may ask for less).", expect: "Carrier waits", sign: "none", minutes: 2 },
      ],
    },
    {
      section: "Boxes",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "RCV-020", do: "Count the boxes against the packing list. Write what is missing on the carrier's paper.", expect: "Complete", record: "choice:Complete|Something missing", minutes: 8 },
        { id: "RCV-021", do: "Read every shock and tilt mark, and look for dents and wet corners. Photograph them and note them on the carrier's paper.", expect: "None tripped", record: "choice:None tripped|Tripped|No marks fitted", minutes: 5 },
        { id: "RCV-022", do: "Read the serial number on the box of the chassis; it stays closed.", expect: "{{Array.Serial}}", record: "serial", minutes: 2 },
        { id: "RCV-023", do: "Enter the model on that box, and compare it with the order.", expect: "{{Array.Model}}", record: "text", minutes: 2 },
      ],
    },
    {
      section: "Kept",
      forEach: "site",
      steps: [
        { id: "RCV-031", do: "Sign the carrier's paper with what you found on it. Enter its number.", record: "text", minutes: 3 },
        { id: "RCV-030", do: "Put the boxes where they stand dry, closed and locked away, as many on each other as their label allows. Enter where.", record: "text", minutes: 10 },
        fileGivenBack("RCV-904"),
      ],
    },
  ],
};
