import type { SectionDraft } from "../draft";

/**
 * What must be able to fail without hosts losing their data, tried on the arrays of the job alone: a cable, each controller, each cord.
 *
 * Stands after the initial RAID build, because an array that still builds does not survive it, and before live data.
 */
export function failureTests(prefix: string, visit: string): readonly SectionDraft[] {
  return [
    {
      section: "Initial RAID build over",
      visit,
      forEach: "array",
      steps: [
        { id: `${prefix}-431`, do: "Wait until its initial RAID build has ended and the array reports full redundancy, no fault and its spares ready. Enter the hours it took; rebuilding one drive is planned at about {{Rebuild hours}} h.", caution: "Until then one failed drive may take everything: none of the tests below before that.", record: "number", unit: "h", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Load for the tests",
      forEach: "site",
      steps: [
        { id: `${prefix}-433`, do: "From a host start a light read and write load, shown by the second, on the test volume of every array; it runs through all tests below.", expect: "Runs without errors", sign: "none", minutes: 10 },
      ],
    },
    {
      section: "Failure tests: cables",
      forEach: "array",
      steps: [
        { id: `${prefix}-440`, do: "With every host on all its paths, pull one data cable at the array: the alert comes. Enter the seconds for which the load stood still. Plug it back; wait for all paths again: {{Host paths}}.", expect: "{{Longest standstill s}}", bound: "at most", record: "number", unit: "s", holdPoint: true, minutes: 10 },
      ],
    },
    {
      section: "Failure tests: controllers",
      forEach: "controller",
      when: "Controller count > 1",
      steps: [
        { id: `${prefix}-445`, do: "Only with every controller of the array healthy, the cache mirrored, every path seen on each and no rebuild running: both people point at the controller that the row names, read the names of array and controller aloud, then pull it while the load runs. Enter the seconds for which the load stood still.", caution: "The wrong one, or one of a pair not well, takes the data away. Strap on. Pull straight; touch no pin, nor another one.", expect: "{{Longest standstill s}}", bound: "at most", record: "number", unit: "s", sign: "two", holdPoint: true, minutes: 10 },
        { id: `${prefix}-446`, do: "While that controller is out: the management address answers, and so does every port address that moved, with full packets. Enter the fewest paths that any host shows.", expect: "{{Paths on one controller}}", record: "number", sign: "none", minutes: 5 },
        { id: `${prefix}-447`, do: "Push that controller home, close its latch, and wait until all are healthy, the cache is mirrored and every host shows all its paths again. Nobody touches another one before.", expect: "All well, all paths", holdPoint: true, minutes: 20 },
      ],
    },
    {
      section: "Failure tests: cords",
      forEach: "array",
      steps: [
        { id: `${prefix}-450`, when: bothFeeds, do: "Read again on the displays what each feed carries. By the plan it carries, after the loss of the other: {{Feed load}}. If that, or what both displays show together, is over the limit, leave this test out and raise a snag.", caution: "The test moves the whole load to one feed. Pull this array's own cords only: never open a breaker, which takes other people's equipment down.", expect: "Within the limit", sign: "none", minutes: 3 },
        { id: `${prefix}-451`, when: bothFeeds, do: "Release the lock and pull every cord of the array on feed {{Feed A}} at the supply, wait a minute: it keeps working, the alert comes. Plug back, lock, and wait until every supply is well again.", caution: "Electric shock: hold the plug by its body, dry hands, one hand only.", expect: "Worked, well again", holdPoint: true, minutes: 8 },
        { id: `${prefix}-452`, when: bothFeeds, do: "Release the lock and pull every cord of the array on feed {{Feed B}} at the supply, wait a minute: it keeps working, the alert comes. Plug back, lock, and wait until every supply is well again.", caution: "Electric shock: hold the plug by its body, dry hands, one hand only.", expect: "Worked, well again", holdPoint: true, minutes: 8 },
      ],
    },
  ];
}

/** An array with one feed is switched off where its cord is pulled. */
const bothFeeds = "Feed A <> and Feed B <>";

/** A drive pulled on purpose, on a visit of its own: the rebuild takes hours, and nothing else may happen meanwhile. */
export function driveTest(prefix: string, visit: string): SectionDraft {
  return {
    section: "Failure tests: a drive",
    visit,
    forEach: "array",
    when: "Spares > 0",
    steps: [
      { id: `${prefix}-461`, do: "Only with the array fully redundant, no build running and its spare ready: name one drive by bay and serial number as the array shows them, and light its locate lamp. Both people point at it and read both aloud; then it is pulled and laid on the mat, and the rebuild onto a spare begins. Enter bay and serial number.", caution: "The wrong drive, or a second one, may take everything. Strap on; pull it a hand's width, let it rest, lift it out.", record: "text", sign: "two", holdPoint: true, minutes: 20 },
    ],
  };
}

/** What is left of the drive test when its rebuild is over. */
export function driveTestOver(prefix: string, visit: string): SectionDraft {
  return {
    section: "Spare in place",
    visit,
    forEach: "array",
    when: "Spares > 0",
    shownAs: "grid",
    steps: [
      { id: `${prefix}-465`, do: "Wait for full redundancy, no fault and no rebuild. Enter the hours it took from the pull.", record: "number", unit: "h", sign: "two", minutes: 3 },
      { id: `${prefix}-467`, do: "By the maker's guide, make the pulled drive, declared good, or a new one the spare in the empty bay. Enter its serial number as shown: Drives in the plan gets it once this tab is closed.", record: "serial", minutes: 10 },
      { id: `${prefix}-466`, do: "Fully redundant again, with as many spares ready as the plan says.", expect: "{{Spares}} spares ready", minutes: 2 },
    ],
  };
}

/** The test volume compared and gone, with nothing left of it. */
export function testVolumeGone(prefix: string): SectionDraft {
  return {
    section: "Test volume gone",
    forEach: "array",
    shownAs: "grid",
    steps: [
      { id: `${prefix}-470`, do: "Stop the load where it still runs, and compare what the test volume holds with what was written.", expect: "Identical", record: "choice:Identical|Differs", sign: "two", minutes: 5 },
      { id: `${prefix}-471`, do: "Every host lets go of the test volume. Both people read its name aloud, and that of a pool made for it: only these are deleted. Enter the space that the array then calls used by data.", expect: "0", record: "number", unit: "TB", minutes: 3 },
    ],
  };
}
