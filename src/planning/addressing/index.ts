export { Address, addressAt, addressValue, compareAddresses, formatAddress, isSameAddress, parseAddress, readAddress } from "./address";
export { assignableRanges } from "./assignable";
export { assignAddresses, type KeptPair, type Named } from "./assign";
export { addBlocks, containsText, meetsBlock, parseBlock, parseBlocks, parseRanges, refuseOtherFamily, type Block } from "./block";
export { findClashes, type Clash, type Clashes } from "./clashes";
export { coverAsText, coverByPrefixes } from "./cover";
export { bitsOf, type Family } from "./family";
export { broadcastAddress, countAddresses, countHosts, firstHost, hostAt, hostBits, lastHost } from "./hosts";
export type { KeptAddress } from "./kept";
export { mergeRanges, uniteRanges } from "./merge";
export { formatMask, formatWildcard, maskText, parseMask } from "./netmask";
export { findFreeAddresses } from "./next-free";
export { planPorts, type KeptPort, type PlannedPort, type PortArray, type PortSharing } from "./port-plan";
export type { PortNetwork } from "./port-network";
export { parseControllerNames, parsePortNames } from "./port-names";
export {
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
export { carve, type Carved, type Need } from "./carve";
export { hostNameFault } from "./host-name";
export { iscsiName, iscsiNameFault } from "./iscsi-name";
export { findFreeSubnet } from "./next-subnet";
export { ipHeaderBytes, leastMtu } from "./ip-packet";
export { pingSize } from "./ping-size";
export { findRepeats, type Repeat } from "./repeats";
export { reverseName, reversePlace, reverseZones, type ReversePlace, type ReverseZones } from "./reverse-name";
export { sortKey } from "./sort-key";
export { specialPurposeOf, specialPurposeOfAddress, specialPurposes, type RegistryFlag, type SpecialPurpose } from "./special-purpose";
export { splitPrefix } from "./split";
export { subnetFacts, type SubnetFact } from "./subnet-facts";
export { readSubnet, type SubnetText } from "./subnet-text";
