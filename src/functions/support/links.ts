import { mostLinks, type FallibleNode, type Link } from "../../planning/resilience";
import { atMost } from "./at-most";
import { flag } from "./choice";
import { name } from "./names";
import { orNone } from "./numbers";
import { mapped, type Reader } from "./reader";
import { column, table } from "./table";
import { down, downOf, up } from "./unavailability";

const ends = { from: column("from", ["From"], name), to: column("to", ["To"], name) };
const give = "Give a range with the two ends of a link in each row.";
/** Far more than a site has, and answered within a second or two. */
const mostFallible = 20_000;
const passes = ["Length", "Length m", "Colour", "Kind", "Id"];

/** Reads links, from and to a row; further columns are left alone. */
export const links = atMost(mostLinks, table(ends, { give, passes: ["Unavailability", "Availability", ...passes] }));

/** Reads links with how often each is down. */
export const fallibleLinks: Reader<readonly Link[]> = mapped(atMost(mostFallible, table({ ...ends, down, up }, { give, passes })), (rows) =>
  rows.map((row) => ({ from: row.from, to: row.to, unavailability: downOf(row), at: row.at })),
);

const nodeRows = table(
  {
    name: column("name", ["Name", "Node", "Nodes", "Device"], name),
    down,
    // A blank means TRUE: only hosts and arrays need to say that they do not.
    forwards: column("forwards", ["Forwards"], mapped(orNone(flag), (given) => given ?? true), { optional: true }),
    up,
  },
  { passes: ["Site", "Rack", "Kind", "Role", "Id"] },
);

/** Reads which nodes forward, if any are given: name, an unavailability of no use here, forwards. */
export const forwardingNodes: Reader<readonly FallibleNode[]> = mapped(atMost(mostLinks, nodeRows), (rows) =>
  rows.map(({ name: called, forwards, at }) => ({ name: called, forwards, at })),
);

/** Reads the nodes that can be down themselves, and which forward, if any are given. */
export const fallibleNodes: Reader<readonly FallibleNode[]> = mapped(atMost(mostFallible, nodeRows), (rows) =>
  rows.map((row) => ({ name: row.name, unavailability: downOf(row), forwards: row.forwards, at: row.at })),
);
