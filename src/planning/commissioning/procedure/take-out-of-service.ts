import type { ProcedureDraft } from "./draft";
import { authority, liveData, safety } from "./parts/arriving";
import { leavingSite } from "./parts/leaving-site";

/** An array taken away for good: data moved and proved elsewhere, then erased with a certificate, then lifted out. */
export const takeOutOfService: ProcedureDraft = {
  procedure: "Take an array out of service",
  sections: [
    authority("OUT", "Data moved", "up to the erasure the data is still on the array and can be read back; joining it to a cluster again would empty it"),
    liveData("OUT"),
    safety("OUT"),
    {
      section: "Whose data",
      forEach: "site",
      steps: [
        { id: "OUT-011", do: "The owner of the data orders in writing that {{Job.Arrays}} is erased, and nothing else. Enter the reference.", caution: "Erased data does not come back. No written order, no erasure.", record: "text", sign: "two", minutes: 10 },
        { id: "OUT-012", do: "Ask whether any of the data must be kept by law or for a dispute. Enter who answered.", record: "text", sign: "none", minutes: 10 },
      ],
    },
    {
      section: "Which one",
      forEach: "array",
      steps: [
        { id: "OUT-020", do: "Read the serial number of {{Array}} on the chassis and on its own page: one and the same.", caution: "The wrong array is the wrong data.", expect: "{{Array.Serial}}", record: "serial", sign: "two", minutes: 3 },
        { id: "OUT-021", do: "Export its configuration, and list every volume, host and account on it. Enter where.", record: "text", minutes: 15 },
        { id: "OUT-022", do: "Its cluster and every other member report no fault and no rebuild.", expect: "No fault", when: "Array.Cluster <>", minutes: 5 },
        { id: "OUT-023", do: "Enter the space in use on it. Where its data goes, that much is free below the fill limit.", record: "size", unit: "TB", minutes: 5 },
      ],
    },
    {
      section: "Data moved",
      forEach: "array",
      steps: [
        { id: "OUT-030", do: "Move every volume off {{Array}}. Enter the hours it took.", record: "number", unit: "h", minutes: 30 },
        { id: "OUT-031", do: "Compare what was moved with what was there: counts, sizes, checks of content.", expect: "Identical", record: "choice:Identical|Differs", sign: "two", minutes: 20 },
        { id: "OUT-032", do: "Hosts work from the new place through a working day of the site. Enter the last day watched.", record: "date", minutes: 10 },
        { id: "OUT-033", do: "A backup of the moved data has been made and read back since.", expect: "Read back", minutes: 10 },
        { id: "OUT-034", do: "Enter the space in use on {{Array}} now.", expect: "0", record: "number", unit: "TB", minutes: 3 },
      ],
    },
    leavingSite("Left safe after the move", "OUT-94", "Tell the site's contact that the old arrays are not in use any more, still hold the data and keep their power. Hang a sign on each that says so."),
    {
      section: "Out of the cluster",
      visit: "Erased and taken out",
      forEach: "array",
      steps: [
        { id: "OUT-040", do: "Take the array's paths away from every host; no host reports an error for an hour.", expect: "No errors", minutes: 15 },
        { id: "OUT-041", do: "Take {{Array}} out of pool and cluster. Enter the address at which the cluster still answers; if it was the last member, Not applicable.", caution: "If the shared address goes quiet, stop and bring the array back.", expect: "{{Shared address}}", record: "address", when: "Array.Cluster <>", sign: "two", holdPoint: true, minutes: 10 },
        { id: "OUT-042", do: "Remove its entries from names, monitoring, backup and vault once nothing uses them.", expect: "Removed", minutes: 15 },
      ],
    },
    {
      section: "Erasure",
      forEach: "array",
      steps: [
        { id: "OUT-049", do: "Enter the space in use by data on {{Array}} once more: nothing may have been stored on it since the move.", expect: "0", record: "number", unit: "TB", minutes: 3 },
        { id: "OUT-050", do: "Last stop for {{Array}}, {{Array.Serial}}: the owner of the data agrees once more. If the answer is not Erase, stop here. Witness: the owner or their deputy.", caution: "Erased data does not come back.", expect: "Erase", record: "choice:Erase|Do not erase", sign: "two", holdPoint: true, minutes: 5 },
        { id: "OUT-051", do: "Both people read name and serial number of {{Array}} on the screen aloud; then erase it by the method in the order. Enter the method and the name of the tool and its version.", record: "text", sign: "two", holdPoint: true, minutes: 30 },
        { id: "OUT-057", do: "Enter the number of drives of {{Array}} that report a finished erasure. With those of the next step they make {{Drives}}, spares and failed ones counted.", record: "number", minutes: 10 },
        { id: "OUT-058", do: "Enter the number of drives that do not: failed ones, and those that stopped on the way. They are destroyed as the order says.", record: "number", minutes: 5 },
        { id: "OUT-053", do: "Read samples of every drive that reported a finished erasure back: nothing of the old data.", expect: "Nothing readable", sign: "two", minutes: 20 },
        { id: "OUT-054", do: "Enter the serial numbers of the drives to be destroyed, or none.", caution: "Drilled and shredded drives cut, and batteries burn: leave destruction to a firm that is equipped for it.", record: "text", minutes: 10 },
        { id: "OUT-055", do: "Controllers: settings, keys, logs and caches wiped.", expect: "Wiped", minutes: 10 },
        { id: "OUT-056", do: "Enter the number of the certificate that lists every drive's serial number, method and result.", record: "text", sign: "two", minutes: 10 },
      ],
    },
    {
      section: "Power off and out",
      forEach: "array",
      steps: [
        { id: "OUT-060", do: "Shut {{Array}} down in the orderly way, its shelves after it; supply switches off where it has some, then its cords out of {{Feeds}}.", caution: "Electric shock: own cords only, never a breaker. Read the label on both ends of each cord before pulling it.", expect: "Cords out", sign: "two", holdPoint: true, minutes: 10 },
        { id: "OUT-061", do: "Unplug the network cables by their labels and close the open switch ports.", expect: "Ports closed", minutes: 10 },
        { id: "OUT-062", do: "Strap on; take the drives out and count them.", caution: "With its drives in, the array is too heavy for the planned lift.", expect: "{{Drives}}", record: "number", minutes: 15 },
        { id: "OUT-063", do: "Rack {{Rack}} stabilised; from the top down, lift {{Array}} and each of its shelves out by: {{Lift by}} ({{Lift kg}} kg without drives); where that is not planned, by the lift table.", caution: "Lifting injures backs and crushes fingers; a rack tips when weight slides out. One person speaks.", expect: "Out", minutes: 15 },
        { id: "OUT-064", do: "Blanks into the free units {{Bottom unit}} to {{Top unit}}.", expect: "Closed", minutes: 5 },
        { id: "OUT-065", do: "Enter where chassis, drives and batteries go, and the paper that proves it.", caution: "Batteries and boards are special waste: local rules decide.", record: "text", minutes: 10 },
      ],
    },
    {
      section: "Papers",
      forEach: "site",
      steps: [
        { id: "OUT-070", do: "Support contract, warranty and asset register ended or changed. Enter the references.", record: "text", minutes: 10 },
        { id: "OUT-071", do: "The site signs for the certificate and the empty units. Witness: the site's contact.", expect: "Signed", record: "choice:Signed|Refused", sign: "two", holdPoint: true, minutes: 5 },
      ],
    },
    leavingSite("Left safe after the removal", "OUT-95", "Tell the site's contact which units, feeds and switch ports are not in use any more."),
  ],
};
