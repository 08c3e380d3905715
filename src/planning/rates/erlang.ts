/**
 * Computes the probability that an arrival finds all of `servers` busy and is turned away (Erlang B), for an offered load in erlangs.
 *
 * B(0) = 1, B(i) = load·B(i-1) / (i + load·B(i-1)): nothing is subtracted, so no digits are lost.
 */
export function blockingProbability(servers: number, offered: number): number {
  let blocked = 1;
  for (let busy = 1; busy <= servers; busy += 1) blocked = (offered * blocked) / (busy + offered * blocked);
  return blocked;
}

/**
 * Computes the probability that an arrival has to wait (Erlang C): Poisson arrivals, exponential service, one queue before `servers`.
 *
 * `idle` is the number of servers less the offered load, above 0; it is asked for since the caller has it exactly, and near saturation a
 * difference of two nearly equal numbers would lose its digits.
 */
export function waitingProbability(servers: number, offered: number, idle: number = servers - offered): number {
  const blocked = blockingProbability(servers, offered);
  return (servers * blocked) / (idle + offered * blocked);
}
