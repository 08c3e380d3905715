import { addressOutsideNetwork } from "./address-outside-network";
import { addressTwice } from "./address-twice";
import { ambiguousPlaceholder } from "./ambiguous-placeholder";
import { arrayOnOneSwitch } from "./array-on-one-switch";
import { circuitLoad } from "./circuit-load";
import { clusterWithoutAddress } from "./cluster-without-address";
import { clusterWithoutPort } from "./cluster-without-port";
import { controllerOnOneSwitch } from "./controller-on-one-switch";
import { dateInText } from "./date-in-text";
import { drivesOutsideGroup } from "./drives-outside-group";
import { feedPhase } from "./feed-phase";
import { feedTakeover } from "./feed-takeover";
import type { Rule } from "./finding";
import { firstOfCluster } from "./first-of-cluster";
import { gatewayMissing } from "./gateway-missing";
import { gatewayOutside } from "./gateway-outside";
import { gatewayTaken } from "./gateway-taken";
import { heavierAbove } from "./heavier-above";
import { hostOnOneSwitch } from "./host-on-one-switch";
import { hostWithoutPath } from "./host-without-path";
import { impossibleCondition } from "./impossible-condition";
import { liftAid } from "./lift-aid";
import { missingColumn } from "./missing-column";
import { missingId } from "./missing-id";
import { missingKeyColumn } from "./missing-key-column";
import { namelessRow } from "./nameless-row";
import { networkOrBroadcast } from "./network-or-broadcast";
import { networkTooSmall } from "./network-too-small";
import { networksOverlap } from "./networks-overlap";
import { notAnAddress } from "./not-an-address";
import { numberAsText } from "./number-as-text";
import { otherSite } from "./other-site";
import { poolDomain } from "./pool-domain";
import { poolFill } from "./pool-fill";
import { poolRemoval } from "./pool-removal";
import { poolWithoutScheme } from "./pool-without-scheme";
import { portMtu } from "./port-mtu";
import { portWithoutAddress } from "./port-without-address";
import { portWithoutNetwork } from "./port-without-network";
import { portWithoutRow } from "./port-without-row";
import { portWithoutSwitch } from "./port-without-switch";
import { rackCooling } from "./rack-cooling";
import { rackDepth } from "./rack-depth";
import { rackOutlets } from "./rack-outlets";
import { rackOutside } from "./rack-outside";
import { rackOverlap } from "./rack-overlap";
import { rackWeight } from "./rack-weight";
import { rebuildReadFault } from "./rebuild-read-fault";
import { repeatedName } from "./repeated-name";
import { repeatedStep } from "./repeated-step";
import { reservedAddress } from "./reserved-address";
import { schemeLayout } from "./scheme-layout";
import { sharedAddressOnPort } from "./shared-address-on-port";
import { sharedAddressOutside } from "./shared-address-outside";
import { singlePoint } from "./single-point";
import { storedSecret } from "./stored-secret";
import { suppliesOnOneFeed } from "./supplies-on-one-feed";
import { suppliesOnOneSource } from "./supplies-on-one-source";
import { switchPortTwice } from "./switch-port-twice";
import { switchWithoutNetwork } from "./switch-without-network";
import { switchesOnOneFeed } from "./switches-on-one-feed";
import { tabName } from "./tab-name";
import { tooFewSpares } from "./too-few-spares";
import { uncomparableExpectation } from "./uncomparable-expectation";
import { unknownName } from "./unknown-name";
import { unknownPlaceholder } from "./unknown-placeholder";
import { unknownSetting } from "./unknown-setting";
import { unreadableCell } from "./unreadable-cell";
import { unreadableSetting } from "./unreadable-setting";
import { unusableRange } from "./unusable-range";

/** Every rule of the checks, family by family, in the order in which findings of one weight are listed. */
export const rules: readonly Rule[] = [
  unreadableCell,
  missingKeyColumn,
  missingColumn,
  namelessRow,
  unknownName,
  otherSite,
  repeatedName,
  tabName,
  missingId,
  dateInText,
  numberAsText,
  unknownSetting,
  unreadableSetting,
  schemeLayout,
  drivesOutsideGroup,
  tooFewSpares,
  poolFill,
  poolRemoval,
  rebuildReadFault,
  notAnAddress,
  unusableRange,
  networksOverlap,
  networkTooSmall,
  gatewayOutside,
  gatewayTaken,
  gatewayMissing,
  addressOutsideNetwork,
  reservedAddress,
  networkOrBroadcast,
  addressTwice,
  sharedAddressOnPort,
  sharedAddressOutside,
  clusterWithoutAddress,
  clusterWithoutPort,
  firstOfCluster,
  portWithoutRow,
  portWithoutNetwork,
  portWithoutAddress,
  portMtu,
  arrayOnOneSwitch,
  controllerOnOneSwitch,
  switchWithoutNetwork,
  switchPortTwice,
  portWithoutSwitch,
  suppliesOnOneFeed,
  suppliesOnOneSource,
  switchesOnOneFeed,
  feedTakeover,
  hostWithoutPath,
  hostOnOneSwitch,
  singlePoint,
  poolDomain,
  poolWithoutScheme,
  rackOutside,
  rackOverlap,
  rackWeight,
  rackDepth,
  rackCooling,
  rackOutlets,
  heavierAbove,
  liftAid,
  feedPhase,
  circuitLoad,
  repeatedStep,
  unknownPlaceholder,
  ambiguousPlaceholder,
  uncomparableExpectation,
  impossibleCondition,
  storedSecret,
];
