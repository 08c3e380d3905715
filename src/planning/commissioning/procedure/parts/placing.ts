import type { SectionDraft } from "../draft";

/** Rack, rails, lift, drives and cables: everything before power. */
export function placing(prefix: string): readonly SectionDraft[] {
  return [
    {
      section: "Racks",
      forEach: "rack",
      steps: [
        { id: `${prefix}-330`, do: "The rack is bolted down or bayed, its stabilisers out, bonded to the building's earth. Clip your strap to its bonding point.", caution: "A rack tips when weight is pulled out: fix it first, load it bottom up, pull out one device at a time. Bond loose or missing: a fault makes it live; stop, call an electrician.", expect: "Fixed, bonded", sign: "none", minutes: 8 },
      ],
    },
    {
      section: "Before lifting",
      forEach: "site",
      steps: [
        { id: `${prefix}-334`, do: "Agree who speaks, and on which word all lift and lower. Clear the way to the rack. Of arrays and shelves, what stands lowest goes in first.", caution: "Lifting injures backs and crushes fingers between chassis and rail. Hands under the chassis, never in the rail; back straight; never below a raised load. If it sticks, lower it.", expect: "Agreed", sign: "none", minutes: 3 },
      ],
    },
    {
      section: "Rails and lift",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-321`, do: "Unpack it, and read the serial number on the chassis.", expect: "{{Array.Serial}}", record: "serial", minutes: 2 },
        { id: `${prefix}-335`, do: "The units that the next step names, lowest down first, are free, front and back, and the doors will close. Fix the rails, level, every catch and screw in place. Enter the unit lowest down.", expect: "{{Bottom unit}}", record: "number", minutes: 18 },
        { id: `${prefix}-336`, when: "Drives travel <> in", do: "Lift it, drives out, as the row says; not planned: by the lift table. Slide it home, fix it with every fastener supplied, and bond it where it has an earth stud.", expect: "{{Rack}}, {{Bottom unit}}–{{Top unit}}, {{Lift kg}} kg by {{Lift by}}; bonded", sign: "two", minutes: 20 },
        { id: `${prefix}-337`, when: "Drives travel = in", do: "Lift it as heavy as it is, its drives in, as the row says; not planned: by the lift table. A knock breaks drives. Slide it home, fix it with every fastener supplied, and bond it where it has an earth stud.", expect: "{{Rack}}, {{Bottom unit}}–{{Top unit}}, {{Weight kg}} kg by {{Lift by}}; bonded", sign: "two", minutes: 20 },
      ],
    },
    {
      section: "Shelves",
      forEach: "shelf",
      steps: [
        { id: `${prefix}-351`, do: "Shelf {{Shelf}} of {{Array}} onto its rails at unit {{Shelf.Bottom unit}} of rack {{Shelf.Rack}} ({{Shelf.Weight kg}} kg with its drives in), fixed and bonded, its drives seated. Enter its serial number.", caution: "Lifting injures backs and crushes fingers: two people, or the lift table, by its weight plate.", expect: "{{Shelf.Serial}}", record: "serial", sign: "two", minutes: 30 },
        { id: `${prefix}-352`, do: "Cable shelf {{Shelf}} to every controller of {{Array}} as the maker's guide draws it, and label both ends.", expect: "Every controller, both ends labelled", sign: "none", minutes: 8 },
      ],
    },
    {
      section: "Everything seated",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-340`, when: "Drives travel <> in", do: "Strap on. Push each drive home in the bay on its label, or the next free one; a blank into every empty bay. Run a finger along the front: nothing stands out. Count the drives, shelves too.", expect: "{{Drives}}", record: "number", minutes: 20 },
        { id: `${prefix}-341`, when: "Drives travel = in", do: "Run a finger along the front: no drive stands out, every latch is closed, a blank in every empty bay. No drive is pulled. Count the drives, shelves too.", expect: "{{Drives}}", record: "number", minutes: 4 },
        { id: `${prefix}-342`, do: "Strap on. Pull each controller and supply without opening its latch: it must stay put. Take anything loose, which shorts at power on, from behind the front door; lock it.", expect: "Tight, locked", minutes: 9 },
      ],
    },
    {
      section: "Network cables",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-345`, do: "Plug in and label both ends of the cable. No bend tighter than it allows, nothing across the drive bays. Enter switch and port as you read them there, written as in the row.", expect: "{{Switch end}}", record: "text", minutes: 6 },
      ],
    },
  ];
}

/** Feeds read, cords in, power on: shelves before the array they belong to. */
export function powering(prefix: string): readonly SectionDraft[] {
  return [
    {
      section: "Feeds",
      forEach: "feed",
      steps: [
        { id: `${prefix}-350`, do: "Enter what its power strip shows the feed to carry. The plan adds up to {{Planned load}}; if what you read with what does not run yet passes the limit, stop and ask.", caution: "An overloaded feed takes everything on it down. These are planning figures: the local code and a licensed electrician decide.", record: "number", unit: "A", sign: "none", minutes: 4 },
      ],
    },
    {
      section: "Power to the shelves",
      forEach: "shelf",
      steps: [
        { id: `${prefix}-353`, do: "A shelf gets power before its array. Strap off, step clear of the fans: cords of shelf {{Shelf}} into {{Shelf.Feeds}}, the first supply into the first; a supply too many gets no cord. Lock and label both ends; switches on where it has some. Enter the feeds as you read them.", caution: shock, expect: "{{Shelf.Feeds}}", record: "text", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Power",
      forEach: "array",
      steps: [
        { id: `${prefix}-355`, when: "Supply switch = yes", do: "Turn every supply switch of the array off. Cords into {{Feeds}}, the first supply into the first; a supply too many gets no cord. Lock and label both ends. Enter the feeds as you read them.", caution: shock, expect: "{{Feeds}}", record: "text", minutes: 6 },
        { id: `${prefix}-356`, when: "Supply switch = yes", do: "Connect the serial console, line {{Console line}}, and keep its log. Strap off, step clear of the fans, and turn the supplies of the array on, first feed then second.", caution: smoke, expect: "Supplies run", holdPoint: true, minutes: 2 },
        { id: `${prefix}-357`, when: "Supply switch <> yes", do: "The array starts as soon as a cord is in. Connect the serial console, line {{Console line}}, and keep its log. Strap off, step clear of the fans: cords into {{Feeds}}, the first supply into the first; a supply too many gets no cord. Lock and label both ends. Enter the feeds as you read them.", caution: `${shock} ${smoke}`, expect: "{{Feeds}}", record: "text", holdPoint: true, minutes: 7 },
      ],
    },
  ];
}

const shock = "Electric shock: look at each cord and plug for damage; never force a plug; hold it by its body. Two cords on one feed look the same until that feed fails.";
const smoke = "Smoke, a smell or a loud bang: do not reach in. Use the room's emergency power-off and call for help.";
