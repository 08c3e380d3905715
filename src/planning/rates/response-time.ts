import { exactDecimal, type Share } from "../quantity";
import { noAnswer } from "../text";
import { waitingProbability } from "./erlang";

/** own: every server has a queue of its own, as drives do; shared: all serve one queue, as controllers and links do. */
export const queueKinds = ["own", "shared"] as const;
export type QueueKind = (typeof queueKinds)[number];

/** What is asked for, and what answers it. */
export interface QueueLoad {
  /** Operations a second, those that the cache answers included. */
  readonly operations: number;
  /** Milliseconds that a server takes for one, when nothing waits. */
  readonly serviceMs: number;
  readonly servers: number;
  /** Share of the operations that the cache answers. */
  readonly cacheHits: Share;
  readonly cacheMs: number;
  readonly queues: QueueKind;
}

/**
 * Computes the mean response time in milliseconds: hits · cache + misses · (service + waiting).
 *
 * Poisson arrivals and exponential service. Load a = misses a millisecond · service, c servers: with queues of their own, service / (1 - a/c)
 * (M/M/1, load spread evenly); with a shared one, service · (1 + C / (c - a)), C the probability of waiting (M/M/c, Erlang C). Kleinrock, Queueing
 * Systems, volume 1, 1975, from memory. No answer where the servers cannot keep up.
 *
 * A mean over a long steady time: bursts wait longer, and service that varies less than exponential service waits less, about half for
 * service that is always the same.
 */
export function responseTimeMs({ operations, serviceMs, servers, cacheHits, cacheMs, queues }: QueueLoad): number {
  const misses = exactDecimal(cacheHits).neg().plus(1);
  const offered = exactDecimal(operations).times(misses).times(exactDecimal(serviceMs)).div(1000);
  const idle = offered.neg().plus(servers);
  if (misses.isZero()) return cacheMs;
  if (!idle.gt(0)) throw cannotKeepUp(operations, offered.toNumber(), servers);
  const [load, free] = [offered.toNumber(), idle.toNumber()];
  const served = queues === "own" ? (serviceMs * servers) / free : serviceMs * (1 + waitingProbability(servers, load, free) / free);
  return cacheHits * cacheMs + misses.toNumber() * served;
}

function cannotKeepUp(operations: number, offered: number, servers: number): Error {
  const needed = Math.floor(offered) + 1;
  return noAnswer("servers", servers, `servers ${servers} cannot keep up with ${operations} operations a second: ${needed} are the least. Write more servers or fewer operations.`);
}
