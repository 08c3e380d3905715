import type { ProcedureDraft } from "./draft";
import { authority, boxes, liveData, safety } from "./parts/arriving";
import { driveTest, driveTestOver, failureTests, testVolumeGone } from "./parts/failure-tests";
import { acceptance, signOff } from "./parts/handing-over";
import { leavingSite } from "./parts/leaving-site";
import { placing, powering } from "./parts/placing";
import { hostsSee, raidBuild, settingUp } from "./parts/setting-up";

const joinCaution = "Joining empties the drives of the array that joins, never those of the cluster: read both names on the screen twice.";

/**
 * An array added to a cluster in which others keep data: nothing of it reaches the live pool before it has been built, tested and accepted alone.
 *
 * Where joining adds no capacity it joins first and is tested in a pool of its own; where joining adds it, or nobody knows, it is tested alone and
 * joins last. No switch, host, breaker or other member is touched.
 */
export const addToLiveCluster: ProcedureDraft = {
  procedure: "Add an array to a live cluster",
  sections: [
    authority("JOI", "Set-up", "until its capacity is in the live pool a new array holds no data of others: it leaves the cluster, if joined, and is taken away"),
    liveData("JOI"),
    safety("JOI"),
    {
      section: "Is the cluster well",
      forEach: "live cluster",
      shownAs: "grid",
      steps: [
        { id: "JOI-317", do: "Open the management page of the live cluster. Enter the address in the browser's bar.", expect: "{{Shared address}}", record: "address", minutes: 3 },
        { id: "JOI-318", do: "It shows every member, full redundancy, no fault and no rebuild. If not, mend that first and come back.", expect: "{{Cluster}}: no fault", minutes: 3 },
        { id: "JOI-319", do: "Enter the firmware that its members run. The newcomer is brought to it, never they to the newcomer's.", expect: "{{Release}}", record: "text", minutes: 3 },
      ],
    },
    ...boxes("JOI"),
    ...placing("JOI"),
    ...powering("JOI"),
    ...settingUp("JOI", { do: "Bring the new array to the firmware that step JOI-319 found on the members of the cluster, while it is in no cluster. Enter the version that it shows.", expect: "{{Release}}" }),
    {
      section: "Join without capacity",
      forEach: "array",
      when: "Join adds capacity = no and Cluster live = yes",
      steps: [
        { id: "JOI-385", do: "Stop: open the management address of cluster {{Cluster}} that the row expects, from this room. If it does not answer, or shows a fault or a rebuild, do not join.", expect: "{{Shared address}}", sign: "none", minutes: 3 },
        { id: "JOI-386", when: "Cluster act = join", do: "Join this array to the live cluster {{Cluster}}. Enter the cluster's name as the array shows it afterwards.", caution: `${joinCaution} If the page then offers to add its capacity to a pool, refuse: that comes after tests and acceptance.`, expect: "{{Cluster}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
        { id: "JOI-387", do: "The cluster shows the array as a member, no fault, and no capacity of it in any pool.", expect: "Member, no capacity in any pool", sign: "none", minutes: 5 },
      ],
    },
    raidBuild("JOI"),
    ...hostsSee("JOI", {
      do: "Make a pool of its own on every new array, and a test volume in it; give it to hosts that may be tested with: the tests below mean these. Nothing of it goes into a pool that is in use.",
      expect: "Seen by these hosts",
    }),
    leavingSite("Left safe after the set-up", "JOI-94", "Tell the site's contact that the live cluster works as before and that the new arrays are not in use yet. Hang a sign on each that says so."),
    ...failureTests("JOI", "Failure tests"),
    leavingSite("Left safe after the failure tests", "JOI-95", "Tell the site's contact that the new arrays are still not in use. Leave the signs on them."),
    driveTest("JOI", "Drive test"),
    leavingSite("Left safe while a spare is built", "JOI-96", "Tell the site's contact that the new arrays build onto a spare and are not in use: until that has ended nobody touches them.", "With spares = yes"),
    driveTestOver("JOI", "Acceptance and capacity in"),
    testVolumeGone("JOI"),
    ...acceptance("JOI"),
    {
      section: "Capacity into the live pool",
      forEach: "array",
      when: "Join adds capacity = no and Cluster live = yes and Array.Pool <>",
      steps: [
        { id: "JOI-404", do: "Only with every member well and no rebuild: both people read array and pool on the screen aloud; then put the capacity of this array into the live pool {{Array.Pool}}. Enter the pool.", caution: "From here on live data lies on this array too: it cannot be taken away without moving it back.", expect: "{{Array.Pool}}", record: "text", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    {
      section: "Join with capacity",
      forEach: "array",
      when: "Join adds capacity <> no and Cluster live = yes",
      steps: [
        { id: "JOI-485", do: "Stop: open the management address of cluster {{Cluster}} that the row expects, from this room. If it does not answer, or shows a fault or a rebuild, do not join.", expect: "{{Shared address}}", sign: "none", minutes: 3 },
        { id: "JOI-486", when: "Cluster act = join", do: "Both people read the names of array and cluster on the screen aloud; then join this array to the live cluster {{Cluster}}. Its capacity goes into the live pool with that; where nobody knows, take it that it does. Enter the cluster's name as the array shows it afterwards.", caution: `${joinCaution} From then on the array holds live data too.`, expect: "{{Cluster}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
      ],
    },
    {
      section: "Data spread",
      forEach: "live cluster",
      steps: [
        { id: "JOI-488", do: "Watch the build or the spreading of data that follows until it has ended, with every member of {{Cluster}} well and hosts as quick as before. Enter the hours.", caution: "Until it has ended a failed drive may cost more than usual: nobody pulls anything.", record: "number", unit: "h", minutes: 15 },
        { id: "JOI-489", do: "The management address of {{Cluster}} answers, every member is well, and its pools show the capacity that came.", expect: "Answers at {{Shared address}}, no fault", sign: "two", minutes: 5 },
      ],
    },
    {
      section: "Volumes",
      forEach: "volume",
      shownAs: "grid",
      steps: [
        { id: "JOI-491", do: "Every host and group of the row still sees the volume with all its paths.", expect: "{{Opened by}}", sign: "none", minutes: 4 },
      ],
    },
    leavingSite("Left safe after the acceptance", "JOI-97", "Tell the site's contact which arrays are in use from now on, and which are not in use. Hang a sign on those that are not."),
    signOff("JOI"),
  ],
};
