import type { ProcedureDraft } from "./draft";
import { leavingSite } from "./parts/leaving-site";

/** Steps whose records become rows of Readings once their job is closed, and what each reads. */
export const readingSteps: Readonly<Partial<Record<string, "used" | "capacity">>> = { "YCK-036": "capacity", "YCK-037": "used" };

/** The yearly visit to a system in use: looking, measuring and comparing, with nothing taken apart. */
export const yearlyCheck: ProcedureDraft = {
  procedure: "Yearly check",
  sections: [
    {
      section: "Arrival",
      visit: "Check",
      forEach: "site",
      steps: [
        { id: "YCK-010", do: "Name who leads the visit, and say that anyone may stop it at any time.", record: "text", minutes: 2 },
        { id: "YCK-011", do: "Ask the site's contact what has been changed, moved or gone wrong since last year.", record: "text", minutes: 15 },
        { id: "YCK-012", do: "Have the project manager check the seal of the last closed tab of this site. Enter the code on its signed page and whether the seal holds, or that no tab was closed yet.", record: "text", minutes: 5 },
        { id: "YCK-013", do: "This system holds live data: nothing is pulled, switched or restarted unless a step says so and the contact agrees.", caution: "A test of redundancy on a system that has already lost some takes the data away.", expect: "Understood", minutes: 1 },
      ],
    },
    {
      section: "Looking",
      forEach: "array",
      steps: [
        { id: "YCK-020", do: "Read the serial number of {{Array}} on its chassis.", expect: "{{Array.Serial}}", record: "serial", minutes: 2 },
        { id: "YCK-021", do: "Still at unit {{Bottom unit}} of rack {{Rack}}? Enter the unit lowest down that it fills.", expect: "{{Bottom unit}}", record: "number", minutes: 1 },
        { id: "YCK-022", do: "Indicators, fans, smell, noise and heat: as the maker's guide shows them.", expect: "As the guide shows", minutes: 4 },
        { id: "YCK-023", do: "Dust in front, cables behind: nothing blocks the air, nothing hangs, labels readable.", caution: "Do not put hands or tools behind running fans; leave cords and plugs alone.", expect: "Clear", minutes: 5 },
        { id: "YCK-024", do: "Rack stabilised, earth bonds tight to the eye, bonding point there.", caution: "A loose earth bond is for the site's electrician.", expect: "All there", minutes: 3 },
        { id: "YCK-025", do: "Each cord still on its planned feed? Enter the feeds, in the order of the supplies.", expect: "{{Feeds}}", record: "text", minutes: 3 },
        { id: "YCK-026", do: "Read the load of its feeds on their displays: none is above the worst of the plan.", expect: "{{Feed load}}", minutes: 5 },
      ],
    },
    {
      section: "Asking the array",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "YCK-030", do: "Fully redundant, no fault, no drive rebuilding.", expect: "Fully redundant", minutes: 3 },
        { id: "YCK-031", do: "Count the drives that it shows, spares included.", expect: "{{Drives}}", record: "number", minutes: 2 },
        { id: "YCK-032", do: "Count the hot spares that it shows.", expect: "{{Spares}}", record: "number", minutes: 2 },
        { id: "YCK-038", do: "Enter the firmware of the controllers.", expect: "{{Firmware}}", record: "text", minutes: 2 },
      ],
    },
    {
      section: "Wear",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "YCK-033", do: "Drives replaced since last year. Enter bays and serial numbers, or none, for the table Drives of the plan.", record: "text", minutes: 5 },
        { id: "YCK-034", do: "Unreadable sectors, resets and slow drives in the log: enter the count, and the bays in the note.", record: "number", minutes: 10 },
        { id: "YCK-035", do: "Enter the day of the last full read of all drives that ended without errors.", record: "date", minutes: 3 },
        { id: "YCK-039", do: "Enter the day by which the maker's guide wants the cache batteries exchanged.", record: "date", minutes: 3 },
      ],
    },
    {
      section: "Space",
      forEach: "array",
      steps: [
        { id: "YCK-036", do: "Enter the usable capacity that {{Array}} shows, and its unit.", expect: "{{Usable before reserve}}", record: "size", unit: "TB", tolerancePercent: 3, sign: "none", minutes: 3 },
        { id: "YCK-037", do: "Enter the space in use on {{Array}}, and its unit.", record: "size", unit: "TB", sign: "none", minutes: 3 },
      ],
    },
    {
      section: "Care",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "YCK-040", do: "Enter the day on which warranty or support ends, from the contract.", expect: "{{Warranty until}}", record: "date", minutes: 2 },
        { id: "YCK-041", do: "Enter by how many seconds its clock differs from a time server.", expect: "0", record: "number", unit: "s", tolerance: 1, minutes: 3 },
        { id: "YCK-042", do: "Send a test alert. Enter who received it and when.", record: "text", minutes: 5 },
        { id: "YCK-043", do: "Administrative accounts: people who have left are gone, passwords are as old as the site's rules allow.", expect: "In order", minutes: 10 },
      ],
    },
    {
      section: "Ports",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: "YCK-050", when: "Network.Kind <> other", do: "Read the address of the port.", expect: "{{Address}}", record: "address", minutes: 1 },
        { id: "YCK-051", do: "Enter the errors counted on the port and, read to you where need be, on its switch port since the last reset. Up to ten are common practice.", expect: "10", record: "number", bound: "at most", minutes: 2 },
      ],
    },
    {
      section: "Full packets",
      forEach: "host port",
      when: "Network.Kind <> other",
      shownAs: "grid",
      steps: [
        { id: "YCK-054", do: "From this port of the host, bound as the source, ping each of these, fragmentation forbidden, with as many bytes as YCK-053 expects: every one answers.", expect: "{{Ping targets}}", minutes: 2 },
        { id: "YCK-053", do: "Enter the largest size that passed to all of them.", expect: "{{Ping size}}", record: "number", unit: "bytes", minutes: 1 },
      ],
    },
    {
      section: "Hosts and cluster",
      forEach: "array",
      steps: [
        { id: "YCK-060", do: "Enter the fewest paths to {{Array}} that any host shows. By the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", minutes: 10 },
        { id: "YCK-061", when: "Array.Cluster <>", do: "Open the management page of its cluster. Enter the address in the browser's bar.", expect: "{{Shared address}}", record: "address", minutes: 2 },
      ],
    },
    {
      section: "Redundancy tried",
      forEach: "array",
      when: "Controller count = 2",
      steps: [
        { id: "YCK-070", do: "Only if everything above is well, the cache is mirrored, every host has paths on both controllers and the contact agrees: hand the work over to the other controller and back, from the page. Enter the seconds the load stood still.", expect: "{{Longest standstill s}}", bound: "at most", caution: "Live data: a tested backup first; stop at the first thing that is not as expected.", record: "number", unit: "s", sign: "two", required: false, holdPoint: true, minutes: 15 },
      ],
    },
    {
      section: "Backup and papers",
      forEach: "site",
      steps: [
        { id: "YCK-080", do: "Something was read back from backup while you watched. Enter what.", record: "text", minutes: 15 },
        { id: "YCK-081", do: "Export every configuration and store it off the arrays. Enter where.", record: "text", minutes: 10 },
        { id: "YCK-082", do: "Spare drives on site: count them, and read the date on the oldest.", record: "text", minutes: 5 },
        { id: "YCK-083", do: "Contacts by day and by night still right: {{Contact}}.", expect: "Right", minutes: 3 },
        { id: "YCK-084", do: "Go through findings and what will be full, out of warranty or worn within a year. Witness: the site's contact.", expect: "Gone through", sign: "two", minutes: 20 },
      ],
    },
    leavingSite("Left safe", "YCK-94", "Tell the site's contact that the work is over, what is in use as before and what is not in use."),
  ],
};
