import type { LayerName } from "./for-each";

/** A field that stands in no column but follows from the plan. */
export interface DerivedField {
  /** Every value that it can have, where those are few. */
  readonly choices?: readonly string[];
}

/** "yes" on the first controller of the array, else "no". */
const firstController = { choices: ["yes", "no"] } as const;

/** "yes" where the Subject of the job names it, as people call it there, and where that is empty; else "no". */
const isSubject = { choices: ["yes", "no"] } as const;

/**
 * Fields that stand in no column but follow from the plan, by the layer in which a step reaches them.
 *
 * A field that cannot be computed, because a column it needs is blank or cannot be read, is blank.
 */
export const derivedFields = {
  Job: {
    /** "yes" where an array of the job has a hot spare, so that a drive may be pulled to try it. */
    "With spares": { choices: ["yes", "no"] },
    /** "yes" where the plan has a host at the site of the job, from which its arrays are tried. */
    "With hosts": { choices: ["yes", "no"] },
  },
  Array: {
    /** "create" for the array of order 1 of a new cluster, else "join"; blank without a cluster that is new or existing. */
    "Cluster act": { choices: ["create", "join"] },
    /** "yes" where its cluster exists already or is created by another job, so that others may keep data in it; else "no"; blank without a cluster. */
    "Cluster live": { choices: ["yes", "no"] },
    /** How many controllers it has. */
    "Controller count": {},
    /** Highest rack unit it fills. */
    "Top unit": {},
    /** Usable capacity after spares, redundancy and reserve, in TB. */
    "Usable": {},
    /** Usable capacity with the reserve still in it, in TB. */
    "Usable before reserve": {},
    /** How many different addresses its ports have. */
    "Addresses": {},
    /** Fewest paths that any host of its site has to it, counted in data networks; blank where that is not known of every host. */
    "Paths": {},
    /** The paths of each host of its site, one by one, with those that are not known. */
    "Host paths": {},
    /** Fewest paths that any host of its site keeps while one controller, whichever, is out; blank where that is not known of every host. */
    "Paths on one controller": {},
    /** The port that a first set-up asks for, controller and number: the first for management, else the first of all. */
    "First port": {},
    /** Address of the first port. */
    "First address": {},
    /** Length of the prefix of its network. */
    "First prefix length": {},
    /** Dotted mask of its network; blank in IPv6. */
    "First netmask": {},
    /** Gateway of its network. */
    "First gateway": {},
    /** Hours to rebuild one drive at the drive rate of the settings. */
    "Rebuild hours": {},
    /** Share of its feeds in use, and after the loss of another feed. */
    "Feed load": {},
    /** Its feeds in the order of its supplies, with commas between. */
    "Feeds": {},
  },
  Controller: {
    /** Name of the controller. */
    "Controller": {},
    "First controller": firstController,
    /** Such as B or controller B. */
    "Is subject": isSubject,
  },
  Port: {
    "First controller": firstController,
    /** Its MTU, else that of its network, else 1500; blank, as are those of pings, in a network that is none of IP. */
    "Port MTU": {},
    /** Payload of an echo request that just fills the MTU: MTU − 28, in IPv6 MTU − 48. */
    "Ping size": {},
    /** One byte more than Ping size. */
    "Ping too large": {},
    /** Whom to ping: the hosts in its network by address, else the ports of other arrays; in words where the plan knows none. */
    "Ping targets": {},
    /** The switch and its port into which it is cabled, as the label of the cable has them. */
    "Switch end": {},
    /** "no" on a controller that waits where an address moves to the one that works: there is none to ping from; else "yes". */
    "Own address": { choices: ["yes", "no"] },
  },
  Shelf: {
    /** Such as S1 or shelf S1. */
    "Is subject": isSubject,
    /** Its feeds in the order of its supplies, with commas between. */
    "Feeds": {},
  },
  Drive: {
    /** Such as 7 or bay 7, in a shelf S1 bay 7. */
    "Is subject": isSubject,
  },
  Switch: {
    /** Largest MTU of the networks that it carries, 1500 where they name none. */
    "Largest MTU": {},
    /** Smallest frame size that it must forward: Largest MTU + 22 bytes for header, tag and check sequence. */
    "Least frame": {},
  },
  Feed: {
    /** Share of the feed in use, and after the loss of another feed; in words where the plan does not tell. */
    "Planned load": {},
  },
  Host: {
    /** How many paths it has to the arrays of the job together, counted in data networks; blank where that is not known. */
    "Paths to arrays": {},
    /** Its paths to each array of the job, one by one. */
    "Paths by array": {},
  },
  "Host port": {
    /** Payload of an echo request that just fills its MTU: MTU − 28, in IPv6 MTU − 48. */
    "Ping size": {},
    /** One byte more than Ping size. */
    "Ping too large": {},
    /** Addresses of the arrays of the job in its network; in words where the plan knows none. */
    "Ping targets": {},
  },
  Volume: {
    /** The hosts and groups that open it, each with its right and number; in words where none does. */
    "Opened by": {},
  },
  Network: {
    /** Length of its prefix. */
    "Prefix length": {},
    /** Dotted mask of an IPv4 network. */
    "Netmask": {},
  },
} as const satisfies Partial<Record<LayerName, Readonly<Record<string, DerivedField>>>>;

/** The derived fields of a layer with their texts. */
export type DerivedTexts<Layer extends keyof typeof derivedFields> = Readonly<Record<keyof (typeof derivedFields)[Layer] & string, string>>;

/** Lists the derived fields of a layer by name; none where it has none. */
export function derivedFieldsOf(layer: LayerName): readonly (readonly [name: string, field: DerivedField])[] {
  const known: Partial<Record<LayerName, Readonly<Record<string, DerivedField>>>> = derivedFields;
  return Object.entries(known[layer] ?? {});
}
