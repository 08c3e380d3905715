export { circuitUse, continuousLimit, current, usualContinuousShare, type Phases } from "./circuit";
export { fitRack, rackUnitMillimetres, type PlacedItem, type RackFit, type RackItem, type TakenUnits } from "./fit-rack";
export { heat, type HeatUnit } from "./heat";
export { liftLimit, type Grip, type Lift, type LiftLimits } from "./lift-limit";
