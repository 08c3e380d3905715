import type { ProcedureDraft } from "./draft";
import { fileGivenBack } from "./parts/leaving-site";

/** What is done in the workshop before transport: put together, powered, burnt in, noted down, and made ready for the road. */
export const workshopPreparation: ProcedureDraft = {
  procedure: "Workshop preparation",
  sections: [
    {
      section: "Bench",
      visit: "Workshop",
      forEach: "site",
      steps: [
        { id: "WSP-010", do: "Say who leads and that anyone may stop the work.", record: "text", sign: "none", minutes: 2 },
        { id: "WSP-011", do: "Test the wrist straps, the mat and its earth lead.", caution: "A discharge too small to be felt destroys drives and boards.", expect: "All pass", sign: "none", minutes: 4 },
        { id: "WSP-012", do: "See that the bench carries the array and that its two feeds are tested and protected.", caution: "Electric shock: bench wiring is for a licensed electrician; cords are looked at before every use.", expect: "Tested", minutes: 4 },
      ],
    },
    {
      section: "Parts",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "WSP-020", do: "Count the parts against the order.", expect: "Complete", record: "choice:Complete|Incomplete", minutes: 10 },
        { id: "WSP-021", do: "Read the serial number on the chassis.", expect: "{{Array.Serial}}", record: "serial", minutes: 2 },
        { id: "WSP-022", do: "Enter the model on the type plate, and compare it with the order.", expect: "{{Array.Model}}", record: "text", minutes: 2 },
      ],
    },
    {
      section: "Put together",
      forEach: "array",
      steps: [
        { id: "WSP-030", do: "Fit controllers, memory, cards and supplies of {{Array}} as ordered. No power yet.", caution: "Strap on; cords out. Boards cut: hold them by their edges.", expect: "As ordered", minutes: 30 },
        { id: "WSP-025", do: "Weigh the chassis of {{Array}} as it will be lifted on site: drives out, all else in.", caution: "Lifting injures backs: two people or the lift table, as the plan says. If it weighs more, the plan is mended before anybody lifts it.", expect: "{{Lift kg}}", record: "number", unit: "kg", bound: "at most", when: "Drives travel <> in", sign: "none", minutes: 5 },
      ],
    },
    {
      section: "Drives by bay",
      forEach: "drive",
      shownAs: "grid",
      steps: [
        { id: "WSP-041", do: "Push a drive into the bay that stands under For and scan its serial number. It stays this bay's drive for good: once this job is closed the numbers go into Drives of the plan, and the site expects them.", expect: "{{Drive.Serial}}", record: "serial", minutes: 1 },
      ],
    },
    {
      section: "Power and burn-in",
      forEach: "array",
      steps: [
        { id: "WSP-050", do: "Close the cover of {{Array}}. Strap off, step clear of the fans: plug its cords in, and switch on where it has switches.", caution: "Fans and live parts: the cover stays closed while there is power.", expect: "Supplies run", holdPoint: true, minutes: 5 },
        { id: "WSP-053", do: "Bring controllers, drives and supplies to the firmware agreed for this customer; if none stands here, ask which. Enter the version of the controllers.", expect: "{{Firmware}}", record: "text", holdPoint: true, minutes: 40 },
        { id: "WSP-055", do: "Run the burn-in of {{Array}}: every block written and read, all drives at once. 48 hours are common practice; large drives take longer. Enter the hours it ran.", caution: "It empties every drive: none may hold anybody's data.", expect: "48", record: "number", unit: "h", bound: "at least", minutes: 20 },
        { id: "WSP-057", when: "Supplies <> 1", do: "Pull one cord of {{Array}}: it keeps working. Plug it back, wait until that supply is well again, and only then pull the other.", caution: "Hold the plug by its body; dry hands; one hand only.", expect: "Works on either", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Measured",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "WSP-051", do: "Enter the power that it draws once it has settled.", expect: "{{Array.Watts}}", record: "number", unit: "W", bound: "at most", minutes: 5 },
        { id: "WSP-052", do: "Count the drives that it shows.", expect: "{{Drives}}", record: "number", minutes: 2 },
        { id: "WSP-056", do: "Exchange every drive that was slow, noisy or reported errors, scan the new one above and burn it in. Count those still to be exchanged.", expect: "0", record: "number", minutes: 10 },
        { id: "WSP-058", do: "Read the fault log: empty, or explained line by line.", expect: "Empty", record: "choice:Empty|Explained|Open", minutes: 10 },
      ],
    },
    {
      section: "Versions",
      forEach: "site",
      steps: [
        { id: "WSP-054", do: "Note the firmware of drives and supplies, and where the files came from.", record: "text", sign: "none", minutes: 10 },
      ],
    },
    {
      section: "Ports tried",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: "WSP-060", do: "Plug a tested cable into the port. Enter the speed that it came up with.", record: "text", minutes: 2 },
      ],
    },
    {
      section: "Ready for the road",
      forEach: "array",
      steps: [
        { id: "WSP-070", do: "Wipe the test layout of {{Array}}, its addresses and test accounts.", expect: "As delivered", sign: "none", minutes: 10 },
        { id: "WSP-071", do: "Shut {{Array}} down in the orderly way, switch off and take the cords out.", caution: "Wait until fans and drives stand still before a drive is pulled.", expect: "Off, cords out", minutes: 5 },
        { id: "WSP-072", do: "Strap on. Take the drives of {{Array}} out, label each with array and bay, and pack them in their cushions in the order of the bays. Count them.", caution: "Drives left in the chassis break on the road and make it too heavy to lift.", expect: "{{Drives}}", record: "number", when: "Drives travel <> in", minutes: 20 },
        { id: "WSP-076", do: "Leave the drives in {{Array}} and secure them and the chassis for the road as the maker's guide says. Count the drives.", caution: "With its drives in, the array is lifted as heavy as it is ({{Weight kg}} kg): by {{Lift by}}.", expect: "{{Drives}}", record: "number", when: "Drives travel = in", minutes: 10 },
      ],
    },
    {
      section: "Packed",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: "WSP-073", do: "Label chassis, covers, cords and rails with the names of array and rack.", expect: "{{Array}}, rack {{Rack}}", minutes: 10 },
        { id: "WSP-074", do: "Pack, fix shock and tilt marks, photograph them, and enter the number of boxes.", record: "number", minutes: 15 },
        { id: "WSP-075", do: "Write the packing list and fix a copy to the outside of the first box: on site it is read before a box is opened.", expect: "List on box 1", minutes: 10 },
      ],
    },
    {
      section: "Released",
      forEach: "site",
      steps: [
        { id: "WSP-080", do: "A second person compares boxes, list and this tab.", expect: "Agree", sign: "two", minutes: 10 },
      ],
    },
    { section: "File given back", forEach: "site", steps: [fileGivenBack("WSP-904")] },
  ],
};
