export { Address, addressAt, addressValue, compareAddresses, formatAddress, isSameAddress, parseAddress, readAddress } from "./address";
export { assignableRanges } from "./assignable";
export { assignAddresses, type KeptPair, type Named } from "./assign";
export { addBlocks, parseBlock, parseBlocks, parseRanges, refuseOtherFamily, type Block } from "./block";
export { findClashes, type Clash, type Clashes } from "./clashes";
export { coverAsText, coverByPrefixes } from "./cover";
export { bitsOf, type Family } from "./family";
export { countAddresses, countHosts, firstHost, hostAt, hostBits, lastHost } from "./hosts";
export type { KeptAddress } from "./kept";
export { mergeRanges, uniteRanges } from "./merge";
export { formatMask, formatWildcard, parseMask } from "./netmask";
export { findFreeAddresses } from "./next-free";
export { planPorts, type KeptPort, type PlannedPort, type PortArray, type PortNetwork, type PortSharing } from "./port-plan";
export { parseControllerNames, parsePortNames } from "./port-names";
export {
  comparePrefixes,
  containsAddress,
  containsPrefix,
  firstOf,
  formatPrefix,
  Interface,
  lastAddress,
  lengthText,
  networkOf,
  overlaps,
  parseInterface,
  parsePrefix,
  Prefix,
} from "./prefix";
export { countInRanges, RangeList, rangesOfPrefixes, type AddressRanges } from "./ranges";
export { subtractRanges } from "./subtract";
