import { Assumptions } from "./assumptions";
import { Cables } from "./cables";
import { Capacity } from "./capacity";
import { Drives } from "./drives";
import { HostPaths } from "./host-paths";
import { HostPorts } from "./host-ports";
import { ModelPorts } from "./model-ports";
import { Networks } from "./networks";
import { Outlooks } from "./outlooks";
import { Paths } from "./paths";
import { Places } from "./places";
import { PlanRows } from "./plan-rows";
import { Ports } from "./ports";
import { Power } from "./power";
import { Quote } from "./quote";
import { Racks } from "./racks";
import { Spellings } from "./spellings";
import { StepReach } from "./step-reach";
import { UsedAddresses } from "./used-addresses";
import { Volumes } from "./volumes";
import { Wiring } from "./wiring";

/**
 * The plan of a workbook with every figure that follows from it.
 *
 * A figure is worked out here and nowhere else, once, when it is first asked for; checks, tabs and pictures read it. The facts stand by
 * subject, each in a file of its own.
 */
export class PlanModel extends PlanRows {
  readonly networks = new Networks(this);
  readonly modelPorts = new ModelPorts(this);
  readonly ports = new Ports(this, this.networks, this.modelPorts);
  readonly hostPorts = new HostPorts(this, this.networks);
  readonly wiring = new Wiring(this.ports, this.hostPorts);
  readonly addresses = new UsedAddresses(this, this.networks, this.ports, this.hostPorts);
  readonly capacity = new Capacity(this);
  readonly outlooks = new Outlooks(this, this.capacity);
  readonly drives = new Drives(this);
  readonly volumes = new Volumes(this, this.capacity);
  readonly power = new Power(this);
  readonly cables = new Cables(this, this.wiring, this.hostPorts, this.power);
  readonly racks = new Racks(this);
  readonly paths = new Paths(this, this.ports, this.hostPorts);
  readonly hostPaths = new HostPaths(this, this.ports, this.hostPorts);
  readonly places = new Places(this, this.capacity);
  readonly quote = new Quote(this, this.capacity);
  readonly reach = new StepReach(this);
  readonly assumptions = new Assumptions(this, this.places);
  readonly spellings = new Spellings(this);
}
