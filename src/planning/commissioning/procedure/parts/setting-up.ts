import type { SectionDraft, StepDraft } from "../draft";

/** From the first answer on the console to a port that answers. `firmware` is what the array has to run, and what is done where it does not. */
export function settingUp(prefix: string, firmware: Pick<StepDraft, "do" | "expect">): readonly SectionDraft[] {
  const prompts = (section: string, id: string, when: string): SectionDraft => ({
    section,
    forEach: "prompt",
    when,
    shownAs: "grid",
    steps: [
      { id, do: "When the console asks what stands under For, give the answer beside it. Something else is asked: stop and ask. Enter what it took; of a secret only where it is kept.", expect: "{{Value}}", record: "text", minutes: 1 },
    ],
  });
  return [
    {
      section: "Started",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-360`, do: "Enter the minutes from power on until the active controller answered on the serial console.", expect: "{{Start-up minutes}}", bound: "at most", record: "number", unit: "min", minutes: 15 },
        { id: `${prefix}-361`, do: "See that each controller is active or standby as the maker's guide has it. Count what console and indicators call faulty or missing: drives, controllers, supplies, fans.", expect: "0", record: "number", minutes: 5 },
        { id: `${prefix}-362`, ...firmware, record: "text", minutes: 4 },
      ],
    },
    {
      section: "Drives by bay",
      forEach: "drive",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-365`, do: "Have the array list its drives by bay and serial number, keep the list, and paste the serial numbers here, bay by bay; on paper write those alone that differ. No drive is pulled to read it.", expect: "{{Drive.Serial}}", record: "serial", minutes: 1 },
      ],
    },
    prompts("First set-up", `${prefix}-370`, "Prompts before ports <> no"),
    {
      section: "Ports",
      forEach: "port",
      when: "Network.Kind <> other",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-372`, do: `Set the address of the port with the prefix length or mask, gateway and largest packet (MTU) that ${prefix}-373 expects, and enable it. Read the address back from the array.`, expect: "{{Address}}", record: "address", minutes: 4 },
        { id: `${prefix}-373`, do: "Read the rest back, and see that the link is up.", expect: "/{{Prefix length}}, gateway {{Gateway}}, MTU {{Port MTU}}", minutes: 1 },
      ],
    },
    prompts("First set-up after the ports", `${prefix}-371`, "Prompts before ports = no"),
    {
      section: "Servers",
      forEach: "site",
      steps: [
        { id: `${prefix}-377`, do: "Set on every array of this tab the time servers and, behind the semicolon, the name servers of the row, and alerts to {{Alerts to}}. Look a name up on each.", expect: "{{Time servers}}; {{Name servers}}", sign: "none", minutes: 10 },
      ],
    },
    {
      section: "Passwords, keys and clock",
      forEach: "array",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-375`, do: "Change the password and the keys of every administrative account: console, page, service, programming interface. One left as delivered is known to everybody who owns the maker's guide. Put the new ones into the vault; enter only the name of the vault entry, never what it holds.", record: "text", sign: "two", minutes: 15 },
        { id: `${prefix}-376`, do: "Sign in once with each new one taken out of the vault: it works; and once with an old one.", expect: "Old one refused", minutes: 5 },
        { id: `${prefix}-379`, do: "Enter by how many seconds its clock differs from one of the time servers.", expect: "0", record: "number", unit: "s", tolerance: 1, minutes: 2 },
      ],
    },
    {
      section: "Test alert",
      forEach: "site",
      steps: [
        { id: `${prefix}-380`, do: "Send a test alert from every array of this tab, and have the person who gets them read each back to you. Enter who, and when.", record: "text", sign: "none", minutes: 8 },
      ],
    },
  ];
}

/** The drives laid out, and what the array then shows. */
export function raidBuild(prefix: string): SectionDraft {
  return {
    section: "Initial RAID build",
    forEach: "array",
    steps: [
      { id: `${prefix}-400`, do: "Lay out the drives of this array and start the initial RAID build. Read the scheme that the screen then shows, and enter it in the plan's words.", caution: "This empties the drives of the array named on the screen: read it twice. A wrong scheme stays until all data is moved.", expect: "{{Scheme}}", record: "text", sign: "two", holdPoint: true, minutes: 10 },
      { id: `${prefix}-401`, do: "Set its hot spares. Enter their number.", expect: "{{Spares}}", record: "number", sign: "none", minutes: 3 },
      { id: `${prefix}-402`, do: "Enter the usable capacity that it shows, and in Unit whether it says TB, TiB or bytes; the planned reserve is still in it. Many write TB and count TiB: compare bytes if shown.", expect: "{{Usable before reserve}}", record: "size", unit: "TB", tolerancePercent: 3, sign: "none", minutes: 4 },
    ],
  };
}

/** Frames, packets and paths, from the side of the hosts, or of a machine that stands for one. `testVolume` says where the test volume is made and who sees it. */
export function hostsSee(prefix: string, testVolume: Pick<StepDraft, "do" | "expect">): readonly SectionDraft[] {
  return [
    {
      section: "Test machine",
      forEach: "site",
      when: "With hosts = no",
      steps: [
        { id: `${prefix}-408`, do: "The plan has no host here, and nothing is accepted untried: bring a machine for the tests, or have the site name one, with a port in every data network. Wherever a step below says host, this one is meant. Enter its name.", record: "text", minutes: 20 },
      ],
    },
    {
      section: "Switches",
      forEach: "switch",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-410`, do: "Read on the switch, or have it read to you, how large a frame it forwards on the ports of this tab. It is not the MTU: 22 bytes of header, tag and check sequence come on top.", expect: "{{Least frame}}", bound: "at least", record: "number", unit: "bytes", minutes: 5 },
      ],
    },
    {
      section: "Full packets",
      forEach: "host port",
      when: "Network.Kind <> other",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-413`, do: `Bound to this host port as the source, ping each of these, fragmentation forbidden, with the size that ${prefix}-412 expects: all answer. Pings forbidden: note a measured transfer.`, expect: "{{Ping targets}}", minutes: 4 },
        { id: `${prefix}-412`, do: "Enter the largest size that passed to all of them.", expect: "{{Ping size}}", record: "number", unit: "bytes", minutes: 1 },
        { id: `${prefix}-414`, do: "Repeat one of them with one byte more: it must be refused. An answer means that the host's own MTU is not what the plan says.", expect: "Refused", record: "choice:Refused|Answered", minutes: 1 },
      ],
    },
    {
      section: "Full packets to the ports",
      forEach: "port",
      when: "With hosts = no and Network.Kind <> other and Own address = yes",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-415`, do: "From the test machine ping the port, fragmentation forbidden, with as many bytes as the row expects: it answers. With one byte more it must be refused. Enter the largest size that passed.", expect: "{{Ping size}}", record: "number", unit: "bytes", minutes: 2 },
      ],
    },
    {
      section: "Test volume",
      forEach: "site",
      steps: [
        { id: `${prefix}-416`, ...testVolume, caution: "The failure tests are still to come: whatever is stored before them may be lost. No live data before the acceptance.", sign: "none", minutes: 15 },
      ],
    },
    {
      section: "Paths of the hosts",
      forEach: "host",
      shownAs: "grid",
      steps: [
        { id: `${prefix}-419`, do: "Rescan storage on the host: it shows so many paths to each array, all usable, and prefers those of the active controller where the array prefers some.", expect: "{{Paths by array}}", minutes: 3 },
        { id: `${prefix}-418`, do: "Enter how many paths to the arrays of this tab it shows, all together.", expect: "{{Paths to arrays}}", record: "number", minutes: 6 },
      ],
    },
  ];
}
