import type { ProcedureDraft } from "./draft";
import { authority, liveData, rightArray } from "./parts/arriving";
import { manyControllers, oneController } from "./parts/controllers";
import { siteAccepts } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";

/** Firmware changed on arrays in use, one controller after the other, with a look at everything between them. */
export const changeFirmware: ProcedureDraft = {
  procedure: "Change firmware",
  sections: [
    authority("FWM", "Change", "the version that runs now is kept beside, with what the maker's guide says about going back"),
    liveData("FWM"),
    {
      section: "May it be changed",
      forEach: "array",
      steps: [
        rightArray("FWM-020"),
        { id: "FWM-021", do: "Enter the firmware that {{Array}} runs now.", record: "text", sign: "none", minutes: 2 },
        { id: "FWM-022", do: "Enter the firmware that it is to run, and where its files and their check sums came from.", record: "text", sign: "none", minutes: 5 },
        { id: "FWM-023", do: "Read the maker's notes between the two versions: a way back, versions between, hosts, drives, shelves and members of the cluster that must be changed first. Enter what was found, or none.", record: "text", minutes: 20 },
        { id: "FWM-024", when: manyControllers, do: "{{Array}} is fully redundant, no fault, no rebuild; every controller healthy, the cache mirrored, every path seen on each by every host. Enter the fewest paths that any host shows; by the plan: {{Host paths}}.", caution: "A controller that restarts is a controller that is missing: hosts with paths on that one only lose their data.", expect: "{{Paths}}", record: "number", sign: "two", minutes: 10 },
        { id: "FWM-026", when: oneController, do: "{{Array}} has one controller and stands still while that restarts: no fault, no rebuild, every host has let go of it, and the contact agrees. Enter the minutes agreed.", caution: "A host that still uses it loses its data.", record: "number", unit: "min", sign: "two", minutes: 10 },
        { id: "FWM-025", do: "Export the configuration of {{Array}} and its fault log. Enter where.", record: "text", sign: "none", minutes: 5 },
      ],
    },
    {
      section: "One controller at a time",
      forEach: "controller",
      steps: [
        { id: "FWM-040", when: manyControllers, do: "Start the new firmware on controller {{Controller}} of {{Array}}, which hands its work to another one first. Enter the seconds for which hosts stood still.", caution: "Live data: never two at once. If another one is not well at this moment, do not start.", expect: "{{Longest standstill s}}", bound: "at most", record: "number", unit: "s", sign: "two", holdPoint: true, minutes: 20 },
        { id: "FWM-041", when: manyControllers, do: "Wait until controller {{Controller}} of {{Array}} works again, the cache is mirrored and every host shows all its paths on each. Nobody starts another one before. Enter the version that it runs.", record: "text", holdPoint: true, minutes: 20 },
        { id: "FWM-042", when: oneController, do: "Only while no host uses {{Array}}: start the new firmware on controller {{Controller}}. Enter the minutes until it answered again.", caution: "A host that still uses it loses its data.", record: "number", unit: "min", sign: "two", holdPoint: true, minutes: 20 },
        { id: "FWM-043", when: oneController, do: "Wait until {{Array}} works without fault and its hosts use it again with all their paths. Enter the version that it runs.", record: "text", holdPoint: true, minutes: 20 },
      ],
    },
    {
      section: "Drives and shelves",
      forEach: "array",
      steps: [
        { id: "FWM-050", do: "Drives, shelves and supplies of {{Array}} only where the maker's notes ask for it, one group after the other, with full redundancy between. Enter what was changed, or none.", caution: "A drive that restarts is a drive that is missing: never two of one group. With one controller a shelf that restarts takes its drives away: only while no host uses them.", record: "text", sign: "two", holdPoint: true, minutes: 15 },
        { id: "FWM-051", do: "Enter the firmware that every controller of {{Array}} runs now. Every other member of its cluster runs the same, or is next.", record: "text", minutes: 3 },
        { id: "FWM-052", do: "{{Array}}: full redundancy, no fault, clock right, test alert received.", expect: "All four", sign: "none", minutes: 6 },
      ],
    },
    {
      section: "Hosts",
      forEach: "host",
      shownAs: "grid",
      steps: [
        { id: "FWM-060", do: "Rescan storage on the host. Enter how many paths to the arrays of this tab it shows, all together.", expect: "{{Paths to arrays}}", record: "number", minutes: 5 },
      ],
    },
    {
      section: "Handed back",
      forEach: "site",
      steps: [
        { id: "FWM-070", do: "Export the configurations again, and have the new version written into the plan: Arrays and, where all members run it, Release in Clusters. Enter where the exports are.", record: "text", sign: "none", minutes: 8 },
        siteAccepts("FWM-072"),
      ],
    },
    leavingSite("Left safe", "FWM-94", "Tell the site's contact that the work is over, or which controller still runs the old version and is not in use."),
  ],
};
