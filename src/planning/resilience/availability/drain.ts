/** Runs work that can be long to its end without a pause, and answers what it came to. */
export function drain<Answer>(work: Generator<void, Answer, void>): Answer {
  let turn = work.next();
  while (turn.done !== true) turn = work.next();
  return turn.value;
}
