import type { ProcedureDraft } from "./draft";
import { authority, liveData, rightArray, safety } from "./parts/arriving";
import { siteAccepts } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";

/** A failed drive exchanged: the danger is pulling a healthy one out of a group that has already lost one. */
export const replaceDrive: ProcedureDraft = {
  procedure: "Replace a drive",
  sections: [
    authority("RDR", "Exchange", "until a drive is pulled, nothing has changed"),
    liveData("RDR"),
    safety("RDR"),
    {
      section: "Which one",
      forEach: "drive",
      when: "Is subject = yes",
      steps: [
        rightArray("RDR-020"),
        { id: "RDR-021", do: "Enter the serial number of the failed drive, from the fault report and from the array's own page: both name the bay under For and the same number. If not, stop.", expect: "{{Drive.Serial}}", record: "serial", sign: "two", minutes: 4 },
        { id: "RDR-022", do: "Has a spare taken over, and is {{Array}} fully redundant again? If a rebuild runs, wait for its end, then enter which; with no spare left this drive alone is touched.", caution: "A second drive out of a group that rebuilds may take everything. No other drive is touched today.", record: "choice:Fully redundant on a spare|No spare left", sign: "none", minutes: 5 },
        { id: "RDR-023", do: "The new drive has the size and the kind that the maker's guide asks for, and has stood closed in the room. Enter its serial number.", record: "serial", sign: "none", minutes: 3 },
      ],
    },
    {
      section: "Exchange",
      forEach: "drive",
      when: "Is subject = yes",
      steps: [
        { id: "RDR-040", do: "Only while no rebuild runs and no other drive has failed: light the locate lamp of the failed drive, in the bay under For. Strap on. Both people point at its bay, read bay and serial number aloud and compare with the page; then it is pulled a hand's width, left until it rests, and lifted out. Enter the serial number that stands on it.", caution: "The wrong drive takes the data away. If what is on the label is not what the page says, push it back and stop.", expect: "{{Drive.Serial}}", record: "serial", sign: "two", holdPoint: true, minutes: 10 },
        { id: "RDR-041", do: "Push the new drive home until it latches; it stays put. The array shows it by bay and the serial number of RDR-023. Enter that number as it shows it.", record: "serial", sign: "none", minutes: 5 },
        { id: "RDR-042", do: "It becomes a spare, or data is copied back to it, as the maker's guide says. Enter the hours until {{Array}} was fully redundant with all its spares.", record: "number", unit: "h", sign: "none", minutes: 10 },
        { id: "RDR-043", do: "Enter the number of hot spares now.", expect: "{{Spares}}", record: "number", minutes: 2 },
      ],
    },
    {
      section: "Handed back",
      forEach: "site",
      steps: [
        { id: "RDR-073", do: "Once this tab is closed the old drive gets its day under Taken out in the table Drives of the plan, and the new one a row of its own. Enter who writes them.", record: "text", sign: "none", minutes: 3 },
        { id: "RDR-071", do: "The old drive holds data: it is locked away, erased or destroyed as the owner of the data says. Enter where it goes, and the paper.", caution: "A drive that failed can still be read by others. It does not leave the site without the owner's word.", record: "text", sign: "two", minutes: 5 },
        siteAccepts("RDR-072"),
      ],
    },
    leavingSite("Left safe", "RDR-94", "Tell the site's contact that the array is fully redundant, or what is still being built and not in use as a spare yet."),
  ],
};
