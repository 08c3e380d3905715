import type { ProcedureDraft } from "./draft";
import { leavingSite } from "./leaving-site";

/** A controller exchanged while its partner carries the load: the danger is pulling the wrong one. */
export const replaceController: ProcedureDraft = {
  procedure: "Replace a controller",
  sections: [
    {
      section: "Authority and way back",
      visit: "Exchange",
      forEach: "site",
      steps: [
        { id: "RCT-010", do: "Name who leads the work, and say that anyone may stop it at any time.", record: "text", minutes: 2 },
        { id: "RCT-011", do: "Agree the window with the site's contact. Way back: the old controller stays on the mat, untouched, until the end of this tab.", expect: "Agreed with {{Contact}}", sign: "two", minutes: 10 },
        { id: "RCT-012", do: "Ask for the date of the last backup that was read back.", caution: "With one controller there is no second path: a slip takes the data away. No tested backup, no work.", record: "date", minutes: 5 },
      ],
    },
    {
      section: "Which one",
      forEach: "array",
      steps: [
        { id: "RCT-020", do: "Read the serial number of {{Array}}: it is the right one.", expect: "{{Array.Serial}}", record: "serial", sign: "two", minutes: 2 },
        { id: "RCT-021", do: "Enter the controller that is to be replaced, from the fault report and from the array's own page. Both name the same one.", expect: "{{Subject}}", record: "text", sign: "two", minutes: 3 },
        { id: "RCT-022", do: "The other controller works and reports no fault; every host has a path to it.", caution: "If the other one is not well, stop: pulling this one takes the data away.", expect: "Works without fault", sign: "two", minutes: 5 },
        { id: "RCT-023", do: "No drive has failed and none is rebuilding.", expect: "Fully redundant", minutes: 3 },
        { id: "RCT-024", do: "Export the configuration, the fault log and the addresses of every port. Enter where.", record: "text", minutes: 10 },
        { id: "RCT-025", do: "Is unsaved data held in the failing controller's cache? Enter what the maker's guide and the page say.", caution: "Data in a cache without power lasts only as long as its battery.", record: "text", minutes: 5 },
      ],
    },
    {
      section: "New part",
      forEach: "array",
      steps: [
        { id: "RCT-030", do: "Part number, memory and cards of the new controller are those of the old one.", expect: "Same", record: "choice:Same|Different", minutes: 5 },
        { id: "RCT-031", do: "Enter the serial number of the new controller.", record: "serial", minutes: 2 },
        { id: "RCT-032", do: "Hours it has lain in the room in its bag.", caution: "Cold equipment draws water and shorts.", record: "number", unit: "h", minutes: 1 },
      ],
    },
    {
      section: "Exchange",
      forEach: "array",
      steps: [
        { id: "RCT-040", do: "Rack stabilised; strap on the bonding point of rack {{Rack}}.", caution: "A discharge destroys the new board before it has run.", expect: "Strap on", minutes: 2 },
        { id: "RCT-041", do: "Take controller {{Subject}} out of work on the page, and wait until the other carries everything.", expect: "Other one carries all", holdPoint: true, minutes: 10 },
        { id: "RCT-042", do: "Label every cable on controller {{Subject}}, photograph them, and unplug them.", expect: "All labelled", minutes: 5 },
        { id: "RCT-043", do: "Both people point at the controller to be pulled and read its letter or number aloud. Then pull it, straight, and lay it on the mat.", caution: "The wrong one takes the data away.", expect: "{{Subject}}", record: "text", sign: "two", holdPoint: true, minutes: 5 },
        { id: "RCT-044", do: "Look into the slot with a lamp: no bent pins, nothing loose.", expect: "Clean and straight", minutes: 2 },
        { id: "RCT-045", do: "Push the new controller home, close its latch, tug it, and plug the cables in by their labels.", expect: "Does not move, all cables in", minutes: 5 },
        { id: "RCT-046", do: "Wait until it has started as the maker's guide says. Enter the minutes.", record: "number", unit: "min", minutes: 20 },
        { id: "RCT-047", do: "Enter the firmware it runs now; both controllers the same.", expect: "{{Firmware}}", record: "text", minutes: 10 },
      ],
    },
    {
      section: "Ports of the new controller",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: "RCT-050", do: "Read the address of the port back.", expect: "{{Address}}", record: "address", minutes: 2 },
        { id: "RCT-051", do: "Read its largest packet (MTU) back.", expect: "{{Port MTU}}", record: "number", unit: "bytes", minutes: 1 },
        { id: "RCT-052", do: "Ping over it with exactly this many bytes, fragmentation forbidden. Ping every host in its network; enter the largest size that passed to all.", expect: "{{Ping size}}", record: "number", unit: "bytes", minutes: 2 },
        { id: "RCT-053", do: "Ping with one byte more, fragmentation forbidden: it must fail.", expect: "Fails", record: "choice:Fails|Passes", minutes: 1 },
      ],
    },
    {
      section: "Both carry again",
      forEach: "array",
      steps: [
        { id: "RCT-060", do: "See that one works and one waits, or that both work, as before the fault.", record: "text", minutes: 3 },
        { id: "RCT-061", do: "Enter the smallest number of paths that any host shows. By the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", minutes: 5 },
        { id: "RCT-062", do: "In the agreed window, hand the work over to the new controller and back from the page. Enter the seconds the load stood still.", expect: "{{Longest standstill s}}", bound: "at most", caution: "Live data: only with both controllers well, and only if the site's contact agrees.", record: "number", unit: "s", minutes: 10 },
        { id: "RCT-063", do: "Administrative accounts on the new controller: none left as delivered; secrets in the vault.", expect: "All changed", minutes: 5 },
        { id: "RCT-064", do: "Clock right, test alert sent and received.", expect: "Both", minutes: 5 },
        { id: "RCT-065", do: "No fault is left on {{Array}}.", expect: "No fault", minutes: 2 },
      ],
    },
    {
      section: "Handed back",
      forEach: "site",
      steps: [
        { id: "RCT-070", do: "Configuration exported again. Enter where.", record: "text", minutes: 5 },
        { id: "RCT-071", do: "The old controller may hold data or secrets: pack it, label it and enter where it goes.", record: "text", minutes: 5 },
        { id: "RCT-072", do: "The site accepts. Witness: the site's contact.", expect: "Accepted", record: "choice:Accepted|Refused", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    leavingSite("Left safe", ["RCT-901", "RCT-902", "RCT-903", "RCT-904"], "Tell the site's contact that both controllers carry the load again, or which one is not in use."),
  ],
};
