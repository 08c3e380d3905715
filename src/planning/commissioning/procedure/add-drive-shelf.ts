import type { ProcedureDraft } from "./draft";
import { authority, liveData, rightArray, safety } from "./parts/arriving";
import { manyControllers } from "./parts/controllers";
import { acceptance } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";

/** A shelf of drives added to an array that holds live data: the data comes first at every step. */
export const addDriveShelf: ProcedureDraft = {
  procedure: "Add a drive shelf",
  sections: [
    authority("SHF", "Extension", "until the new drives are put to use no data lies on the shelf: it is taken off again as the maker's guide says"),
    liveData("SHF"),
    safety("SHF"),
    {
      section: "Is the array well",
      forEach: "array",
      steps: [
        rightArray("SHF-020"),
        { id: "SHF-021", do: "See that {{Array}} is fully redundant, with no fault and no rebuild running. If not, mend that first.", expect: "Fully redundant", sign: "none", minutes: 3 },
        { id: "SHF-022", do: "Every controller of {{Array}} works, every host on all paths. Enter the fewest that any host shows; by the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", sign: "none", minutes: 5 },
        { id: "SHF-023", do: "Export the configuration of {{Array}}. Enter where.", record: "text", sign: "none", minutes: 5 },
        { id: "SHF-024", do: "Enter the firmware of the controllers. If it is not new enough for this shelf by the maker's guide, stop.", record: "text", sign: "none", minutes: 5 },
      ],
    },
    {
      section: "Delivery",
      forEach: "shelf",
      when: "Is subject = yes",
      steps: [
        { id: "SHF-030", do: "Shelf {{Shelf}} for {{Array}}: boxes complete, marks not tripped.", expect: "Complete and untripped", record: "choice:Complete and untripped|Incomplete|Tripped", sign: "none", minutes: 10 },
        { id: "SHF-031", do: "Enter the shelf's serial number, from its box.", expect: "{{Shelf.Serial}}", record: "serial", sign: "none", minutes: 2 },
        { id: "SHF-032", do: "Leave the boxes closed in the room for at least as long as the maker's guide asks. How many hours did they stand?", expect: "{{Warm-up hours}}", bound: "at least", caution: "Cold equipment draws water and shorts when switched on.", record: "number", unit: "h", sign: "none", minutes: 2 },
        { id: "SHF-033", do: "Enter the number of drives that came with it, and compare with the order.", record: "number", sign: "none", minutes: 3 },
      ],
    },
    {
      section: "Rack, rails and lift",
      forEach: "shelf",
      when: "Is subject = yes",
      steps: [
        { id: "SHF-040", do: "Rack fixed and stabilised, bonded to earth; your strap on its bonding point.", caution: "A rack tips when weight is pulled out at its front. A discharge destroys drives.", expect: "All three", sign: "none", minutes: 5 },
        { id: "SHF-041", do: "Fix the rails of shelf {{Shelf}} at unit {{Shelf.Bottom unit}} of rack {{Shelf.Rack}}, if its units are free, front and back. Enter the unit lowest down that they fill.", expect: "{{Shelf.Bottom unit}}", record: "number", sign: "none", minutes: 15 },
        { id: "SHF-042", do: "Lift the shelf with its drives out: two people or the lift table by its weight plate. Fix and bond it.", caution: "Lifting injures backs and crushes fingers. One person speaks; hands under, never in the rail.", expect: "Fixed and bonded", sign: "two", minutes: 15 },
        { id: "SHF-044", do: "Fit the drives bay by bay; run a finger along the front: all seated, blanks in empty bays. Count them.", record: "number", sign: "none", minutes: 15 },
      ],
    },
    {
      section: "Power",
      forEach: "shelf",
      when: "Is subject = yes",
      steps: [
        { id: "SHF-050", do: "Read the load of {{Shelf.Feeds}} on their displays, and add to each the amps on the shelf's plate. By the plan, the shelf in it: {{Feed load}}. If a feed alone passes its limit, stop. Enter what each would carry.", caution: "An overloaded feed takes everything on it down. A licensed electrician and the local code decide.", record: "text", minutes: 5 },
        { id: "SHF-051", do: "Supply switches off where it has some, strap off, step clear of the fans; cords into {{Shelf.Feeds}}, the first supply into the first; a supply too many gets no cord. Lock and label both ends; switches on.", caution: "Electric shock: look at cords and plugs first; never touch a breaker. A shelf without a switch starts as soon as a cord is in.", expect: "Supplies run", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Data cables",
      forEach: "controller",
      steps: [
        { id: "SHF-060", do: "Cable the shelf to controller {{Controller}} of {{Array}} as the maker's guide draws it; label both ends. Wait until this controller shows the shelf before touching another.", caution: "Live data: one controller at a time. A cable pulled on the wrong one takes the last path away.", expect: "Shelf seen by controller {{Controller}}", sign: "two", minutes: 10 },
      ],
    },
    {
      section: "Drives by bay",
      forEach: "drive",
      shownAs: "grid",
      steps: [
        { id: "SHF-065", do: "Have the array list its drives by bay and serial number, keep the list, and paste the serial numbers here, bay by bay; on paper write those alone that differ. No drive is pulled to read it.", expect: "{{Drive.Serial}}", record: "serial", minutes: 1 },
      ],
    },
    {
      section: "Seen and tested",
      forEach: "shelf",
      when: "Is subject = yes",
      steps: [
        { id: "SHF-070", do: "Enter the number of drives that {{Array}} shows now; the plan counts old and new ones.", expect: "{{Drives}}", record: "number", sign: "none", minutes: 3 },
        { id: "SHF-071", do: "See that every controller shows the new drives and none is faulty. Let them run unused for a day where the plan has the time (common practice).", expect: "All shown", sign: "none", minutes: 5 },
        { id: "SHF-072", when: manyControllers, do: "Pull one data cable of this shelf, and of no other one: it stays present. Put it back and wait until that path is well again. Only then the other.", caution: "Only while the new drives hold no data: do it before the next section.", expect: "Stays present both times", holdPoint: true, minutes: 10 },
        { id: "SHF-073", when: "Shelf.Feed A <> and Shelf.Feed B <>", do: "Pull one cord of this shelf: it stays present. Put it back, lock it and wait until that supply is well again. Only then the other.", caution: "The shelf's own cords, never a breaker. Hold the plug by its body.", expect: "Stays present both times", holdPoint: true, minutes: 10 },
      ],
    },
    {
      section: "Put to use",
      forEach: "array",
      steps: [
        { id: "SHF-080", do: "Point of no easy return: the site's contact agrees to go on. Witness: the contact.", expect: "Go on", record: "choice:Go on|Stop here", sign: "two", holdPoint: true, minutes: 3 },
        { id: "SHF-081", do: "Add the drives under scheme {{Scheme}}. Enter the scheme as the screen names it, in the plan's words.", caution: "Live data lies on {{Array}}: new drives are added, nothing is laid out anew. If the page says that anything will be emptied, stop.", expect: "{{Scheme}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
        { id: "SHF-082", do: "Enter the number of hot spares now.", expect: "{{Spares}}", record: "number", sign: "none", minutes: 2 },
        { id: "SHF-083", do: "Wait for the build or the spreading of data to end. Enter the hours.", record: "number", unit: "h", sign: "none", minutes: 5 },
        { id: "SHF-084", do: "Enter the usable capacity that it shows, and its unit.", expect: "{{Usable before reserve}}", record: "size", unit: "TB", tolerancePercent: 3, minutes: 3 },
      ],
    },
    ...acceptance("SHF"),
    leavingSite("Left safe", "SHF-94", "Tell the site's contact which drives are in use from now on, and which are not in use. Hang a sign on the shelf if it is not."),
  ],
};
