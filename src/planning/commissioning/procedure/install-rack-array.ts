import type { ProcedureDraft } from "./draft";
import { leavingSite } from "./leaving-site";

/**
 * The installation of one or more rack arrays at a site, from the door to the signature.
 *
 * The failure tests stand after the first redundancy build, because an array that still builds does not survive them, and before
 * live data, because a test that finds a fault must not cost any.
 */
export const installRackArray: ProcedureDraft = {
  procedure: "Install a rack array",
  sections: [
    {
      section: "Authority and way back",
      visit: "Set-up",
      forEach: "site",
      steps: [
        { id: "INS-010", do: "Name who leads the work, and say to everybody present that anyone may stop it at any time.", record: "text", minutes: 3 },
        { id: "INS-011", do: "Agree with the site's contact until when the work can still be undone, and how: what is switched back, moved back or carried out again.", expect: "Way back agreed with {{Contact}}", sign: "two", minutes: 10 },
        { id: "INS-012", do: "Make sure that the site's own change window is open and that its operations desk knows of the work.", record: "text", minutes: 5 },
        { id: "INS-013", do: "Compare the build number on this tab with the one the project manager named today.", expect: "Same build", minutes: 2 },
      ],
    },
    {
      section: "Cautions",
      forEach: "site",
      steps: [
        { id: "INS-020", do: "Find the room's emergency power-off, fire exits and first-aid box, and the person to call.", expect: "Shown to everybody present", minutes: 5 },
        { id: "INS-021", do: "Agree who may work on mains supplies. This tab never asks for a breaker to be operated or a fixed connection to be opened.", caution: "Electric shock kills. Fixed wiring, distribution boards and breakers are for licensed electricians under the local code.", expect: "Licensed person named, or not needed today", minutes: 3 },
        { id: "INS-022", do: "Make sure that safety shoes and gloves are worn, sleeves and lanyards are tucked in, and no one lifts alone what the plan gives to two people or the lift table.", caution: "Crushed hands and backs: an array falls faster than anyone lets go. Clear the way before lifting, and never stand below a raised load.", minutes: 3 },
        { id: "INS-023", do: "Lay out an antistatic mat and test every wrist strap.", caution: "A discharge too small to be felt destroys drives and boards. Wear the strap whenever a bag or cover is open; take it off before working near live mains.", expect: "Every strap passes", minutes: 4 },
      ],
    },
    {
      section: "Delivery",
      forEach: "array",
      steps: [
        { id: "INS-030", do: "Count the boxes of {{Array}} against the packing list before signing the carrier's paper. Write down what is missing.", expect: "Complete", record: "choice:Complete|Incomplete", minutes: 10 },
        { id: "INS-031", do: "Read every shock and tilt mark and look for dents and wet corners. Photograph what you find and note it on the carrier's paper.", expect: "None tripped", record: "choice:None tripped|Tripped|No marks fitted", minutes: 5 },
        { id: "INS-032", do: "Let the closed boxes stand in the room for as long as the maker's guide asks. Enter the hours they stood.", expect: "{{Warm-up hours}}", bound: "at least", caution: "Cold equipment draws water: switched on too early it shorts. Do not open the bags before it has warmed up.", record: "number", unit: "h", minutes: 2 },
        { id: "INS-033", do: "Read the serial number on the chassis.", expect: "{{Array.Serial}}", record: "serial", minutes: 2 },
        { id: "INS-034", do: "Compare the model on the type plate with the order.", expect: "{{Array.Model}}", record: "text", minutes: 2 },
      ],
    },
    {
      section: "Rack and earth",
      forEach: "array",
      steps: [
        { id: "INS-040", do: "Rack {{Rack}}: make sure that it is bolted down or bayed and that its stabilisers are out.", caution: "A rack tips when weight is pulled out at its front. Fix it first, load it from the bottom up and pull out one device at a time.", expect: "Fixed and stabilised", minutes: 5 },
        { id: "INS-041", do: "Look for the earth bond between rack {{Rack}} and the building. If it is missing or loose, stop and call the site's electrician.", caution: "Without its earth bond a fault makes the frame live.", expect: "Bonded", minutes: 3 },
        { id: "INS-042", do: "Clip your wrist strap to the rack's bonding point.", expect: "Strap on", minutes: 1 },
        { id: "INS-043", do: "Make sure that units {{Bottom unit}} to {{Top unit}} of rack {{Rack}} are free, front and back, and that the doors close over {{Array.Depth mm}} mm.", expect: "Free", record: "choice:Free|Not free", minutes: 3 },
      ],
    },
    {
      section: "Rails and lift",
      forEach: "array",
      steps: [
        { id: "INS-050", do: "Fix the rails for {{Array}} in rack {{Rack}}. Enter the lowest unit they fill; the rack counts from the {{Numbered from}}.", expect: "{{Bottom unit}}", record: "number", minutes: 15 },
        { id: "INS-051", do: "Pull each rail: all catches closed, every screw of the maker's set in place, left and right at the same height.", expect: "Tight and level", minutes: 3 },
        { id: "INS-053", do: "Lift {{Array}} onto its rails by: {{Lift by}} ({{Lift kg}} kg as lifted). One person speaks, all lift and lower on the word; slide it home.", caution: "Lifting injures backs and crushes fingers between chassis and rail. Hands under the chassis, never in the rail; back straight; if it does not go in, lower it and start again.", when: "Drives travel <> in", expect: "On both rails, slides freely", sign: "two", minutes: 15 },
        { id: "INS-055", do: "Lift {{Array}} onto its rails with its drives in by: {{Lift by}} ({{Weight kg}} kg as lifted). One person speaks, all lift and lower on the word; slide it home.", caution: "With its drives in, a knock breaks drives. Lifting injures backs and crushes fingers between chassis and rail. Hands under the chassis, never in the rail; back straight; if it does not go in, lower it and start again.", when: "Drives travel = in", expect: "On both rails, slides freely", sign: "two", minutes: 15 },
        { id: "INS-054", do: "Fix the chassis to the rack with every fastener supplied, and bond it where it has its own earth stud.", expect: "Fixed and bonded", minutes: 5 },
      ],
    },
    {
      section: "Drives by bay",
      forEach: "drive",
      when: "Drives travel <> in",
      shownAs: "grid",
      steps: [
        { id: "INS-060", do: "Push the drive into the bay named under For until it latches. Enter the serial number you read on it.", expect: "{{Drive.Serial}}", record: "serial", minutes: 1 },
      ],
    },
    {
      section: "Drives counted",
      forEach: "array",
      steps: [
        { id: "INS-061", do: "Run a finger along the front of {{Array}}: no drive stands out, every latch is closed, empty bays have their blanks.", expect: "All seated", minutes: 3 },
        { id: "INS-062", do: "Count the drives in {{Array}}.", expect: "{{Drives}}", record: "number", minutes: 2 },
      ],
    },
    {
      section: "Cover",
      forEach: "array",
      steps: [
        { id: "INS-070", do: "Look behind the front door of {{Array}} for anything loose or left behind, then close and lock it.", caution: "A loose screw shorts the moment power comes on. Nothing is connected to mains yet: make sure.", expect: "Nothing loose, door locked", minutes: 5 },
      ],
    },
    {
      section: "Controllers reseated",
      forEach: "controller",
      steps: [
        { id: "INS-075", do: "Pull controller {{Controller}} of {{Array}} a hand's width, push it home, close its latch and tug it.", caution: "Transport loosens boards. Strap on; no power.", expect: "Does not move", minutes: 3 },
      ],
    },
    {
      section: "Supplies reseated",
      forEach: "array",
      steps: [
        { id: "INS-078", do: "Pull each power supply of {{Array}}, push it home and tug it.", expect: "None moves", minutes: 4 },
      ],
    },
    {
      section: "Network cables",
      forEach: "port",
      steps: [
        { id: "INS-080", do: "Cable controller {{Controller}} port {{Port}} of {{Array}}. Enter the switch and its port as you plug it in.", expect: "{{Switch}} {{Switch port}}", record: "text", minutes: 4 },
        { id: "INS-081", do: "Label both ends with {{Array}} {{Controller}}{{Port}} – {{Switch}} {{Switch port}}. No bend tighter than the cable allows, nothing across the drive bays.", expect: "Both ends labelled", minutes: 3 },
      ],
    },
    {
      section: "Power",
      forEach: "array",
      steps: [
        { id: "INS-090", do: "Read the planned load of the feeds with {{Array}} on them, here and on the displays of the power strips. If a strip shows more than planned, stop.", caution: "An overloaded feed takes everything on it down. These are planning figures: the local code and a licensed electrician decide.", expect: "{{Feed load}}", minutes: 5 },
        { id: "INS-091", do: "Turn every supply switch of {{Array}} off.", expect: "All off", when: "Supply switch = yes", minutes: 1 },
        { id: "INS-092", do: "Plug the cord of the first supply into feed {{Feed A}}, lock it at both ends and label it.", caution: "Electric shock: look at each cord and plug for damage; never force a plug; hold it by its body.", expect: "{{Feed A}}", record: "text", when: "Supply switch = yes", minutes: 3 },
        { id: "INS-093", do: "Plug the cord of the second supply into feed {{Feed B}}, lock it at both ends and label it.", caution: "Two cords on one feed look the same until that feed fails.", expect: "{{Feed B}}", record: "text", when: "Supply switch = yes", minutes: 3 },
      ],
    },
    {
      section: "Start-up",
      forEach: "array",
      steps: [
        { id: "INS-100", do: "Take the strap off, step clear of the fans and turn the supplies of {{Array}} on, first feed then second.", caution: "Smoke, a smell or a loud bang: do not reach in. Use the room's emergency power-off and call for help.", expect: "Both supplies run", when: "Supply switch = yes", holdPoint: true, minutes: 2 },
        {
          id: "INS-104",
          do: "{{Array}} starts as soon as a cord is in: its supplies have no switch, or nobody knows of one. Take the strap off, step clear of the fans, plug the cord of the first supply into feed {{Feed A}} and lock it at both ends.",
          caution: "Electric shock: look at each cord and plug for damage; never force a plug; hold it by its body. Smoke, a smell or a loud bang: do not reach in. Use the room's emergency power-off and call for help.",
          expect: "{{Feed A}}", record: "text", when: "Supply switch <> yes", holdPoint: true, minutes: 3,
        },
        {
          id: "INS-105", do: "Plug the cord of the second supply of {{Array}} into feed {{Feed B}}, lock it at both ends and label both cords.",
          caution: "Two cords on one feed look the same until that feed fails.", expect: "{{Feed B}}", record: "text", when: "Supply switch <> yes", minutes: 3,
        },
        { id: "INS-106", do: "See that both supplies of {{Array}} run.", expect: "Both supplies run", when: "Supply switch <> yes", minutes: 1 },
        { id: "INS-101", do: "Wait as the maker's guide says and compare the indicators with it. Enter the minutes it took.", record: "number", unit: "min", minutes: 15 },
        { id: "INS-102", do: "See that one controller of {{Array}} works and the other waits, as the maker's guide shows it.", expect: "One works and one waits", record: "choice:One works and one waits|Both work|Only one answers", minutes: 3 },
        { id: "INS-103", do: "Look for drives that the indicators call faulty or missing.", expect: "0", record: "number", minutes: 3 },
      ],
    },
    {
      section: "Drives by bay as the array shows them",
      forEach: "drive",
      when: "Drives travel = in",
      shownAs: "grid",
      steps: [
        { id: "INS-107", do: "Enter the serial number that the array shows for the bay named under For. No drive is pulled to read it.", expect: "{{Drive.Serial}}", record: "serial", minutes: 1 },
      ],
    },
    {
      section: "Console line",
      forEach: "array",
      steps: [
        { id: "INS-110", do: "Connect the console line to the working controller of {{Array}} with the speed, bits and parity that the maker's guide gives. Enter them.", record: "text", minutes: 5 },
        { id: "INS-111", do: "Press the return key until the console answers, and keep a log of everything that follows.", expect: "Answers, log running", minutes: 2 },
        { id: "INS-112", do: "Enter the firmware version it shows. If it is older than the one prepared in the workshop, stop and ask.", expect: "{{Firmware}}", record: "text", minutes: 2 },
      ],
    },
    {
      section: "First-time set-up",
      forEach: "prompt",
      steps: [
        { id: "INS-115", do: "When the console asks “{{Prompt}}”, answer with the value shown here.", expect: "{{Value}}", record: "text", minutes: 1 },
      ],
    },
    {
      section: "Create or join the cluster",
      forEach: "array",
      steps: [
        { id: "INS-120", when: "Cluster act = create", do: "Create cluster {{Cluster}} on {{Array}}. Enter the shared address it took.", caution: "Creating a cluster empties the drives that are in it. Make sure that this is the new array.", expect: "{{Shared address}}", record: "address", sign: "two", holdPoint: true, minutes: 10 },
        { id: "INS-121", when: "Cluster act = join", do: "Gate: from this room, open the shared address of cluster {{Cluster}}. Do not join before it answers.", expect: "{{Shared address}}", record: "address", minutes: 3 },
        { id: "INS-122", when: "Cluster act = join", do: "Join {{Array}} to cluster {{Cluster}}. Enter the cluster's name as {{Array}} shows it afterwards.", caution: "Joining empties the drives of the array that joins, never those of the cluster: read the name on the screen twice.", expect: "{{Cluster}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
        { id: "INS-123", when: "Cluster act = join", do: "See on the cluster's page that {{Array}} is a member and that no member reports a fault.", expect: "Member, no faults", minutes: 5 },
      ],
    },
    {
      section: "Secrets",
      forEach: "array",
      steps: [
        { id: "INS-130", do: "List every administrative account of {{Array}}: console, page, service, programming interface. Enter how many there are.", record: "number", minutes: 5 },
        { id: "INS-131", do: "Change the secret of each of them and put it in the vault. Never write a secret on this tab: enter only the vault entry.", caution: "A secret left as delivered is known to everybody who owns the maker's guide.", record: "text", sign: "two", minutes: 15 },
        { id: "INS-132", do: "Sign in once with each new secret taken out of the vault, and once with an old one.", expect: "New ones work, old one refused", minutes: 5 },
      ],
    },
    {
      section: "Management page",
      forEach: "cluster",
      steps: [
        { id: "INS-140", do: "Open the management page of {{Cluster}} from a desk of the site, over an encrypted connection. Enter the address in the browser's bar.", expect: "{{Shared address}}", record: "address", minutes: 5 },
        { id: "INS-141", do: "See that the page shows the cluster's name, every member that is installed so far and no fault.", expect: "{{Cluster}}", record: "text", minutes: 3 },
      ],
    },
    {
      section: "Scheme",
      forEach: "array",
      steps: [
        { id: "INS-150", do: "Lay out the drives of {{Array}} and start the first redundancy build. Enter the scheme as the screen names it, in the plan's words.", caution: "A wrong scheme cannot be changed later without moving all data off.", expect: "{{Scheme}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
        { id: "INS-151", do: "Set the hot spares. Enter their number.", expect: "{{Spares}}", record: "number", minutes: 3 },
        { id: "INS-152", do: "Put the capacity of {{Array}} into its pool. Enter the pool.", expect: "{{Array.Pool}}", record: "text", holdPoint: true, minutes: 3 },
      ],
    },
    {
      section: "Pool",
      forEach: "pool",
      steps: [
        { id: "INS-155", do: "Set the fill limit at which pool {{Pool}} warns.", expect: "{{Fill limit}}", record: "text", minutes: 3 },
        { id: "INS-156", do: "Set the redundancy across arrays of pool {{Pool}}.", expect: "{{Across arrays}}", record: "text", minutes: 3 },
        { id: "INS-157", when: "Put into use = now", do: "Give the hosts a test volume from pool {{Pool}}. No live data before the acceptance at the end of this tab.", caution: "The failure tests are still to come: what is stored before them may be lost.", expect: "Test volume seen", minutes: 10 },
      ],
    },
    {
      section: "Ports",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: "INS-160", do: "Set the address of the port. Read it back from the array.", expect: "{{Address}}", record: "address", minutes: 2 },
        { id: "INS-161", do: "Set the mask or prefix length. Read it back as a prefix length, such as 24.", expect: "{{Prefix length}}", record: "number", minutes: 1 },
        { id: "INS-162", do: "Set the gateway, or leave it out where the plan says none. Read it back.", expect: "{{Gateway}}", record: "text", minutes: 1 },
        { id: "INS-163", do: "Set the largest packet (MTU) on the port. Read it back.", expect: "{{Port MTU}}", record: "number", unit: "bytes", minutes: 1 },
      ],
    },
    {
      section: "Ports enabled",
      forEach: "port",
      shownAs: "grid",
      steps: [
        { id: "INS-164", do: "Enable the port.", expect: "Enabled, link up", minutes: 1 },
      ],
    },
    {
      section: "Clock, names and alerts",
      forEach: "array",
      steps: [
        { id: "INS-170", do: "Set the time servers: {{Time servers}}. Compare the clock of {{Array}} with one of them and enter the difference.", expect: "0", record: "number", unit: "s", tolerance: 1, minutes: 4 },
        { id: "INS-171", do: "Set the name servers: {{Name servers}}. Look a name up from {{Array}}.", expect: "Name found", minutes: 3 },
        { id: "INS-172", do: "Set where alerts go and send a test alert.", expect: "Sent to {{Alerts to}}", minutes: 4 },
        { id: "INS-173", do: "Have the person there read the test alert back to you. Enter who received it and when.", record: "text", minutes: 5 },
      ],
    },
    {
      section: "Capacity seen",
      forEach: "array",
      steps: [
        { id: "INS-180", do: "Enter the number of drives that {{Array}} shows, spares included.", expect: "{{Drives}}", record: "number", minutes: 2 },
        { id: "INS-181", do: "Enter the usable capacity that {{Array}} shows, and in Unit whether it says TB, TiB or bytes. The planned reserve is still in it. Many pages write TB and count TiB: compare with the bytes where it shows them.", expect: "{{Usable before reserve}}", record: "size", unit: "TB", tolerancePercent: 3, minutes: 5 },
      ],
    },
    {
      section: "Full packets",
      forEach: "port",
      steps: [
        { id: "INS-190", do: "From controller {{Controller}} port {{Port}}, ping each of these with exactly {{Ping size}} bytes, fragmentation forbidden: {{Ping targets}}. Enter the largest size that passed to all.", expect: "{{Ping size}}", record: "number", unit: "bytes", when: "Own address = yes", minutes: 2 },
        { id: "INS-191", do: "Ping the first of them again with {{Ping too large}} bytes, fragmentation forbidden: it must fail. A reply means that some device on the way splits packets or that the MTU is not what the plan says.", expect: "Fails", record: "choice:Fails|Passes", when: "Own address = yes", minutes: 1 },
      ],
    },
    {
      section: "Hosts",
      forEach: "array",
      steps: [
        { id: "INS-200", do: "On every host of the site, look for {{Array}} anew. Enter the smallest number of paths that any host shows. By the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", minutes: 15 },
        { id: "INS-201", do: "See on every host that its path software calls all paths usable and names the working controller's as the preferred ones where the array prefers some.", expect: "All usable", minutes: 5 },
      ],
    },
    leavingSite("Left safe after the set-up", ["INS-901", "INS-902", "INS-903", "INS-904"], "Tell the site's contact that the arrays are not in use yet: nobody stores anything on them or takes their power. Hang a sign on each that says so."),
    {
      section: "Redundancy build over",
      visit: "Tests and acceptance",
      forEach: "array",
      steps: [
        { id: "INS-210", do: "Wait until the first redundancy build of {{Array}} has ended; the plan expects about {{Rebuild hours}} h for one drive. Enter the hours it took.", caution: "Until the build has ended one failed drive may take everything: none of the tests below before that.", record: "number", unit: "h", minutes: 5 },
        { id: "INS-211", do: "See that {{Array}} reports full redundancy, no fault and no drive rebuilding.", expect: "Fully redundant", sign: "two", minutes: 3 },
      ],
    },
    {
      section: "Failure tests: cables",
      forEach: "array",
      steps: [
        { id: "INS-220", do: "Run a light read and write load from a host to a test volume on {{Array}}, with no live data on it.", expect: "Runs without errors", minutes: 10 },
        { id: "INS-221", do: "Pull one network cable of {{Array}}. Enter the seconds for which the load stood still.", expect: "{{Longest standstill s}}", bound: "at most", record: "number", unit: "s", holdPoint: true, minutes: 5 },
        { id: "INS-222", do: "See that the alert arrives, plug the cable back in and wait until every host shows all paths again. Enter the smallest number; by the plan: {{Host paths}}.", expect: "{{Paths}}", record: "number", minutes: 5 },
      ],
    },
    {
      section: "Failure tests: controllers",
      forEach: "controller",
      steps: [
        { id: "INS-225", do: "Pull controller {{Controller}} of {{Array}} while the load runs. Enter the seconds for which the load stood still.", expect: "{{Longest standstill s}}", bound: "at most", caution: "Strap on the bonding point. Pull straight, never touch the connector, and leave the other controller alone.", record: "number", unit: "s", holdPoint: true, minutes: 10 },
        { id: "INS-227", do: "While controller {{Controller}} is out, ping every port address of {{Array}} from one host: the addresses have moved to the other controller.", expect: "All answer", when: "Port sharing = array", minutes: 3 },
        { id: "INS-226", do: "Push controller {{Controller}} home and wait until it waits or works again and every path is back, before touching the other one.", expect: "Both present, no fault", minutes: 20 },
      ],
    },
    {
      section: "Failure tests: feeds",
      forEach: "array",
      steps: [
        { id: "INS-230", do: "Read again what each feed would carry after the loss of the other. If a share is over what the plan allows, leave this test out and raise a snag.", caution: "The test moves the whole load to one feed. Pull this array's own cords only: never open a breaker, which would take other people's equipment down.", expect: "{{Feed load}}", minutes: 3 },
        { id: "INS-231", do: "Pull the cord of {{Array}} on feed {{Feed A}} at the supply. Wait a minute.", caution: "Electric shock: hold the plug by its body, dry hands, one hand only.", expect: "Keeps working, alert received", holdPoint: true, minutes: 4 },
        { id: "INS-232", do: "Plug it back in, lock it and wait until the supply reports well again.", expect: "Supply well", minutes: 4 },
        { id: "INS-233", do: "Pull the cord of {{Array}} on feed {{Feed B}} at the supply. Wait a minute.", caution: "Electric shock: hold the plug by its body, dry hands, one hand only.", expect: "Keeps working, alert received", holdPoint: true, minutes: 4 },
        { id: "INS-234", do: "Plug it back in, lock it and wait until the supply reports well again.", expect: "Supply well", minutes: 4 },
        { id: "INS-235", do: "Compare what the test volume holds with what was written.", expect: "Identical", record: "choice:Identical|Differs", sign: "two", minutes: 5 },
      ],
    },
    {
      section: "What stays behind",
      forEach: "site",
      steps: [
        { id: "INS-240", do: "Export the configuration of every array and store it off the arrays. Enter where.", record: "text", minutes: 10 },
        { id: "INS-241", do: "Photograph every rack, front and back, with the labels readable. Enter where the pictures are kept.", record: "text", minutes: 10 },
        { id: "INS-242", do: "Hand over spare drives, cords, keys and rails left over. Enter what and where.", record: "text", minutes: 5 },
        { id: "INS-243", do: "Register every serial number for support. Enter the reference that came back.", record: "text", minutes: 10 },
        { id: "INS-244", do: "Agree whom the site calls, and whom we call, by day and by night.", expect: "Contacts exchanged with {{Contact}}", minutes: 5 },
        { id: "INS-245", do: "Take test volumes, test accounts, the console line and all packing away.", expect: "Nothing left behind", minutes: 15 },
      ],
    },
    {
      section: "Acceptance",
      forEach: "site",
      steps: [
        { id: "INS-250", do: "Go through everything on this tab that differs and every snag with the site's contact.", expect: "Every one closed, or accepted by name", minutes: 15 },
        { id: "INS-251", do: "The site accepts the system. By: the lead of the work. Witness: the site's contact.", expect: "Accepted", record: "choice:Accepted|Refused", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Put into use",
      forEach: "pool",
      when: "Put into use = after acceptance",
      steps: [
        { id: "INS-255", do: "Give the hosts their volumes from pool {{Pool}}, now that the site has accepted.", expect: "Volumes seen by their hosts", holdPoint: true, minutes: 15 },
      ],
    },
    leavingSite("Left safe after the acceptance", ["INS-911", "INS-912", "INS-913", "INS-914"], "Tell the site's contact which arrays are in use from now on, and which are not in use. Hang a sign on those that are not."),
    {
      section: "Sign-off",
      forEach: "site",
      steps: [
        { id: "INS-260", do: "Close out this tab, print it, and have both sides sign the page with the code of the seal.", expect: "Signed page filed", record: "tick", required: false, minutes: 10 },
      ],
    },
  ],
};
