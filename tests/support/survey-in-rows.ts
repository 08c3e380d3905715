import { procedureRows, stepRows, type ProcedureDraft } from "../../src/planning/commissioning/procedure/draft";
import { columnsOf, type TableKey, type TableRow } from "../../src/planning/plan/schema";
import { fileGivenBack } from "../../src/planning/commissioning/procedure/parts/leaving-site";

/** A survey of which every step stands in a row of its own, as a firm may write one. */
const survey: ProcedureDraft = {
  procedure: "Site survey",
  sections: [
    {
      section: "Before you go in",
      visit: "Survey",
      forEach: "site",
      steps: [
        { id: "SUR-010", do: "Meet the site's contact and agree what you may open, photograph and measure.", expect: "Agreed with {{Contact}}", minutes: 10 },
        { id: "SUR-011", do: "Ask for the room's own safety rules, its emergency power-off and its fire system.", caution: "A gas fire system can kill: leave the room at the first signal.", expect: "Shown", minutes: 5 },
        { id: "SUR-012", do: "A survey looks and measures. Nothing is plugged, unplugged, switched or lifted.", caution: "Electric shock: covers of boards, strips and supplies stay closed; readings come from displays or from a licensed electrician.", expect: "Understood", minutes: 1 },
      ],
    },
    {
      section: "Way in",
      forEach: "site",
      steps: [
        { id: "SUR-020", do: "Walk the way from the kerb to the room with a tape. Enter the smallest door, width × height.", record: "text", unit: "mm", minutes: 15 },
        { id: "SUR-021", do: "Enter the load the lift carries and the depth of its car, or that there is none.", record: "text", minutes: 5 },
        { id: "SUR-022", do: "Count steps, ramps and thresholds. Enter how a loaded trolley gets past them.", record: "text", minutes: 5 },
        { id: "SUR-023", do: "Agree days and hours, parking, badges and who opens. The plan says: {{Access and lift}}", record: "text", minutes: 5 },
        { id: "SUR-024", do: "Find a place in or near the room where closed boxes can stand and warm up.", record: "text", minutes: 3 },
        { id: "SUR-025", do: "Ask whether a lift table can be had on the day, and for what load.", record: "text", unit: "kg", minutes: 3 },
      ],
    },
    {
      section: "Room",
      forEach: "site",
      steps: [
        { id: "SUR-030", do: "Name the room.", expect: "{{Room}}", record: "text", minutes: 1 },
        { id: "SUR-031", do: "Read temperature and humidity in front of the racks.", record: "text", minutes: 3 },
        { id: "SUR-032", do: "Ask the building's people for the load the floor carries, in writing.", caution: "A full rack on a weak floor falls through it. A figure from memory is none.", record: "text", minutes: 5 },
        { id: "SUR-033", do: "Look for water above and beside the racks: pipes, drains, cooling units, windows.", record: "text", minutes: 5 },
        { id: "SUR-034", do: "Measure the noise and the light, and say if work at night is possible.", record: "text", required: false, minutes: 3 },
      ],
    },
    {
      section: "Rack",
      forEach: "array",
      steps: [
        { id: "SUR-040", do: "Find rack {{Rack}} and count its units.", expect: "{{Rack.Units}}", record: "number", unit: "U", minutes: 4 },
        { id: "SUR-041", do: "From which end are the units numbered?", expect: "{{Numbered from}}", record: "choice:bottom|top", minutes: 1 },
        { id: "SUR-042", do: "Measure from the front rails to the inside of the rear door. {{Array}} needs {{Array.Depth mm}} mm with its cables.", expect: "{{Array.Depth mm}}", record: "number", unit: "mm", bound: "at least", minutes: 4 },
        { id: "SUR-043", do: "Units {{Bottom unit}} to {{Top unit}}: are they free, front and back, with no cable arm in the way?", expect: "Free", record: "choice:Free|Not free", minutes: 3 },
        { id: "SUR-044", do: "Enter the hole pattern of the rails: square, round or threaded.", record: "choice:square|round|threaded", minutes: 2 },
        { id: "SUR-045", do: "Is the rack bolted down or bayed, and has it stabilisers?", caution: "A rack that is not fixed tips when an array is pulled out.", record: "text", minutes: 2 },
        { id: "SUR-046", do: "Is there an earth bond from the rack to the building, and a bonding point for the strap?", expect: "Both", record: "choice:Both|Bond only|Point only|None", minutes: 3 },
        { id: "SUR-047", do: "Enter what already hangs in the rack, from the type plates, in kg.", record: "number", unit: "kg", minutes: 10 },
      ],
    },
    {
      section: "Power",
      forEach: "array",
      steps: [
        { id: "SUR-050", do: "Find feeds {{Feed A}} and {{Feed B}} at rack {{Rack}}. Trace both to their sources with the site's electrician. Enter the two sources.", caution: "Two strips on one source die together. Only a licensed electrician opens a board.", record: "text", minutes: 15 },
        { id: "SUR-051", do: "Read the load of both feeds at the busiest hour you can.", record: "text", unit: "A", minutes: 5 },
        { id: "SUR-052", do: "Enter the ratings on the breakers as the electrician reads them to you.", record: "text", unit: "A", minutes: 5 },
        { id: "SUR-053", do: "Count free outlets on each feed and enter their type. {{Array}} has cords for {{Plug}}.", record: "text", minutes: 4 },
        { id: "SUR-054", do: "Ask how much heat the room takes away here, and who says so. {{Array}} gives off {{Array.Watts}} W.", record: "text", unit: "W", minutes: 4 },
      ],
    },
    {
      section: "Network",
      forEach: "port",
      steps: [
        { id: "SUR-060", do: "Find switch {{Switch}}. Is port {{Switch port}} free for {{Array}} {{Controller}}{{Port}}, and which plug and speed does it take?", record: "text", minutes: 4 },
        { id: "SUR-061", do: "Measure the way of the cable along the tray, slack included.", record: "number", unit: "m", minutes: 4 },
      ],
    },
    {
      section: "Addresses and people",
      forEach: "site",
      steps: [
        { id: "SUR-070", do: "Go through the address table on this tab with the site's network people. Enter who agreed.", record: "text", minutes: 15 },
        { id: "SUR-071", do: "Confirm time servers {{Time servers}} and name servers {{Name servers}}.", expect: "Confirmed", minutes: 3 },
        { id: "SUR-072", do: "Confirm where alerts go: {{Alerts to}}.", expect: "Confirmed", minutes: 2 },
        { id: "SUR-073", do: "Enter who may stop the work on the day, and whom to call when something goes wrong at night.", record: "text", minutes: 5 },
        { id: "SUR-074", do: "Photograph the way in, the rack front and back, strips and switches, where you were allowed to. Enter where the pictures are kept.", record: "text", minutes: 10 },
        { id: "SUR-075", do: "Read what differs from the plan back to the contact. Witness: the contact.", expect: "Agreed", sign: "two", minutes: 10 },
      ],
    },
    { section: "File given back", forEach: "site", steps: [fileGivenBack("SUR-904")] },
  ],
};

/** Rows of the tables Procedures and Steps that describe it, in the order of their columns. */
export const surveyInRows = {
  procedures: linesOf("procedures", procedureRows(survey)),
  steps: linesOf("steps", stepRows(survey)),
};

function linesOf<Key extends TableKey>(key: Key, rows: readonly TableRow<Key>[]): string[][] {
  return rows.map((row) => columnsOf(key).map(([name]) => String((row as Readonly<Record<string, string | number | null | undefined>>)[name] ?? "")));
}
