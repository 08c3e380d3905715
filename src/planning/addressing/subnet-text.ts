import { formatAddress } from "./address";
import { firstHost, lastHost } from "./hosts";
import { firstHostIPv4, lastHostIPv4, networkIPv4 } from "./ipv4-hosts";
import { packedAddress, packedLength, readIPv4Prefix, writeIPv4 } from "./ipv4-text";
import { clearHostBits, setHostBits, toFirstHost } from "./ipv6-hosts";
import { readIPv6, writeIPv6Groups, type Groups } from "./ipv6-text";
import { parseInterface, readLength } from "./prefix";

/** What a subnet is, read from text and written as text when asked: for sheets with a hundred thousand of them. */
export interface SubnetText {
  /** Address of the network. */
  readonly network: string;
  /** First address a host may hold. */
  readonly firstHost: string;
  /** Last address a host may hold. */
  readonly lastHost: string;
}

/** Reads the subnet of an address and its length. Reads what `parseInterface` reads, and refuses what it refuses. */
export function readSubnet(text: string, argument = "prefix"): SubnetText {
  const packed = readIPv4Prefix(text);
  if (packed >= 0) return new IPv4Subnet(packedAddress(packed), packedLength(packed));
  const slash = text.indexOf("/");
  const length = slash < 0 ? -1 : readLength(text, slash + 1, 6);
  const groups = length < 0 ? null : readIPv6(text, 0, slash);
  if (groups !== null) return new IPv6Subnet(groups, length);
  const { network } = parseInterface(text, argument);
  return {
    network: formatAddress(network.first),
    firstHost: formatAddress(firstHost(network)),
    lastHost: formatAddress(lastHost(network)),
  };
}

/** One of each family lives for good, as one `RangeList` does, and for the same reason. */
class IPv4Subnet implements SubnetText {
  static readonly lasting = new IPv4Subnet(0, 0);

  constructor(
    private readonly address: number,
    private readonly length: number,
  ) {}

  get network(): string {
    return writeIPv4(networkIPv4(this.address, this.length));
  }

  get firstHost(): string {
    return writeIPv4(firstHostIPv4(this.address, this.length));
  }

  get lastHost(): string {
    return writeIPv4(lastHostIPv4(this.address, this.length));
  }
}

class IPv6Subnet implements SubnetText {
  static readonly lasting = new IPv6Subnet([0, 0, 0, 0, 0, 0, 0, 0], 0);

  constructor(
    private readonly groups: Groups,
    private readonly length: number,
  ) {}

  get network(): string {
    return this.written(clearHostBits);
  }

  get firstHost(): string {
    return this.written(toFirstHost);
  }

  get lastHost(): string {
    return this.written(setHostBits);
  }

  private written(change: (groups: Groups, length: number) => void): string {
    const groups = this.groups.slice() as Groups;
    change(groups, this.length);
    return writeIPv6Groups(groups);
  }
}
