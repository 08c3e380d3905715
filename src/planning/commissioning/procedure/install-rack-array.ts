import type { ProcedureDraft } from "./draft";
import { authority, boxes, safety } from "./parts/arriving";
import { driveTest, driveTestOver, failureTests, testVolumeGone } from "./parts/failure-tests";
import { acceptance, signOff } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";
import { placing, powering } from "./parts/placing";
import { hostsSee, raidBuild, settingUp } from "./parts/setting-up";

/**
 * The installation of one or more rack arrays in a cluster that is new, from the door to the signature.
 *
 * The failure tests stand after the initial RAID build, because an array that still builds does not survive them, and before live data, because a
 * test that finds a fault must not cost any. Switches, hosts and the whole cluster are stopped here alone, as nothing else hangs on it yet.
 */
export const installRackArray: ProcedureDraft = {
  procedure: "Install a rack array",
  sections: [
    authority("INS", "Set-up"),
    safety("INS"),
    ...boxes("INS"),
    ...placing("INS"),
    ...powering("INS"),
    ...settingUp("INS", { do: "Enter the firmware version that it shows. If it is older than the one prepared in the workshop, stop and ask.", expect: "{{Firmware}}" }),
    {
      section: "New cluster",
      forEach: "array",
      when: "Cluster live = no",
      steps: [
        { id: "INS-385", when: "Cluster act = create", do: "Create cluster {{Cluster}} on this array. Enter the shared address that it took.", caution: "Creating a cluster empties the drives that are in it. Make sure that this is the new array.", expect: "{{Shared address}}", record: "address", sign: "two", holdPoint: true, minutes: 10 },
        { id: "INS-386", when: "Cluster act = join", do: "Stop: open the management address of cluster {{Cluster}} that the row expects, from this room. If it does not answer, do not join.", expect: "{{Shared address}}", sign: "none", minutes: 3 },
        { id: "INS-387", when: "Cluster act = join", do: "Join this array to cluster {{Cluster}}, which is new and holds no data. Enter the cluster's name as the array shows it afterwards.", caution: "Joining empties the drives of the array that joins, never those of the cluster: read both names on the screen twice.", expect: "{{Cluster}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
      ],
    },
    {
      section: "Management page",
      forEach: "cluster",
      shownAs: "grid",
      steps: [
        { id: "INS-390", do: "Open the management page of the cluster from a desk of the site, over an encrypted connection. Enter the address in the browser's bar.", expect: "{{Shared address}}", record: "address", minutes: 5 },
        { id: "INS-391", do: "It shows every member and no fault. Enter the cluster's name as it stands there.", expect: "{{Cluster}}", record: "text", minutes: 3 },
      ],
    },
    raidBuild("INS"),
    {
      section: "Capacity into the pool",
      forEach: "array",
      when: "Array.Pool <>",
      steps: [
        { id: "INS-404", do: "Put its capacity into pool {{Array.Pool}}, which is new and holds no data. Enter the pool.", caution: "A pool that others use already is a live one: stop, and follow the procedure for a live cluster.", expect: "{{Array.Pool}}", record: "text", holdPoint: true, minutes: 3 },
      ],
    },
    {
      section: "Pool",
      forEach: "pool",
      shownAs: "grid",
      steps: [
        { id: "INS-405", do: "Set the fill limit at which the pool warns; not planned: agree one.", expect: "{{Fill limit}}", record: "text", minutes: 3 },
        { id: "INS-406", when: "Across arrays <>", do: "Set the redundancy across its arrays.", expect: "{{Across arrays}}", record: "text", minutes: 3 },
      ],
    },
    ...hostsSee("INS", { do: "Make a test volume on every array of this tab and give it to every host.", expect: "Seen by every host" }),
    leavingSite("Left safe after the set-up", "INS-94", "Tell the site's contact that the arrays are not in use yet: nobody stores anything on them or takes their power. Hang a sign on each that says so."),
    ...failureTests("INS", "Failure tests"),
    {
      section: "Failure tests: switches",
      forEach: "switch",
      steps: [
        { id: "INS-455", do: "Only if every host shows all its paths, some not over this switch, and the owner of all else on it, named in the note, signed for this hour: restart it under load. Enter the seconds it stood still.", caution: "Everything else on this switch loses it too.", expect: "{{Longest standstill s}}", bound: "at most", record: "number", unit: "s", sign: "two", holdPoint: true, minutes: 20 },
      ],
    },
    {
      section: "Failure tests: hosts",
      forEach: "host",
      shownAs: "grid",
      steps: [
        { id: "INS-457", do: "One host after the other, and only if nothing else runs on it or its owner has signed: restart it. It comes back with its test volume; enter how many paths to the arrays of this tab it shows.", expect: "{{Paths to arrays}}", record: "number", sign: "two", minutes: 15 },
      ],
    },
    {
      section: "Failure tests: orderly stop",
      forEach: "cluster",
      steps: [
        { id: "INS-459", do: "Stop the load; every host lets go of the test volume. Shut all arrays of {{Cluster}} down by the maker's guide, shelves last; start, shelves first. Enter the minutes until hosts have it on all paths.", caution: "Only while the cluster is new and holds no data of anybody.", record: "number", unit: "min", sign: "two", holdPoint: true, minutes: 60 },
      ],
    },
    leavingSite("Left safe after the failure tests", "INS-95", "Tell the site's contact that the arrays are still not in use. Leave the signs on them."),
    driveTest("INS", "Drive test"),
    leavingSite("Left safe while a spare is built", "INS-96", "Tell the site's contact that the arrays build onto a spare and are not in use: until that has ended nobody touches them.", "With spares = yes"),
    driveTestOver("INS", "Acceptance"),
    testVolumeGone("INS"),
    ...acceptance("INS"),
    {
      section: "Put into use",
      forEach: "pool",
      steps: [
        { id: "INS-490", do: "Data may go into pool {{Pool}} from here on: only with full redundancy, every test above as expected, and the site's acceptance signed.", expect: "May be used", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Volumes",
      forEach: "volume",
      shownAs: "grid",
      steps: [
        { id: "INS-491", do: "Make the volume with the size of the row, and give it to the hosts and groups that stand there, with right and number. See it on one host of each.", expect: "{{Volume.Size}}, {{Provisioning}}: {{Opened by}}", minutes: 6 },
      ],
    },
    leavingSite("Left safe after the acceptance", "INS-97", "Tell the site's contact which arrays are in use from now on, and which are not in use. Hang a sign on those that are not."),
    signOff("INS"),
  ],
};
