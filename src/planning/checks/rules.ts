import type { Rule } from "./finding";
import { addressOutsideNetwork } from "./rules/addresses/address-outside-network";
import { addressTwice } from "./rules/addresses/address-twice";
import { clusterOrder } from "./rules/addresses/cluster-order";
import { clusterWithoutAddress } from "./rules/addresses/cluster-without-address";
import { clusterWithoutPort } from "./rules/addresses/cluster-without-port";
import { firstOfCluster } from "./rules/addresses/first-of-cluster";
import { gatewayMissing } from "./rules/addresses/gateway-missing";
import { gatewayOutside } from "./rules/addresses/gateway-outside";
import { gatewayTaken } from "./rules/addresses/gateway-taken";
import { networkMtu } from "./rules/addresses/network-mtu";
import { networkOrBroadcast } from "./rules/addresses/network-or-broadcast";
import { networkTooSmall } from "./rules/addresses/network-too-small";
import { networksOverlap } from "./rules/addresses/networks-overlap";
import { notAnAddress } from "./rules/addresses/not-an-address";
import { portMtu } from "./rules/addresses/port-mtu";
import { portRowTwice } from "./rules/addresses/port-row-twice";
import { portWithoutAddress } from "./rules/addresses/port-without-address";
import { portWithoutNetwork } from "./rules/addresses/port-without-network";
import { portWithoutRow } from "./rules/addresses/port-without-row";
import { reservedAddress } from "./rules/addresses/reserved-address";
import { reservedOutside } from "./rules/addresses/reserved-outside";
import { sharedAddressOnPort } from "./rules/addresses/shared-address-on-port";
import { sharedAddressOutside } from "./rules/addresses/shared-address-outside";
import { unusableRange } from "./rules/addresses/unusable-range";
import { vlanTwice } from "./rules/addresses/vlan-twice";
import { drivesOutsideGroup } from "./rules/capacity/drives-outside-group";
import { figureDiffers } from "./rules/capacity/figure-differs";
import { poolFill } from "./rules/capacity/pool-fill";
import { poolOfOtherCluster } from "./rules/capacity/pool-of-other-cluster";
import { poolRemoval } from "./rules/capacity/pool-removal";
import { rebuildReadFault } from "./rules/capacity/rebuild-read-fault";
import { readingNotCounted } from "./rules/capacity/reading-not-counted";
import { schemeLayout } from "./rules/capacity/scheme-layout";
import { tooFewSpares } from "./rules/capacity/too-few-spares";
import { usedBesideReading } from "./rules/capacity/used-beside-reading";
import { circuitLoad } from "./rules/facility/circuit-load";
import { feedPhase } from "./rules/facility/feed-phase";
import { heavierAbove } from "./rules/facility/heavier-above";
import { liftAid } from "./rules/facility/lift-aid";
import { loadNotKnown } from "./rules/facility/load-not-known";
import { rackCooling } from "./rules/facility/rack-cooling";
import { rackDepth } from "./rules/facility/rack-depth";
import { rackNotKnown } from "./rules/facility/rack-not-known";
import { rackOutlets } from "./rules/facility/rack-outlets";
import { rackOutside } from "./rules/facility/rack-outside";
import { rackOverlap } from "./rules/facility/rack-overlap";
import { rackWeight } from "./rules/facility/rack-weight";
import { addressOfServer } from "./rules/intent/address-of-server";
import { arrayWithoutData } from "./rules/intent/array-without-data";
import { assumedAndReliedOn } from "./rules/intent/assumed-and-relied-on";
import { assumedValue } from "./rules/intent/assumed-value";
import { bayBeyondModel } from "./rules/intent/bay-beyond-model";
import { bayTwice } from "./rules/intent/bay-twice";
import { baysNotKnown } from "./rules/intent/bays-not-known";
import { clusterWithoutState } from "./rules/intent/cluster-without-state";
import { costOfList } from "./rules/intent/cost-of-list";
import { currencyCode } from "./rules/intent/currency-code";
import { dataNetworkUnused } from "./rules/intent/data-network-unused";
import { dataOnOneSwitch } from "./rules/intent/data-on-one-switch";
import { discountedMargin } from "./rules/intent/discounted-margin";
import { driveDates } from "./rules/intent/drive-dates";
import { driveSetsDiffer } from "./rules/intent/drive-sets-differ";
import { drivesDiffer } from "./rules/intent/drives-differ";
import { frameBytes } from "./rules/intent/frame-bytes";
import { hostDataOnOneSwitch } from "./rules/intent/host-data-on-one-switch";
import { hostOnOneSide } from "./rules/intent/host-on-one-side";
import { hostPaths } from "./rules/intent/host-paths";
import { hostPortsDiffer } from "./rules/intent/host-ports-differ";
import { initiatorName } from "./rules/intent/initiator-name";
import { initiatorTwice } from "./rules/intent/initiator-twice";
import { installedAgain } from "./rules/intent/installed-again";
import { jobWithoutSubject } from "./rules/intent/job-without-subject";
import { jobsInCircle } from "./rules/intent/jobs-in-circle";
import { marginRange } from "./rules/intent/margin-range";
import { moreDrivesThanBays } from "./rules/intent/more-drives-than-bays";
import { networkNotChecked } from "./rules/intent/network-not-checked";
import { networkOfCustomers } from "./rules/intent/network-of-customers";
import { networkRole } from "./rules/intent/network-role";
import { noStepForCluster } from "./rules/intent/no-step-for-cluster";
import { offerCurrencies } from "./rules/intent/offer-currencies";
import { offerMargin } from "./rules/intent/offer-margin";
import { offerPastDay } from "./rules/intent/offer-past-day";
import { offerRowUnpriced } from "./rules/intent/offer-row-unpriced";
import { offerRowsDiffer } from "./rules/intent/offer-rows-differ";
import { offeredForNoArray } from "./rules/intent/offered-for-no-array";
import { pathsNotKnown } from "./rules/intent/paths-not-known";
import { plannedTwice } from "./rules/intent/planned-twice";
import { portBeyondArray } from "./rules/intent/port-beyond-array";
import { portOfOtherRole } from "./rules/intent/port-of-other-role";
import { portRole } from "./rules/intent/port-role";
import { priceTwice } from "./rules/intent/price-twice";
import { quoteQuantity } from "./rules/intent/quote-quantity";
import { quotedTwice } from "./rules/intent/quoted-twice";
import { rightsDiffer } from "./rules/intent/rights-differ";
import { serialTwice } from "./rules/intent/serial-twice";
import { sideNotSaid } from "./rules/intent/side-not-said";
import { sidesOnOneSwitch } from "./rules/intent/sides-on-one-switch";
import { stackOfSites } from "./rules/intent/stack-of-sites";
import { switchPortBeyond } from "./rules/intent/switch-port-beyond";
import { switchPortKept } from "./rules/intent/switch-port-kept";
import { taxRateMissing } from "./rules/intent/tax-rate-missing";
import { thinVolumes } from "./rules/intent/thin-volumes";
import { unknownLinks } from "./rules/intent/unknown-links";
import { unknownOpener } from "./rules/intent/unknown-opener";
import { volumeNumberTwice } from "./rules/intent/volume-number-twice";
import { volumeOpenToStrangers } from "./rules/intent/volume-open-to-strangers";
import { volumeOpenedTwice } from "./rules/intent/volume-opened-twice";
import { volumeOutOfReach } from "./rules/intent/volume-out-of-reach";
import { volumeWithoutHost } from "./rules/intent/volume-without-host";
import { volumesBeyondPool } from "./rules/intent/volumes-beyond-pool";
import { volumesNotHeld } from "./rules/intent/volumes-not-held";
import { volumesPromised } from "./rules/intent/volumes-promised";
import { warrantyEnd } from "./rules/intent/warranty-end";
import { wrongSide } from "./rules/intent/wrong-side";
import { ambiguousPlaceholder } from "./rules/procedure/ambiguous-placeholder";
import { impossibleCondition } from "./rules/procedure/impossible-condition";
import { impossibleGrid } from "./rules/procedure/impossible-grid";
import { repeatedStep } from "./rules/procedure/repeated-step";
import { uncomparableExpectation } from "./rules/procedure/uncomparable-expectation";
import { unknownPlaceholder } from "./rules/procedure/unknown-placeholder";
import { withdrawnStep } from "./rules/procedure/withdrawn-step";
import { cableEnds } from "./rules/references/cable-ends";
import { cableWithoutRow } from "./rules/references/cable-without-row";
import { dateInText } from "./rules/references/date-in-text";
import { linkEnds } from "./rules/references/link-ends";
import { listColumn } from "./rules/references/list-column";
import { missingColumn } from "./rules/references/missing-column";
import { missingId } from "./rules/references/missing-id";
import { missingKeyColumn } from "./rules/references/missing-key-column";
import { namelessRow } from "./rules/references/nameless-row";
import { notFilled } from "./rules/references/not-filled";
import { numberAsText } from "./rules/references/number-as-text";
import { otherSite } from "./rules/references/other-site";
import { repeatedName } from "./rules/references/repeated-name";
import { rowWithoutSite } from "./rules/references/row-without-site";
import { tabName } from "./rules/references/tab-name";
import { unknownModel } from "./rules/references/unknown-model";
import { unknownName } from "./rules/references/unknown-name";
import { unknownSetting } from "./rules/references/unknown-setting";
import { unreadableCell } from "./rules/references/unreadable-cell";
import { unreadablePorts } from "./rules/references/unreadable-ports";
import { unreadableSetting } from "./rules/references/unreadable-setting";
import { arrayOnOneSwitch } from "./rules/resilience/array-on-one-switch";
import { controllerOnOneSwitch } from "./rules/resilience/controller-on-one-switch";
import { feedTakeover } from "./rules/resilience/feed-takeover";
import { hostOnOneSwitch } from "./rules/resilience/host-on-one-switch";
import { hostWithoutPath } from "./rules/resilience/host-without-path";
import { pathsOnOneStack } from "./rules/resilience/paths-on-one-stack";
import { poolDomain } from "./rules/resilience/pool-domain";
import { poolWithoutScheme } from "./rules/resilience/pool-without-scheme";
import { portCabledTwice } from "./rules/resilience/port-cabled-twice";
import { portWithoutSwitch } from "./rules/resilience/port-without-switch";
import { singlePoint } from "./rules/resilience/single-point";
import { suppliesOnOneFeed } from "./rules/resilience/supplies-on-one-feed";
import { suppliesOnOneSource } from "./rules/resilience/supplies-on-one-source";
import { switchPortTwice } from "./rules/resilience/switch-port-twice";
import { switchWithoutNetwork } from "./rules/resilience/switch-without-network";
import { switchesOnOneFeed } from "./rules/resilience/switches-on-one-feed";
import { storedSecret } from "./rules/secrets/stored-secret";

/** Every rule of the checks, family by family, in the order in which findings of one weight are listed. */
export const rules: readonly Rule[] = [
  unreadableCell,
  unreadablePorts,
  missingKeyColumn,
  missingColumn,
  notFilled,
  namelessRow,
  unknownName,
  unknownModel,
  otherSite,
  linkEnds,
  rowWithoutSite,
  repeatedName,
  tabName,
  missingId,
  cableEnds,
  cableWithoutRow,
  dateInText,
  numberAsText,
  unknownSetting,
  listColumn,
  unreadableSetting,
  schemeLayout,
  drivesOutsideGroup,
  tooFewSpares,
  figureDiffers,
  poolFill,
  poolRemoval,
  poolOfOtherCluster,
  rebuildReadFault,
  readingNotCounted,
  usedBesideReading,
  notAnAddress,
  unusableRange,
  reservedOutside,
  networksOverlap,
  vlanTwice,
  networkMtu,
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
  clusterOrder,
  portWithoutRow,
  portRowTwice,
  portWithoutNetwork,
  portWithoutAddress,
  portMtu,
  arrayOnOneSwitch,
  controllerOnOneSwitch,
  switchWithoutNetwork,
  switchPortTwice,
  portCabledTwice,
  portWithoutSwitch,
  suppliesOnOneFeed,
  suppliesOnOneSource,
  switchesOnOneFeed,
  feedTakeover,
  hostWithoutPath,
  hostOnOneSwitch,
  pathsOnOneStack,
  singlePoint,
  poolDomain,
  poolWithoutScheme,
  unknownLinks,
  hostPaths,
  pathsNotKnown,
  hostOnOneSide,
  hostDataOnOneSwitch,
  networkRole,
  networkNotChecked,
  sideNotSaid,
  networkOfCustomers,
  dataNetworkUnused,
  arrayWithoutData,
  portRole,
  portOfOtherRole,
  portBeyondArray,
  dataOnOneSwitch,
  wrongSide,
  sidesOnOneSwitch,
  stackOfSites,
  addressOfServer,
  hostPortsDiffer,
  initiatorName,
  initiatorTwice,
  switchPortBeyond,
  switchPortKept,
  frameBytes,
  quoteQuantity,
  quotedTwice,
  offeredForNoArray,
  marginRange,
  discountedMargin,
  offerMargin,
  offerPastDay,
  offerRowUnpriced,
  offerRowsDiffer,
  offerCurrencies,
  currencyCode,
  taxRateMissing,
  costOfList,
  priceTwice,
  clusterWithoutState,
  installedAgain,
  jobsInCircle,
  jobWithoutSubject,
  plannedTwice,
  noStepForCluster,
  assumedAndReliedOn,
  assumedValue,
  volumesBeyondPool,
  volumesPromised,
  thinVolumes,
  volumesNotHeld,
  volumeWithoutHost,
  unknownOpener,
  volumeOpenToStrangers,
  volumeOutOfReach,
  rightsDiffer,
  volumeOpenedTwice,
  volumeNumberTwice,
  moreDrivesThanBays,
  bayBeyondModel,
  bayTwice,
  driveDates,
  driveSetsDiffer,
  drivesDiffer,
  serialTwice,
  warrantyEnd,
  baysNotKnown,
  rackOutside,
  rackOverlap,
  rackWeight,
  rackNotKnown,
  rackDepth,
  rackCooling,
  rackOutlets,
  heavierAbove,
  liftAid,
  feedPhase,
  circuitLoad,
  loadNotKnown,
  repeatedStep,
  unknownPlaceholder,
  ambiguousPlaceholder,
  uncomparableExpectation,
  impossibleCondition,
  impossibleGrid,
  withdrawnStep,
  storedSecret,
];
