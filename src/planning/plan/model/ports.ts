import { parseControllerNames, parsePortNames, readAddress } from "../../addressing";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import { expectPorts, lanesByDuty, type ExpectedPort } from "./expected-ports";
import { groupBy } from "./group-by";
import type { ModelPorts } from "./model-ports";
import type { Networks } from "./networks";
import { once, oncePer } from "./once";
import type { PlanRows } from "./plan-rows";
import { socketOf, type PortFacts, type PortName, type Socket } from "./port-facts";
import { orNull } from "./refusal";

/** The ports of a plan: those that have a row, and those that the arrays ought to have. */
export class Ports {
  /** Lists every row of the Ports table. */
  readonly all = once((): readonly PortFacts[] => this.rows.rows("ports").map((row) => this.readPort(row)));

  /** Lists the expected ports of an array that have no row in the Ports table. */
  readonly missing = oncePer((array: PlanRow<"arrays">): readonly ExpectedPort[] => this.expected(array).filter(({ row }) => row === null));

  private readonly byArray = once(() => groupBy(this.all(), ({ array }) => array));

  // Arrays of one model have the same sockets: they are worked out once for all.
  private readonly sockets = oncePer((controllers: string) => oncePer((ports: string) => workOutSockets(controllers, ports)));

  // Arrays of one site take the same networks.
  private readonly lanesOf = oncePer((site: string) => lanesByDuty(site === "" ? [] : this.networks.ofSite(site)));

  constructor(
    private readonly rows: PlanRows,
    private readonly networks: Networks,
    private readonly modelPorts: ModelPorts,
  ) {}

  /** Lists the port rows of an array. */
  of(array: PlanRow<"arrays">): readonly PortFacts[] {
    return this.byArray().get(array) ?? [];
  }

  /** Lists the ports that an array has, controller by controller; null where a column is blank or cannot be read. */
  socketsOf({ controllers, ports }: PlanRow<"arrays">): readonly Socket[] | null {
    return this.sockets(controllers)(ports);
  }

  /** Tells whether a model has a port, on the controller that is named or on any; null where its columns do not say which it has. */
  hasPort({ controllers, ports }: PlanRow<"models">, { controller, port }: PortName): boolean | null {
    const sockets = this.sockets(controllers)(ports);
    return sockets?.some((one) => foldName(one.port) === foldName(port) && (controller === "" || foldName(one.controller) === foldName(controller))) ?? null;
  }

  /** Lists what the Ports table ought to hold for an array. */
  expected(array: PlanRow<"arrays">): readonly ExpectedPort[] {
    return expectPorts(this.socketsOf(array) ?? [], this.lanesOf(array.site), this.of(array), (socket) => this.modelPorts.of(array, socket));
  }

  private readPort(row: PlanRow<"ports">): PortFacts {
    const array = this.rows.find("arrays", row.array);
    return {
      row,
      array,
      network: this.networks.named(row.network),
      address: readAddress(row.address),
      to: this.rows.find("switches", row.switch),
      socket: socketOf(row),
      duty: array === null ? null : this.modelPorts.of(array, row),
    };
  }
}

function workOutSockets(controllers: string, ports: string): readonly Socket[] | null {
  return orNull(() => {
    const portNames = parsePortNames(ports);
    return parseControllerNames(controllers).flatMap((controller) =>
      portNames.map((port, at) => ({ controller, port, at, socket: socketOf({ controller, port }) })),
    );
  });
}
