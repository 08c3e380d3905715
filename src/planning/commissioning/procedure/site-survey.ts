import type { ProcedureDraft } from "./draft";
import { fileGivenBack } from "./parts/leaving-site";

/**
 * The visit before anything is ordered or placed: what the way in, the room, racks, feeds, switches and networks really are.
 *
 * What a step expects is what the plan says so far, which may be nothing: what was found goes back into the plan once the job is closed.
 */
export const siteSurvey: ProcedureDraft = {
  procedure: "Site survey",
  sections: [
    {
      section: "Before you go in",
      visit: "Survey",
      forEach: "site",
      steps: [
        { id: "SUR-010", do: "Meet the site's contact and agree what you may open, photograph and measure.", expect: "Agreed with {{Contact}}", minutes: 10 },
        { id: "SUR-011", do: "Ask for the room's own safety rules, its emergency power-off and its fire system.", caution: "A gas fire system can kill: leave the room at the first signal.", expect: "Shown", sign: "none", minutes: 5 },
        { id: "SUR-012", do: "A survey looks and measures. Nothing is plugged, unplugged, switched or lifted.", caution: "Electric shock: covers of boards, strips and supplies stay closed; readings come from displays or from a licensed electrician.", expect: "Understood", sign: "none", minutes: 1 },
      ],
    },
    {
      section: "Way in",
      forEach: "site",
      shownAs: "grid",
      steps: [
        { id: "SUR-020", do: "Walk the way from the kerb to the room with a tape. Enter the smallest door, width × height.", record: "text", unit: "mm", minutes: 15 },
        { id: "SUR-021", do: "Enter the load that the lift carries and the depth of its car, or that there is none.", record: "text", minutes: 5 },
        { id: "SUR-022", do: "Count steps, ramps and thresholds. Enter how a loaded trolley gets past them.", record: "text", minutes: 5 },
        { id: "SUR-026", do: "Agree days and hours, parking, badges and who opens. Enter what was agreed.", record: "text", minutes: 5 },
      ],
    },
    {
      section: "Day of the work",
      forEach: "site",
      shownAs: "grid",
      steps: [
        { id: "SUR-024", do: "Find a place in or near the room where closed boxes can stand and warm up.", record: "text", minutes: 3 },
        { id: "SUR-025", do: "Ask whether a lift table can be had on the day, and for what load.", record: "text", unit: "kg", minutes: 3 },
        { id: "SUR-034", do: "Measure the noise and the light, and say if work at night is possible.", record: "text", required: false, minutes: 3 },
      ],
    },
    {
      section: "Room",
      forEach: "site",
      steps: [
        { id: "SUR-030", do: "Name the room.", expect: "{{Room}}", record: "text", sign: "none", minutes: 1 },
        { id: "SUR-031", do: "Read temperature and humidity in front of the racks.", record: "text", sign: "none", minutes: 3 },
        { id: "SUR-032", do: "Ask the building's people for the load that the floor carries, in writing.", caution: "A full rack on a weak floor falls through it. A figure from memory is none.", record: "text", minutes: 5 },
        { id: "SUR-033", do: "Look for water above and beside the racks: pipes, drains, cooling units, windows.", record: "text", sign: "none", minutes: 5 },
      ],
    },
    {
      section: "Racks measured",
      forEach: "rack",
      shownAs: "grid",
      steps: [
        { id: "SUR-140", do: "Count the units of the rack.", expect: "{{Rack.Units}}", record: "number", unit: "U", minutes: 3 },
        { id: "SUR-141", do: "From which end are its units numbered?", expect: "{{Numbered from}}", record: "choice:bottom|top", minutes: 1 },
        { id: "SUR-142", do: "Measure from the front rails to the inside of the rear door: as much as an array with its cables may take.", expect: "{{Rack.Depth mm}}", record: "number", unit: "mm", minutes: 4 },
        { id: "SUR-143", do: "Read on its plate how much it carries.", expect: "{{Limit kg}}", record: "number", unit: "kg", minutes: 3 },
      ],
    },
    {
      section: "Racks looked at",
      forEach: "rack",
      shownAs: "grid",
      steps: [
        { id: "SUR-144", do: "Which units are free, front and back, with no cable arm in the way?", record: "text", minutes: 5 },
        { id: "SUR-145", do: "Which holes have the rails?", record: "choice:square|round|threaded", minutes: 2 },
        { id: "SUR-146", do: "Is there an earth bond from the rack to the building, and a bonding point for the strap?", expect: "Both", record: "choice:Both|Bond only|Point only|None", minutes: 3 },
        { id: "SUR-147", do: "Enter what already hangs in the rack, from the type plates.", record: "number", unit: "kg", minutes: 10 },
      ],
    },
    {
      section: "Racks fixed and cooled",
      forEach: "rack",
      steps: [
        { id: "SUR-148", do: "Is rack {{Rack}} bolted down or bayed, and has it stabilisers?", caution: "A rack that is not fixed tips when an array is pulled out.", record: "text", sign: "none", minutes: 2 },
        { id: "SUR-149", do: "Ask how much heat the room takes away at rack {{Rack}}, and who says so.", expect: "{{Cooling W}}", record: "number", unit: "W", sign: "none", minutes: 4 },
      ],
    },
    {
      section: "Feeds traced",
      forEach: "feed",
      steps: [
        { id: "SUR-150", do: "Find feed {{Feed}} at the racks and trace it to its source with the site's electrician. Enter the source.", caution: "Two strips on one source die together. Only a licensed electrician opens a board.", expect: "{{Source}}", record: "text", minutes: 10 },
      ],
    },
    {
      section: "Feeds read",
      forEach: "feed",
      shownAs: "grid",
      steps: [
        { id: "SUR-151", do: "Volts, as the electrician reads them to you; between lines where there are three phases.", expect: "{{Volts}}", record: "number", unit: "V", minutes: 3 },
        { id: "SUR-152", do: "The rating on its breaker, as the electrician reads it to you.", expect: "{{Breaker A}}", record: "number", unit: "A", minutes: 3 },
        { id: "SUR-153", do: "Read what it carries at the busiest hour you can.", record: "number", unit: "A", minutes: 5 },
        { id: "SUR-154", do: "Count its free outlets at the racks, by type.", record: "text", minutes: 4 },
      ],
    },
    {
      section: "Switches",
      forEach: "switch",
      shownAs: "grid",
      steps: [
        { id: "SUR-160", do: "Which of its ports are free for the arrays, and which are kept for uplinks?", record: "text", minutes: 5 },
        { id: "SUR-161", do: "Which plugs and speeds do they take?", record: "text", minutes: 3 },
        { id: "SUR-162", do: "Ask how large a frame it forwards: header, tag and check sequence included.", expect: "{{Frame bytes}}", record: "number", unit: "bytes", minutes: 3 },
        { id: "SUR-163", do: "Measure the way of the cable from the racks along the tray, slack included.", record: "number", unit: "m", minutes: 5 },
      ],
    },
    {
      section: "Networks",
      forEach: "network",
      shownAs: "grid",
      steps: [
        { id: "SUR-165", do: "Go through the network with the site's network people: its prefix.", expect: "{{Prefix}}", record: "text", minutes: 3 },
        { id: "SUR-166", do: "Its gateway, or none.", expect: "{{Gateway}}", record: "text", minutes: 1 },
        { id: "SUR-167", do: "Its VLAN.", expect: "{{VLAN}}", record: "number", minutes: 1 },
        { id: "SUR-168", do: "Its largest packet (MTU).", expect: "{{MTU}}", record: "number", unit: "bytes", minutes: 1 },
      ],
    },
    {
      section: "Servers and alerts",
      forEach: "site",
      shownAs: "grid",
      steps: [
        { id: "SUR-171", do: "Time servers that the arrays may use.", expect: "{{Time servers}}", record: "text", minutes: 2 },
        { id: "SUR-172", do: "Name servers that they may use.", expect: "{{Name servers}}", record: "text", minutes: 2 },
        { id: "SUR-173", do: "Where do alerts go?", expect: "{{Alerts to}}", record: "text", minutes: 2 },
        { id: "SUR-174", do: "Who agreed to networks and addresses?", record: "text", minutes: 3 },
      ],
    },
    {
      section: "People and papers",
      forEach: "site",
      steps: [
        { id: "SUR-073", do: "Enter who may stop the work on the day, and whom to call when something goes wrong at night.", record: "text", sign: "none", minutes: 5 },
        { id: "SUR-074", do: "Photograph the way in, the rack front and back, strips and switches, where you were allowed to. Enter where the pictures are kept.", record: "text", sign: "none", minutes: 10 },
        { id: "SUR-075", do: "Read what differs from the plan back to the contact. Witness: the contact.", expect: "Agreed", sign: "two", minutes: 10 },
      ],
    },
    { section: "File given back", forEach: "site", steps: [fileGivenBack("SUR-904")] },
  ],
};
