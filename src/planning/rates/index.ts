export { hostOperationsPerSecond } from "./host-operations";
export { serialSeconds } from "./serial";
export { ipVersions, tcpPayload, type Framing, type IpVersion } from "./tcp-payload";
export { moveHours, rebuildHours } from "./transfer";
