export { blockingProbability, waitingProbability } from "./erlang";
export { hostOperationsPerSecond } from "./host-operations";
export { queueKinds, responseTimeMs, type QueueKind, type QueueLoad } from "./response-time";
export { serialSeconds } from "./serial";
export { tcpPayload, type Framing } from "./tcp-payload";
export { arrayStates, streamRate, type ArrayState, type StreamLoad } from "./throughput";
export { moveHours, rebuildHours } from "./transfer";
