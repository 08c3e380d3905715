import type { ProcedureDraft } from "./draft";
import { authority, liveData, rightArray, safety } from "./parts/arriving";
import { manyControllers, oneController } from "./parts/controllers";
import { siteAccepts } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";

/** A controller exchanged while its partner carries the load, or with the array at rest where it has none: the danger is pulling the wrong one. */
export const replaceController: ProcedureDraft = {
  procedure: "Replace a controller",
  sections: [
    authority("RCT", "Exchange", "the old controller stays on the mat, untouched, until the end of this tab"),
    liveData("RCT"),
    safety("RCT"),
    {
      section: "Which one",
      forEach: "controller",
      when: "Is subject = yes",
      steps: [
        rightArray("RCT-020"),
        { id: "RCT-021", do: "Enter the controller that fault report and the array's own page call faulty: both name this one. If not, stop.", expect: "{{Controller}}", record: "text", sign: "two", minutes: 3 },
        { id: "RCT-022", when: manyControllers, do: "The other controller works and reports no fault; every host has a path to it.", caution: "If the other one is not well, stop: pulling this one takes the data away.", expect: "Works without fault", sign: "two", minutes: 5 },
        { id: "RCT-026", when: oneController, do: "{{Array}} has no other controller and stands still while this one is out. Every host has let go of it, and the contact agrees.", caution: "A host that still uses it loses its data.", expect: "No host uses it", sign: "two", minutes: 10 },
        { id: "RCT-023", do: "No drive has failed and none is rebuilding.", expect: "Fully redundant", sign: "none", minutes: 3 },
        { id: "RCT-024", do: "Export the configuration, the fault log and the addresses of every port. Enter where.", record: "text", sign: "none", minutes: 10 },
        { id: "RCT-025", do: "Is unsaved data held in the failing controller's cache? Enter what the maker's guide and the page say. If any is held, stop until it is on the drives.", caution: "Data in a cache without power lasts only as long as its battery.", record: "text", minutes: 5 },
      ],
    },
    {
      section: "New part",
      forEach: "controller",
      when: "Is subject = yes",
      steps: [
        { id: "RCT-032", do: "Leave it closed in its bag in the room for at least as long as the maker's guide asks. How many hours did it lie?", expect: "{{Warm-up hours}}", bound: "at least", caution: "Cold equipment draws water and shorts.", record: "number", unit: "h", sign: "none", minutes: 1 },
        { id: "RCT-030", do: "Part number, memory and cards of the new controller are those of the old one.", expect: "Same", record: "choice:Same|Different", minutes: 5 },
        { id: "RCT-031", do: "Enter the serial number of the new controller.", record: "serial", sign: "none", minutes: 2 },
      ],
    },
    {
      section: "Exchange",
      forEach: "controller",
      when: "Is subject = yes",
      steps: [
        { id: "RCT-040", do: "Rack stabilised; strap on the bonding point of rack {{Rack}}.", caution: "A discharge destroys the new board before it has run.", expect: "Strap on", sign: "none", minutes: 2 },
        { id: "RCT-041", when: manyControllers, do: "Only with the other controller healthy, every host on its paths, no drive failed and none rebuilding at this moment: take controller {{Controller}} of {{Array}} out of work on the page, and wait until the other carries everything.", expect: "Other one carries all", holdPoint: true, minutes: 10 },
        { id: "RCT-048", when: oneController, do: "Only while no host uses {{Array}}: shut it down in the orderly way, and take its own cords out where the maker's guide says so.", caution: "Electric shock: own cords only, never a breaker.", expect: "Down", holdPoint: true, minutes: 10 },
        { id: "RCT-042", do: "Label every cable on controller {{Controller}}, photograph them, and unplug them.", expect: "All labelled", sign: "none", minutes: 5 },
        { id: "RCT-043", do: "Both people point at the controller to be pulled and read its letter or number aloud. Then pull it, straight, and lay it on the mat. Enter which one it was.", caution: "The wrong one takes the data away.", expect: "{{Controller}}", record: "text", sign: "two", holdPoint: true, minutes: 5 },
        { id: "RCT-044", do: "Look into the slot with a lamp: no bent pins, nothing loose.", expect: "Clean and straight", sign: "none", minutes: 2 },
        { id: "RCT-045", do: "Push the new controller home and close its latch. Pull it without opening the latch: it must stay put. Plug the cables in by their labels.", expect: "Stays put, all cables in", minutes: 5 },
        { id: "RCT-046", do: "Wait until it has started as the maker's guide says, its cords in again where they were out. Enter the minutes.", caution: "Electric shock: strap off before power comes on; hold each plug by its body.", record: "number", unit: "min", sign: "none", minutes: 20 },
        { id: "RCT-047", do: "Enter the firmware that it runs now; every controller the same.", expect: "{{Firmware}}", record: "text", minutes: 10 },
      ],
    },
    {
      section: "Ports of the new controller",
      forEach: "port",
      when: "Is subject = yes and Network.Kind <> other",
      shownAs: "grid",
      steps: [
        { id: "RCT-055", do: "Read the address of the port back from the array.", expect: "{{Address}}", record: "address", minutes: 2 },
        { id: "RCT-056", do: "Read the rest back, and see that the link is up.", expect: "/{{Prefix length}}, gateway {{Gateway}}, MTU {{Port MTU}}, link up", minutes: 1 },
        { id: "RCT-058", when: "Own address = yes", do: "From each of these, ping the port, fragmentation forbidden, with as many bytes as RCT-057 expects: it answers.", expect: "{{Ping targets}}", minutes: 2 },
        { id: "RCT-057", when: "Own address = yes", do: "Enter the largest size that passed from all of them.", expect: "{{Ping size}}", record: "number", unit: "bytes", minutes: 1 },
      ],
    },
    {
      section: "Back in work",
      forEach: "controller",
      when: "Is subject = yes",
      steps: [
        { id: "RCT-060", when: manyControllers, do: "See that the controllers are active and standby, or both active, as before the fault. Enter which.", record: "text", sign: "none", minutes: 3 },
        { id: "RCT-061", do: "Enter the fewest paths that any host shows. By the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", sign: "none", minutes: 5 },
        { id: "RCT-062", when: manyControllers, do: "In the agreed window, hand the work over to the new controller and back from the page. Enter the seconds for which the load stood still.", expect: "{{Longest standstill s}}", bound: "at most", caution: "Live data: only with both controllers healthy, the cache mirrored and every path seen on both, and only if the site's contact agrees.", record: "number", unit: "s", sign: "two", holdPoint: true, minutes: 10 },
        { id: "RCT-063", do: "Administrative accounts on the new controller: none left as delivered; passwords and keys in the vault.", expect: "All changed", sign: "none", minutes: 5 },
        { id: "RCT-064", do: "Clock right, test alert sent and received, no fault left on {{Array}}.", expect: "All three", minutes: 6 },
      ],
    },
    {
      section: "Handed back",
      forEach: "site",
      steps: [
        { id: "RCT-070", do: "Configuration exported again. Enter where.", record: "text", sign: "none", minutes: 5 },
        { id: "RCT-071", do: "The old controller may hold data or keys: pack it, label it and enter where it goes.", record: "text", sign: "none", minutes: 5 },
        siteAccepts("RCT-072"),
      ],
    },
    leavingSite("Left safe", "RCT-94", "Tell the site's contact that every controller carries its load again, or which one is not in use."),
  ],
};
