import { parseControllerNames, type Address } from "../../addressing";
import { foldName } from "../../text";
import type { PlanRow } from "../read";
import type { Network } from "./networks";
import { orNull } from "./refusal";

/** A row of the Ports table, with what could be read of it. */
export interface PortFacts {
  readonly row: PlanRow<"ports">;
  readonly array: PlanRow<"arrays"> | null;
  readonly network: Network | null;
  /** Null where the cell is blank or no address. */
  readonly address: Address | null;
  /** Switch that it is cabled to; null where none is named or it has no row. */
  readonly to: PlanRow<"switches"> | null;
  /** Controller and port in one text without case: rows of the same one stand for the same socket. */
  readonly socket: string;
  /** Row of its model that says what the port is for; null where there is none. */
  readonly duty: PlanRow<"modelPorts"> | null;
}

/** A port of a controller that an array has by its columns Controllers and Ports. */
export interface Socket extends PortName {
  /** Place of the port on its controller, from 0. */
  readonly at: number;
  /** Controller and port in one text without case. */
  readonly socket: string;
}

/** A port of a controller by what they are called. */
export interface PortName {
  readonly controller: string;
  readonly port: string;
}

/** Names the controllers of an array; null where the cell is blank or cannot be read. */
export function controllersOf({ controllers }: PlanRow<"arrays">): readonly string[] | null {
  return orNull(() => parseControllerNames(controllers));
}

/** Writes the controller and port of a row as people read them, such as A/0. */
export function portLabel({ controller, port }: PortName): string {
  return controller === "" ? port : `${controller}/${port}`;
}

/** Names the use of a port's address: controllers that share the address of a port number have one use of it. */
export function portUse(array: string, sharing: PlanRow<"arrays">["portSharing"], { controller, port }: PortName): string {
  return `port\n${foldName(array)}\n${sharing === "array" ? "" : foldName(controller)}\n${foldName(port)}`;
}

/** Makes one text of a controller and a port, without case. */
export function socketOf({ controller, port }: PortName): string {
  return `${foldName(controller)}\n${foldName(port)}`;
}
